package leadwright.planner.foresee;

import java.util.Map;
import java.util.function.ToDoubleFunction;
import leadwright.planner.circuit.Circuit;
import leadwright.planner.circuit.Netlist;

/**
 * A reading as a circuit.
 *
 * @param hertz frequency; 0 for d.c.
 * @param ties nodes that have become one with another, see {@link #node}
 */
public record Setup(Template template, Meter meter, double hertz, Map<String, String> ties) {
    public Setup {
        ties = Map.copyOf(ties);
    }

    /** The node that a connection ({@code ecg.R}), a jack ({@code jack-3}) or an item ({@code item-spread/1}) is in this circuit. */
    public String node(String name) {
        return ties.getOrDefault(name, name);
    }

    public double read(ToDoubleFunction<Parameter> values) {
        return meter.read(template.circuit(values).solve(hertz));
    }

    public double nominal() {
        return read(Parameter::nominal);
    }

    public Circuit circuit() {
        return template.circuit(Parameter::nominal);
    }

    /** The netlist with nominal values; what it prints is in A, but for an insulation reading, see {@link Meter#ofPrinted}. */
    public String netlist(String title) {
        return Netlist.of(title, circuit(), hertz, meter.printed());
    }
}
