package leadwright.render.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import leadwright.planner.judge.PlanFile;
import leadwright.render.Records;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The command {@code judge} as a person runs it. */
class JudgeCommandTest {

    private static final String PLAN = Records.SETS.resolve("plan.json").toString();
    private static final Path GOLDEN = Path.of("src", "test", "resources", "golden");

    @TempDir
    private Path folder;

    private static String set(String name) {
        return Records.SETS.resolve("readings").resolve(name).toString();
    }

    private Run judge(String set, String... options) {
        List<String> arguments = new ArrayList<>(
                List.of("judge", PLAN, set(set), "--out", folder.resolve("out").toString()));
        arguments.addAll(List.of(options));
        return Run.of(arguments.toArray(String[]::new));
    }

    private List<String> written() throws IOException {
        Path out = folder.resolve("out");
        if (!Files.exists(out)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(out)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "all-well.yaml, 0, PASS",
        "all-well.csv, 0, PASS",
        "fail-far.yaml, 1, FAIL",
        "past-due.yaml, 1, VOID",
        "stopped.yaml, 1, NOT COMPLETE"
    })
    void endsWithTheCodeOfTheResult(String set, int code, String result) throws IOException {
        Run run = judge(set, "--formats", "json,html,csv");
        assertThat(run.code()).isEqualTo(code);
        assertThat(run.out()).contains("by R. Sedgemere: " + result).contains("Written to");
        assertThat(run.err()).isEmpty();
        assertThat(written()).containsExactly("record.csv", "record.html", "record.json");
    }

    @Test
    void allFormatsAreWrittenWhereNoneIsNamed() throws IOException {
        assertThat(judge("all-well.yaml").code()).isZero();
        assertThat(written()).containsExactly("record.csv", "record.html", "record.json", "record.pdf");
        assertThat(Files.readAllBytes(folder.resolve("out/record.pdf"))).startsWith("%PDF".getBytes());
    }

    @Test
    void theGuardBandIsAnOption() {
        assertThat(judge("guard-band.yaml", "--formats", "json").code()).isZero();
        Run run = judge("guard-band.yaml", "--formats", "json", "--decision", "guard-band");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).contains("in the guard band of 1.733 uA");
        assertThat(judge("guard-band.yaml", "--decision", "lenient").code()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "inverted-unit.yaml",
                "another-plan.yaml",
                "missing.yaml",
                "duplicate.yaml",
                "impossible.yaml",
                "unknown-id.yaml",
                "broken.csv"
            })
    void badReadingsChangeNothing(String set) throws IOException {
        byte[] before = Files.readAllBytes(Path.of(set(set)));
        Files.createDirectory(folder.resolve("out"));
        Files.writeString(folder.resolve("out/record.json"), "last year's");
        Run run = judge(set);
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).containsPattern(set + ":\\d+:\\d+: ").contains("nothing was written.");
        assertThat(written()).containsExactly("record.json");
        assertThat(folder.resolve("out/record.json")).hasContent("last year's");
        assertThat(Files.readAllBytes(Path.of(set(set)))).isEqualTo(before);
    }

    @Test
    void mistakesOfAllFilesComeTogether() throws IOException {
        Path plan = Files.writeString(folder.resolve("p.json"), "{\"leadwright\": \"plan/2\"}");
        Run run = Run.of(
                "judge",
                plan.toString(),
                set("impossible.yaml"),
                "--previous",
                folder.resolve("no").toString());
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err())
                .contains("p.json:1:16: ")
                .contains("impossible.yaml:18:22: ")
                .contains("there is no such file");
    }

    @Test
    void whatCannotBeWrittenLeavesAllAsItWas() throws IOException {
        Path out = Files.createDirectory(folder.resolve("out"));
        Files.createDirectory(out.resolve("record.json"));
        Files.writeString(out.resolve("record.csv"), "old");
        Run run = judge("all-well.yaml", "--formats", "json,csv");
        assertThat(run.code()).isEqualTo(ExitCode.CANNOT_WRITE);
        assertThat(out.resolve("record.csv")).hasContent("old");
    }

    @Test
    void theRecordNeverReplacesWhatItWasMadeFrom() throws IOException {
        Path last = Files.createDirectory(folder.resolve("out")).resolve("record.json");
        Files.copy(Records.SETS.resolve("previous.json"), last);
        Run run = judge("drift.yaml", "--previous", last.toString());
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.err()).contains("choose another folder with --out");
        assertThat(last).hasSameTextualContentAs(Records.SETS.resolve("previous.json"));
    }

    @Test
    void jsonIsPrintedAndNothingWritten() throws IOException {
        Run run = judge(
                "drift.yaml",
                "--json",
                "--previous",
                Records.SETS.resolve("previous.json").toString());
        assertThat(run.code()).isZero();
        assertThat(run.out()).startsWith("{\n  \"leadwright\": \"record/1\"");
        assertThat(run.err()).contains("R09: far from the last value");
        assertThat(written()).isEmpty();
    }

    @Test
    void aWordLeftOutIsSaid() {
        assertThat(judge("from-a-spreadsheet.csv", "--formats", "json").out())
                .contains("Left out: nulls.taken-off: not stated, taken as yes");
    }

    @Test
    void checkReadsReadingsToo() {
        Run run = Run.of("check", set("all-well.yaml"), set("all-well.csv"));
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("12 readings for plan 1223204f");
        assertThat(Run.of("check", set("broken.csv")).code()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void thePlanAloneGivesAFormThatIsReadWhenFilledIn() throws IOException {
        Run form = Run.of("judge", PLAN);
        assertThat(form.code()).isZero();
        assertThat(form.out())
                .startsWith("leadwright,readings/1\nplan,1223204f")
                .contains("\nR09,applied-part-leakage,ecg,reversed,normal,at-most 50 uA,,,\n");
        Path empty = Files.writeString(folder.resolve("empty.csv"), form.out());
        Run unfilled = Run.of("judge", PLAN, empty.toString());
        assertThat(unfilled.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(unfilled.err()).contains("reading 'R09' has no value").contains("key 'by' is missing");
        String filled = form.out()
                .replace("device.serial,", "device.serial,1")
                .replace("\nby,", "\nby,R. Sedgemere")
                .replace("\ndate,", "\ndate,2027-01-10")
                .replace("mains-voltage,", "mains-voltage,230 V")
                .replaceAll("(R0[13],.*),,,\n", "$1,230 V,,\n")
                .replaceAll("(R02,.*),,,\n", "$1,1 V,,\n")
                .replaceAll("(R(?:04|12),.*),,,\n", "$1,100 uA,,\n")
                .replaceAll("(R0[56],.*),,,\n", "$1,90 mohm,,\n")
                .replaceAll("(R.*),,,\n", "$1,12 uA,,\n");
        Path readings = Files.writeString(folder.resolve("filled.csv"), filled);
        Run judged = Run.of("judge", PLAN, readings.toString(), "--json");
        assertThat(judged.err()).contains("PASS").contains("the leads were not nulled");
        assertThat(judged.code()).isZero();
    }

    /** Every plan that the program writes can be judged by. */
    @ParameterizedTest
    @ValueSource(strings = {"brindlewick-k1", "noctuary-k1", "oddlebar-k1", "slaterow-k3", "wickling-k1"})
    void everySamplesPlanIsRead(String sample) throws IOException {
        Path plan = GOLDEN.resolve(sample).resolve("plan.json");
        assertThat(PlanFile.read("plan", Files.readAllBytes(plan)).problems()).isEmpty();
    }

    /** The table that {@code plan} wrote, filled in, with the lines above its header. */
    @ParameterizedTest
    @CsvSource({
        "brindlewick-k1, 0, PASS",
        "noctuary-k1, 1, PARTIAL",
        "oddlebar-k1, 0, PASS",
        "slaterow-k3, 0, PASS",
        "wickling-k1, 0, PASS"
    })
    void thePlansOwnTableFilledInIsJudged(String sample, int code, String word) throws IOException {
        Path plan = GOLDEN.resolve(sample).resolve("plan.json");
        String fingerprint =
                PlanFile.read("plan", Files.readAllBytes(plan)).orThrow().fingerprint();
        StringBuilder file = new StringBuilder("leadwright,readings/1\nplan," + fingerprint + "\ndevice.serial,1\n"
                + "by,R. Sedgemere\ndate,2027-01-10\nmains-voltage,230 V\nnulls.start,60 mohm\nnulls.end,60 mohm\n");
        for (String line : Files.readAllLines(GOLDEN.resolve(sample).resolve("readings.csv"))) {
            file.append(line.endsWith(",,") ? line.substring(0, line.length() - 1) + likely(line) + "," : line)
                    .append('\n');
        }
        Path readings = Files.writeString(folder.resolve("readings.csv"), file);
        Run run = Run.of("judge", plan.toString(), readings.toString(), "--json");
        assertThat(run.err()).contains(word);
        assertThat(run.code()).isEqualTo(code);
    }

    private static String likely(String line) {
        if (line.contains(",supply-voltage,")) {
            return line.startsWith("R02") ? "1 V" : "230 V";
        }
        if (line.contains(",tester-check,")) {
            return line.contains(",ac,") ? "100 uA" : "100.4 mohm";
        }
        if (line.contains(",proof,")) {
            return "open";
        }
        return line.contains("-resistance,") ? "90 mohm" : "12 uA";
    }
}
