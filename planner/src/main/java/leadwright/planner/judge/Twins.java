package leadwright.planner.judge;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.readings.Shown;

/**
 * Readings of one thing in both polarities of the mains that show exactly the same: most devices differ by a little, and a
 * polarity that was not reversed does not.
 */
final class Twins {

    private final Map<String, String> shown = new HashMap<>();
    private final Map<String, String> byKey = new HashMap<>();

    Twins(PlannedTest plan, Readings readings) {
        readings.taken()
                .forEach(taken -> taken.shown()
                        .filter(each -> each.value() instanceof Shown.Value value
                                && value.amount().amount() > 0)
                        .ifPresent(each ->
                                shown.put(taken.id().value(), each.value().text())));
        plan.readings().forEach(each -> byKey.put(each.key(), each.id()));
    }

    /** What is to be said of a reading whose twin shows the same; empty where it has none, or shows another value. */
    Optional<String> same(PlannedReading planned) {
        boolean normal = planned.state().startsWith("normal");
        if (!planned.isLeakage()
                || planned.isFromSource()
                || !normal && !planned.state().startsWith("reversed")) {
            return Optional.empty();
        }
        String other = normal
                ? planned.key().replace("/normal", "/reversed")
                : planned.key().replace("/reversed", "/normal");
        Optional<String> twin = Optional.ofNullable(byKey.get(other)).filter(id -> !id.equals(planned.id()));
        return twin.filter(id -> shown.containsKey(id) && shown.get(id).equals(shown.get(planned.id())))
                .map(id -> "the same to the last digit as " + id + " in the other polarity: was it reversed?");
    }
}
