package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import leadwright.planner.circuit.Circuit;
import leadwright.planner.circuit.Element;

/**
 * A circuit under construction. Nodes that are joined by something without resistance worth counting are tied: they become one
 * node, and what lies between them vanishes.
 */
final class Wiring {
    private final List<Template.Branch> branches = new ArrayList<>();
    private final List<Element> fixed = new ArrayList<>();
    private final Map<String, String> tied = new HashMap<>();

    Wiring add(Template.Branch branch) {
        branches.add(branch);
        return this;
    }

    Wiring addAll(List<Template.Branch> more) {
        branches.addAll(more);
        return this;
    }

    Wiring addFixed(List<? extends Element> more) {
        fixed.addAll(more);
        return this;
    }

    /** Makes one node of two. */
    Wiring tie(String a, String b) {
        String first = node(a);
        String second = node(b);
        if (first.equals(second)) {
            return this;
        }
        if (second.equals(Circuit.EARTH)) {
            tied.put(first, second);
        } else {
            tied.put(second, first);
        }
        return this;
    }

    /** The node that this one has become. */
    String node(String name) {
        String node = name;
        while (tied.containsKey(node)) {
            node = tied.get(node);
        }
        return node;
    }

    /** What each tied node has become. */
    Map<String, String> ties() {
        Map<String, String> all = new HashMap<>();
        tied.keySet().forEach(each -> all.put(each, node(each)));
        return all;
    }

    Template template() {
        List<Template.Branch> kept = new ArrayList<>();
        for (Template.Branch each : branches) {
            String from = node(each.from());
            String to = node(each.to());
            if (!from.equals(to)) {
                kept.add(each.between(from, to));
            }
        }
        List<Element> elements = new ArrayList<>();
        for (Element each : fixed) {
            String from = node(each.from());
            String to = node(each.to());
            if (from.equals(to) && each instanceof Element.Voltage) {
                throw new IllegalArgumentException(each.name() + " is shorted");
            }
            if (!from.equals(to)) {
                elements.add(moved(each, from, to));
            }
        }
        return new Template(kept, elements);
    }

    private static Element moved(Element each, String from, String to) {
        if (each instanceof Element.Resistance resistance) {
            return new Element.Resistance(each.name(), from, to, resistance.ohms());
        }
        if (each instanceof Element.Capacitance capacitance) {
            return new Element.Capacitance(each.name(), from, to, capacitance.farads());
        }
        if (each instanceof Element.Voltage voltage) {
            return new Element.Voltage(each.name(), from, to, voltage.volts(), voltage.degrees());
        }
        return new Element.Current(each.name(), from, to, ((Element.Current) each).amperes());
    }
}
