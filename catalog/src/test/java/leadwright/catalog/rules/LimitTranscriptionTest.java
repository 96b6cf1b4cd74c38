package leadwright.catalog.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.RuleSets;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The limits written down a second time, by case instead of by row and in the units of their tables, and compared with
 * what the rule sets answer. The keys beside each line are those of the source list.
 */
class LimitTranscriptionTest {

    private static final Protection I = Protection.CLASS_1;
    private static final Protection II = Protection.CLASS_2;
    private static final SupplyConnection DETACHABLE = SupplyConnection.DETACHABLE_CORD;
    private static final SupplyConnection FIXED = SupplyConnection.FIXED_CORD;
    private static final SupplyConnection PERMANENT = SupplyConnection.PERMANENT;
    private static final PartType B = PartType.B;
    private static final PartType BF = PartType.BF;
    private static final PartType CF = PartType.CF;

    private record Line(String rules, RuleCase asked, Quantity value, Limit.Bound bound, Mark mark, List<String> keys) {
        @Override
        public String toString() {
            return rules + " " + asked.quantity().word() + " " + value.text() + " " + mark
                    + asked.type().map(type -> " " + type).orElse("")
                    + asked.condition().map(condition -> " " + condition).orElse("")
                    + asked.method().map(method -> " " + method).orElse("")
                    + asked.component().map(component -> " " + component).orElse("")
                    + asked.subject().map(subject -> " " + subject).orElse("");
        }
    }

    private final List<Line> lines = new ArrayList<>();

    private void line(String rules, RuleCase asked, String value, Mark mark, String... keys) {
        Dimension dimension = value.endsWith("ohm") ? Dimension.RESISTANCE : Dimension.CURRENT;
        Limit.Bound bound = value.endsWith("Mohm") ? Limit.Bound.AT_LEAST : Limit.Bound.AT_MOST;
        lines.add(new Line(rules, asked, Quantities.parse(value, dimension), bound, mark, List.of(keys)));
    }

    private static RuleCase on(QuantityKind quantity, Protection protection, SupplyConnection supply) {
        return RuleCase.of(quantity, protection, supply, Optional.empty());
    }

    private void ed3(RuleCase asked, String value, Mark mark, String... keys) {
        line("iec-60601-1-ed3", asked, value, mark, keys);
    }

    private void recurrent(RuleCase asked, String value, Mark mark, String... keys) {
        line("iec-62353-2014", asked, value, mark, keys);
    }

    /** Normal condition, then each single fault condition. */
    private void ed3(RuleCase asked, int normal, int fault, Mark mark, String... keys) {
        ed3(asked.condition(Condition.NONE), normal + " uA", mark, keys);
        ed3(asked.condition(Condition.SUPPLY_OPEN), fault + " uA", mark, keys);
        if (asked.quantity() != QuantityKind.EARTH_LEAKAGE
                && asked.quantity() != QuantityKind.FUNCTIONAL_EARTH_LEAKAGE) {
            ed3(asked.condition(Condition.EARTH_OPEN), fault + " uA", mark, keys);
        }
    }

    private void thirdEdition() {
        ed3(
                on(QuantityKind.EARTH_RESISTANCE, I, DETACHABLE).subject("inlet-to-part"),
                "100 mohm",
                Mark.A,
                "CE-gnd",
                "MG");
        ed3(on(QuantityKind.EARTH_RESISTANCE, I, FIXED).subject("plug-to-part"), "200 mohm", Mark.A, "CE-gnd", "MG");
        ed3(on(QuantityKind.EARTH_RESISTANCE, I, DETACHABLE).subject("cord"), "100 mohm", Mark.A, "CE-gnd", "MG");
        ed3(on(QuantityKind.EARTH_RESISTANCE, I, PERMANENT).subject("reference-to-part"), "100 mohm", Mark.C);

        ed3(on(QuantityKind.EARTH_LEAKAGE, I, DETACHABLE), 5000, 10000, Mark.A, "EO-ME2", "KK37-42");
        ed3(on(QuantityKind.TOUCH_CURRENT, I, DETACHABLE), 100, 500, Mark.A, "EO-ME2", "RK2", "BME-L");
        ed3(on(QuantityKind.FUNCTIONAL_EARTH_LEAKAGE, II, FIXED), 5000, 10000, Mark.C);

        for (PartType type : List.of(B, BF, CF)) {
            int ac = type == CF ? 10 : 100;
            int acFault = type == CF ? 50 : 500;
            RuleCase patient = on(QuantityKind.PATIENT_LEAKAGE, I, DETACHABLE).type(type);
            ed3(patient.component(Optional.of(Component.AC)), ac, acFault, Mark.A, "EO-ME2", "JIS12-K");
            ed3(patient.component(Optional.of(Component.DC)), 10, 50, Mark.B, "EO-ME2");
            RuleCase auxiliary =
                    on(QuantityKind.PATIENT_AUXILIARY, I, DETACHABLE).type(type);
            ed3(auxiliary.component(Optional.of(Component.AC)), ac, acFault, Mark.A, "EO-ME2");
            ed3(auxiliary.component(Optional.of(Component.DC)), 10, 50, Mark.B, "EO-ME2");
            RuleCase port = on(QuantityKind.MAINS_ON_PORT, I, DETACHABLE).type(type);
            ed3(port.component(Optional.of(Component.AC)), ac, acFault, Mark.A, "EO-ME2", "JIS12-K");
            ed3(port.component(Optional.of(Component.DC)), 10, 50, Mark.B, "EO-ME2");
            RuleCase total =
                    on(QuantityKind.TOTAL_PATIENT_LEAKAGE, I, DETACHABLE).type(type);
            int totalAc = type == CF ? 50 : 500;
            int totalFault = type == CF ? 100 : 1000;
            ed3(total.component(Optional.of(Component.AC)), totalAc, totalFault, Mark.A, "EO-ME2", "RK3");
            ed3(total.component(Optional.of(Component.DC)), 50, 100, Mark.B, "EO-ME2");
        }
        ed3(special(QuantityKind.MAINS_ON_APPLIED_PART, BF), "5000 uA", Mark.A, "EO-ME2", "RK3");
        ed3(special(QuantityKind.MAINS_ON_APPLIED_PART, CF), "50 uA", Mark.A, "EO-ME2", "RK3");
        ed3(special(QuantityKind.TOTAL_MAINS_ON_APPLIED_PART, BF), "5000 uA", Mark.A, "EO-ME2", "RK3");
        ed3(special(QuantityKind.TOTAL_MAINS_ON_APPLIED_PART, CF), "100 uA", Mark.A, "EO-ME2", "RK3");
        ed3(special(QuantityKind.MAINS_ON_UNEARTHED_METAL, B), "500 uA", Mark.A, "EO-ME2", "RK3");
        ed3(special(QuantityKind.MAINS_ON_UNEARTHED_METAL, BF), "500 uA", Mark.A, "EO-ME2", "RK3");
        ed3(special(QuantityKind.MAINS_ON_UNEARTHED_METAL, B).subject("total"), "1000 uA", Mark.A, "EO-ME2", "RK3");
        ed3(special(QuantityKind.MAINS_ON_UNEARTHED_METAL, BF).subject("total"), "1000 uA", Mark.A, "EO-ME2", "RK3");
    }

    private static RuleCase special(QuantityKind quantity, PartType type) {
        return on(quantity, I, DETACHABLE).type(type).condition(Condition.NONE).component(Optional.of(Component.AC));
    }

    private void recurrentTest() {
        RuleCase earth = on(QuantityKind.EARTH_RESISTANCE, I, DETACHABLE);
        recurrent(on(QuantityKind.EARTH_RESISTANCE, I, FIXED).subject("plug-to-part"), "300 mohm", Mark.B, "X353");
        recurrent(earth.subject("inlet-to-part"), "200 mohm", Mark.B, "X353");
        recurrent(earth.subject("cord"), "100 mohm", Mark.B, "X353");
        recurrent(earth.subject("plug-to-part"), "300 mohm", Mark.B, "X353");
        // The case was seen, its value was cut off: the value is from memory.
        recurrent(
                on(QuantityKind.EARTH_RESISTANCE, I, PERMANENT).subject("reference-to-part"),
                "300 mohm",
                Mark.C,
                "X353");
        recurrent(earth.subject("system-plug-to-part"), "500 mohm", Mark.C);

        RuleCase insulationI = on(QuantityKind.INSULATION_RESISTANCE, I, FIXED);
        RuleCase insulationII = on(QuantityKind.INSULATION_RESISTANCE, II, FIXED);
        recurrent(insulationI.subject("mains-to-earth"), "2 Mohm", Mark.C);
        recurrent(insulationII.subject("mains-to-housing"), "7 Mohm", Mark.C);
        for (PartType type : List.of(BF, CF)) {
            recurrent(insulationI.type(type).subject("mains-to-part"), "70 Mohm", Mark.C);
            recurrent(insulationII.type(type).subject("part-to-housing"), "70 Mohm", Mark.C);
        }

        equipment(Method.ALTERNATIVE, "1000 uA", "500 uA");
        equipment(Method.DIRECT, "500 uA", "100 uA");
        equipment(Method.DIFFERENTIAL, "500 uA", "100 uA");
        part(Method.ALTERNATIVE, "5000 uA", "100 uA");
        part(Method.DIRECT, "5000 uA", "50 uA");
        recurrent(on(QuantityKind.TOUCH_CURRENT, I, PERMANENT).condition(Condition.NONE), "100 uA", Mark.C);
    }

    private void equipment(Method method, String classI, String classII) {
        recurrent(on(QuantityKind.EQUIPMENT_LEAKAGE, I, FIXED).method(Optional.of(method)), classI, Mark.C);
        recurrent(on(QuantityKind.EQUIPMENT_LEAKAGE, II, FIXED).method(Optional.of(method)), classII, Mark.C);
    }

    private void part(Method method, String bf, String cf) {
        RuleCase part = on(QuantityKind.APPLIED_PART_LEAKAGE, II, FIXED).method(Optional.of(method));
        recurrent(part.type(BF), bf, Mark.C);
        recurrent(part.type(CF), cf, Mark.C);
    }

    @TestFactory
    Stream<DynamicTest> the_rule_sets_answer_as_transcribed() {
        thirdEdition();
        recurrentTest();
        return lines.stream()
                .map(line -> DynamicTest.dynamicTest(line.toString(), () -> {
                    LimitRow row = RuleSets.builtIn()
                            .find(line.rules())
                            .orElseThrow()
                            .limit(line.asked())
                            .orElseThrow();
                    assertThat(row.value()).isEqualTo(line.value());
                    assertThat(row.bound()).isEqualTo(line.bound());
                    assertThat(row.basis().mark()).isEqualTo(line.mark());
                    assertThat(row.basis().sources()).containsAll(line.keys());
                }));
    }

    private static final QuantityKind AP = QuantityKind.APPLIED_PART_LEAKAGE;

    /** Where the tables print no value there is none to be had. */
    @TestFactory
    Stream<DynamicTest> these_cases_have_no_limit() {
        List<Line> none = new ArrayList<>();
        Quantity zero = Quantity.microAmperes(0);
        List.of(
                        special(QuantityKind.MAINS_ON_APPLIED_PART, B),
                        special(QuantityKind.TOTAL_MAINS_ON_APPLIED_PART, B),
                        special(QuantityKind.MAINS_ON_UNEARTHED_METAL, CF),
                        special(QuantityKind.MAINS_ON_UNEARTHED_METAL, CF).subject("total"),
                        on(QuantityKind.EQUIPMENT_LEAKAGE, I, FIXED),
                        on(QuantityKind.EARTH_RESISTANCE, I, DETACHABLE).subject("plug-to-part"))
                .forEach(asked ->
                        none.add(new Line("iec-60601-1-ed3", asked, zero, Limit.Bound.AT_MOST, Mark.C, List.of())));
        List.of(
                        on(AP, I, FIXED).type(B).method(Optional.of(Method.DIRECT)),
                        on(AP, I, FIXED).type(BF).method(Optional.of(Method.DIFFERENTIAL)),
                        on(QuantityKind.TOUCH_CURRENT, I, FIXED).condition(Condition.NONE),
                        on(QuantityKind.EARTH_LEAKAGE, I, FIXED).condition(Condition.NONE),
                        on(QuantityKind.PATIENT_LEAKAGE, I, FIXED).type(CF).condition(Condition.NONE))
                .forEach(asked ->
                        none.add(new Line("iec-62353-2014", asked, zero, Limit.Bound.AT_MOST, Mark.C, List.of())));
        return none.stream()
                .map(line -> DynamicTest.dynamicTest(
                        "none: " + line,
                        () -> assertThat(RuleSets.builtIn()
                                        .find(line.rules())
                                        .orElseThrow()
                                        .limit(line.asked()))
                                .isEmpty()));
    }
}
