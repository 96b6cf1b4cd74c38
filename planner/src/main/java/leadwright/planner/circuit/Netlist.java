package leadwright.planner.circuit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A circuit in the plain form that circuit simulators of the SPICE family read: one analysis at one frequency, one voltage
 * printed.
 */
public final class Netlist {
    private Netlist() {}

    /**
     * Writes a circuit.
     *
     * @param title first line; control characters are replaced, since a line break would start an element
     * @param above node whose voltage is printed
     * @param below against which
     */
    public static String of(String title, Circuit circuit, double hertz, String above, String below) {
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
        int count = 0;
        for (Element each : circuit.elements()) {
            String ends = " " + numbers.get(each.from()) + " " + numbers.get(each.to()) + " ";
            line(text, letter(each) + (++count) + ends + value(each, hertz) + " ; " + clean(each.name()));
        }
        // A node that only capacitances reach has no d.c. potential, which the simulator wants to find first.
        numbers.values().forEach(number -> {
            if (!number.equals("0")) {
                line(text, "RG" + number + " " + number + " 0 1e15");
            }
        });
        String printed = numbers.get(above) + (numbers.get(below).equals("0") ? "" : "," + numbers.get(below));
        if (hertz > 0) {
            line(text, ".ac lin 1 " + number(hertz) + " " + number(hertz));
            line(text, ".print ac vm(" + printed + ")");
        } else {
            line(text, ".op");
            line(text, ".print op v(" + printed + ")");
        }
        line(text, ".end");
        return text.toString();
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
