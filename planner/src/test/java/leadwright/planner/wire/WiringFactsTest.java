package leadwright.planner.wire;

import static leadwright.planner.wire.Rig.PLUG;
import static leadwright.planner.wire.Rig.SOCKET;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartType;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The facts that the planner's mathematics is to be checked by, each with the sentence that states it. */
class WiringFactsTest {

    private static final KitItem PINS = Rig.item("pin", ItemKind.ADAPTER, "snap-stud", PLUG, 400);

    private static Device wires(int count) {
        return Rig.device(Rig.part("p", PartType.CF, "snap-socket", count));
    }

    private static void proven(Wiring wiring, int hookups) {
        assertThat(wiring.uncovered()).isEmpty();
        assertThat(wiring.proof().answer()).as(wiring.proof().argument()).isEqualTo(hookups);
        assertThat(wiring.proof().lowerBound()).as(wiring.proof().argument()).isEqualTo(hookups);
        assertThat(wiring.hookups()).hasSize(hookups);
    }

    /*
     * "k jacks with an m-way fan-out on each take k·m wires." (common practice)
     *
     *   w w w  w w w
     *    \|/    \|/      m = 3
     *    [1]    [2]      k = 2
     */
    @ParameterizedTest
    @CsvSource({"2, 3", "3, 8", "6, 10"})
    void k_jacks_with_an_m_way_fan_out_each_take_k_times_m_wires(int jacks, int ways) {
        Kit kit = Rig.kit(jacks, Ties.ANY, PINS, Rig.fanOut("fan", PLUG, SOCKET, ways, jacks));
        Device full = wires(jacks * ways);
        proven(Rig.wire(full, kit, List.of(Rig.reading("all", Demand.of(Rig.names(full))))), 1);
        Device over = wires(jacks * ways + 1);
        Wiring wiring = Rig.wire(over, kit, List.of(Rig.reading("all", Demand.of(Rig.names(over)))));
        assertThat(wiring.uncovered()).containsExactly("all");
    }

    /*
     * "Others that float while sharing a bundle float joined: allowed, noted on the reading, and a house may forbid it."
     *
     *   c1   c2 c3 c4          c1 alone leaves the other three floating on one jack; where nothing may float joined,
     *    |    \ | /           c1 and all four tied are in no hookup of two jacks together
     *   [1]    [2]
     */
    @Test
    void what_floats_joined_may_be_forbidden() {
        Kit kit = Rig.kit(2, Ties.ANY, PINS, Rig.fanOut("fan", PLUG, SOCKET, 4, 1));
        Device device = wires(4);
        List<Obligation> wanted = List.of(
                Rig.reading("one", Demand.of(List.of("p.c1"))), Rig.reading("all", Demand.of(Rig.names(device))));
        proven(Rig.wire(device, kit, wanted), 1);
        proven(Rig.wire(device, kit, Rig.nothingFloatsJoined(), wanted), 2);
    }

    /*
     * "A fan-out of N branches adds N − 1 places." Cascaded on one jack, s of them hold s·(N − 1) + 1 wires.
     *
     *   w w w
     *    \|/
     *   w fan w
     *     \|/
     *     [1]
     */
    @ParameterizedTest
    @CsvSource({"3, 1", "3, 2", "8, 3"})
    void cascaded_fan_outs_add_one_place_less_than_their_branches(int ways, int fanOuts) {
        Kit kit = Rig.kit(1, Ties.ANY, PINS, Rig.fanOut("fan", PLUG, SOCKET, ways, fanOuts));
        int places = fanOuts * (ways - 1) + 1;
        Device full = wires(places);
        proven(Rig.wire(full, kit, List.of(Rig.reading("all", Demand.of(Rig.names(full))))), 1);
        Device over = wires(places + 1);
        assertThat(Rig.wire(over, kit, List.of(Rig.reading("all", Demand.of(Rig.names(over)))))
                        .uncovered())
                .containsExactly("all");
    }

    /*
     * "n connections, each alone, the others open and unplugged, k jacks: ⌈n/k⌉ hookups."
     *
     *    w   w   w   w  …
     *   [1] [2] [3] [4]
     */
    @ParameterizedTest
    @CsvSource({"1, 1", "5, 2", "10, 4", "13, 6", "64, 6", "256, 16"})
    void each_alone_takes_n_over_k_rounded_up(int n, int k) {
        Device device = wires(n);
        Kit kit = Rig.kit(k, Ties.ANY, PINS);
        Wiring wiring = Rig.wire(device, kit, Rig.eachAlone(Rig.names(device)));
        proven(wiring, (n + k - 1) / k);
        if (n > k) {
            assertThat(wiring.proof().argument())
                    .contains(n + " connections must each stand alone on one of " + k + " jacks, so " + n + "/" + k
                            + " rounded up = " + (n + k - 1) / k);
        }
    }

    /*
     * "n connections of one part, each against the tied rest, `any` ties, k ≥ 2 jacks and one fan-out of at least n − 1
     * branches: ⌈n/(k − 1)⌉ hookups, and one when n ≤ k."
     *
     *    w   w   w  w w w w w
     *    |   |   |   \\ | //
     *   [1] [2] [3]    [4]
     */
    @ParameterizedTest
    @CsvSource({"2, 2", "4, 4", "5, 4", "10, 6", "20, 6", "64, 6", "256, 16"})
    void each_against_the_rest_takes_n_over_k_less_one(int n, int k) {
        Device device = wires(n);
        Kit kit = Rig.kit(k, Ties.ANY, PINS, Rig.fanOut("fan", PLUG, SOCKET, n, 1));
        proven(Rig.wire(device, kit, Rig.eachAgainstTheRest(Rig.names(device))), n <= k ? 1 : (n + k - 2) / (k - 1));
    }

    /*
     * "With `runs` and one jack a bundle, only the two end jacks leave the rest in one run: ⌈n/2⌉." No lead in the kit
     * joins a second jack, so a bundle has one.
     *
     *    w  w w w w  w
     *    |   \\ //   |
     *   [1]   [2]   [3]   4 and 5 stay empty
     */
    @ParameterizedTest
    @CsvSource({"4, 3", "7, 5", "10, 6"})
    void each_against_the_rest_in_runs_takes_half_as_many(int n, int k) {
        Device device = wires(n);
        Kit kit = Rig.kit(k, Ties.RUNS, PINS, Rig.fanOut("fan", PLUG, SOCKET, n, 1));
        proven(Rig.wire(device, kit, Rig.eachAgainstTheRest(Rig.names(device))), (n + 1) / 2);
    }

    /*
     * "A bundle on two jacks can beat it." Three in one hookup on five jacks: the first wire also stands on jack 5,
     * through a small fan-out and a lead.
     *
     *    a   b   rest  c   a
     *   [1] [2]  [3]  [4] [5]     a: 2-4   b: 3-5   c: 1-3
     */
    @ParameterizedTest
    @CsvSource({"6, 5, 2", "9, 5, 3", "9, 6, 3"})
    void a_bundle_on_two_jacks_beats_half_as_many(int n, int k, int hookups) {
        Device device = wires(n);
        Kit kit = Rig.kit(
                k,
                Ties.RUNS,
                PINS,
                Rig.fanOut("fan", PLUG, SOCKET, n, 1),
                Rig.fanOut("two", PLUG, SOCKET, 2, 4),
                Rig.item("link", ItemKind.LEAD, PLUG, PLUG, 4));
        Wiring wiring = Rig.wire(device, kit, Rig.eachAgainstTheRest(Rig.names(device)));
        proven(wiring, hookups);
        assertThat(wiring.hookups())
                .anyMatch(hookup -> hookup.bundles().stream()
                        .anyMatch(bundle ->
                                !bundle.links().isEmpty() && bundle.jacks().size() > 1));
    }

    /*
     * "Laminar demands (any two nested or disjoint) always have an order of the jacks in which every tie is a run."
     *
     *   ( (a b) (c) ) ( d (e f) )
     */
    @Test
    void laminar_demands_always_have_an_order_in_runs() {
        Device device = wires(6);
        List<String> c = Rig.names(device);
        Kit kit = Rig.kit(6, Ties.RUNS, PINS);
        proven(
                Rig.wire(
                        device,
                        kit,
                        List.of(
                                Rig.reading("a", Demand.of(List.of(c.get(0)))),
                                Rig.reading("cross", Demand.of(List.of(c.get(5), c.get(1)))),
                                Rig.reading("cross2", Demand.of(List.of(c.get(5), c.get(1), c.get(3)))),
                                Rig.reading("other", Demand.of(List.of(c.get(0), c.get(4)))),
                                Rig.reading("all", Demand.of(c)))),
                1);
    }

    /*
     * "Demands that cross need not": the three pairs of three wires in one row.
     *
     *   a b   b c   a c      no order of a, b, c has all three as neighbours
     */
    @Test
    void crossing_demands_need_not_have_one() {
        Device device = wires(3);
        List<String> c = Rig.names(device);
        List<leadwright.planner.plan.Obligation> pairs = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            pairs.add(Rig.reading("pair" + i, Demand.of(List.of(c.get(i), c.get((i + 1) % 3)))));
        }
        proven(Rig.wire(device, Rig.kit(6, Ties.RUNS, PINS), pairs), 2);
        proven(Rig.wire(device, Rig.kit(6, Ties.ANY, PINS), pairs), 1);
    }

    /** Foil takes 75 s on and off, a bath 180 s and more: where both would do, foil. The shaft of a probe asks for the bath. */
    @Test
    void of_equal_hookups_the_one_with_less_handling() {
        Device device = Rig.device(
                Rig.part("finger", PartType.BF, "skin-surface", 1), Rig.part("shaft", PartType.BF, "probe-shaft", 1));
        Kit kit = Rig.kit(
                2,
                Ties.ANY,
                Rig.item("basin", ItemKind.CONTACT_AID, "saline-bath", PLUG, 2),
                Rig.item("wrap", ItemKind.CONTACT_AID, "foil-wrap", PLUG, 2));
        Hookup hookup = Rig.wire(device, kit, Rig.eachAlone(Rig.names(device)))
                .hookups()
                .get(0);
        assertThat(hookup.chainOf("finger.c1").orElseThrow().items()).containsExactly("wrap/1");
        assertThat(hookup.chainOf("shaft.c1").orElseThrow().items()).containsExactly("basin/1");
    }
}
