package leadwright.render.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Situation;
import leadwright.planner.rehearse.Practice;
import leadwright.planner.rehearse.Rehearsal;
import leadwright.render.SamplePlans;
import leadwright.render.export.PracticeJson;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command {@code rehearse} as a person runs it. */
class RehearseCommandTest {

    private static final String DEVICE = "../samples/wickling-on-charger.yaml";

    private static Plan plan;
    private static Rehearsal rehearsal;

    @TempDir
    private Path folder;

    @BeforeAll
    static void plan() {
        plan = SamplePlans.of("wickling-on-charger", "k1-marrowgate-bench", "iec-62353-2014");
        rehearsal = Rehearsal.of(plan, Situation.ORDINARY);
    }

    private static Run run(String... arguments) {
        List<String> all = new ArrayList<>(List.of("rehearse", DEVICE));
        all.addAll(List.of(arguments));
        return Run.of(request -> new Outcome.Planned(plan), all.toArray(String[]::new));
    }

    private static Practice sheet(long seed) {
        return rehearsal.sheet(seed).orElseThrow();
    }

    private static String wrong(Practice practice) {
        return Practice.letter((practice.answer() + 1) % practice.choices().size());
    }

    @Test
    void printsOneSheetWithoutItsAnswer() {
        Run run = run("--seed", "7");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains("PRACTICE: not a record.", "The readings are invented")
                .contains("sheet 7 of plan " + plan.fingerprint().substring(0, 8))
                .contains("Last year", "Now", "Limit")
                .contains("--seed 7 --answer and the letter")
                .doesNotContain("Right is", "RIGHT", "WRONG");
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
        for (int i = 0; i < sheet(7).choices().size(); i++) {
            assertThat(run.out()).containsPattern("\n" + Practice.letter(i) + "  [A-Z]");
        }
        assertThat(run("--seed", "7")).isEqualTo(run);
        assertThat(run("--seed", "8").out()).isNotEqualTo(run.out());
        assertThat(run().out()).isEqualTo(run("--seed", "1").out());
    }

    @Test
    void aRightAnswerIsSaidToBeRightAndExplained() {
        Practice practice = sheet(7);
        Run run = run("--seed", "7", "--answer", practice.right().toLowerCase(Locale.ROOT));
        assertThat(run.code()).isEqualTo(ExitCode.DONE);
        assertThat(run.out())
                .startsWith("RIGHT.\n\nRight is " + practice.right() + ": ")
                .contains("- In the circuit: ", "- In the readings: ", "- At the bench: ", "- A proof step: ");
    }

    @Test
    void aWrongAnswerIsSaidToBeWrongAndTheRightOneIsExplained() {
        Practice practice = sheet(7);
        Run run = run("--seed", "7", "--answer", wrong(practice));
        assertThat(run.code()).isEqualTo(ExitCode.FALLS_SHORT);
        assertThat(run.out())
                .startsWith("WRONG: it is not " + wrong(practice) + ".\n\nRight is " + practice.right() + ": ")
                .contains("Why not", "It would");
        practice.choices().stream()
                .filter(choice -> !choice.against().isEmpty())
                .forEach(choice ->
                        assertThat(run.out()).contains(choice.against().get(0).reading()));
    }

    @Test
    void jsonKeepsToItsSchemaAndHoldsTheAnswerOnlyWithOne() throws IOException {
        Run sheet = run("--seed", "7", "--json");
        assertThat(problems(sheet.out())).isEmpty();
        assertThat(sheet.out())
                .contains("\"seed\": 7", plan.fingerprint())
                .doesNotContain("\"answer\"", "\"right\"", "\"correct\"");
        Run right = run("--seed", "7", "--json", "--answer", sheet(7).right());
        assertThat(right.code()).isZero();
        assertThat(problems(right.out())).isEmpty();
        assertThat(right.out()).contains("\"correct\": true");
        Run wrong = run("--seed", "7", "--json", "--answer", wrong(sheet(7)));
        assertThat(wrong.code()).isEqualTo(ExitCode.FALLS_SHORT);
        assertThat(wrong.out()).contains("\"correct\": false");
        assertThat(problems(sheet.out().replace("\"seed\"", "\"sed\""))).isNotEmpty();
    }

    private static List<String> problems(String json) throws IOException {
        try (InputStream in = PracticeJson.class.getResourceAsStream("practice-1.schema.json")) {
            Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            return schema.validate(json, InputFormat.JSON).stream()
                    .map(Object::toString)
                    .toList();
        }
    }

    @Test
    void aClassSetIsADocumentForEachTraineeAndAKeyApart() throws IOException {
        Path out = folder.resolve("class");
        Run run = run("--seed", "7", "--sheets", "3", "--out", out.toString());
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("3 practice sheets", "Written to " + out);
        assertThat(names(out))
                .containsExactly(
                        "answer-key.html",
                        "answer-key.pdf",
                        "sheet-7.html",
                        "sheet-7.pdf",
                        "sheet-8.html",
                        "sheet-8.pdf",
                        "sheet-9.html",
                        "sheet-9.pdf");
        String key = Files.readString(out.resolve("answer-key.html"));
        assertThat(key).contains(plan.fingerprint(), "not to be handed out");
        for (long seed = 7; seed <= 9; seed++) {
            assertThat(key)
                    .contains(
                            "Answer to sheet " + seed, "Right is " + sheet(seed).right());
            assertThat(Files.readString(out.resolve("sheet-" + seed + ".html")))
                    .contains("sheet " + seed + " of plan " + plan.fingerprint().substring(0, 8))
                    .doesNotContain("Right is", "<script", "onclick", "href=", "src=", "url(");
        }
        Path again = folder.resolve("again");
        run("--seed", "7", "--sheets", "3", "--out", again.toString());
        for (String name : names(out)) {
            assertThat(Files.readAllBytes(again.resolve(name))).isEqualTo(Files.readAllBytes(out.resolve(name)));
        }
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void sheetsOfAnotherSetAreNotLeftBesideAKeyThatDoesNotAnswerThem() throws IOException {
        Files.createDirectories(folder.resolve("class"));
        Files.writeString(folder.resolve("class/sheet-99.html"), "old");
        Run run = run(
                "--sheets",
                "1",
                "--formats",
                "html",
                "--out",
                folder.resolve("class").toString());
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err()).contains("another class set", "sheet-99.html", "nothing was written");
        assertThat(names(folder.resolve("class"))).containsExactly("sheet-99.html");
    }

    @Test
    void whereTheFolderCannotBeWrittenNothingIs() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "mine");
        Run run = run("--sheets", "1", "--formats", "html", "--out", file.toString());
        assertThat(run.code()).isEqualTo(ExitCode.CANNOT_WRITE);
        assertThat(Files.readString(file)).isEqualTo("mine");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    --answer Z                          | 'Z' is no letter of this sheet; it has A to
                    --answer AB                         | 'AB' is no letter of this sheet
                    --sheets 2 --answer A               | --answer is for the one sheet that is printed
                    --out somewhere --json              | --json prints one sheet
                    --formats pdf                       | add --sheets or --out
                    --sheets 2 --formats svg            | written as html and pdf alone
                    --rules iec-1                       | there is no rule set 'iec-1'
                    --kit none.yaml                     | none.yaml: there is no such file
                    """)
    void whatDoesNotGoTogetherIsSaidAndNothingIsWritten(String options, String says) {
        Run run = run(options.split(" +"));
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains(says, "nothing was written");
        assertThat(Path.of("somewhere")).doesNotExist();
    }

    @Test
    void aRefusedPlanIsSaidWithItsReason() {
        Run run = Run.of(request -> new Outcome.Refused("no outlet fits the plug"), "rehearse", DEVICE);
        assertThat(run.code()).isEqualTo(ExitCode.FALLS_SHORT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("Nothing is planned: no outlet fits the plug");
    }

    @Test
    void aPlanWithoutReadingsHasNothingToRehearse() {
        Plan empty = new Plan(
                plan.fingerprint(),
                plan.partial(),
                plan.trainingCopy(),
                plan.device(),
                plan.kit(),
                plan.house(),
                plan.rules(),
                plan.occasion(),
                plan.on(),
                List.of(),
                List.of(),
                List.of(),
                plan.notApplicable(),
                plan.shortfalls(),
                plan.remedy(),
                plan.warnings(),
                plan.time(),
                plan.hookupsProof(),
                plan.timeProof(),
                plan.foresight());
        Run run = Run.of(request -> new Outcome.Planned(empty), "rehearse", DEVICE);
        assertThat(run.code()).isEqualTo(ExitCode.FALLS_SHORT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("Nothing to rehearse");
    }
}
