package leadwright.render.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import leadwright.planner.compare.Comparison;
import leadwright.planner.compare.Side;
import leadwright.planner.compare.SideFile;
import leadwright.render.export.CompareJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** From two plans to what changed. */
@Command(
        name = "compare",
        header = "Compare two plans and say what changed, what can hurt first",
        description = {
            "Two plans as 'plan' writes them (plan.json): for another kit, another revision of the device, another rule"
                    + " set, another house. Says what changed from A to B: hazards, limits, tests, wiring, order, time."
                    + " Readings and hookups are matched by what they are, not by their numbers.",
            "",
            "Examples:",
            "  leadwright compare last-year/plan.json monitor/plan.json",
            "  leadwright compare monitor/plan.json with-new-kit/plan.json --all"
        },
        exitCodeList = {
            "0:done, whether the plans differ or not",
            "2:bad input or wrong use: every problem with file, line and column",
            "3:a fault of the program",
            ExitCode.HELP_4
        },
        sortOptions = false)
final class CompareCommand extends Verb {

    @Parameters(index = "0", paramLabel = "A", description = "the plan before (plan.json, plan/1)")
    private Path before;

    @Parameters(index = "1", paramLabel = "B", description = "the plan after (plan.json, plan/1)")
    private Path after;

    @Option(names = "--all", description = "list every change, also those that one line gathers")
    private boolean all;

    @Option(names = "--json", description = "print the comparison (compare/1)")
    private boolean json;

    @Override
    public Integer call() {
        List<String> problems = new ArrayList<>();
        Optional<Side> a = read(before, problems);
        Optional<Side> b = read(after, problems);
        if (problems.isEmpty() && same()) {
            problems.add("A and B are the same file, " + before + "; name two plans");
        }
        if (!problems.isEmpty()) {
            throw new BadInput(problems);
        }
        Comparison comparison = Comparison.of(a.orElseThrow(), b.orElseThrow());
        if (json) {
            results().print(CompareJson.of(comparison));
            CompareReport.summary(comparison).forEach(line -> talk().println(Terminal.plain(line)));
        } else {
            CompareReport.lines(comparison, all).forEach(line -> results().println(Terminal.plain(line)));
        }
        return ExitCode.DONE;
    }

    private static Optional<Side> read(Path file, List<String> problems) {
        try {
            Outcome<Side> outcome = SideFile.read(file.toString(), Inputs.bytes(file));
            outcome.problems().stream().map(Problem::text).forEach(problems::add);
            return outcome.found();
        } catch (BadInput e) {
            problems.addAll(e.lines());
            return Optional.empty();
        }
    }

    private boolean same() {
        try {
            return Files.isSameFile(before, after);
        } catch (IOException e) {
            return before.equals(after);
        }
    }
}
