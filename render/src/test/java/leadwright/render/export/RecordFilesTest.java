package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.UnaryOperator;
import leadwright.planner.judge.Judged;
import leadwright.planner.judge.Previous;
import leadwright.planner.judge.TestRecord;
import leadwright.render.Records;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A record as JSON and as CSV. */
class RecordFilesTest {

    private static final Schema SCHEMA = schema();

    @ParameterizedTest
    @ValueSource(
            strings = {
                "all-well.yaml",
                "all-well.csv",
                "drift.yaml",
                "earth-failed.yaml",
                "past-due.yaml",
                "leads-never-nulled.yaml",
                "leads-in-the-value.yaml",
                "beyond-the-range.yaml",
                "from-a-spreadsheet.csv"
            })
    void theJsonAgreesWithItsSchema(String set) {
        assertThat(violations(RecordJson.of(Records.of(set)))).isEmpty();
    }

    @Test
    void theSchemaRefusesWhatIsNoRecord() {
        String json = RecordJson.of(Records.of("all-well.yaml"));
        assertThat(violations(json.replace("\"record/1\"", "\"record/2\""))).isNotEmpty();
        assertThat(violations(json.replace("\"verdict\": \"pass\"", "\"verdict\": \"fine\"")))
                .isNotEmpty();
        assertThat(violations(json.replace("\"result\"", "\"outcome\""))).isNotEmpty();
        assertThat(violations(json.replace("\"at-most\"", "\"about\""))).isNotEmpty();
    }

    /** A value is kept as it was written: its last zero says how fine the tester shows. */
    @Test
    void whatWasShownIsKeptAsWritten() {
        TestRecord record =
                Records.of("all-well.yaml", UnaryOperator.identity(), text -> text.replace("12.4 uA", "0.01240 mA"));
        assertThat(RecordJson.of(record)).contains("\"shown\": \"0.01240 mA\"").contains("\"counted\": \"12.4 uA\"");
    }

    @Test
    void sameRecordSameText() {
        String json = RecordJson.of(Records.of("drift.yaml"));
        assertThat(RecordJson.of(Records.of("drift.yaml"))).isEqualTo(json);
        assertThat(json).endsWith("}\n").doesNotContain("\r").doesNotEndWith("\n\n");
    }

    /** What is written this year is what is compared with next year. */
    @Test
    void aRecordIsReadBackAsTheLastOne() {
        TestRecord record = Records.of("drift.yaml");
        Previous back = Previous.read("r", RecordJson.of(record).getBytes(StandardCharsets.UTF_8))
                .orThrow();
        assertThat(back.device()).isEqualTo(record.plan().device().name());
        assertThat(back.serial()).isEqualTo(record.readings().device().serial());
        assertThat(back.date()).isEqualTo(record.date());
        for (Judged each : record.judged()) {
            if (each.counted().isPresent()) {
                Previous.Value value = back.values().get(each.planned().key());
                assertThat(value.counted()).isEqualTo(each.counted().get());
                assertThat(value.uncertainty()).isEqualTo(each.uncertainty());
            }
        }
        assertThat(back.values()).hasSize(7);
        String voided = RecordJson.of(Records.of("past-due.yaml"));
        assertThat(Previous.read("r", voided.getBytes(StandardCharsets.UTF_8))
                        .orThrow()
                        .values())
                .isEmpty();
    }

    @Test
    void theTableHoldsARowForEachReadingAndNoFormula() {
        List<String> lines = RecordCsv.of(Records.of("all-well.csv")).lines().toList();
        assertThat(lines).hasSize(13);
        assertThat(lines.get(0)).startsWith("id,quantity,of,state").endsWith("verdict,because,flags,remark");
        assertThat(lines.get(12)).endsWith("\"'=HYPERLINK(\"\"x\"\",\"\"y\"\")\"");
        TestRecord below = Records.of(
                "less-than-nothing.yaml",
                UnaryOperator.identity(),
                text -> text.replace("12.4 uA", "12.4 uA, remark: '@x'"));
        String table = RecordCsv.of(below);
        assertThat(table)
                .contains(",'-4 mohm,'-4 mohm,")
                .contains(",'@x\n")
                .doesNotContain(",-")
                .doesNotContain(",@");
    }

    private static List<Error> violations(String json) {
        return SCHEMA.validate(json, InputFormat.JSON);
    }

    private static Schema schema() {
        try (InputStream in = RecordJson.class.getResourceAsStream("record-1.schema.json")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                    .getSchema(text, InputFormat.JSON);
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
