package leadwright.planner.audit;

import java.util.List;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.Connectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.Reading;

/**
 * The independent replay of a finished plan.
 *
 * <p>Needs the plan with its inputs and the rule set, nothing else. Gives every breach by name; an empty list means
 * accepted. Shares no code with the phases that made the plan beyond the words of the model.
 */
public final class Audit {
    private Audit() {}

    public static List<Breach> audit(Plan plan, RuleSet rules, Connectors connectors) {
        Breaches breaches = new Breaches();
        new HookupAudit(plan, rules, connectors, breaches).run();
        new ReadingAudit(plan, rules, breaches).run();
        new LimitAudit(plan, rules, breaches).run();
        new EarthKnownAudit(plan, rules, breaches).run();
        new EvenAudit(plan, breaches).run();
        new DueAudit(plan, rules, breaches).run();
        new PrecedenceAudit(plan, breaches).run();
        new StepReplay(plan, breaches).run();
        new ProofAudit(plan, breaches).run();
        new TimeAudit(plan, connectors, breaches).run();
        breaches.check(
                plan.partial() == !plan.shortfalls().isEmpty(),
                Invariant.PARTIAL,
                "plan",
                "partial and the list of what the kit cannot do disagree");
        breaches.check(
                plan.readings().stream().map(Reading::id).distinct().count()
                        == plan.readings().size(),
                Invariant.READ_ONCE,
                "plan",
                "reading ids repeat");
        return breaches.found();
    }
}
