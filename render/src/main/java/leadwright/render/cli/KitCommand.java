package leadwright.render.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import leadwright.planner.Outcome;
import leadwright.planner.Request;
import leadwright.planner.reach.KitReach;
import leadwright.planner.reach.KitReport;
import leadwright.render.export.KitReportJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What a kit can reach, and what one piece more would change. */
@Command(
        name = "kit",
        header = "Show what a bench kit can reach, for itself or for devices, and what to add to it",
        description = {
            "With a kit alone: its tester and which terminals it brings to a jack. With devices: which can be tested in full,"
                    + " what the others lack with the smallest additions, and what one piece more of each kind would change"
                    + " over all of them. Nothing is written.",
            "",
            "Examples:",
            "  leadwright kit samples/k1-marrowgate-bench.yaml",
            "  leadwright kit samples/k1-marrowgate-bench.yaml samples/noctuary-sleep-recorder.yaml",
            "  leadwright kit bench.yaml devices --rules iec-62353-2014"
        },
        exitCodeList = {
            "0:done; every device can be tested in full",
            "1:some device cannot be tested in full with this kit",
            "2:bad input or wrong use: every problem with file, line and column",
            "3:a fault of the program"
        },
        sortOptions = false)
final class KitCommand extends Verb {

    @Parameters(index = "0", paramLabel = "KIT", description = "the bench kit (kit/1)")
    private Path kit;

    @Parameters(
            index = "1..*",
            arity = "0..*",
            paramLabel = "DEVICE",
            description = "device or system files, or folders of them")
    private List<Path> devices = List.of();

    @Option(
            names = "--rules",
            paramLabel = "ID",
            description = "the rule set, see 'leadwright rules'; else the house's, else iec-62353-2014")
    private Optional<String> rules = Optional.empty();

    @Option(names = "--house", paramLabel = "FILE", description = "the department's choices (house/1)")
    private Optional<Path> house = Optional.empty();

    @Option(names = "--json", description = "print the report as JSON (kit-report/1)")
    private boolean json;

    private final Function<Request, Outcome> planner;

    KitCommand(Function<Request, Outcome> planner) {
        this.planner = planner;
    }

    @Override
    public Integer call() {
        Inputs.Many inputs = Inputs.read(kit, devices, house, rules);
        try (Progress progress = new Progress(talk())) {
            progress.stage(
                    devices.isEmpty() ? "looking through the kit" : "planning with the kit, and with one piece more");
            KitReach reach = KitReach.of(inputs.kit());
            KitReport report = KitReport.of(inputs.kit(), inputs.given(), inputs.rules(), inputs.house(), planner);
            PrintWriter results = results();
            if (json) {
                results.print(KitReportJson.of(reach, report));
            } else {
                List<String> lines = devices.isEmpty() ? KitText.of(reach) : KitText.of(report);
                lines.forEach(line -> results.println(Terminal.plain(line)));
            }
            return report.full() ? ExitCode.DONE : ExitCode.FALLS_SHORT;
        }
    }
}
