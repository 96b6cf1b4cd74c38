package leadwright.render.sheet;

import java.util.Comparator;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Basis;
import leadwright.planner.foresee.EarthBudget;
import leadwright.planner.foresee.LeadDraw;
import leadwright.planner.plan.Hookup;

/** Where the leads themselves count at the bench: said in the row in which they do; empty elsewhere. */
final class LeadWarnings {
    private LeadWarnings() {}

    /** What the leads of a hookup alone draw with mains on a part, where it makes much of a limit. */
    static String background(Plan plan, Optional<Hookup> hookup) {
        return plan.readings().stream()
                .filter(reading -> reading.hookup().equals(hookup.map(Hookup::id)))
                .flatMap(reading -> LeadDraw.of(plan, reading, plan.foresight().situation()).stream())
                .filter(LeadDraw::noteworthy)
                .max(Comparator.comparingDouble(draw -> draw.share().orElse(0.0)))
                .map(draw -> ". Leads alone, device end free, source on: ~ " + Amounts.text(draw.nominal())
                        + (draw.basis() == Basis.ASSUMED ? "*" : "") + ", "
                        + Math.round(100 * draw.share().orElse(0.0)) + " % of the limit of " + draw.reading())
                .orElse("");
    }

    /** Where the leads may have more resistance than the tester takes off. */
    static String nulling(Plan plan) {
        return plan.foresight().budgets().stream().anyMatch(EarthBudget::beyondNull)
                ? "; these leads may have more than the tester nulls"
                : "";
    }
}
