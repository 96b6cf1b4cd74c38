package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Shortfall;

/** What is to be said beside the readings, each once, in the order in which it came up. */
final class Remarks {
    private final Set<NotApplicable> notApplicable = new LinkedHashSet<>();
    private final Set<Shortfall> shortfalls = new LinkedHashSet<>();
    private final Set<String> warnings = new LinkedHashSet<>();

    void notApplicable(String test, String because, String clause) {
        notApplicable.add(new NotApplicable(test, because, clause));
    }

    void shortfall(Shortfall shortfall) {
        shortfalls.add(shortfall);
    }

    void warn(String warning) {
        warnings.add(warning);
    }

    List<NotApplicable> notApplicable() {
        return new ArrayList<>(notApplicable);
    }

    List<Shortfall> shortfalls() {
        return new ArrayList<>(shortfalls);
    }

    List<String> warnings() {
        return new ArrayList<>(warnings);
    }
}
