package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.planner.Plan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class RowOrderTest {

    static IntStream seeds() {
        return IntStream.rangeClosed(1, 40);
    }

    /** Tries every order of the pins inside the parts. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void no_other_order_inside_the_parts_has_fewer_pairs_out_of_order(long seed) {
        Plan plan = RandomSketch.plan(seed, 3, 4, false);
        long fewest = Long.MAX_VALUE;
        for (List<Panel.Group> groups : orders(Panel.of(plan).groups())) {
            fewest = Math.min(fewest, pairs(new Panel(groups), plan));
        }
        assertThat(pairs(PinOrder.oneByOne(plan), plan)).isEqualTo(fewest);
    }

    /** Looking beyond wires one by one never adds a crossing, and in many of these plans it saves some. */
    @Test
    void gathering_first_crosses_less_in_all() {
        int saved = 0;
        for (int seed = 1; seed <= 100; seed++) {
            Plan plan = RandomSketch.plan(seed);
            int before = PinOrder.routed(plan, PinOrder.oneByOne(plan));
            int after = PinOrder.routed(plan, PinOrder.drawn(plan));
            assertThat(after).as("seed %d", seed).isLessThanOrEqualTo(before);
            saved += after < before ? 1 : 0;
        }
        assertThat(saved).isGreaterThan(25);
    }

    private static long pairs(Panel panel, Plan plan) {
        return plan.hookups().stream()
                .mapToLong(hookup -> PinOrder.pairsOutOfOrder(panel, hookup))
                .sum();
    }

    private static List<List<Panel.Group>> orders(List<Panel.Group> groups) {
        List<List<Panel.Group>> all = new ArrayList<>(List.of(List.of()));
        for (Panel.Group group : groups) {
            List<List<Panel.Group>> longer = new ArrayList<>();
            for (List<Panel.Pin> pins : group.below() ? List.of(group.pins()) : permutations(group.pins())) {
                for (List<Panel.Group> before : all) {
                    List<Panel.Group> with = new ArrayList<>(before);
                    with.add(group.with(pins));
                    longer.add(with);
                }
            }
            all = longer;
        }
        return all;
    }

    private static <T> List<List<T>> permutations(List<T> items) {
        if (items.isEmpty()) {
            return List.of(List.of());
        }
        List<List<T>> all = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            List<T> rest = new ArrayList<>(items);
            T first = rest.remove(i);
            for (List<T> permutation : permutations(rest)) {
                List<T> longer = new ArrayList<>(List.of(first));
                longer.addAll(permutation);
                all.add(longer);
            }
        }
        return all;
    }

    /**
     * Bundles cut from a row of the pins in which only wires of one part have changed places, jacks in the order of the
     * bundles: a drawing without crossings exists, and it must be found, all its wires straight.
     */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void wherever_no_crossing_is_needed_none_is_drawn(long seed) {
        Random random = new Random(seed);
        Device device = RandomSketch.plan(seed, 5, 6, false).device();
        List<String> pins = new ArrayList<>();
        for (String part : device.panel()) {
            List<String> own = new ArrayList<>(device.part(part).orElseThrow().connections().stream()
                    .map(Connection::name)
                    .toList());
            Collections.shuffle(own, random);
            pins.addAll(own);
        }
        Sketch sketch = new Sketch(
                device,
                Sketch.kit(Sketch.sample("k1-marrowgate-bench")
                        .replaceAll("count: 6", "count: 16")
                        .replaceAll("(id: spread,.*stock: )\\d+", "$120")
                        .replaceAll("(id: snap-pin,.*stock: )\\d+", "$150")));
        Sketch.Wiring wiring = sketch.hookup();
        int jack = 1;
        int at = 0;
        while (at < pins.size()) {
            int end = jack == 16 ? pins.size() : Math.min(pins.size(), at + 1 + random.nextInt(4));
            for (String pin : pins.subList(at, end)) {
                if (end == at + 1) {
                    wiring.join(jack, pin, "snap-pin");
                } else {
                    wiring.join(jack, pin, "snap-pin", "spread/" + jack);
                }
            }
            at = end;
            jack++;
        }
        for (Drawing drawing : Diagrams.draw(wiring.done().plan())) {
            Measured measured = new Measured(drawing.svg());
            assertThat(measured.crossings()).isEmpty();
            assertThat(measured.wires).allMatch(wire -> wire.segments().size() == 1);
        }
    }

    /** More classes of pins than are ordered exactly: still no worse than the order of the file. */
    @ParameterizedTest(name = "{0} wires")
    @ValueSource(ints = {15, 24, 40})
    void large_parts_are_never_made_worse(int wires) {
        long[][] cost = new long[wires][wires];
        Random random = new Random(wires);
        for (long[] row : cost) {
            for (int i = 0; i < wires; i++) {
                row[i] = random.nextInt(5);
            }
        }
        int[] order = RowOrder.improved(cost);
        assertThat(order).hasSize(wires).doesNotHaveDuplicates();
        assertThat(sum(order, cost))
                .isLessThanOrEqualTo(sum(IntStream.range(0, wires).toArray(), cost));
    }

    private static long sum(int[] order, long[][] cost) {
        long sum = 0;
        for (int i = 0; i < order.length; i++) {
            for (int j = i + 1; j < order.length; j++) {
                sum += cost[order[i]][order[j]];
            }
        }
        return sum;
    }
}
