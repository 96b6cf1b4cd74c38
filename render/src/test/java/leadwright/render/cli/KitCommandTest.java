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
import leadwright.planner.Outcome;
import leadwright.planner.Planner;
import leadwright.render.export.KitReportJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The command {@code kit}, run in the test. */
class KitCommandTest {
    private static final String K1 = "../samples/k1-marrowgate-bench.yaml";
    private static final String K3 = "../samples/k3-fixed-plant-case.yaml";
    private static final String TABLE = "../samples/slaterow-tilt-table.yaml";
    private static final Path GOLDEN = Path.of("src", "test", "resources", "golden-kit");
    private static final boolean REFRESH = "refresh".equals(System.getProperty("leadwright.golden"));

    @TempDir
    private Path folder;

    @Test
    void a_kit_alone_is_described_and_nothing_is_planned() {
        Run run = Run.of("kit", K1);
        assertThat(run.code()).isZero();
        assertThat(run.out())
                .contains("6 jacks (lab-4mm-socket-recessed)")
                .containsPattern("tp15-socket +comb +58 +58 +58")
                .contains("Brings no jack to: ")
                .contains("Earth readings with 25 A");
    }

    @Test
    void a_device_that_can_be_tested_in_full_gives_0_and_one_that_cannot_1() {
        assertThat(Run.of(Planner::plan, "kit", K3, TABLE).code()).isZero();
        Run run = Run.of(Planner::plan, "kit", K3, TABLE, "../samples/wickling-rhythm-card.yaml");
        assertThat(run.code()).isEqualTo(1);
        assertThat(run.out()).contains("1 of 2 devices in full", "PARTIAL", "no source for mains on an applied part");
    }

    @Test
    void the_report_as_JSON_keeps_its_schema() throws IOException {
        Run run = Run.of(Planner::plan, "kit", K3, TABLE, "../samples/mossback-bed.yaml", "--json");
        assertThat(schema().validate(run.out(), InputFormat.JSON)).isEmpty();
        assertThat(schema().validate(
                                run.out().replace("\"partial\"", "\"half\"").replace("\"none\"", "\"half\""),
                                InputFormat.JSON))
                .isNotEmpty();
    }

    @Test
    void all_problems_of_all_files_are_reported_and_nothing_else() throws IOException {
        Files.writeString(folder.resolve("a10.yaml"), "leadwright: device/1\nname: A\nsuply: {}\n");
        Files.writeString(folder.resolve("a9.yaml"), "leadwright: device/1\nname: [\n");
        Files.writeString(folder.resolve("kit.yaml"), "leadwright: kit/1\nname: of no concern\n");
        Files.writeString(folder.resolve("notes.txt"), "none");
        Run run = Run.of("kit", K3, TABLE, folder.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err()).contains("a9.yaml:", "a10.yaml:3:").doesNotContain("of no concern", "kit.yaml");
        assertThat(run.err().indexOf("a9.yaml")).isLessThan(run.err().indexOf("a10.yaml"));
    }

    @Test
    void a_folder_without_a_device_is_said() {
        Run run = Run.of("kit", K3, folder.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("the folder holds no device file");
    }

    @Test
    void a_refused_plan_is_a_fault_of_the_program() {
        Run run = Run.of(request -> new Outcome.Rejected(java.util.List.of()), "kit", K3, TABLE);
        assertThat(run.code()).isEqualTo(3);
    }

    /** Refresh with {@code -Dleadwright.golden=refresh}. */
    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"k1-marrowgate-bench", "k2-round-trolley", "k3-fixed-plant-case"})
    void the_samples_with_each_kit_are_as_kept(String kit) throws IOException {
        String alone = Run.of("kit", "../samples/" + kit + ".yaml").out();
        Run run = Run.of(Planner::plan, "kit", "../samples/" + kit + ".yaml", "../samples");
        assertThat(run.code()).isEqualTo(1);
        Path kept = GOLDEN.resolve(kit + ".txt");
        String text = alone + "\n" + run.out().replace('\\', '/');
        if (REFRESH) {
            Files.createDirectories(GOLDEN);
            Files.writeString(kept, text);
        }
        assertThat(text).isEqualTo(Files.readString(kept));
    }

    private static Schema schema() throws IOException {
        try (InputStream in = KitReportJson.class.getResourceAsStream("kit-report-1.schema.json")) {
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(new String(in.readAllBytes(), StandardCharsets.UTF_8), InputFormat.JSON);
        }
    }
}
