package leadwright.planner;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.planner.foresee.EarthBudget;
import leadwright.planner.foresee.Foresee;
import leadwright.planner.foresee.Foreseen;
import leadwright.planner.foresee.Situation;
import leadwright.planner.mistake.Watch;

/**
 * What a plan foresees: readings, the budget of each earth reading, and what becomes of slips. It never decides a verdict.
 *
 * @param readings by reading id, in the order of the plan
 */
public record Foresight(Situation situation, Map<String, Foreseen> readings, List<EarthBudget> budgets, Watch watch) {
    public Foresight {
        readings = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(readings));
        budgets = List.copyOf(budgets);
    }

    /** Nothing foreseen. */
    public static Foresight none() {
        return new Foresight(Situation.ORDINARY, Map.of(), List.of(), Watch.none());
    }

    static Foresight of(Plan plan, Situation situation) {
        Map<String, Foreseen> readings = Foresee.of(plan, situation);
        List<EarthBudget> budgets = plan.readings().stream()
                .flatMap(reading -> EarthBudget.of(plan, reading, situation).stream())
                .toList();
        return new Foresight(situation, readings, budgets, Watch.of(plan, readings, situation));
    }

    /** The same without proof steps: what they would show stays silent. */
    Foresight withoutProofs() {
        return new Foresight(situation, readings, budgets, watch.withoutProofs());
    }

    public Optional<Foreseen> of(String reading) {
        return Optional.ofNullable(readings.get(reading));
    }
}
