package leadwright.planner.circuit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * Elements that share nodes by name.
 *
 * @param elements in the order in which a netlist lists them; names are unique
 */
public record Circuit(List<Element> elements) {
    /** The node whose potential is zero. */
    public static final String EARTH = "0";

    /** @throws IllegalArgumentException where two elements have one name, or one has both its ends on one node */
    public Circuit {
        elements = List.copyOf(elements);
        Set<String> names = new HashSet<>();
        for (Element each : elements) {
            if (!names.add(each.name())) {
                throw new IllegalArgumentException("two elements are called " + each.name());
            }
            if (each.from().equals(each.to())) {
                throw new IllegalArgumentException(each.name() + " has both ends on " + each.from());
            }
        }
    }

    /** All nodes but earth, in order of first mention. */
    public List<String> nodes() {
        Set<String> nodes = new LinkedHashSet<>();
        for (Element each : elements) {
            nodes.add(each.from());
            nodes.add(each.to());
        }
        nodes.remove(EARTH);
        return List.copyOf(nodes);
    }

    public Circuit with(List<? extends Element> more) {
        List<Element> all = new ArrayList<>(elements);
        all.addAll(more);
        return new Circuit(all);
    }

    /**
     * Currents and voltages of the steady state.
     *
     * @param hertz frequency of all sources; 0 for d.c., where a capacitance carries nothing
     * @throws IllegalArgumentException where sources of voltage form a loop, or a current has no way back
     */
    public Solved solve(double hertz) {
        Equations equations = new Equations(this, hertz);
        return equations.solve(equations.values());
    }
}
