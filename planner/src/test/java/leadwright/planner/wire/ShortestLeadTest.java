package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import org.junit.jupiter.api.Test;

/** Of chains with as few contacts and items, the one with least lead that reaches. */
class ShortestLeadTest {
    private static final KitItem JAW = Rig.item("jaw", ItemKind.CLIP, Rig.SOCKET, "metal-edge", 4);

    /*
     * The ids stand so that neither their order nor the reverse gives the answer: a-reel 18 m, m-short 1.5 m, z-mid 3 m.
     */
    private static Kit kit(int jacks, int shorts, KitItem... more) {
        List<KitItem> items = new java.util.ArrayList<>(
                List.of(JAW, lead("a-reel", 18_000, 4), lead("m-short", 1500, shorts), lead("z-mid", 3000, 4)));
        items.addAll(List.of(more));
        return Rig.kit(jacks, Ties.ANY, items.toArray(KitItem[]::new));
    }

    private static KitItem lead(String id, long millimetres, int stock) {
        return Rig.item(id, ItemKind.LEAD, List.of(Rig.PLUG, Rig.PLUG), 0, millimetres, 600, stock);
    }

    private static TouchPoint point(String id, Earthed earthed, long millimetres) {
        return new TouchPoint(
                id, id, earthed, Surface.METAL, Optional.of(Quantity.millimetres(millimetres)), Optional.empty());
    }

    private static Hookup only(Wiring wiring) {
        assertThat(wiring.uncovered()).isEmpty();
        assertThat(wiring.hookups()).hasSize(1);
        return wiring.hookups().get(0);
    }

    private static List<String> chain(Hookup hookup, String connection) {
        return hookup.chains().stream()
                .filter(each -> each.connection().equals(connection))
                .findFirst()
                .orElseThrow()
                .items();
    }

    @Test
    void a_point_close_by_takes_the_short_lead() {
        Device device = Rig.device(List.of(), List.of(point("knob", Earthed.NO, 200)), List.of(), List.of());
        Wiring wiring = Rig.wire(device, kit(2, 10), List.of(Rig.reading("r", Demand.of(List.of("housing.knob")))));
        assertThat(chain(only(wiring), "housing.knob")).containsExactly("jaw/1", "m-short/1");
    }

    @Test
    void a_point_farther_off_takes_the_shortest_that_reaches() {
        Device device = Rig.device(List.of(), List.of(point("knob", Earthed.NO, 2000)), List.of(), List.of());
        Wiring wiring = Rig.wire(device, kit(2, 10), List.of(Rig.reading("r", Demand.of(List.of("housing.knob")))));
        assertThat(chain(only(wiring), "housing.knob")).containsExactly("jaw/1", "z-mid/1");
    }

    /** Two points share one short lead: the other takes the next, and together they are 4.5 m. */
    @Test
    void short_of_stock_the_sum_is_least() {
        Device device = Rig.device(
                List.of(),
                List.of(point("knob", Earthed.NO, 200), point("lever", Earthed.NO, 200)),
                List.of(),
                List.of());
        Wiring wiring = Rig.wire(
                device,
                kit(2, 1),
                List.of(Rig.reading("r", Demand.of(List.of("housing.knob"), List.of("housing.lever"), List.of()))));
        Hookup hookup = only(wiring);
        assertThat(List.of(
                        chain(hookup, "housing.knob").get(1),
                        chain(hookup, "housing.lever").get(1)))
                .containsExactlyInAnyOrder("m-short/1", "z-mid/1");
    }

    @Test
    void the_earth_lead_is_the_shortest_that_reaches() {
        Device device = Rig.device(List.of(), List.of(point("clamp", Earthed.YES, 400)), List.of(), List.of());
        Wiring wiring = Rig.wire(device, sized(kit(2, 10)), List.of(Rig.earth("e", "clamp")));
        assertThat(only(wiring).earth())
                .singleElement()
                .satisfies(each -> assertThat(each.items()).containsExactly("m-short/1", "jaw/1"));
    }

    /** Mains goes on the part p alone: the one short lead is its, though the other connection stands first on the panel. */
    @Test
    void what_mains_is_put_on_has_the_short_lead_first() {
        Device device = Rig.device(Rig.part("o", PartType.BF, "metal", 1), Rig.part("p", PartType.BF, "metal", 1));
        List<String> names = Rig.names(device);
        Wiring wiring = Rig.wire(
                device,
                kit(2, 1),
                List.of(
                        Rig.mains("m", Demand.of(List.of(names.get(1)))),
                        Rig.reading("r", Demand.of(List.of(names.get(0))))));
        Hookup hookup = only(wiring);
        assertThat(chain(hookup, names.get(1)).get(1)).isEqualTo("m-short/1");
        assertThat(chain(hookup, names.get(0)).get(1)).isEqualTo("z-mid/1");
    }

    /** Earth leads state their conductor. */
    private static Kit sized(Kit kit) {
        List<KitItem> items = kit.items().stream()
                .map(item -> new KitItem(
                        item.id(),
                        item.kind(),
                        item.ends(),
                        item.branches(),
                        item.also(),
                        item.length(),
                        Optional.of("1.5 mm2"),
                        item.current(),
                        item.voltage(),
                        item.capacitance(),
                        item.stock(),
                        item.price()))
                .toList();
        return new Kit(kit.name(), kit.tester(), items, kit.checks(), kit.connectors());
    }
}
