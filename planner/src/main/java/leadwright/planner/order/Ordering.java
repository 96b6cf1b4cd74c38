package leadwright.planner.order;

import java.util.List;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/**
 * The steps of a plan in the order of least bench time.
 *
 * @param hookups the hookups under their final ids, H1 first in use
 */
public record Ordering(List<Hookup> hookups, List<Reading> readings, List<Step> steps, TimeSplit time, Proof proof) {
    public Ordering {
        hookups = List.copyOf(hookups);
        readings = List.copyOf(readings);
        steps = List.copyOf(steps);
    }
}
