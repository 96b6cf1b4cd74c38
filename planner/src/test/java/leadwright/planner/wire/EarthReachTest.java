package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.Test;

/** Earth readings of several points: those within reach are planned, the others reported with their reason. */
class EarthReachTest {
    private static final KitItem JAW = Rig.item("jaw", ItemKind.CLIP, Rig.SOCKET, "metal-edge", 2);

    /*
     *   tester --2 m-- near (1 m)
     *                                        far (10 m): 12 m are needed
     */
    @Test
    void a_point_out_of_reach_does_not_take_the_others_with_it() {
        Wiring wiring = wire(kit(Optional.empty(), JAW, lead("lead", 2000)), point("near", 1000), point("far", 10_000));
        assertThat(wiring.uncovered()).containsExactly("earth/far");
        assertThat(wiring.takenIn().get("earth/near")).containsExactly("H1");
        assertThat(wiring.takenIn().get("earth/far")).isEmpty();
        assertThat(wiring.hookups().get(0).earth()).hasSize(1);
        assertThat(wiring.shortfalls()).singleElement().satisfies(each -> {
            assertThat(each.because())
                    .startsWith("at far: the leads are too short: it needs 12 m")
                    .contains("has 2 m", "(1 reading)");
            assertThat(each.additions()).containsExactly("1 lead like 'lead', 12 m long, of 0.75 mm2 or thicker");
        });
    }

    @Test
    void two_points_with_one_reason_make_one_entry() {
        Wiring wiring = wire(
                kit(Optional.empty(), JAW, lead("lead", 2000)),
                point("far", 10_000),
                point("near", 1000),
                point("also-far", 10_000));
        assertThat(wiring.uncovered()).containsExactly("earth/far", "earth/also-far");
        assertThat(wiring.shortfalls())
                .singleElement()
                .satisfies(each -> assertThat(each.because()).startsWith("at far, also-far: "));
    }

    /** 30 m of 0.75 mm2 have 780 mohm: the tester's 6 V drive 200 mA through it, and 300 mohm can be nulled. */
    @Test
    void a_lead_that_cannot_be_nulled_is_refused_for_that() {
        Optional<Quantity> most = Optional.of(Quantity.milliOhms(300));
        Wiring wiring = wire(
                kit(most, JAW, lead("lead", 2000), lead("reel", 30_000)), point("near", 1000), point("far", 20_000));
        assertThat(wiring.uncovered()).containsExactly("earth/far");
        assertThat(wiring.shortfalls()).singleElement().satisfies(each -> {
            assertThat(each.about()).isEqualTo("null-up-to");
            assertThat(each.because()).contains("the tester nulls up to 300 mohm (null-up-to)");
            assertThat(each.additions().get(0))
                    .startsWith("1 lead like 'lead', 24 m long, of ")
                    .contains("mm2");
        });
    }

    @Test
    void a_missing_clip_is_counted_and_a_painted_point_is_named() {
        KitItem noJaw = Rig.item("jaw", ItemKind.CLIP, Rig.SOCKET, "metal-edge", 0);
        Wiring wiring = wire(
                kit(Optional.empty(), noJaw, lead("lead", 2000)),
                point("near", 1000),
                new TouchPoint(
                        "rail",
                        "rail",
                        Earthed.YES,
                        Surface.PAINTED,
                        Optional.of(Quantity.millimetres(500)),
                        Optional.empty()));
        assertThat(wiring.uncovered()).containsExactly("earth/near", "earth/rail");
        assertThat(wiring.shortfalls().get(0).additions()).containsExactly("1 more jaw (clip)");
        assertThat(wiring.shortfalls().get(1).because())
                .startsWith("at rail: nothing in the kit that carries the current leads from painted");
    }

    private static KitItem lead(String id, long millimetres) {
        KitItem lead = Rig.item(id, ItemKind.LEAD, List.of(Rig.PLUG, Rig.PLUG), 0, millimetres, 600, 1);
        return new KitItem(
                id,
                lead.kind(),
                lead.ends(),
                0,
                List.of(),
                lead.length(),
                Optional.of("0.75 mm2"),
                lead.current(),
                lead.voltage(),
                lead.capacitance(),
                1,
                lead.price());
    }

    private static TouchPoint point(String id, long millimetres) {
        return new TouchPoint(
                id, id, Earthed.YES, Surface.METAL, Optional.of(Quantity.millimetres(millimetres)), Optional.empty());
    }

    private static Wiring wire(Kit kit, TouchPoint... points) {
        Device device = Rig.device(List.of(), List.of(points), List.of(), List.of());
        List<Obligation> earth = new ArrayList<>();
        for (TouchPoint each : points) {
            earth.add(Rig.earth("earth/" + each.id(), each.id()));
        }
        return Rig.wire(device, kit, earth);
    }

    private static Kit kit(Optional<Quantity> nullUpTo, KitItem... items) {
        Kit plain = Rig.kit(new Jacks(2, Rig.SOCKET, Ties.ANY, AtRest.OPEN), 3500, List.of(items));
        Tester was = plain.tester();
        EarthTest test = new EarthTest(
                List.of(Quantity.microAmperes(200_000)),
                Component.AC,
                Quantity.volts(6),
                "two-wire",
                nullUpTo,
                List.of("earth-jack", "outlet-earth"));
        Tester tester = new Tester(
                was.name(),
                was.jacks(),
                was.earthJack(),
                was.touchThrough(),
                was.inlet(),
                was.outlets(),
                Set.of(),
                was.networks(),
                was.methods(),
                was.components(),
                Optional.of(test),
                was.insulation(),
                was.partSource(),
                was.accuracy(),
                was.calibratedUntil());
        return new Kit(plain.name(), tester, plain.items(), plain.checks(), plain.connectors());
    }
}
