package leadwright.planner.circuit;

import java.util.ArrayList;
import java.util.List;

/**
 * A measuring network that stands for the body: what is between its two terminals, where the voltmeter is, and by what its
 * voltage is divided to give a current.
 *
 * @param elements between {@link #IN}, {@link #OUT} and {@link #BACK}, and nodes of its own
 * @param divisor Ω
 */
public record Network(String name, List<Element> elements, double divisor) {
    /** Where the current enters. */
    public static final String IN = "in";
    /** Where the voltmeter is, against {@link #BACK}. */
    public static final String OUT = "out";
    /** Where the current leaves. */
    public static final String BACK = "back";

    public Network {
        elements = List.copyOf(elements);
    }

    /**
     * IEC 60601-1:2005/AMD1:2012/COR1:2014, Figure 12: R2 1 kΩ across the terminals, R1 10 kΩ and C1 15 nF in series across it, the
     * voltmeter across C1; the current is its voltage divided by 1 kΩ.
     */
    public static Network iec60601() {
        return new Network(
                "iec-60601",
                List.of(
                        new Element.Resistance("R2", IN, BACK, 1000),
                        new Element.Resistance("R1", IN, OUT, 10_000),
                        new Element.Capacitance("C1", OUT, BACK, 15e-9)),
                1000);
    }

    /**
     * IEC 60990, Figure 4, for perception and startle: 1.5 kΩ beside 0.22 µF, in series with 500 Ω; across these 10 kΩ and 22 nF in
     * series, the voltmeter across the 22 nF; the current is its voltage divided by 500 Ω.
     */
    public static Network iec60990() {
        List<Element> elements = new ArrayList<>(body());
        elements.add(new Element.Resistance("R1", "body", OUT, 10_000));
        elements.add(new Element.Capacitance("C1", OUT, BACK, 22e-9));
        return new Network("iec-60990", elements, 500);
    }

    /** IEC 60990, Figure 3, without weighting: the voltmeter is across the 500 Ω. */
    public static Network iec60990Unweighted() {
        return new Network(
                "iec-60990-unweighted",
                List.of(
                        new Element.Resistance("RS", IN, OUT, 1500),
                        new Element.Capacitance("CS", IN, OUT, 0.22e-6),
                        new Element.Resistance("RB", OUT, BACK, 500)),
                500);
    }

    private static List<Element> body() {
        return List.of(
                new Element.Resistance("RS", IN, "body", 1500),
                new Element.Capacitance("CS", IN, "body", 0.22e-6),
                new Element.Resistance("RB", "body", BACK, 500));
    }

    /** A voltmeter across the output. */
    public Network metered(double ohms, double farads) {
        List<Element> all = new ArrayList<>(elements);
        all.add(new Element.Resistance("RM", OUT, BACK, ohms));
        all.add(new Element.Capacitance("CM", OUT, BACK, farads));
        return new Network(name, all, divisor);
    }

    /** The same with each value multiplied by the factor given for its element's name. */
    public Network scaled(java.util.function.ToDoubleFunction<String> factor) {
        return new Network(
                name, elements.stream().map(each -> scaled(each, factor)).toList(), divisor);
    }

    private static Element scaled(Element each, java.util.function.ToDoubleFunction<String> factor) {
        if (each instanceof Element.Resistance resistance) {
            return new Element.Resistance(
                    each.name(), each.from(), each.to(), resistance.ohms() * factor.applyAsDouble(each.name()));
        }
        if (each instanceof Element.Capacitance capacitance) {
            return new Element.Capacitance(
                    each.name(), each.from(), each.to(), capacitance.farads() * factor.applyAsDouble(each.name()));
        }
        return each;
    }

    /** Its elements put between two nodes of a circuit; what is its own gets the prefix. */
    public List<Element> between(String prefix, String in, String back) {
        List<Element> placed = new ArrayList<>();
        for (Element each : elements) {
            String from = node(prefix, each.from(), in, back);
            String to = node(prefix, each.to(), in, back);
            if (each instanceof Element.Resistance resistance) {
                placed.add(new Element.Resistance(prefix + each.name(), from, to, resistance.ohms()));
            } else if (each instanceof Element.Capacitance capacitance) {
                placed.add(new Element.Capacitance(prefix + each.name(), from, to, capacitance.farads()));
            }
        }
        return placed;
    }

    /** The node of its voltmeter once it is placed. */
    public static String out(String prefix) {
        return prefix + OUT;
    }

    private static String node(String prefix, String own, String in, String back) {
        return switch (own) {
            case IN -> in;
            case BACK -> back;
            default -> prefix + own;
        };
    }

    /** |voltmeter's voltage / current that enters|, Ω. */
    public double transferImpedance(double hertz) {
        return driven(hertz).volts(OUT, Circuit.EARTH);
    }

    /** Impedance between its terminals, Ω. */
    public double inputImpedance(double hertz) {
        return driven(hertz).volts(IN, Circuit.EARTH);
    }

    /** What it shows of a current of this frequency, as a share of it. */
    public double weight(double hertz) {
        return transferImpedance(hertz) / divisor;
    }

    private Solved driven(double hertz) {
        List<Element> all = new ArrayList<>(between("", IN, Circuit.EARTH));
        all.add(new Element.Current("I1", Circuit.EARTH, IN, 1));
        return new Circuit(all).solve(hertz);
    }
}
