package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leadwright.planner.Plan;
import leadwright.render.sheet.SmallPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlanCsvTest {

    @Test
    void oneLineForEachReadingInStepOrder() {
        Plan plan = new SmallPlan().plan();
        List<String> lines = PlanCsv.of(plan).lines().toList();
        assertThat(lines).hasSize(1 + plan.readings().size());
        assertThat(lines.get(0)).startsWith("id,hookup,state").endsWith("value,remark");
        assertThat(lines.get(5))
                .isEqualTo("R05,H1,off,off,earth-resistance,pole-clamp,,,,pole-clamp,,,,,at-most,300 mohm,"
                        + "earth-cord-fitted,C,5.3,,");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "  =1", "\r=1", "|cmd", "%x", "\uff1d1", "\u0000=1"})
    void textThatCouldBeAFormulaIsLedByAnApostrophe(String text) {
        String cell = PlanCsv.cell(text);
        assertThat(cell.startsWith("\"") ? cell.substring(1) : cell)
                .startsWith("'")
                .contains(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"R01", "20 uA", "Table 2", "a=b", "", "1-2"})
    void otherTextStaysAsItIs(String text) {
        assertThat(PlanCsv.cell(text)).isEqualTo(text);
    }

    @Test
    void commasQuotesAndLineBreaksAreQuoted() {
        assertThat(PlanCsv.cell("a, \"b\"\nc")).isEqualTo("\"a, \"\"b\"\"\nc\"");
    }
}
