package leadwright.render.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.function.Function;
import leadwright.catalog.text.Problem;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Request;
import leadwright.planner.compare.Comparison;
import leadwright.planner.compare.Side;
import leadwright.planner.compare.SideFile;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.Occasion;
import leadwright.render.export.PlanJson;
import leadwright.render.export.SafeWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** From a device file to all documents. */
@Command(
        name = "plan",
        header = "Plan the test of a device and write the papers for the bench",
        description = {
            "Works out which readings are due, the fewest hookups that take them all, and the order of least bench time;"
                    + " draws and prints them. With the device file alone: the default bench kit and rule set.",
            "",
            "Examples:",
            "  leadwright plan samples/brindlewick-ward-monitor.yaml",
            "  leadwright plan monitor.yaml --kit bench.yaml --house house.yaml --out monitor --formats html,pdf",
            "  leadwright plan monitor.yaml --edition bench,training,standing --since last-year/plan.json"
        },
        exitCodeList = {ExitCode.HELP_0, ExitCode.HELP_1, ExitCode.HELP_2, ExitCode.HELP_3, ExitCode.HELP_4},
        sortOptions = false)
final class PlanCommand extends Verb {

    @Parameters(paramLabel = "DEVICE", description = "the device file (device/1)")
    private Path device;

    @Option(names = "--kit", paramLabel = "FILE", description = "the bench kit (kit/1); else the default kit")
    private Optional<Path> kit = Optional.empty();

    @Option(
            names = "--rules",
            paramLabel = "ID",
            description = "the rule set, see 'leadwright rules'; else the house's, else iec-62353-2014")
    private Optional<String> rules = Optional.empty();

    @Option(names = "--house", paramLabel = "FILE", description = "the department's choices (house/1)")
    private Optional<Path> house = Optional.empty();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "folder for the documents; files of the same names in it are replaced. Else a new folder"
                    + " named after the device file")
    private Optional<Path> out = Optional.empty();

    @Option(
            names = "--replace",
            description = "take away what an earlier plan left in the folder and this one does not write anew, such as"
                    + " drawings of more hookups; else such files stop the writing")
    private boolean replace;

    @Option(
            names = "--formats",
            paramLabel = "FORMAT",
            split = ",",
            converter = DocumentFormat.Word.class,
            description =
                    "what to write: svg, png, html, pdf, json, csv, and docx for the standing edition; else all of"
                            + " these. And cir: the circuit of each reading, for a circuit simulator")
    private Set<DocumentFormat> formats = EnumSet.noneOf(DocumentFormat.class);

    @Option(
            names = "--edition",
            paramLabel = "EDITION",
            split = ",",
            converter = EditionWord.Word.class,
            description =
                    "for whom: bench (the form to work from), training (why each step is there, no record), standing"
                            + " (the department's procedure); else bench")
    private Set<EditionWord> editions = EnumSet.of(EditionWord.BENCH);

    @Option(
            names = "--since",
            paramLabel = "PLAN",
            description =
                    "the plan that was in force before (plan.json): the standing edition's revision history says what"
                            + " changed")
    private Optional<Path> since = Optional.empty();

    @Option(
            names = "--occasion",
            paramLabel = "WORD",
            converter = OccasionWord.class,
            description = "acceptance, after-repair, recurrent, after-loan or incident; else recurrent")
    private Occasion occasion = Occasion.RECURRENT;

    @Option(
            names = "--on",
            paramLabel = "DATE",
            converter = DateWord.class,
            description =
                    "the day of the test, as 2027-01-10: a tester past its calibration is then refused. Without it"
                            + " no calendar is looked at")
    private Optional<LocalDate> on = Optional.empty();

    @Option(
            names = "--temperature",
            paramLabel = "CELSIUS",
            converter = TemperatureWord.class,
            description = "temperature of leads and cords, for what earth readings should show; else 20")
    private double temperature = Situation.ORDINARY.celsius();

    @Option(
            names = "--supply",
            paramLabel = "VOLTS",
            converter = VoltsWord.class,
            description = "mains voltage as read, for what leakage readings should show; else as rated, within a tenth")
    private Optional<Double> supply = Optional.empty();

    @Option(names = "--json", description = "print the plan (plan/1) and write nothing")
    private boolean json;

    private final Function<Request, Outcome> planner;

    PlanCommand(Function<Request, Outcome> planner) {
        this.planner = planner;
    }

    @Override
    public Integer call() {
        PrintWriter talk = talk();
        Wanted wanted = Wanted.named(formats, editions);
        if (since.isPresent() && !editions.contains(EditionWord.STANDING)) {
            throw new BadInput("--since is for the standing edition's revision history; add --edition standing");
        }
        Inputs inputs = Inputs.read(device, kit, house, rules);
        Optional<Side> before = since.map(PlanCommand::before);
        if (json && (out.isPresent() || replace)) {
            talk.println("--out and --replace are not used: --json prints the plan and writes nothing");
        } else {
            try {
                OutFolder.check(out);
            } catch (SafeWriter.CannotWriteException e) {
                return cannotWrite(e);
            }
        }
        Request request = new Request(
                inputs.device(), inputs.kit(), inputs.rules(), inputs.house(), occasion, on, true, situation());
        try (Progress progress = new Progress(talk)) {
            progress.stage("planning");
            Outcome outcome = planner.apply(request);
            if (outcome instanceof Outcome.Planned planned) {
                return planned(planned.plan(), inputs, wanted, before, progress);
            }
            if (outcome instanceof Outcome.Refused refused) {
                talk.println(Terminal.plain("Nothing is planned: " + refused.reason()));
                talk.println("Nothing was written.");
                return ExitCode.FALLS_SHORT;
            }
            Outcome.Rejected rejected = (Outcome.Rejected) outcome;
            talk.println("The program's own audit refused its plan; nothing was written. Please report this:");
            rejected.breaches().forEach(breach -> talk.println(Terminal.plain("  " + breach)));
            return ExitCode.FAULT;
        }
    }

    private Situation situation() {
        try {
            return new Situation(temperature, supply);
        } catch (IllegalArgumentException e) {
            throw new BadInput(e.getMessage());
        }
    }

    /** The plan that was in force before. */
    private static Side before(Path file) {
        leadwright.catalog.text.Outcome<Side> outcome = SideFile.read(file.toString(), Inputs.bytes(file));
        if (outcome.found().isEmpty()) {
            throw new BadInput(outcome.problems().stream().map(Problem::text).toList());
        }
        return outcome.found().get();
    }

    /** What changed from the plan before to this one, which is read back as any other plan is. */
    private static Comparison comparison(Side before, Plan plan) {
        byte[] now = PlanJson.of(plan).getBytes(StandardCharsets.UTF_8);
        return Comparison.of(before, SideFile.read("this plan", now).found().orElseThrow());
    }

    private int planned(Plan plan, Inputs inputs, Wanted wanted, Optional<Side> before, Progress progress) {
        int code = plan.partial() ? ExitCode.FALLS_SHORT : ExitCode.DONE;
        PrintWriter results = results();
        PrintWriter talk = talk();
        if (json) {
            results.print(PlanJson.of(plan));
            print(talk, PlanReport.headline(plan));
            print(talk, PlanReport.toKnow(plan, inputs.assumed()));
            return code;
        }
        SortedMap<String, byte[]> files = Documents.of(
                plan,
                inputs.assumed(),
                before.map(each -> wanted.since(comparison(each, plan))).orElse(wanted),
                progress);
        Path folder = OutFolder.choose(
                out,
                device,
                "plan",
                files,
                taken -> !Leftovers.of(taken, files.keySet(), plan).isEmpty());
        try {
            SafeWriter.write(folder, files, leftovers(plan, folder, files.keySet()));
        } catch (SafeWriter.CannotWriteException e) {
            return cannotWrite(e);
        }
        print(results, PlanReport.headline(plan));
        print(results, PlanReport.toKnow(plan, inputs.assumed()));
        results.println(Terminal.plain("Written to " + folder + ": " + String.join(", ", files.keySet())));
        return code;
    }

    /** What an earlier plan left in the folder: it must go, or it would lie beside this plan as if it belonged to it. */
    private SortedSet<String> leftovers(Plan plan, Path folder, Set<String> names) {
        SortedSet<String> left = Leftovers.of(folder, names, plan);
        if ((left.contains(Leftovers.READINGS) || names.contains(Leftovers.READINGS))
                && Leftovers.holdReadings(folder.resolve(Leftovers.READINGS))) {
            throw new BadInput(folder.resolve(Leftovers.READINGS)
                    + " has been written in and would be lost; move it away, or name another folder");
        }
        if (!replace && !left.isEmpty()) {
            throw new BadInput(folder + " holds files of another plan that this one would leave beside its own: "
                    + String.join(", ", left) + "; name another folder, or take them away with --replace");
        }
        return left;
    }

    private int cannotWrite(SafeWriter.CannotWriteException e) {
        talk().println(Terminal.plain(String.valueOf(e.getMessage())));
        return ExitCode.CANNOT_WRITE;
    }

    private static void print(PrintWriter writer, List<String> lines) {
        lines.forEach(line -> writer.println(Terminal.plain(line)));
    }

    /** Reads an occasion by its word. */
    static final class OccasionWord implements ITypeConverter<Occasion> {
        @Override
        public Occasion convert(String word) {
            return Occasion.of(word)
                    .orElseThrow(
                            () -> new TypeConversionException(
                                    "'" + word
                                            + "' is no occasion; there are: acceptance, after-repair, recurrent, after-loan, incident"));
        }
    }
}
