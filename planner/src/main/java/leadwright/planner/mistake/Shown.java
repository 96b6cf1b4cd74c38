package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.Reading;

/**
 * A reading with what it shows under each cause, in A or Ω, by nominal values.
 *
 * @param shown by the cause's place in the list; those that do not touch the reading are absent
 */
public record Shown(Reading reading, double planned, Map<Integer, Double> shown) {

    /** Every reading that the model knows, in the order of the plan. */
    public static List<Shown> of(Plan plan, Situation situation, List<Cause> causes) {
        Reckoning reckoning = new Reckoning(plan, situation);
        List<Shown> rows = new ArrayList<>();
        for (Reading reading : plan.readings()) {
            Reckoning.Row row = reckoning.row(reading, causes);
            row.planned().ifPresent(planned -> rows.add(new Shown(reading, planned, row.shown())));
        }
        return rows;
    }
}
