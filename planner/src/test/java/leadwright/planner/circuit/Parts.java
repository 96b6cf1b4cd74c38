package leadwright.planner.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;

/** Short words for circuits in tests, and comparison with printed figures. */
final class Parts {
    static final String EARTH = Circuit.EARTH;

    private Parts() {}

    static Circuit circuit(Element... elements) {
        return new Circuit(List.of(elements));
    }

    static Element.Resistance r(String name, String from, String to, double ohms) {
        return new Element.Resistance(name, from, to, ohms);
    }

    static Element.Capacitance c(String name, String from, String to, double farads) {
        return new Element.Capacitance(name, from, to, farads);
    }

    static Element.Voltage v(String name, String from, String to, double volts) {
        return new Element.Voltage(name, from, to, volts, 0);
    }

    static Element.Voltage v(String name, String from, String to, double volts, double degrees) {
        return new Element.Voltage(name, from, to, volts, degrees);
    }

    /** A current driven into {@code to}. */
    static Element.Current i(String name, String from, String to, double amperes) {
        return new Element.Current(name, from, to, amperes);
    }

    /** An ammeter: a source of no voltage, whose current is what flows from {@code from} to {@code to} through it. */
    static Element.Voltage ammeter(String name, String from, String to) {
        return v(name, to, from, 0);
    }

    /** Current of a capacitor straight across a source, A r.m.s. */
    static double across(double farads, double volts, double hertz) {
        return circuit(v("V", "line", EARTH, volts), c("C", "line", EARTH, farads))
                .solve(hertz)
                .current("V")
                .getMagnitude();
    }

    /** The figure as printed, to its last digit. */
    static void printed(double got, String figure, String source) {
        BigDecimal value = new BigDecimal(figure);
        assertThat(got)
                .as(source)
                .isCloseTo(value.doubleValue(), within(value.ulp().doubleValue() * 0.5000001));
    }
}
