package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartType;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.Test;

/** What ranks first where it can be worked out by hand. Joining and parting: snap 6/3, 4 mm 5/3. */
class RankingFactsTest {

    private static Device wires(int count) {
        return Rig.device(Rig.part("p", PartType.CF, "snap-socket", count));
    }

    private static Kit snaps(int jacks, Ties ties, int snaps) {
        return Rig.kit(jacks, ties, Rig.item("snap", ItemKind.ADAPTER, "snap-stud", Rig.PLUG, snaps));
    }

    /*
     *   4 wires, each alone, 2 jacks: two hookups. The adapters stay in the jacks:
     *   2 · (6 + 5) to set up, then 2 · (3 + 6) to move two studs: 22 + 18 = 40 s.
     *   Moving the plugs as well would take 2 · (3 + 3 + 6 + 5).
     */
    @Test
    void adapters_stay_in_their_jacks() {
        Device device = wires(4);
        Wiring wiring = Rig.wire(device, snaps(2, Ties.ANY, 4), Rig.eachAlone(Rig.names(device)));

        assertThat(wiring.hookups()).hasSize(2);
        assertThat(wiring.proof().argument())
                .contains("ranks first: 40 s of plugging, 8 contacts, 2 items")
                .contains("0 crossings");
    }

    /*
     *   p.c1 -- [1]      each in the order of the panel: a free row never crosses
     *   p.c2 -- [2]      wires that stand on a jack each
     *   p.c3 -- [3]
     */
    @Test
    void wires_on_a_jack_each_do_not_cross() {
        Device device = wires(3);
        Wiring wiring = Rig.wire(device, snaps(3, Ties.ANY, 3), Rig.eachAlone(Rig.names(device)));

        assertThat(jacks(wiring.hookups().get(0))).containsExactly(1, 2, 3);
        assertThat(wiring.proof().argument()).contains("ranks first: 33 s of plugging, 6 contacts, 3 items");
    }

    /*
     *   c1 and c3 are tied, and the tester ties neighbours: c2 has to leave the middle.
     *   c2 c1 c3 and c1 c3 c2 cross once each, anything else that keeps the tie more.
     */
    @Test
    void a_tie_stays_a_run_though_a_wire_crosses() {
        Device device = wires(3);
        List<Obligation> readings = new ArrayList<>(Rig.eachAlone(Rig.names(device)));
        readings.add(Rig.reading("tied", Demand.of(List.of("p.c1", "p.c3"))));
        Wiring wiring = Rig.wire(device, snaps(3, Ties.RUNS, 3), readings);

        List<Integer> jacks = jacks(wiring.hookups().get(0));
        assertThat(Math.abs(jacks.get(0) - jacks.get(2))).isEqualTo(1);
        assertThat(wiring.proof().argument()).contains("1 crossings");
    }

    /** Sixteen wires on sixteen jacks are too many to try everything: the crossings are the fewest all the same. */
    @Test
    void a_full_row_is_untangled() {
        Device device = wires(16);
        List<Obligation> readings = new ArrayList<>(Rig.eachAlone(Rig.names(device)));
        readings.add(Rig.reading("ends", Demand.of(List.of("p.c1", "p.c16"))));
        Wiring wiring = Rig.wire(device, snaps(16, Ties.RUNS, 16), readings);

        // One of the tied two must pass the fourteen between them.
        List<Integer> jacks = jacks(wiring.hookups().get(0));
        long crossings = IntStream.range(0, 16)
                .mapToLong(a -> IntStream.range(a + 1, 16)
                        .filter(b -> jacks.get(a) > jacks.get(b))
                        .count())
                .sum();
        assertThat(Math.abs(jacks.get(0) - jacks.get(15))).isEqualTo(1);
        assertThat(crossings).isEqualTo(14);
        assertThat(wiring.proof().argument()).contains("ranked by exchange");
    }

    /** The row of jacks with the fewest crossings against every permutation. */
    @Test
    void the_order_of_jacks_is_the_best_of_all_permutations_that_keep_the_ties() {
        java.util.Random random = new java.util.Random(5);
        for (int round = 0; round < 300; round++) {
            int n = 2 + random.nextInt(5);
            long[][] cost = new long[n][n];
            for (long[] row : cost) {
                for (int b = 0; b < n; b++) {
                    row[b] = random.nextInt(4);
                }
            }
            List<Integer> ties = new ArrayList<>();
            for (int t = random.nextInt(3); t > 0; t--) {
                ties.add(1 + random.nextInt((1 << n) - 1));
            }
            long least = least(cost, ties, new ArrayList<>());
            long found =
                    JackOrder.order(cost, ties).map(order -> sum(cost, order)).orElse(Long.MAX_VALUE);
            assertThat(found).as("round " + round).isEqualTo(least);
        }
    }

    private static long least(long[][] cost, List<Integer> ties, List<Integer> so) {
        if (so.size() == cost.length) {
            boolean runs = ties.stream().allMatch(tie -> {
                int[] places = IntStream.range(0, so.size())
                        .filter(i -> (tie >> so.get(i) & 1) == 1)
                        .toArray();
                return places[places.length - 1] - places[0] == places.length - 1;
            });
            return runs ? sum(cost, so.stream().mapToInt(Integer::intValue).toArray()) : Long.MAX_VALUE;
        }
        long least = Long.MAX_VALUE;
        for (int next = 0; next < cost.length; next++) {
            if (!so.contains(next)) {
                so.add(next);
                least = Math.min(least, least(cost, ties, so));
                so.remove(so.size() - 1);
            }
        }
        return least;
    }

    private static long sum(long[][] cost, int[] order) {
        long sum = 0;
        for (int i = 0; i < order.length; i++) {
            for (int j = i + 1; j < order.length; j++) {
                sum += cost[order[i]][order[j]];
            }
        }
        return sum;
    }

    /** Jack of each wire, in the order of the panel. */
    private static List<Integer> jacks(Hookup hookup) {
        return hookup.chains().stream().map(chain -> chain.jack()).toList();
    }
}
