package leadwright.planner.foresee;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A general circuit simulator, where it is installed. Many circuits are read by one process. */
final class Ngspice {
    private static final Pattern PRINTED = Pattern.compile("^vm?\\(reading\\) = ([-+0-9.eE]+)$", Pattern.MULTILINE);
    private static final int MINUTES = 5;

    private Ngspice() {}

    static boolean installed() {
        for (String place : System.getenv("PATH").split(java.io.File.pathSeparator)) {
            if (Files.isExecutable(Path.of(place, "ngspice"))) {
                return true;
            }
        }
        return false;
    }

    /** What it prints for each netlist, as a magnitude. */
    static List<Double> read(List<String> netlists, Path folder) throws IOException, InterruptedException {
        StringBuilder script = new StringBuilder("* all circuits\n.control\n");
        for (int i = 0; i < netlists.size(); i++) {
            Files.writeString(folder.resolve(i + ".cir"), netlists.get(i), StandardCharsets.UTF_8);
            String print = netlists.get(i).contains("\n.ac ") ? "vm(reading)" : "v(reading)";
            script.append("echo case ")
                    .append(i)
                    .append("\nsource ")
                    .append(i)
                    .append(".cir\nrun\nprint ")
                    .append(print)
                    .append("\nremcirc\n");
        }
        script.append("quit\n.endc\n.end\n");
        Files.writeString(folder.resolve("all.sp"), script, StandardCharsets.UTF_8);
        Path out = folder.resolve("out.txt");
        Process process = new ProcessBuilder("ngspice", "-b", "all.sp")
                .directory(folder.toFile())
                .redirectError(folder.resolve("err.txt").toFile())
                .redirectOutput(out.toFile())
                .start();
        if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new IOException("ngspice took more than " + MINUTES + " minutes");
        }
        String[] parts = Files.readString(out, StandardCharsets.UTF_8).split("(?m)^case \\d+\\R");
        List<Double> values = new ArrayList<>();
        for (int i = 0; i < netlists.size(); i++) {
            Matcher printed = PRINTED.matcher(parts[i + 1]);
            if (!printed.find()) {
                throw new IOException("ngspice printed no reading: " + parts[i + 1] + netlists.get(i));
            }
            values.add(Math.abs(Double.parseDouble(printed.group(1))));
        }
        return values;
    }
}
