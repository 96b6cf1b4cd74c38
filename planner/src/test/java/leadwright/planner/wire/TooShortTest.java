package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Shortfall;
import org.junit.jupiter.api.Test;

/** Where distance alone stops a reading it is named, and no list of fan-outs stands in its place. */
class TooShortTest {
    private static final KitItem FOIL =
            Rig.item("foil", ItemKind.CONTACT_AID, List.of("foil-wrap", Rig.PLUG), 0, 500, 300, 2);
    private static final KitItem FAN = Rig.item("fan", ItemKind.FAN_OUT, List.of(Rig.PLUG, Rig.SOCKET), 8, 500, 300, 1);

    private static Device doors(int count) {
        List<TouchPoint> points = new ArrayList<>();
        for (int n = 1; n <= count; n++) {
            points.add(new TouchPoint(
                    "door" + n,
                    "Door " + n,
                    Earthed.NO,
                    Surface.PAINTED,
                    Optional.of(Quantity.millimetres(2000)),
                    Optional.empty()));
        }
        return Rig.device(List.of(), points, List.of(), List.of());
    }

    private static Wiring wire(Kit kit, int doors) {
        List<String> names = new ArrayList<>();
        for (int n = 1; n <= doors; n++) {
            names.add("housing.door" + n);
        }
        return Rig.wire(doors(doors), kit, List.of(Rig.reading("r", Demand.of(names))));
    }

    private static Shortfall only(Wiring wiring) {
        assertThat(wiring.uncovered()).containsExactly("r");
        assertThat(wiring.shortfalls()).hasSize(1);
        return wiring.shortfalls().get(0);
    }

    /*
     *   door --- 2 m: 2.4 m are needed --- tester          foil 0.5 m + fan-out 0.5 m = 1 m
     */
    @Test
    void reach_is_the_cause_and_a_lead_is_proposed_not_fan_outs_in_a_row() {
        Shortfall shortfall = only(wire(Rig.kit(4, Ties.ANY, FOIL, FAN), 1));
        assertThat(shortfall.about()).isEqualTo("reach");
        assertThat(shortfall.because())
                .contains("a chain must be 2.4 m long", "make is 1 m: too short by 1.4 m")
                .doesNotContain("find a place");
        assertThat(shortfall.additions())
                .containsExactly("1 lead from lab-4mm-socket-recessed to lab-4mm-plug-shrouded, 1.4 m long or longer");
    }

    /** Foil 0.5 m and a lead of 1.9 m reach 2.4 m: with such a lead the reading is taken, with one a decimetre shorter not. */
    @Test
    void the_lead_does_and_a_shorter_one_does_not() {
        assertThat(wire(Rig.kit(4, Ties.ANY, FOIL, FAN, lead(1900, 1)), 1).uncovered())
                .isEmpty();
        KitItem single = Rig.item("fan", ItemKind.FAN_OUT, List.of(Rig.PLUG, Rig.SOCKET), 8, 0, 300, 1);
        assertThat(wire(Rig.kit(4, Ties.ANY, FOIL, single, lead(1800, 1)), 1).uncovered())
                .containsExactly("r");
    }

    /** One lead-on for two doors: each alone is reached. More of what the kit has comes first. */
    @Test
    void too_few_long_pieces_are_told_from_places() {
        Shortfall shortfall = only(wire(Rig.kit(4, Ties.ANY, FOIL, lead(1900, 1)), 2));
        assertThat(shortfall.about()).isEqualTo("reach");
        assertThat(shortfall.because()).contains("each connection alone is within reach", "(the kit has 1 on)");
        assertThat(shortfall.additions()).containsExactly("1 more on (lead)", "1 lead like 'on', 2.4 m long or longer");
    }

    /** Nine doors within reach and one jack: places are short, and distance is not named. */
    @Test
    void where_places_are_short_that_is_the_cause() {
        KitItem foils = Rig.item("foil", ItemKind.CONTACT_AID, List.of("foil-wrap", Rig.PLUG), 0, 3000, 300, 20);
        Shortfall shortfall = only(wire(Rig.kit(1, Ties.ANY, foils, FAN), 9));
        assertThat(shortfall.about()).isEqualTo("fan");
        assertThat(shortfall.because()).contains("of 9 connections that end in painted 8 find a place");
        assertThat(shortfall.additions()).containsExactly("1 more fan (fan-out of 8)");
    }

    private static KitItem lead(long millimetres, int stock) {
        return Rig.item("on", ItemKind.LEAD, List.of(Rig.SOCKET, Rig.PLUG), 0, millimetres, 300, stock);
    }
}
