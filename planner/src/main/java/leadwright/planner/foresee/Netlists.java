package leadwright.planner.foresee;

import java.util.LinkedHashMap;
import java.util.Map;
import leadwright.planner.Plan;
import leadwright.planner.plan.Reading;

/** The circuits of a plan's readings in the plain form that circuit simulators read, so that anyone can check a foreseen value. */
public final class Netlists {
    private Netlists() {}

    /** Netlists with nominal values, by reading id, in the order of the plan; of readings that the model knows. */
    public static Map<String, String> of(Plan plan) {
        Setups setups = new Setups(plan.device(), plan.kit(), plan.foresight().situation());
        Map<String, String> all = new LinkedHashMap<>();
        for (Reading reading : plan.readings()) {
            setups.of(reading.obligation(), reading.hookup().flatMap(plan::hookup))
                    .ifPresent(setup -> {
                        String foreseen = plan.foresight()
                                .of(reading.id())
                                .flatMap(Foreseen::value)
                                .map(value -> ", foreseen " + value.text())
                                .orElse("");
                        all.put(
                                reading.id(),
                                setup.netlist(
                                        reading.id() + " of " + plan.device().name() + ": "
                                                + reading.obligation().key() + foreseen));
                    });
        }
        return all;
    }
}
