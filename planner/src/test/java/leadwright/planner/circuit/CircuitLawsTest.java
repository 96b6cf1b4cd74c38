package leadwright.planner.circuit;

import static leadwright.planner.circuit.Parts.EARTH;
import static leadwright.planner.circuit.Parts.c;
import static leadwright.planner.circuit.Parts.circuit;
import static leadwright.planner.circuit.Parts.i;
import static leadwright.planner.circuit.Parts.r;
import static leadwright.planner.circuit.Parts.v;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.ejml.data.Complex_F64;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every linear circuit; the seed stands in each test's name. */
class CircuitLawsTest {
    private static final double HERTZ = 50;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 200);
    }

    private static Complex_F64 current(Element element, Solved solved, double hertz) {
        Complex_F64 volts = solved.voltage(element.from(), element.to());
        if (element instanceof Element.Resistance) {
            return volts.times(new Complex_F64(1 / element.value(), 0));
        }
        if (element instanceof Element.Capacitance) {
            return volts.times(new Complex_F64(0, 2 * Math.PI * hertz * element.value()));
        }
        if (element instanceof Element.Voltage) {
            return solved.current(element.name()).times(new Complex_F64(-1, 0));
        }
        return new Complex_F64(element.value(), 0);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void currents_at_a_node_and_voltages_of_sources(long seed) {
        Circuit circuit = RandomCircuits.any(seed);
        double hertz = seed % 5 == 0 ? 1000 : HERTZ;
        Solved solved = circuit.solve(hertz);
        Map<String, Complex_F64> sums = new HashMap<>();
        Map<String, Double> sizes = new HashMap<>();
        for (Element each : circuit.elements()) {
            Complex_F64 amperes = current(each, solved, hertz);
            sums.merge(each.from(), amperes, Complex_F64::plus);
            sums.merge(each.to(), amperes.times(new Complex_F64(-1, 0)), Complex_F64::plus);
            // A voltage is known to sixteen digits of the greatest about, however small it is.
            double size = amperes.getMagnitude() + greatest(circuit, solved) / impedance(each, hertz);
            sizes.merge(each.from(), size, Math::max);
            sizes.merge(each.to(), size, Math::max);
            if (each instanceof Element.Voltage source) {
                Complex_F64 volts = solved.voltage(each.from(), each.to());
                double angle = Math.toRadians(source.degrees());
                assertThat(volts.real).isCloseTo(source.volts() * Math.cos(angle), within(1e-9));
                assertThat(volts.imaginary).isCloseTo(source.volts() * Math.sin(angle), within(1e-9));
            }
        }
        // Earth has no row of its own: what is left over at all the others ends there.
        sizes.put(EARTH, sizes.values().stream().mapToDouble(each -> each).sum());
        sums.forEach(
                (node, sum) -> assertThat(sum.getMagnitude()).as(node).isLessThanOrEqualTo(1e-11 * sizes.get(node)));
    }

    private static double greatest(Circuit circuit, Solved solved) {
        return circuit.nodes().stream()
                .mapToDouble(node -> solved.volts(node, EARTH))
                .max()
                .orElse(0);
    }

    private static double impedance(Element each, double hertz) {
        if (each instanceof Element.Resistance) {
            return each.value();
        }
        return each instanceof Element.Capacitance ? 1 / (2 * Math.PI * hertz * each.value()) : Double.MAX_VALUE;
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void each_source_alone_adds_up_to_all(long seed) {
        Circuit circuit = RandomCircuits.any(seed);
        Solved all = circuit.solve(HERTZ);
        List<Element> sources = circuit.elements().stream()
                .filter(each -> each instanceof Element.Voltage || each instanceof Element.Current)
                .toList();
        Map<String, Complex_F64> sums = new HashMap<>();
        for (Element alone : sources) {
            List<Element> silenced = circuit.elements().stream()
                    .map(each -> each.equals(alone) ? each : silent(each))
                    .toList();
            Solved one = new Circuit(silenced).solve(HERTZ);
            circuit.nodes().forEach(node -> sums.merge(node, one.voltage(node, EARTH), Complex_F64::plus));
        }
        double scale = greatest(circuit, all);
        circuit.nodes()
                .forEach(node -> assertThat(
                                sums.get(node).minus(all.voltage(node, EARTH)).getMagnitude())
                        .isLessThanOrEqualTo(1e-8 * scale));
    }

    private static Element silent(Element each) {
        if (each instanceof Element.Voltage) {
            return v(each.name(), each.from(), each.to(), 0);
        }
        return each instanceof Element.Current ? i(each.name(), each.from(), each.to(), 0) : each;
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void what_is_driven_here_and_read_there_is_the_same_the_other_way_round(long seed) {
        List<Element> passive = RandomCircuits.passiveOnly(seed);
        List<String> nodes = new Circuit(passive).nodes();
        Random random = new Random(seed);
        String a = nodes.get(random.nextInt(nodes.size()));
        String b = nodes.get(random.nextInt(nodes.size()));
        Complex_F64 there = drive(passive, a).voltage(b, EARTH);
        Complex_F64 here = drive(passive, b).voltage(a, EARTH);
        assertThat(there.minus(here).getMagnitude()).isLessThanOrEqualTo(1e-9 * there.getMagnitude());
    }

    private static Solved drive(List<Element> passive, String node) {
        List<Element> all = new ArrayList<>(passive);
        all.add(i("drive", EARTH, node, 1));
        return new Circuit(all).solve(HERTZ);
    }

    /** Voltages of one circuit with currents of another of the same arrangement: their products add up to nothing. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void tellegen(long seed) {
        Circuit one = RandomCircuits.any(seed);
        Random random = new Random(seed);
        Circuit other = new Circuit(one.elements().stream()
                .map(each -> changed(each, Math.pow(10, random.nextDouble() - 0.5)))
                .toList());
        Solved volts = one.solve(HERTZ);
        Solved amperes = other.solve(HERTZ);
        Complex_F64 sum = new Complex_F64(0, 0);
        double size = 0;
        for (Element each : other.elements()) {
            Complex_F64 power = volts.voltage(each.from(), each.to()).times(current(each, amperes, HERTZ));
            sum = sum.plus(power);
            size += power.getMagnitude();
        }
        assertThat(sum.getMagnitude()).isLessThanOrEqualTo(1e-7 * size);
    }

    private static Element changed(Element each, double factor) {
        if (each instanceof Element.Resistance) {
            return r(each.name(), each.from(), each.to(), each.value() * factor);
        }
        if (each instanceof Element.Capacitance) {
            return c(each.name(), each.from(), each.to(), each.value() * factor);
        }
        if (each instanceof Element.Voltage source) {
            return v(each.name(), each.from(), each.to(), each.value() * factor, source.degrees() + 90 * factor);
        }
        return i(each.name(), each.from(), each.to(), each.value() * factor);
    }

    /**
     * The slope of the adjoint network against a real change: an admittance y between two nodes, of any size, changes a voltage by
     * slope y / (1 + y Z), where Z is what is seen between them.
     */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void slopes_of_the_adjoint_network_foretell_a_change(long seed) {
        Circuit circuit = RandomCircuits.any(seed);
        Solved before = circuit.solve(HERTZ);
        List<String> nodes = new ArrayList<>(circuit.nodes());
        nodes.add(EARTH);
        Random random = new Random(seed);
        String above = nodes.get(random.nextInt(nodes.size() - 1));
        String a = nodes.get(random.nextInt(nodes.size() - 1));
        String b = nodes.get(random.nextInt(nodes.size()));
        if (a.equals(b)) {
            b = EARTH;
        }
        Complex_F64 slope = before.answers(above, EARTH).to(a, b);
        Complex_F64 seen = before.answers(a, b).to(a, b);
        // answers(a, b).to(a, b) is -v(ab) Z.
        Complex_F64 volts = before.voltage(a, b);
        for (double siemens : new double[] {1e-12, 1e-9, 1e-6, 1e-3}) {
            Solved after = circuit.with(List.of(r("more", a, b, 1 / siemens))).solve(HERTZ);
            Complex_F64 change = after.voltage(above, EARTH).minus(before.voltage(above, EARTH));
            Complex_F64 foretold = slope.times(new Complex_F64(siemens, 0));
            if (volts.getMagnitude() > 0) {
                Complex_F64 loading = new Complex_F64(1, 0)
                        .minus(seen.times(new Complex_F64(siemens, 0)).divide(volts));
                foretold = foretold.divide(loading);
            }
            double noise = 1e-8 * greatest(circuit, before);
            assertThat(change.minus(foretold).getMagnitude())
                    .isLessThanOrEqualTo(1e-6 * foretold.getMagnitude() + noise);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void agrees_with_star_mesh_reduction_in_forty_digits(long seed) {
        Circuit circuit = RandomCircuits.fed(seed);
        Solved solved = circuit.solve(HERTZ);
        double scale = greatest(circuit, solved);
        for (String node : circuit.nodes().subList(0, 3)) {
            StarMesh.Number exact = StarMesh.voltage(circuit, HERTZ, node, EARTH);
            Complex_F64 got = solved.voltage(node, EARTH);
            double error = Math.hypot(
                    got.real - exact.re().doubleValue(),
                    got.imaginary - exact.im().doubleValue());
            assertThat(error).as(node).isLessThanOrEqualTo(1e-6 * exact.size() + 1e-12 * scale);
        }
        for (Element each : circuit.elements()) {
            if (each instanceof Element.Voltage) {
                double exact = StarMesh.current(circuit, HERTZ, each.name()).size();
                assertThat(solved.current(each.name()).getMagnitude())
                        .as(each.name())
                        .isCloseTo(exact, within(1e-4 * exact));
            }
        }
    }

    @Test
    void an_island_has_no_currents_and_disturbs_nothing() {
        Element[] main = {v("V", "a", EARTH, 10), r("R", "a", "b", 100), r("S", "b", EARTH, 100)};
        Solved alone = circuit(main).solve(HERTZ);
        Solved both = circuit(main[0], main[1], main[2], c("C", "x", "y", 1e-9), r("T", "y", "z", 5))
                .solve(HERTZ);
        assertThat(both.volts("b", EARTH)).isEqualTo(alone.volts("b", EARTH)).isCloseTo(5, within(1e-12));
        assertThat(both.volts("x", "y")).isZero();
        assertThat(both.volts("y", "z")).isZero();
    }

    @Test
    void an_island_with_a_source_of_its_own() {
        Solved solved = circuit(v("V", "x", "y", 12), r("T", "x", "y", 6), r("R", "a", EARTH, 1))
                .solve(0);
        assertThat(solved.volts("x", "y")).isCloseTo(12, within(1e-12));
        assertThat(solved.current("V").getMagnitude()).isCloseTo(2, within(1e-12));
        assertThat(solved.volts("a", EARTH)).isZero();
    }

    @Test
    void a_capacitance_makes_an_island_of_what_is_behind_it_at_direct_current() {
        Circuit circuit = circuit(v("V", "a", EARTH, 10), c("C", "a", "b", 1e-6), r("R", "b", "d", 100));
        assertThat(circuit.solve(0).current("V").getMagnitude()).isZero();
        assertThat(circuit.solve(HERTZ).volts("b", EARTH)).isCloseTo(10, within(1e-9));
    }

    @Test
    void sources_that_contradict_each_other_are_refused() {
        assertContradiction(v("V", "a", EARTH, 10), v("W", "a", EARTH, 11), r("R", "a", EARTH, 3));
        assertContradiction(v("V", "a", EARTH, 10), v("W", "b", "a", 1), v("X", "b", EARTH, 12), r("R", "a", "b", 3));
        // One more, and it is no source of trouble any more.
        assertThat(circuit(v("V", "a", EARTH, 10), v("W", "b", "a", 1), r("R", "a", "b", 3))
                        .solve(HERTZ)
                        .volts("b", EARTH))
                .isCloseTo(11, within(1e-12));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void a_loop_of_sources_is_refused_in_any_circuit(long seed) {
        Circuit circuit = RandomCircuits.fed(seed);
        Element.Voltage source = circuit.elements().stream()
                .filter(Element.Voltage.class::isInstance)
                .map(Element.Voltage.class::cast)
                .findFirst()
                .orElseThrow();
        String other = circuit.nodes().stream()
                .filter(node -> circuit.elements().stream()
                        .noneMatch(each ->
                                each instanceof Element.Voltage && each.from().equals(node)))
                .findFirst()
                .orElseThrow();
        Circuit loop = circuit.with(
                List.of(v("extra-1", source.from(), other, 0.1), v("extra-2", other, EARTH, source.volts() / 3)));
        assertThatThrownBy(() -> loop.solve(HERTZ))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("contradict");
    }

    private static void assertContradiction(Element... elements) {
        assertThatThrownBy(() -> circuit(elements).solve(HERTZ))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("contradict");
    }

    @Test
    void a_current_without_a_way_back_is_refused() {
        assertThatThrownBy(() ->
                        circuit(i("I", EARTH, "a", 1), r("R", "a", "b", 1)).solve(HERTZ))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no way back");
    }

    @Test
    void what_is_no_circuit_is_refused() {
        assertThatThrownBy(() -> circuit(r("R", "a", "b", 1), r("R", "b", "c", 1)))
                .hasMessageContaining("two elements are called R");
        assertThatThrownBy(() -> circuit(r("R", "a", "a", 1))).hasMessageContaining("both ends on a");
        for (double value : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> r("R", "a", "b", value)).isInstanceOf(IllegalArgumentException.class);
            assertThatThrownBy(() -> c("C", "a", "b", value)).isInstanceOf(IllegalArgumentException.class);
        }
        Solved solved = circuit(v("V", "a", EARTH, 1), r("R", "a", EARTH, 1)).solve(HERTZ);
        assertThatThrownBy(() -> solved.voltage("nowhere", EARTH)).hasMessageContaining("nowhere");
        assertThatThrownBy(() -> solved.current("R")).hasMessageContaining("R");
    }
}
