package leadwright.render.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.function.Function;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Request;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.Occasion;
import leadwright.planner.rehearse.Practice;
import leadwright.planner.rehearse.Rehearsal;
import leadwright.render.edition.PracticeAnswer;
import leadwright.render.edition.PracticeSheet;
import leadwright.render.export.PracticeJson;
import leadwright.render.export.SafeWriter;
import leadwright.render.paper.Block;
import leadwright.render.paper.Words;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** From a plan to practice sheets for trainees. */
@Command(
        name = "rehearse",
        header = "Practise with readings in which one slip or one fault is hidden",
        description = {
            "Plans the test, solves the circuit of every reading with every slip at the bench and every fault of the device,"
                    + " hides one of them, or none, and asks which. Prints one sheet; with --sheets or --out writes a class"
                    + " set: a document for each trainee, and an answer key apart. All readings are invented.",
            "",
            "Examples:",
            "  leadwright rehearse samples/brindlewick-ward-monitor.yaml --seed 17",
            "  leadwright rehearse samples/brindlewick-ward-monitor.yaml --seed 17 --answer C",
            "  leadwright rehearse monitor.yaml --kit bench.yaml --sheets 12 --out class --formats pdf"
        },
        exitCodeList = {
            "0:done; with --answer: right",
            "1:with --answer: wrong; or nothing can be planned or rehearsed, the reason is said (no file)",
            ExitCode.HELP_2,
            ExitCode.HELP_3,
            ExitCode.HELP_4
        },
        sortOptions = false)
final class RehearseCommand extends Verb {

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
            names = "--seed",
            paramLabel = "N",
            converter = SeedWord.class,
            description = "which sheet, or the first of a set; the same seed and files give the same sheet. Else 1")
    private long seed = 1;

    @Option(
            names = "--answer",
            paramLabel = "LETTER",
            description = "say whether this is right, what it was, and why the others are not")
    private Optional<String> answer = Optional.empty();

    @Option(
            names = "--sheets",
            paramLabel = "N",
            converter = SheetsWord.class,
            description = "write so many sheets, 1 to 60, of this seed and those that follow, with an answer key")
    private Optional<Integer> sheets = Optional.empty();

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "folder for the set; else a new folder named after the device file")
    private Optional<Path> out = Optional.empty();

    @Option(
            names = "--formats",
            paramLabel = "FORMAT",
            split = ",",
            converter = DocumentFormat.Word.class,
            description = "what to write: html, pdf; else both")
    private Set<DocumentFormat> formats = EnumSet.noneOf(DocumentFormat.class);

    @Option(names = "--json", description = "print the sheet (practice/1); the answer only with --answer")
    private boolean json;

    private final Function<Request, Outcome> planner;

    RehearseCommand(Function<Request, Outcome> planner) {
        this.planner = planner;
    }

    private boolean writes() {
        return out.isPresent() || sheets.isPresent();
    }

    @Override
    public Integer call() {
        unlikely();
        Inputs inputs = Inputs.read(device, kit, house, rules);
        try {
            OutFolder.check(out);
        } catch (SafeWriter.CannotWriteException e) {
            return cannotWrite(e);
        }
        Request request = new Request(
                inputs.device(),
                inputs.kit(),
                inputs.rules(),
                inputs.house(),
                Occasion.RECURRENT,
                Optional.empty(),
                true,
                Situation.ORDINARY);
        try (Progress progress = new Progress(talk())) {
            progress.stage("planning");
            Outcome outcome = planner.apply(request);
            if (outcome instanceof Outcome.Planned planned) {
                progress.stage("solving every slip and every fault");
                return rehearsed(planned.plan(), Rehearsal.of(planned.plan(), Situation.ORDINARY), progress);
            }
            if (outcome instanceof Outcome.Refused refused) {
                talk().println(Terminal.plain("Nothing is planned: " + refused.reason()));
                return ExitCode.FALLS_SHORT;
            }
            Outcome.Rejected rejected = (Outcome.Rejected) outcome;
            talk().println("The program's own audit refused its plan; nothing was written. Please report this:");
            rejected.breaches().forEach(breach -> talk().println(Terminal.plain("  " + breach)));
            return ExitCode.FAULT;
        }
    }

    /** @throws BadInput for options that do not go together */
    private void unlikely() {
        List<String> problems = new ArrayList<>();
        if (writes() && answer.isPresent()) {
            problems.add("--answer is for the one sheet that is printed; leave --sheets and --out away");
        }
        if (writes() && json) {
            problems.add("--json prints one sheet; leave --sheets and --out away");
        }
        if (!writes() && !formats.isEmpty()) {
            problems.add("--formats is for sheets that are written; add --sheets or --out");
        }
        if (!EnumSet.of(DocumentFormat.HTML, DocumentFormat.PDF).containsAll(formats)) {
            problems.add("practice sheets are written as html and pdf alone");
        }
        if (!problems.isEmpty()) {
            throw new BadInput(problems);
        }
    }

    private int rehearsed(Plan plan, Rehearsal rehearsal, Progress progress) {
        List<Practice> practices = ClassSet.sheets(rehearsal, seed, sheets.orElse(1));
        if (practices.size() < sheets.orElse(1)) {
            talk().println("Nothing to rehearse: too little that can go wrong with this plan shows in its readings.");
            return ExitCode.FALLS_SHORT;
        }
        return writes() ? written(plan, practices, progress) : printed(plan, practices.get(0));
    }

    private int printed(Plan plan, Practice practice) {
        Optional<Integer> given = answer.map(letter -> practice.place(letter)
                .orElseThrow(() -> new BadInput("'" + letter + "' is no letter of this sheet; it has A to "
                        + Practice.letter(practice.choices().size() - 1))));
        boolean right = given.filter(place -> place != practice.answer()).isEmpty();
        if (json) {
            results().print(PracticeJson.of(plan, practice, PracticeSheet.sentences(plan, practice), given));
        } else if (given.isPresent()) {
            say(right ? "RIGHT." : "WRONG: it is not " + Practice.letter(given.get()) + ".");
            say("");
            PaperText.of(PracticeAnswer.of(plan, practice)).forEach(this::say);
        } else {
            PaperText.of(PracticeSheet.onScreen(plan, practice)).forEach(this::say);
            say("");
            PaperText.of(List.of(new Block.Paragraph(
                            Words.of("One is right: it explains every reading. Each of the others is"
                                    + " ruled out by a reading at least. To answer, run the same command with --seed "
                                    + seed + " --answer and the letter."))))
                    .forEach(this::say);
        }
        return right ? ExitCode.DONE : ExitCode.FALLS_SHORT;
    }

    private void say(String line) {
        results().println(line);
    }

    private int written(Plan plan, List<Practice> practices, Progress progress) {
        progress.stage("typesetting");
        Set<DocumentFormat> wanted = formats.isEmpty() ? EnumSet.of(DocumentFormat.HTML, DocumentFormat.PDF) : formats;
        SortedMap<String, byte[]> files = ClassSet.files(plan, practices, wanted);
        Path folder = OutFolder.choose(
                out,
                device,
                "practice",
                files,
                taken -> !ClassSet.leftovers(taken, files.keySet()).isEmpty());
        List<String> left = ClassSet.leftovers(folder, files.keySet());
        if (!left.isEmpty()) {
            throw new BadInput(folder + " holds files of another class set, which the new key would not answer: "
                    + String.join(", ", left) + "; name another folder, or take them away");
        }
        try {
            SafeWriter.write(folder, files);
        } catch (SafeWriter.CannotWriteException e) {
            return cannotWrite(e);
        }
        say(Terminal.plain(PlanReport.count(practices.size(), "practice sheet") + " for "
                + plan.device().name() + ", plan " + plan.fingerprint().substring(0, 8) + ". No record."));
        say(Terminal.plain("Written to " + folder + ": " + String.join(", ", files.keySet())));
        return ExitCode.DONE;
    }

    private int cannotWrite(SafeWriter.CannotWriteException e) {
        talk().println(Terminal.plain(String.valueOf(e.getMessage())));
        return ExitCode.CANNOT_WRITE;
    }
}
