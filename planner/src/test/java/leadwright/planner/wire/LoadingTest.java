package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartType;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.Test;

/** What leads pass by their own capacitance when mains is put on an applied part. */
class LoadingTest {

    /*
     *   w --snap lead 2 m--[1]      2 pi 60 Hz 230 V 500 pF/m 2 m = 86.8 uA; a tenth of 5 mA is 500 uA,
     *                               a tenth of 50 uA is 5 uA
     */
    @Test
    void leads_that_take_more_than_their_share_are_warned_of() {
        assertThat(warnings(500_000, limit("50 uA")))
                .singleElement()
                .satisfies(text -> assertThat(text)
                        .contains("p 86.8 uA of 50 uA", "more than 10 % of the limit", "read the background"));
        assertThat(warnings(500_000, limit("5 mA"))).isEmpty();
        assertThat(warnings(20_000, limit("50 uA"))).isEmpty();
    }

    @Test
    void what_states_no_capacitance_is_named_and_not_taken_for_nothing() {
        assertThat(warnings(-1, limit("5 mA")))
                .singleElement()
                .satisfies(text -> assertThat(text)
                        .startsWith("no capacitance is stated for snap-lead:")
                        .contains("read the background"));
    }

    @Test
    void no_source_no_warning() {
        Device device = Rig.device(Rig.part("p", PartType.CF, "snap-socket", 1));
        Wiring wiring = Rig.wire(device, kit(500_000), List.of(Rig.reading("r", Demand.of(Rig.names(device)))));
        assertThat(wiring.warnings()).isEmpty();
    }

    private static List<String> warnings(long femtofaradsPerMetre, Limit limit) {
        Device device = Rig.device(Rig.part("p", PartType.CF, "snap-socket", 1));
        Obligation plain = Rig.mains("m", Demand.of(Rig.names(device)));
        Obligation limited = new Obligation(
                plain.key(),
                QuantityKind.MAINS_ON_APPLIED_PART,
                plain.clause(),
                List.of("p"),
                plain.demand(),
                plain.place(),
                plain.earthSubject(),
                plain.state(),
                plain.mode(),
                plain.sourcePolarity(),
                plain.method(),
                plain.component(),
                plain.network(),
                Optional.of(limit),
                plain.note());
        return Rig.wire(device, kit(femtofaradsPerMetre), List.of(limited)).warnings();
    }

    private static Kit kit(long femtofaradsPerMetre) {
        KitItem plain = Rig.item("snap-lead", ItemKind.LEAD, List.of("snap-stud", Rig.PLUG), 0, 2000, 600, 1);
        return Rig.kit(
                2,
                Ties.ANY,
                new KitItem(
                        plain.id(),
                        plain.kind(),
                        plain.ends(),
                        0,
                        List.of(),
                        plain.length(),
                        plain.conductor(),
                        plain.current(),
                        plain.voltage(),
                        femtofaradsPerMetre < 0
                                ? Optional.empty()
                                : Optional.of(Quantity.of(Dimension.CAPACITANCE_PER_LENGTH, femtofaradsPerMetre)),
                        1,
                        Optional.empty()));
    }

    /** A limit of the built-in sets with this value, whatever it is for. */
    private static Limit limit(String value) {
        return RuleSets.builtIn().find("iec-62353-2014").orElseThrow().limits().stream()
                .map(row -> row.limit(false))
                .filter(each -> each.bound() == Limit.Bound.AT_MOST
                        && each.value().text().equals(value))
                .findFirst()
                .orElseThrow();
    }
}
