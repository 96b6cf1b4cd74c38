package leadwright.planner.foresee;

import java.util.function.ToDoubleFunction;
import leadwright.planner.circuit.Circuit;
import leadwright.planner.circuit.Netlist;

/**
 * A reading as a circuit.
 *
 * @param hertz frequency; 0 for d.c.
 */
public record Setup(Template template, Meter meter, double hertz) {

    double read(ToDoubleFunction<Parameter> values) {
        return meter.read(template.circuit(values).solve(hertz));
    }

    double nominal() {
        return read(Parameter::nominal);
    }

    Circuit circuit() {
        return template.circuit(Parameter::nominal);
    }

    /** The netlist with nominal values. */
    String netlist(String title) {
        Meter.Pair pair = meter.pair().orElse(new Meter.Pair(circuit().nodes().get(0), Circuit.EARTH, 1));
        return Netlist.of(title, circuit(), hertz, pair.above(), pair.below());
    }
}
