package leadwright.render.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs every command of docs/first-hour.md in its order and compares what it prints with the page. */
class FirstHourTest {

    private static final Path PAGE = Path.of("../docs/first-hour.md");
    private static final Pattern BLOCK =
            Pattern.compile("```console\n\\$ leadwright ([^\n]*)\n(.*?)```", Pattern.DOTALL);
    private static final Pattern CODE = Pattern.compile("\\(exit code (\\d)\\)");

    /** Share of the page's ink that may stand elsewhere: the letters are set by whatever the machine has. */
    private static final double TOLERANCE = 0.02;

    @TempDir
    private Path folder;

    @Test
    void everyCommandPrintsWhatThePageSays() throws IOException {
        Matcher blocks = BLOCK.matcher(Files.readString(PAGE));
        int commands = 0;
        while (blocks.find()) {
            commands++;
            List<String> said = blocks.group(2).lines().toList();
            String printed = run(blocks.group(1), said);
            List<String> lines = printed.lines().map(String::strip).toList();
            for (String line : said) {
                if (!CODE.matcher(line).matches()) {
                    assertThat(lines).as(blocks.group(1)).anyMatch(actual -> matches(actual, line.strip()));
                }
            }
        }
        assertThat(commands).isGreaterThan(6);
        sameDrawing(folder.resolve("hollowmere/H1.png"), Path.of("../docs/first-hour/H1.png"));
    }

    private static boolean matches(String actual, String line) {
        return line.endsWith(" …") ? actual.startsWith(line.substring(0, line.length() - 2)) : actual.equals(line);
    }

    private String run(String command, List<String> said) {
        List<String> arguments = new ArrayList<>();
        for (String word : command.split(" ")) {
            boolean written = word.startsWith("hollowmere") || word.equals("record");
            arguments.add(written ? folder.resolve(word).toString() : word.replaceFirst("^docs/", "../docs/"));
        }
        StringWriter printed = new StringWriter();
        PrintWriter writer = new PrintWriter(printed);
        int code = Main.run(arguments.toArray(new String[0]), writer, writer);
        writer.flush();
        said.stream()
                .map(CODE::matcher)
                .filter(Matcher::matches)
                .forEach(match -> assertThat(code).as(command).isEqualTo(Integer.parseInt(match.group(1))));
        return printed.toString().replace("../docs/", "docs/").replace(folder + File.separator, "");
    }

    /** Compared by how dark the pictures are, field by field. */
    private static void sameDrawing(Path made, Path shown) throws IOException {
        if ("refresh".equals(System.getProperty("leadwright.golden"))) {
            Files.copy(made, shown, StandardCopyOption.REPLACE_EXISTING);
        }
        BufferedImage one = read(made);
        BufferedImage other = read(shown);
        assertThat(List.of(one.getWidth(), one.getHeight())).isEqualTo(List.of(other.getWidth(), other.getHeight()));
        double[] here = ink(one);
        double[] there = ink(other);
        double apart = 0;
        for (int i = 0; i < here.length; i++) {
            apart += Math.abs(here[i] - there[i]);
        }
        assertThat(apart / Arrays.stream(there).sum())
                .as("ink that stands elsewhere")
                .isLessThan(TOLERANCE);
    }

    private static double[] ink(BufferedImage image) {
        int fields = 48;
        double[] ink = new double[fields * fields];
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                int light = (rgb >> 16 & 255) + (rgb >> 8 & 255) + (rgb & 255);
                ink[y * fields / image.getHeight() * fields + x * fields / image.getWidth()] += 765 - light;
            }
        }
        return ink;
    }

    private static BufferedImage read(Path file) {
        try {
            return ImageIO.read(file.toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
