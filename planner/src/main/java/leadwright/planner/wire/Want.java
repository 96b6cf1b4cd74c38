package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Obligation;

/**
 * A requirement that fits no hookup, as one of its readings asks for it.
 *
 * @param readings all that ask for the same
 */
record Want(Requirement requirement, Obligation reading, List<Obligation> readings) {

    static Want of(Scene scene, Requirement requirement) {
        List<Obligation> readings = scene.obligations().stream()
                .filter(each -> requirement.keys().contains(each.key()))
                .toList();
        return new Want(requirement, readings.get(0), readings);
    }

    /** Without these connections; the reading asks for nothing where none that it measures is left. */
    Want without(Collection<String> names) {
        Demand demand = reading.demand();
        List<String> measured = left(demand.measured(), names);
        return asking(
                measured.isEmpty()
                        ? Demand.NOTHING
                        : Demand.of(measured, left(demand.against(), names), left(demand.earthed(), names)));
    }

    /** The same reading of these connections alone. */
    Want only(Collection<String> names) {
        return asking(Demand.of(names));
    }

    private Want asking(Demand demand) {
        Obligation asking = new Obligation(
                reading.key(),
                reading.quantity(),
                reading.clause(),
                reading.of(),
                demand,
                reading.place(),
                reading.earthSubject(),
                reading.state(),
                reading.mode(),
                reading.sourcePolarity(),
                reading.method(),
                reading.component(),
                reading.network(),
                reading.limit(),
                reading.note());
        return new Want(requirement, asking, readings);
    }

    private static List<String> left(Collection<String> all, Collection<String> names) {
        List<String> left = new ArrayList<>(all);
        left.removeAll(names);
        return left;
    }
}
