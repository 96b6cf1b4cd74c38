package leadwright.catalog.rules;

import static org.assertj.core.api.Assertions.assertThat;

import leadwright.catalog.table.RuleSets;
import org.junit.jupiter.api.Test;

class RuleTableTest {

    @Test
    void a_row_of_each_kind_in_words() {
        assertThat(row("iec-62353-2014", "iec-62353-earth-inlet-to-part"))
                .isEqualTo(new RuleTable.Row(
                        "iec-62353-earth-inlet-to-part",
                        "earth-resistance",
                        "inlet to part",
                        "",
                        "at most 200 mohm",
                        "5.3.2 b)",
                        Mark.B,
                        "X353"));
        assertThat(row("iec-62353-2014", "iec-62353-insulation-mains-to-housing"))
                .isEqualTo(new RuleTable.Row(
                        "iec-62353-insulation-mains-to-housing",
                        "insulation-resistance",
                        "class II; mains to housing",
                        "",
                        "at least 7 Mohm",
                        "Table 2",
                        Mark.C,
                        "from memory"));
        assertThat(row("iec-60601-1-ed3", "iec-60601-1-ed3-patient-ac-b-bf-fault"))
                .isEqualTo(new RuleTable.Row(
                        "iec-60601-1-ed3-patient-ac-b-bf-fault",
                        "patient-leakage",
                        "type B, BF; a.c.",
                        "supply open, earth open",
                        "at most 500 uA",
                        "Table 3",
                        Mark.A,
                        "EO-ME2, JIS12-K"));
    }

    @Test
    void every_limit_has_a_row() {
        for (RuleSet rules : RuleSets.builtIn().all()) {
            assertThat(RuleTable.rows(rules)).hasSameSizeAs(rules.limits());
        }
    }

    private static RuleTable.Row row(String rules, String id) {
        return RuleTable.rows(RuleSets.builtIn().find(rules).orElseThrow()).stream()
                .filter(row -> row.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
