package leadwright.catalog.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Component;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.table.RuleSets;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The limits of the further rule sets a second time, by case, in the columns of their tables: rules, quantity, device, type,
 * condition, component, subject or circumstance ({@code @}), value, mark, source keys. A dash does not matter or is none.
 *
 * <p>Devices: {@code 1} class I with a detachable cord, {@code 1f} with a fixed cord, {@code 1p} permanent, {@code 2} class
 * II, {@code i} internally powered.
 */
class FurtherLimitsTranscriptionTest {
    private static final String TABLE = """
            ed2     earth-leakage         1  -  none        ac -                 500 uA   A EO-10 FRITZE MG
            ed2     earth-leakage         1f -  supply-open ac -                 1000 uA  A EO-10 FRITZE MG
            ed2     earth-leakage         1  -  none        ac @notes-2-and-4    2.5 mA   C EO-10
            ed2     earth-leakage         1  -  supply-open ac @notes-2-and-4    5 mA     C EO-10
            ed2     earth-leakage         1p -  none        ac -                 5 mA     B EO-10
            ed2     earth-leakage         1p -  supply-open ac -                 10 mA    B EO-10
            ed2     touch-current         1  -  none        ac -                 100 uA   A FRITZE RK2 EO-10
            ed2     touch-current         1  -  supply-open ac -                 500 uA   A FRITZE RK2 EO-10
            ed2     touch-current         1  -  earth-open  ac -                 500 uA   A FRITZE RK2 EO-10
            ed2     patient-leakage       1  B  none        dc -                 10 uA    A FRITZE RK2
            ed2     patient-leakage       1  BF earth-open  dc -                 50 uA    A FRITZE RK2
            ed2     patient-leakage       2  CF supply-open dc -                 50 uA    A FRITZE RK2
            ed2     patient-leakage       1  B  none        ac -                 100 uA   A FRITZE RK2
            ed2     patient-leakage       1  B  supply-open ac -                 500 uA   A FRITZE RK2
            ed2     patient-leakage       i  BF none        ac -                 100 uA   A FRITZE RK2
            ed2     patient-leakage       1  BF earth-open  ac -                 500 uA   A FRITZE RK2
            ed2     patient-leakage       1  CF none        ac -                 10 uA    A FRITZE RK2
            ed2     patient-leakage       1  CF earth-open  ac -                 50 uA    A FRITZE RK2
            ed2     mains-on-port         1  B  none        ac -                 5 mA     C
            ed2     mains-on-applied-part 1  BF none        ac -                 5 mA     B FRITZE RK3
            ed2     mains-on-applied-part 1  CF none        ac -                 50 uA    B FRITZE RK3
            ed2     patient-auxiliary     1  B  none        dc -                 10 uA    C
            ed2     patient-auxiliary     1  CF supply-open dc -                 50 uA    C
            ed2     patient-auxiliary     1  B  none        ac -                 100 uA   C
            ed2     patient-auxiliary     1  BF earth-open  ac -                 500 uA   C
            ed2     patient-auxiliary     1  CF none        ac -                 10 uA    C
            ed2     patient-auxiliary     1  CF earth-open  ac -                 50 uA    C
            nfpa    earth-resistance      1  -  -           -  plug-to-part      0.50 ohm C 24x7-05
            nfpa    touch-current         1  -  none        ac -                 100 uA   B ECN
            nfpa    touch-current         1f -  earth-open  ac -                 500 uA   B ECN
            nfpa    touch-current         1p -  none        ac @before-installation 10 mA C
            nfpa    patient-leakage       1  CF none        ac -                 100 uA   C
            nfpa    patient-leakage       1  B  earth-open  ac -                 500 uA   C
            leads   earth-resistance      1  -  -           -  plug-to-part      0.50 ohm A 24x7-05 24x7-ep
            leads   touch-current         1  -  none        ac -                 300 uA   A 24x7-05 24x7-ep
            leads   touch-current         1  -  earth-open  ac -                 300 uA   A 24x7-05 24x7-ep
            leads   touch-current         1p -  none        ac @before-installation 5 mA  C
            leads   patient-leakage       1  B  none        ac -                 100 uA   C
            leads   patient-leakage       1  B  earth-open  ac -                 100 uA   C
            leads   patient-leakage       1  BF none        ac -                 10 uA    C
            leads   patient-leakage       1  CF earth-open  ac -                 50 uA    C
            leads   lead-to-lead          1  B  none        ac -                 50 uA    C
            leads   lead-to-lead          1  B  earth-open  ac -                 50 uA    C
            leads   lead-to-lead          1  BF none        ac -                 10 uA    C
            leads   lead-to-lead          1  CF earth-open  ac -                 50 uA    C
            leads   mains-on-applied-part 1  BF none        ac -                 50 uA    C
            leads   mains-on-applied-part 1  CF none        ac -                 50 uA    C
            leads   mains-on-applied-part 1  CF none        ac @at-equipment-terminals 20 uA C
            leads   touch-current         1  -  none        ac @es1-1993-no-patient-contact 100 uA C
            leads   touch-current         1  -  earth-open  ac @es1-1993-no-patient-contact 500 uA C
            leads   touch-current         1  -  none        ac @es1-1993         100 uA   C
            leads   touch-current         1  -  earth-open  ac @es1-1993         300 uA   C
            leads   patient-leakage       1  B  none        ac @es1-1993         10 uA    C
            leads   patient-leakage       1  B  earth-open  ac @es1-1993         100 uA   C
            leads   patient-leakage       1  CF none        ac @es1-1993         10 uA    C
            leads   patient-leakage       1  BF earth-open  ac @es1-1993         50 uA    C
            61010   earth-resistance      1  -  -           -  inlet-to-part     0.1 ohm  B JY61010
            61010   earth-resistance      1f -  -           -  plug-to-part      0.2 ohm  B JY61010
            61010   bonding-voltage       1p -  -           -  reference-to-part@at-twice-the-over-current-rating 10 V B JY61010
            61010   touch-current         1  -  none        ac -                 0.5 mA   B TSATO
            61010   touch-current         2  -  none        dc -                 2 mA     C
            61010   touch-current         1  -  none        -  @peak-value       0.7 mA   C
            61010   touch-current         1  -  supply-open ac -                 3.5 mA   B TSATO
            61010   touch-current         1  -  earth-open  dc -                 15 mA    C
            61010   touch-current         1  -  earth-open  -  @peak-value       5 mA     C
            bonding bonding-voltage       1p -  none        ac reference-to-part@uk-imaging-room 10 mV B EBME-MR
            bonding bonding-voltage       1p -  none        dc reference-to-part@uk-imaging-room 10 mV B EBME-MR
            bonding bonding-resistance    1p -  -           -  reference-to-part@uk-imaging-room 100 mohm B EBME-MR
            bonding bonding-resistance    1p -  -           -  reference-to-socket@uk-imaging-room 100 mohm B EBME-MR
            bonding bonding-resistance    1p -  -           -  reference-to-part@group-1-room 0.7 ohm B IET
            bonding bonding-resistance    1p -  -           -  reference-to-part@group-2-room 0.2 ohm C
            bonding bonding-resistance    1p -  -           -  reference-to-part@japan 0.1 ohm A KANE CE-gnd MG
            bonding bonding-voltage       1p -  none        ac reference-to-part@japan 10 mV A KANE CE-gnd MG
            bonding bonding-resistance    1p -  -           -  ground-electrode@japan 10 ohm A KANE CE-gnd MG
            bonding bonding-voltage       1p -  none        ac reference-to-part@australia-new-zealand-cardiac 100 mV B FOONG
            bonding bonding-voltage       1p -  none        ac reference-to-part@us-new-building 20 mV B MH
            bonding bonding-resistance    1p -  -           -  reference-to-part@us-new-building 0.1 ohm B MH
            bonding bonding-voltage       1p -  none        ac reference-to-part@us-new-quiet-ground 20 mV B MH
            bonding bonding-resistance    1p -  -           -  reference-to-part@us-new-quiet-ground 0.2 ohm C
            bonding bonding-voltage       1p -  none        ac reference-to-part@us-existing-general 500 mV C
            bonding bonding-resistance    1p -  -           -  reference-to-part@us-existing-general 0.2 ohm C
            bonding bonding-voltage       1p -  none        ac reference-to-part@us-existing-critical 40 mV C
            bonding bonding-resistance    1p -  -           -  reference-to-part@us-existing-critical 0.2 ohm C
            ed3     touch-current         1  -  none        ac @system           100 uA   C
            ed3     touch-current         1  -  earth-open  ac @system           500 uA   C
            ed3     earth-leakage         1  -  none        ac @system           5 mA     C
            ed3     earth-leakage         1  -  none        ac @without-weighting 10 mA   C
            """;

    /** Cases that the tables leave empty. */
    private static final String NONE = """
            ed2     earth-resistance         1  -  -          -  plug-to-part
            ed2     total-patient-leakage    1  CF none       ac -
            ed2     mains-on-unearthed-metal 1  B  none       ac -
            ed2     mains-on-applied-part    1  B  none       ac -
            ed2     mains-on-port            1  BF none       ac -
            nfpa    earth-leakage            1  -  none       ac -
            nfpa    mains-on-applied-part    1  CF none       ac -
            nfpa    touch-current            1p -  none       ac -
            leads   mains-on-applied-part    1  B  none       ac -
            61010   patient-leakage          1  B  none       ac -
            61010   earth-resistance         1  -  -          -  plug-to-part
            bonding bonding-voltage          1p -  none       ac reference-to-part
            bonding bonding-resistance       1p -  -          -  reference-to-part
            """;

    private static final List<String> SETS =
            List.of("iec-60601-1-ed2", "nfpa-99-2012", "us-leads-older", "iec-61010-1", "bonding");

    private static RuleSet rules(String word) {
        String id = switch (word) {
            case "ed2" -> "iec-60601-1-ed2";
            case "ed3" -> "iec-60601-1-ed3";
            case "nfpa" -> "nfpa-99-2012";
            case "leads" -> "us-leads-older";
            case "61010" -> "iec-61010-1";
            default -> word;
        };
        return RuleSets.builtIn().find(id).orElseThrow();
    }

    private static RuleCase asked(String[] cells) {
        Protection protection = switch (cells[2].charAt(0)) {
            case '1' -> Protection.CLASS_1;
            case '2' -> Protection.CLASS_2;
            default -> Protection.INTERNALLY_POWERED;
        };
        SupplyConnection supply = cells[2].endsWith("f")
                ? SupplyConnection.FIXED_CORD
                : cells[2].endsWith("p")
                        ? SupplyConnection.PERMANENT
                        : cells[2].equals("i") ? SupplyConnection.NONE : SupplyConnection.DETACHABLE_CORD;
        QuantityKind quantity = QuantityKind.of(cells[1]).orElseThrow();
        RuleCase asked = RuleCase.of(quantity, protection, supply, Optional.empty());
        if (!cells[3].equals("-")) {
            asked = asked.type(PartType.valueOf(cells[3]));
        }
        for (Condition condition : Condition.values()) {
            asked = condition.word().equals(cells[4]) ? asked.condition(condition) : asked;
        }
        for (Component component : Component.values()) {
            asked = component.word().equals(cells[5]) ? asked.component(Optional.of(component)) : asked;
        }
        String[] subject = cells[6].split("@", 2);
        if (!subject[0].isEmpty() && !subject[0].equals("-")) {
            asked = asked.subject(subject[0]);
        }
        return subject.length > 1 ? asked.where(subject[1]) : asked;
    }

    private static Dimension dimension(String value) {
        return value.endsWith("ohm")
                ? Dimension.RESISTANCE
                : value.endsWith("V") ? Dimension.VOLTAGE : Dimension.CURRENT;
    }

    @TestFactory
    Stream<DynamicTest> the_rule_sets_answer_as_transcribed() {
        return TABLE.lines()
                .map(line -> DynamicTest.dynamicTest(line, () -> {
                    String[] cells = line.trim().split("\\s+");
                    LimitRow row = rules(cells[0]).limit(asked(cells)).orElseThrow();
                    String value = cells[7] + " " + cells[8];
                    assertThat(row.bound()).isEqualTo(Limit.Bound.AT_MOST);
                    assertThat(row.value()).isEqualTo(Quantities.parse(value, dimension(value)));
                    assertThat(row.basis().mark()).isEqualTo(Mark.valueOf(cells[9]));
                    assertThat(row.basis().sources()).containsAll(List.of(cells).subList(10, cells.length));
                }));
    }

    @TestFactory
    Stream<DynamicTest> these_cases_have_no_limit() {
        return NONE.lines()
                .map(line -> DynamicTest.dynamicTest("none: " + line, () -> {
                    String[] cells = line.trim().split("\\s+");
                    assertThat(rules(cells[0]).limit(asked(cells))).isEmpty();
                }));
    }

    /** No limit of these rule sets is left without a line above. */
    @TestFactory
    Stream<DynamicTest> every_limit_is_transcribed() {
        return SETS.stream()
                .map(id -> DynamicTest.dynamicTest(id, () -> {
                    List<String> reached = new ArrayList<>();
                    TABLE.lines()
                            .map(line -> line.trim().split("\\s+"))
                            .forEach(cells ->
                                    rules(cells[0]).limit(asked(cells)).ifPresent(row -> reached.add(row.id())));
                    assertThat(new TreeSet<>(reached))
                            .containsAll(RuleSets.builtIn().find(id).orElseThrow().limits().stream()
                                    .map(LimitRow::id)
                                    .toList());
                }));
    }
}
