package leadwright.render.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Request;
import leadwright.planner.audit.Breach;
import leadwright.planner.audit.Invariant;
import leadwright.planner.plan.Occasion;
import leadwright.render.export.PlanCsv;
import leadwright.render.export.PlanJson;
import leadwright.render.sheet.SmallPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the program does with each outcome of planning; the plans are made by hand. */
class PlanCommandTest {

    private static final String DEVICE = "../samples/brindlewick-ward-monitor.yaml";
    private static final String LIGHT = "html,json,csv";

    @TempDir
    private Path folder;

    @Test
    void aPlanIsWrittenAndSaidInAFewLines() throws IOException {
        Plan plan = new SmallPlan().plan();
        Run run = Run.of(gives(plan), "plan", DEVICE, "--out", out(), "--formats", LIGHT);
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.err()).isEmpty();
        assertThat(files()).containsExactly("bench-sheet.html", "plan.json", "readings.csv");
        assertThat(folder.resolve("out/plan.json")).hasContent(PlanJson.of(plan));
        assertThat(folder.resolve("out/readings.csv")).hasContent(PlanCsv.of(plan));
        assertThat(run.out())
                .contains("1 hookup (proven fewest), 12 readings, about 9 minutes (proven least), 1 start-up")
                .contains("4 limits not yet confirmed")
                .contains("Not done, reasons on the sheet: insulation-resistance, functional-earth-leakage.")
                .contains("Written to " + out());
    }

    @Test
    void aRunWithoutAKitSaysWhichItTakesAndPrintsNoDateOfIt() throws IOException {
        Inputs inputs = Inputs.read(Path.of(DEVICE), Optional.empty(), Optional.empty(), Optional.empty());
        assertThat(inputs.kit().tester().calibratedUntil()).isEmpty();
        String said = "no kit named: the built-in plain bench kit is assumed, not yours";
        assertThat(inputs.assumed()).first().isEqualTo(said);
        Run run = Run.of(gives(new SmallPlan().plan()), "plan", DEVICE, "--out", out(), "--formats", "html");
        assertThat(run.out()).contains("Note: " + said + ".");
        assertThat(folder.resolve("out/bench-sheet.html")).content().contains(said);
        Run named = Run.of(
                gives(new SmallPlan().plan()),
                "plan",
                DEVICE,
                "--kit",
                "../samples/k1-marrowgate-bench.yaml",
                "--out",
                out(),
                "--formats",
                "html");
        assertThat(named.code()).isZero();
        assertThat(named.out()).doesNotContain("no kit named");
        assertThat(folder.resolve("out/bench-sheet.html")).content().doesNotContain("no kit named");
    }

    @Test
    void everyEditionThatIsAskedForIsWritten() throws IOException {
        Plan plan = new SmallPlan().plan();
        Run run = Run.of(
                gives(plan),
                "plan",
                DEVICE,
                "--out",
                out(),
                "--formats",
                "html,docx",
                "--edition",
                "bench,Training,standing");
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
        assertThat(files()).containsExactly("bench-sheet.html", "standing.docx", "standing.html", "training.html");
        assertThat(folder.resolve("out/standing.html")).content().contains("No earlier plan was named");
        // What was written of another plan goes with --replace, and stops the run without it.
        Plan other = new SmallPlan().named("Another").plan();
        Run again = Run.of(gives(other), "plan", DEVICE, "--out", out(), "--formats", "html");
        assertThat(again.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(again.err()).contains("standing.docx").contains("training.html");
        Run replaced = Run.of(gives(other), "plan", DEVICE, "--out", out(), "--formats", "html", "--replace");
        assertThat(replaced.code()).isEqualTo(ExitCode.DONE);
        assertThat(files()).containsExactly("bench-sheet.html");
    }

    @Test
    void theRevisionHistoryIsInTheWordsOfTheComparison() throws IOException {
        Plan before = new SmallPlan().plan();
        Plan now = new SmallPlan().rounds(2).plan();
        Path old = Files.writeString(folder.resolve("old.json"), PlanJson.of(before));
        Run run = Run.of(
                gives(now),
                "plan",
                DEVICE,
                "--out",
                out(),
                "--formats",
                "html",
                "--edition",
                "standing",
                "--since",
                old.toString());
        assertThat(run.code()).as(run.err()).isEqualTo(ExitCode.DONE);
        Path json = Files.writeString(folder.resolve("new.json"), PlanJson.of(now));
        String told = Run.of("compare", old.toString(), json.toString()).out();
        String sentence = told.lines()
                .filter(line -> line.startsWith("  - bench time: "))
                .findFirst()
                .orElseThrow()
                .substring(4);
        assertThat(folder.resolve("out/standing.html")).content().contains(sentence);
        assertThat(files()).containsExactly("standing.html");
    }

    @Test
    void whatNobodyWouldWriteIsRefusedBeforeAnythingIsPlanned() throws IOException {
        Function<Request, Outcome> none = request -> {
            throw new AssertionError("nothing is to be planned");
        };
        Run docx = Run.of(none, "plan", DEVICE, "--out", out(), "--formats", "docx");
        assertThat(docx.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(docx.err()).contains("add --edition standing");
        Run training = Run.of(
                none, "plan", DEVICE, "--out", out(), "--formats", "json,docx", "--edition", "training,standing");
        assertThat(training.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(training.err()).contains("edition training; name html or pdf");
        Run since = Run.of(none, "plan", DEVICE, "--out", out(), "--since", "old.json");
        assertThat(since.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(since.err()).contains("--since").contains("--edition standing");
        Path broken = Files.writeString(folder.resolve("broken.json"), "{}");
        Run bad = Run.of(none, "plan", DEVICE, "--edition", "standing", "--since", broken.toString());
        assertThat(bad.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(bad.err()).contains("broken.json");
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @Test
    void aPartialPlanIsWrittenNamesItemAndConnectionAndFails() throws IOException {
        Run run = Run.of(gives(new SmallPlan().partial().plan()), "plan", DEVICE, "--out", out(), "--formats", LIGHT);
        assertThat(run.code()).isEqualTo(ExitCode.FALLS_SHORT);
        assertThat(run.out()).contains("PARTIAL").contains("fluid-electrode (spo2.sensor): no item of the kit");
        assertThat(files()).isNotEmpty();
    }

    @Test
    void jsonIsAllThatStandardOutputGetsAndNothingIsWritten() throws IOException {
        Plan plan = new SmallPlan().plan();
        Run run = Run.of(gives(plan), "plan", DEVICE, "--json", "--out", out());
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out()).isEqualTo(PlanJson.of(plan));
        assertThat(run.err()).contains("4 limits not yet confirmed").contains("--out and --replace are not used");
        assertThat(files()).isEmpty();
    }

    @Test
    void aRefusalSaysWhyAndWritesNothing() throws IOException {
        Run run = Run.of(request -> new Outcome.Refused("the tester is past due"), "plan", DEVICE, "--out", out());
        assertThat(run.code()).isEqualTo(ExitCode.FALLS_SHORT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("Nothing is planned: the tester is past due");
        assertThat(files()).isEmpty();
    }

    @Test
    void aPlanThatTheAuditRefusesIsNeverWritten() throws IOException {
        Breach breach = new Breach(Invariant.values()[0], "H1", "two bundles on one jack");
        Run run = Run.of(request -> new Outcome.Rejected(List.of(breach)), "plan", DEVICE, "--out", out());
        assertThat(run.code()).isEqualTo(ExitCode.FAULT);
        assertThat(run.err()).contains(breach.toString());
        assertThat(files()).isEmpty();
    }

    @Test
    void aFaultOfTheProgramIsSaidToBeOne() throws IOException {
        Run run = Run.of(
                request -> {
                    throw new IllegalStateException("a slip");
                },
                "plan",
                DEVICE,
                "--out",
                out());
        assertThat(run.code()).isEqualTo(ExitCode.FAULT);
        assertThat(run.err()).contains("A fault of the program").contains("a slip");
        assertThat(files()).isEmpty();
    }

    @Test
    void problemsOfAllFilesAreReportedTogetherAndNothingIsPlanned() throws IOException {
        Path device = Files.writeString(folder.resolve("d.yaml"), "leadwright: device/1\nname: A\nsuply: B\n");
        Path kit = Files.writeString(folder.resolve("k.yaml"), "leadwright: kit/1\nname: B\n");
        Run run = Run.of("plan", device.toString(), "--kit", kit.toString(), "--rules", "iec-1", "--out", out());
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err())
                .containsPattern("d\\.yaml:3:1: ")
                .contains("k.yaml:")
                .contains("there is no rule set 'iec-1'");
        assertThat(files()).isEmpty();
    }

    @Test
    void wrongOptionsSayWhatThereIs() {
        assertThat(Run.of("plan", DEVICE, "--formats", "docx").code()).isEqualTo(ExitCode.BAD_INPUT);
        Run occasion = Run.of("plan", DEVICE, "--occasion", "yearly");
        assertThat(occasion.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(occasion.err()).contains("acceptance, after-repair, recurrent");
        assertThat(Run.of("plan", DEVICE, "--on", "tomorrow").code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(Run.of("plan").code()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void aFolderThatCannotBeMadeIsCannotWrite() throws IOException {
        Path file = Files.writeString(folder.resolve("out"), "mine");
        Run run = Run.of("plan", DEVICE, "--out", out(), "--formats", LIGHT);
        assertThat(run.code()).as("found before planning").isEqualTo(ExitCode.CANNOT_WRITE);
        assertThat(run.err()).contains("Nothing was written").contains("out is a file, not a folder");
        assertThat(file).hasContent("mine");
        Run none = Run.of("plan", DEVICE, "--out", "/proc/x/y");
        assertThat(none.code()).isEqualTo(ExitCode.CANNOT_WRITE);
        assertThat(none.err()).contains("/proc/x cannot be made there").doesNotContain("NoSuchFile");
    }

    @Test
    void tryingAFolderLeavesNoTraceOfIt() {
        Run run = Run.of(request -> new Outcome.Refused("enough"), "plan", DEVICE, "--out", out() + "/deep");
        assertThat(run.code()).isEqualTo(ExitCode.FALLS_SHORT);
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @Test
    void emptyNamesAreSaidToBeEmpty() {
        Run out = Run.of("plan", DEVICE, "--out", "");
        assertThat(out.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(out.err()).startsWith("the name given for --out is empty\n").doesNotContain("\tat ");
        Run device = Run.of("plan", "");
        assertThat(device.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(device.err()).startsWith("the name given for a file is empty\n");
    }

    @Test
    void drawingsOfAnotherPlanNeverStayUnsaid() throws IOException {
        Plan plan = new SmallPlan().plan();
        Files.createDirectory(folder.resolve("out"));
        for (String name : List.of("H1.svg", "H2.svg", "H10-2.png", "notes.txt", "H2.txt")) {
            Files.writeString(folder.resolve("out").resolve(name), "old");
        }
        Run refused = Run.of(gives(plan), "plan", DEVICE, "--out", out(), "--formats", LIGHT);
        assertThat(refused.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(refused.err()).contains("H1.svg, H10-2.png, H2.svg; ").contains("--replace");
        assertThat(files()).containsExactly("H1.svg", "H10-2.png", "H2.svg", "H2.txt", "notes.txt");
        Run replaced = Run.of(gives(plan), "plan", DEVICE, "--out", out(), "--formats", LIGHT, "--replace");
        assertThat(replaced.code()).isEqualTo(ExitCode.DONE);
        assertThat(files()).containsExactly("H2.txt", "bench-sheet.html", "notes.txt", "plan.json", "readings.csv");
    }

    @Test
    void theSamePlanGoesIntoItsFolderAgainAlsoWithFewerDocuments() throws IOException {
        Plan plan = new SmallPlan().plan();
        Run.of(gives(plan), "plan", DEVICE, "--out", out(), "--formats", LIGHT + ",svg");
        List<String> all = files();
        for (String formats : List.of(LIGHT + ",svg", "html", "json", LIGHT + ",svg,png")) {
            assertThat(Run.of(gives(plan), "plan", DEVICE, "--out", out(), "--formats", formats)
                            .code())
                    .as(formats)
                    .isEqualTo(ExitCode.DONE);
        }
        assertThat(files()).containsAll(all).contains("H1.png");
    }

    @Test
    void aTableThatWasFilledInIsNeverReplaced() throws IOException {
        Plan plan = new SmallPlan().plan();
        Run.of(gives(plan), "plan", DEVICE, "--out", out(), "--formats", LIGHT);
        Path table = folder.resolve("out/readings.csv");
        String filled = Files.readString(table).replaceFirst(",,\n", ",230 V,\n");
        Files.writeString(table, filled);
        Run again = Run.of(gives(plan), "plan", DEVICE, "--out", out(), "--formats", LIGHT, "--replace");
        assertThat(again.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(again.err()).contains("readings.csv has been written in and would be lost");
        assertThat(table).hasContent(filled);
    }

    @Test
    void standardOutputThatCannotBeWrittenIsCannotWrite() {
        Writer full = new Writer() {
            @Override
            public void write(char[] text, int from, int length) throws IOException {
                throw new IOException("No space left on device");
            }

            @Override
            public void flush() {}

            @Override
            public void close() {}
        };
        for (String line : List.of("plan " + DEVICE + " --json", "rules --json", "rules iec-62353-2014", "outline")) {
            StringWriter err = new StringWriter();
            int code = Main.run(
                    line.split(" "), new PrintWriter(full), new PrintWriter(err), gives(new SmallPlan().plan()));
            assertThat(code).as(line).isEqualTo(ExitCode.CANNOT_WRITE);
            assertThat(err.toString()).contains("Standard output could not be written");
        }
    }

    @Test
    void whatIsAskedForReachesThePlanner() {
        Request[] seen = new Request[1];
        Run.of(
                request -> {
                    seen[0] = request;
                    return new Outcome.Refused("enough");
                },
                "plan",
                DEVICE,
                "--kit",
                "../samples/k2-round-trolley.yaml",
                "--house",
                "../samples/ambersluice-house.yaml",
                "--rules",
                "iec-60601-1-ed3",
                "--occasion",
                "after-repair",
                "--on",
                "2027-01-10");
        assertThat(seen[0].device().name()).isEqualTo("Brindlewick ward monitor");
        assertThat(seen[0].kit().tester().jacks().orElseThrow().count()).isEqualTo(4);
        assertThat(seen[0].rules().id()).isEqualTo("iec-60601-1-ed3");
        assertThat(seen[0].occasion()).isEqualTo(Occasion.AFTER_REPAIR);
        assertThat(seen[0].on()).contains(java.time.LocalDate.of(2027, 1, 10));
    }

    @Test
    void theDefaultFolderNeverCostsAnExistingFile() throws IOException {
        Path device = Path.of("x/monitor.yaml");
        Map<String, byte[]> files = Map.of("plan.json", new byte[] {1});
        assertThat(OutFolder.choose(Optional.of(folder), device, files)).isEqualTo(folder);
        assertThat(OutFolder.choose(Optional.empty(), device, files)).isEqualTo(Path.of("monitor-plan"));
        Path first = folder.resolve("monitor-plan");
        assertThat(OutFolder.beside(folder, device, files)).isEqualTo(first);
        Files.createDirectory(first);
        Files.write(first.resolve("plan.json"), new byte[] {1});
        assertThat(OutFolder.beside(folder, device, files)).as("the same again").isEqualTo(first);
        Files.write(first.resolve("plan.json"), new byte[] {2});
        assertThat(OutFolder.beside(folder, device, files)).isEqualTo(folder.resolve("monitor-plan-2"));
    }

    private static Function<Request, Outcome> gives(Plan plan) {
        return request -> new Outcome.Planned(plan);
    }

    private String out() {
        return folder.resolve("out").toString();
    }

    private List<String> files() throws IOException {
        Path out = folder.resolve("out");
        if (!Files.isDirectory(out)) {
            return List.of();
        }
        try (Stream<Path> found = Files.list(out)) {
            return found.map(path -> path.getFileName().toString()).sorted().toList();
        }
    }
}
