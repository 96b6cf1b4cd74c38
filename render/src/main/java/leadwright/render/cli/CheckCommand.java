package leadwright.render.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.DeviceSystem;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.read.ReadingsReader;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Reads files and reports their problems; plans and writes nothing. */
@Command(
        name = "check",
        header = "Read device, kit, house and readings files and report every problem",
        description = {
            "Each file is read by the kind that its first line names. All problems of all files are reported together,"
                    + " each with line and column. Nothing is planned and nothing is written.",
            "",
            "Example:",
            "  leadwright check samples/brindlewick-ward-monitor.yaml samples/k1-marrowgate-bench.yaml"
        },
        exitCodeList = {ExitCode.HELP_0, ExitCode.HELP_2})
final class CheckCommand extends Verb {

    private static final Pattern KIND = Pattern.compile("(?m)^\\W*leadwright[\"']?\\s*[:,;]\\s*[\"']?(\\w+)/");

    @Parameters(paramLabel = "FILE", arity = "1..*", description = "device, kit, house or readings files")
    private List<Path> files = new ArrayList<>();

    @Override
    public Integer call() {
        List<String> problems = new ArrayList<>();
        PrintWriter out = results();
        for (Path file : files) {
            try {
                report(file, Inputs.bytes(file), out, problems);
            } catch (BadInput e) {
                problems.addAll(e.lines());
            }
        }
        if (!problems.isEmpty()) {
            throw new BadInput(problems);
        }
        return ExitCode.DONE;
    }

    private static void report(Path file, byte[] bytes, PrintWriter out, List<String> problems) {
        Matcher kind = KIND.matcher(new String(bytes, StandardCharsets.UTF_8));
        String word = kind.find() ? kind.group(1) : "device";
        Outcome<?> outcome = switch (word) {
            case "kit" -> KitReader.read(file.toString(), bytes);
            case "house" -> HouseReader.read(file.toString(), bytes);
            case "system" -> Inputs.system(file, bytes);
            case "readings" -> ReadingsReader.read(file.toString(), bytes);
            // An unknown kind is the reader's to report, with what would be right.
            default -> DeviceReader.read(file.toString(), bytes);
        };
        outcome.problems().stream().map(Problem::text).forEach(problems::add);
        if (outcome instanceof Outcome.Read<?> read) {
            out.println(Terminal.plain(file + ": no errors; " + summary(read.record())));
            read.assumed().forEach(each -> out.println(Terminal.plain("  left out: " + each)));
        }
    }

    private static String summary(Object record) {
        if (record instanceof Device device) {
            return "device '" + device.name() + "', " + device.appliedParts().size() + " applied parts, "
                    + device.patientConnections().size() + " patient connections, "
                    + device.touchPoints().size() + " touch points, "
                    + device.ports().size() + " ports";
        }
        if (record instanceof Kit kit) {
            int pieces = kit.items().stream().mapToInt(item -> item.stock()).sum();
            return "kit '" + kit.name() + "', "
                    + kit.tester()
                            .jacks()
                            .map(jacks -> jacks.count() + " jacks")
                            .orElse("no jacks") + ", " + pieces
                    + " pieces of " + kit.items().size() + " kinds";
        }
        if (record instanceof DeviceSystem system) {
            return "system '" + system.name() + "', " + system.members().size() + " devices on one outlet";
        }
        if (record instanceof Readings readings) {
            return readings.taken().size() + " readings for plan "
                    + readings.plan().value();
        }
        House house = (House) record;
        return "house rules for " + house.rules();
    }
}
