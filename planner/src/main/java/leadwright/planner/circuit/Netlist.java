package leadwright.planner.circuit;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A circuit in the plain form that circuit simulators of the SPICE family read: one analysis at one frequency, one value printed,
 * as the magnitude of the voltage at a node of its own called {@code reading}.
 */
public final class Netlist {
    private static final String READING = "reading";

    private Netlist() {}

    /** What is printed. */
    public sealed interface Printed {
        /** What a volt, or an ampere, is printed as. */
        double factor();

        /** The voltage of one node above another. */
        record Volts(String above, String below, double factor) implements Printed {}

        /** The sum of the currents that sources of voltage give out. */
        record Amperes(List<String> sources, double factor) implements Printed {
            public Amperes {
                sources = List.copyOf(sources);
            }
        }
    }

    /**
     * Writes a circuit.
     *
     * @param title first line; control characters are replaced, since a line break would start an element
     * @throws IllegalArgumentException where what is to be printed is not in the circuit
     */
    public static String of(String title, Circuit circuit, double hertz, Printed printed) {
        Map<String, String> numbers = new LinkedHashMap<>();
        numbers.put(Circuit.EARTH, "0");
        circuit.nodes().forEach(node -> numbers.put(node, "n" + numbers.size()));
        StringBuilder text = new StringBuilder();
        line(text, "* " + clean(title));
        numbers.forEach((node, number) -> {
            if (!node.equals(Circuit.EARTH)) {
                line(text, "* " + number + " = " + clean(node));
            }
        });
        Map<String, String> sources = new HashMap<>();
        int count = 0;
        for (Element each : circuit.elements()) {
            String name = letter(each) + (++count);
            String ends = " " + numbers.get(each.from()) + " " + numbers.get(each.to()) + " ";
            line(text, name + ends + value(each, hertz) + " ; " + clean(each.name()));
            if (each instanceof Element.Voltage) {
                sources.put(each.name(), name);
            }
        }
        // What nothing joins to earth has no potential of its own; a way to earth carries nothing there.
        Equations.islands(circuit, hertz).forEach(node -> {
            String number = numbers.get(node);
            line(text, "RG" + number + " " + number + " 0 1e6");
        });
        reading(text, printed, numbers, sources);
        if (hertz > 0) {
            // Without a search for the state at d.c., of which there is none where only capacitances lead to a node.
            line(text, ".options noopac");
            line(text, ".ac lin 1 " + number(hertz) + " " + number(hertz));
            line(text, ".print ac vm(" + READING + ")");
        } else {
            line(text, ".op");
        }
        line(text, ".end");
        return text.toString();
    }

    private static void reading(
            StringBuilder text, Printed printed, Map<String, String> numbers, Map<String, String> sources) {
        if (printed instanceof Printed.Volts volts) {
            String pair = known(numbers, volts.above()) + " " + known(numbers, volts.below());
            line(text, "E1 " + READING + " 0 " + pair + " " + number(volts.factor()));
        } else if (printed instanceof Printed.Amperes amperes) {
            int count = 0;
            for (String source : amperes.sources()) {
                // A simulator counts what flows into a source at its upper end.
                String control = known(sources, source) + " " + number(amperes.factor());
                line(text, "F" + (++count) + " " + READING + " 0 " + control);
            }
        }
        line(text, "RREAD " + READING + " 0 1");
    }

    private static String known(Map<String, String> names, String name) {
        String found = names.get(name);
        if (found == null) {
            throw new IllegalArgumentException("nothing called " + name + " to print");
        }
        return found;
    }

    private static void line(StringBuilder text, String line) {
        text.append(line).append('\n');
    }

    private static String letter(Element each) {
        if (each instanceof Element.Resistance) {
            return "R";
        }
        if (each instanceof Element.Capacitance) {
            return "C";
        }
        return each instanceof Element.Voltage ? "V" : "I";
    }

    private static String value(Element each, double hertz) {
        if (each instanceof Element.Resistance resistance) {
            return number(resistance.ohms());
        }
        if (each instanceof Element.Capacitance capacitance) {
            return number(capacitance.farads());
        }
        String kind = hertz > 0 ? "DC 0 AC " : "DC ";
        if (each instanceof Element.Voltage voltage) {
            double direct = voltage.volts() * Math.cos(Math.toRadians(voltage.degrees()));
            return hertz > 0 ? kind + number(voltage.volts()) + " " + number(voltage.degrees()) : kind + number(direct);
        }
        return kind + number(((Element.Current) each).amperes());
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.9g", value);
    }

    /** Text that stays a comment. */
    private static String clean(String text) {
        return List.of(text.split("\\R|\\p{Cntrl}")).stream().reduce("", (a, b) -> a.isEmpty() ? b : a + " " + b);
    }
}
