package leadwright.planner.mistake;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.foresee.EarthBudget;
import leadwright.planner.foresee.Meter;
import leadwright.planner.foresee.Setup;
import leadwright.planner.foresee.Setups;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Reading;

/** What a reading shows with a cause at work, by building the whole circuit anew and solving it: nothing is changed in place. */
public final class Anew {
    private final Plan plan;
    private final Setups setups;
    private final Map<String, Optional<Double>> known = new HashMap<>();

    public Anew(Plan plan) {
        this.plan = plan;
        this.setups = new Setups(plan.device(), plan.kit(), Situation.ORDINARY);
    }

    /** In A or Ω; empty where no circuit is known for the reading. */
    public Optional<Double> value(Optional<Cause> cause, Reading reading) {
        String key = cause.map(Cause::id).orElse("") + " " + reading.id();
        return known.computeIfAbsent(key, each -> solved(cause, reading));
    }

    private Optional<Double> solved(Optional<Cause> cause, Reading reading) {
        if (reading.obligation().quantity() == QuantityKind.EARTH_RESISTANCE) {
            return EarthBudget.of(plan, reading, Situation.ORDINARY).map(budget -> earth(cause, reading, budget));
        }
        Optional<Setup> right = setups.of(reading.obligation(), reading.hookup().flatMap(plan::hookup));
        boolean touches = cause.flatMap(Cause::hookup)
                .map(hookup -> reading.hookup().equals(Optional.of(hookup)))
                .orElse(true);
        if (cause.isEmpty() || !touches || right.isEmpty()) {
            return right.map(Setup::nominal);
        }
        Setup setup = right.get();
        Effect effect = cause.get().effect();
        if (effect instanceof Effect.Wires wires) {
            return Optional.of(Reckoning.rebuilt(setup, wires.edits()).nominal());
        }
        if (effect instanceof Effect.Scaled scaled) {
            boolean leakage = !(setup.meter() instanceof Meter.Insulation);
            return Optional.of(setup.nominal() * (leakage ? scaled.factor() : 1));
        }
        if (effect instanceof Effect.Arrangement arrangement) {
            boolean mains = reading.obligation().state().polarity() != MainsState.Polarity.NONE;
            boolean anywhere = switch (arrangement.variation()) {
                case SWITCH_OFF, IDLE_JACKS_EARTHED -> true;
                // Left open is what should be closed for a reading without a fault.
                case SUPPLY_LEFT_OPEN -> mains && reading.obligation().state().fault() == MainsState.Fault.NONE;
                default -> mains;
            };
            return anywhere
                    ? setups.of(reading.obligation(), reading.hookup().flatMap(plan::hookup), arrangement.variation())
                            .map(Setup::nominal)
                    : Optional.of(setup.nominal());
        }
        return Optional.of(setup.nominal());
    }

    /** The pieces of the path added up as the cause has them; Ω. */
    private static double earth(Optional<Cause> cause, Reading reading, EarthBudget budget) {
        double right = budget.nominal();
        boolean here = cause.flatMap(Cause::hookup)
                .map(hookup -> reading.hookup().equals(Optional.of(hookup)))
                .orElse(true);
        if (cause.isEmpty() || !here || !(cause.get().effect() instanceof Effect.EarthPath path)) {
            return right;
        }
        boolean named = cause.get().things().contains(reading.id());
        boolean cord = budget.cordNominal() > 0;
        return switch (path.how()) {
            case OPEN -> named ? 1e9 : right;
            case ELSEWHERE -> right;
            case SHUNTED -> 1 / (1 / right + 1 / 0.2);
            case CORD_NULLED -> right - budget.cordNominal();
            case WARMED -> right + 0.2 * budget.leadsNominal();
            case NULLED_OPEN ->
                right + budget.leadsNominal() - budget.nullUpTo().orElse(0.0);
            case LONGER -> named ? right + 0.05 : right;
            case CORD_WORN -> cord ? right + 0.4 : right;
            case JOINT_WORN -> named ? right + 0.4 : right;
        };
    }
}
