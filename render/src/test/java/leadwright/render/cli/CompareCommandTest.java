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
import java.util.List;
import leadwright.planner.compare.Kind;
import leadwright.planner.compare.Side;
import leadwright.planner.compare.SideFile;
import leadwright.planner.compare.Trend;
import leadwright.render.export.CompareJson;
import leadwright.render.export.PlanJson;
import leadwright.render.sheet.SmallPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The command {@code compare} as a person runs it. */
class CompareCommandTest {

    private static final Path GOLDEN = Path.of("src", "test", "resources", "golden");

    @TempDir
    private Path folder;

    private static String kept(String sample) {
        return GOLDEN.resolve(sample).resolve("plan.json").toString();
    }

    private Path edited(String name, String piece, String instead) throws IOException {
        String text = Files.readString(Path.of(kept("brindlewick-k1")));
        assertThat(text).contains(piece);
        return Files.writeString(folder.resolve(name), text.replace(piece, instead));
    }

    @Test
    void saysWhichPlansAndWhatChanged() {
        Run run = Run.of("compare", kept("brindlewick-k1"), kept("oddlebar-k1"));
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .startsWith("A  plan ")
                .contains("\nB  plan ")
                .contains("These are plans of two devices")
                .contains("device: now Oddlebar")
                .containsSubsequence("Planned for", "Hazards", "Tests", "Wiring", "Order", "Time and proof")
                .contains("--all lists each");
        assertThat(run.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
    }

    @Test
    void equalPlansInTwoFilesDifferInNothing() throws IOException {
        Path copy = Files.copy(Path.of(kept("brindlewick-k1")), folder.resolve("copy.json"));
        Run run = Run.of("compare", kept("brindlewick-k1"), copy.toString());
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .endsWith("\nNo difference that matters at the bench.\n")
                .doesNotContain("Hazards");
    }

    @Test
    void aPlanChangedByHandIsNotTrusted() throws IOException {
        Path changed = edited("changed.json", "\"at-most\": \"300 mohm\"", "\"at-most\": \"500 mohm\"");
        Run run = Run.of("compare", kept("brindlewick-k1"), changed.toString());
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .contains("changed by hand")
                .contains("Limits\n  - RELAXED, 2 readings of earth resistance: now at most 500 mohm")
                .doesNotContain("Tests", "Wiring");
        assertThat(Run.of("compare", kept("brindlewick-k1"), changed.toString(), "--all")
                        .out())
                .containsPattern("(R\\d+) → \\1  earth resistance of Pole clamp");
    }

    @Test
    void jsonAgreesWithItsSchemaAndTalkGoesToStandardError() {
        Run run = Run.of("compare", kept("brindlewick-k1"), kept("oddlebar-k1"), "--json");
        assertThat(run.code()).isZero();
        assertThat(run.out()).startsWith("{\n  \"leadwright\": \"compare/1\"");
        assertThat(violations(run.out())).isEmpty();
        assertThat(violations(run.out().replace("compare/1", "compare/2"))).isNotEmpty();
        assertThat(violations(run.out().replace("\"hazards\"", "\"joys\""))).isNotEmpty();
        assertThat(run.err()).startsWith("A  plan ").contains("Changes: planned for ");
    }

    @Test
    void theSchemaKnowsEveryWord() throws IOException {
        String schema;
        try (InputStream in = CompareJson.class.getResourceAsStream("compare-1.schema.json")) {
            schema = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        for (Kind kind : Kind.values()) {
            assertThat(schema)
                    .contains('"' + kind.word() + '"', '"' + kind.concern().word() + '"');
        }
        for (Trend trend : Trend.values()) {
            assertThat(schema).contains('"' + trend.word() + '"');
        }
    }

    @Test
    void theSameFileTwiceIsWrongUse() {
        String plan = kept("brindlewick-k1");
        String sameByAnotherName = Path.of(plan).toAbsolutePath().toString();
        for (String other : List.of(plan, sameByAnotherName)) {
            Run run = Run.of("compare", plan, other);
            assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
            assertThat(run.err()).contains("A and B are the same file");
            assertThat(run.out()).isEmpty();
        }
    }

    @Test
    void mistakesOfBothFilesComeTogether() throws IOException {
        Path other = edited("other.json", "\"plan/1\"", "\"plan/9\"");
        Path cut = folder.resolve("cut.json");
        Files.writeString(cut, Files.readString(Path.of(kept("brindlewick-k1"))).substring(0, 20_000));
        Run run = Run.of("compare", other.toString(), cut.toString());
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).containsPattern("other.json:2:17: ").containsPattern("cut.json:\\d+:\\d+: ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../samples/brindlewick-ward-monitor.yaml", "../samples", "no-such.json", ""})
    void whatIsNoPlanIsBadInput(String file) {
        Run run = Run.of("compare", kept("brindlewick-k1"), file);
        assertThat(run.code()).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).isNotEmpty();
    }

    @Test
    void oneFileAloneIsWrongUse() {
        assertThat(Run.of("compare", kept("brindlewick-k1")).code()).isEqualTo(ExitCode.BAD_INPUT);
    }

    @Test
    void helpHasExamples() {
        Run run = Run.of("compare", "--help");
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .contains("Examples:")
                .contains("leadwright compare ")
                .contains("--all");
    }

    /** A plan's file says of a plan all that comparing looks at. */
    @Test
    void aPlanReadBackIsTheSamePlan() {
        for (SmallPlan each : List.of(
                new SmallPlan(),
                new SmallPlan().partial(),
                new SmallPlan().training().confirmed())) {
            byte[] written = PlanJson.of(each.plan()).getBytes(StandardCharsets.UTF_8);
            assertThat(SideFile.read("plan", written).orThrow()).isEqualTo(Side.of(each.plan()));
        }
    }

    private static List<String> violations(String json) {
        try (InputStream in = CompareJson.class.getResourceAsStream("compare-1.schema.json")) {
            Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(in);
            return schema.validate(json, InputFormat.JSON).stream()
                    .map(Object::toString)
                    .toList();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
