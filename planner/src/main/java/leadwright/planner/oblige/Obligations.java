package leadwright.planner.oblige;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Shortfall;

/**
 * What a rule set asks of a device with this tester.
 *
 * @param wanted every reading, in clause order
 * @param notApplicable what is not done, with reason and clause
 * @param shortfalls readings that the rule set asks for and this tester cannot take
 * @param warnings what a person must know before going to the bench
 * @param refusal why nothing may be planned at all
 * @param earthCurrent what is set on the tester for earth readings; empty where none is wanted
 * @param earthPoints touch points of which the earth of one at least has to be read before a conductor is opened or mains put
 *     on a part; empty where that is not asked, or where nothing of the kind is wanted
 */
public record Obligations(
        List<Obligation> wanted,
        List<NotApplicable> notApplicable,
        List<Shortfall> shortfalls,
        List<String> warnings,
        Optional<String> refusal,
        Optional<Quantity> earthCurrent,
        List<String> earthPoints) {
    public Obligations {
        wanted = List.copyOf(wanted);
        notApplicable = List.copyOf(notApplicable);
        shortfalls = List.copyOf(shortfalls);
        warnings = List.copyOf(warnings);
        earthPoints = List.copyOf(earthPoints);
    }
}
