package leadwright.planner.circuit;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * A judge of the solver that has nothing in common with it: admittances between pairs of nodes, from which one node after another
 * is taken away by the star-mesh transformation, in decimal arithmetic of forty digits. Sources of voltage must stand
 * against earth; their answers are added.
 */
final class StarMesh {
    private static final MathContext DIGITS = new MathContext(40);
    private static final Number ZERO = new Number(BigDecimal.ZERO, BigDecimal.ZERO);

    private final Map<String, Map<String, Number>> between = new HashMap<>();

    private StarMesh() {}

    /** A complex number. */
    record Number(BigDecimal re, BigDecimal im) {
        static Number polar(double size, double degrees) {
            return new Number(
                    new BigDecimal(size * Math.cos(Math.toRadians(degrees))),
                    new BigDecimal(size * Math.sin(Math.toRadians(degrees))));
        }

        Number plus(Number o) {
            return new Number(re.add(o.re, DIGITS), im.add(o.im, DIGITS));
        }

        Number minus(Number o) {
            return new Number(re.subtract(o.re, DIGITS), im.subtract(o.im, DIGITS));
        }

        Number times(Number o) {
            return new Number(
                    re.multiply(o.re, DIGITS).subtract(im.multiply(o.im, DIGITS), DIGITS),
                    re.multiply(o.im, DIGITS).add(im.multiply(o.re, DIGITS), DIGITS));
        }

        Number over(Number o) {
            BigDecimal square = o.re.multiply(o.re, DIGITS).add(o.im.multiply(o.im, DIGITS), DIGITS);
            Number top = times(new Number(o.re, o.im.negate()));
            return new Number(top.re.divide(square, DIGITS), top.im.divide(square, DIGITS));
        }

        double size() {
            return Math.hypot(re.doubleValue(), im.doubleValue());
        }
    }

    /** Voltage of one node above another. */
    static Number voltage(Circuit circuit, double hertz, String above, String below) {
        Number sum = ZERO;
        for (Element each : circuit.elements()) {
            if (each instanceof Element.Voltage source) {
                sum = sum.plus(share(circuit, hertz, source, above).minus(share(circuit, hertz, source, below)));
            }
        }
        return sum;
    }

    /** Current that a source gives out, with all the others acting. */
    static Number current(Circuit circuit, double hertz, String name) {
        List<String> kept = new ArrayList<>(List.of(Circuit.EARTH));
        List<Element.Voltage> sources = new ArrayList<>();
        for (Element each : circuit.elements()) {
            if (each instanceof Element.Voltage source) {
                kept.add(source.from());
                sources.add(source);
            }
        }
        StarMesh mesh = of(circuit, hertz);
        mesh.reduceTo(kept);
        Element.Voltage own = sources.stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
        Number potential = Number.polar(own.volts(), own.degrees());
        Number sum = potential.times(mesh.admittance(own.from(), Circuit.EARTH));
        for (Element.Voltage other : sources) {
            if (!other.from().equals(own.from())) {
                Number difference = potential.minus(Number.polar(other.volts(), other.degrees()));
                sum = sum.plus(difference.times(mesh.admittance(own.from(), other.from())));
            }
        }
        return sum;
    }

    /** What one source alone, the others being shorts, makes of a node's potential. */
    private static Number share(Circuit circuit, double hertz, Element.Voltage source, String node) {
        if (!source.to().equals(Circuit.EARTH)) {
            throw new IllegalArgumentException(source.name() + " does not stand against earth");
        }
        List<String> shorted = new ArrayList<>(List.of(Circuit.EARTH));
        for (Element each : circuit.elements()) {
            if (each instanceof Element.Voltage other && !other.name().equals(source.name())) {
                shorted.add(other.from());
            }
        }
        if (shorted.contains(node)) {
            return ZERO;
        }
        Number volts = Number.polar(source.volts(), source.degrees());
        if (node.equals(source.from())) {
            return volts;
        }
        StarMesh mesh = of(circuit, hertz);
        List<String> kept = new ArrayList<>(shorted);
        kept.add(source.from());
        kept.add(node);
        mesh.reduceTo(kept);
        Number toSource = mesh.admittance(node, source.from());
        Number all = toSource;
        for (String other : shorted) {
            all = all.plus(mesh.admittance(node, other));
        }
        return toSource.times(volts).over(all);
    }

    private static StarMesh of(Circuit circuit, double hertz) {
        StarMesh mesh = new StarMesh();
        BigDecimal omega = new BigDecimal(2 * Math.PI * hertz);
        for (Element each : circuit.elements()) {
            BigDecimal value = new BigDecimal(each.value());
            if (each instanceof Element.Resistance) {
                Number siemens = new Number(BigDecimal.ONE.divide(value, DIGITS), BigDecimal.ZERO);
                mesh.join(each.from(), each.to(), siemens);
            } else if (each instanceof Element.Capacitance && hertz > 0) {
                mesh.join(each.from(), each.to(), new Number(BigDecimal.ZERO, omega.multiply(value, DIGITS)));
            }
        }
        return mesh;
    }

    private Number admittance(String a, String b) {
        return between.getOrDefault(a, Map.of()).getOrDefault(b, ZERO);
    }

    private void join(String a, String b, Number siemens) {
        between.computeIfAbsent(a, each -> new HashMap<>()).merge(b, siemens, Number::plus);
        between.computeIfAbsent(b, each -> new HashMap<>()).merge(a, siemens, Number::plus);
    }

    private void reduceTo(List<String> kept) {
        Set<String> left = new TreeSet<>(between.keySet());
        kept.forEach(left::remove);
        while (!left.isEmpty()) {
            String next = left.stream()
                    .min(Comparator.comparingInt(node -> between.get(node).size()))
                    .orElseThrow();
            left.remove(next);
            takeAway(next);
        }
    }

    private void takeAway(String node) {
        Map<String, Number> star = between.remove(node);
        star.keySet().forEach(each -> between.get(each).remove(node));
        Number all = star.values().stream().reduce(ZERO, Number::plus);
        List<String> ends = List.copyOf(star.keySet());
        for (int i = 0; i < ends.size(); i++) {
            for (int j = i + 1; j < ends.size(); j++) {
                Number through =
                        star.get(ends.get(i)).times(star.get(ends.get(j))).over(all);
                join(ends.get(i), ends.get(j), through);
            }
        }
    }
}
