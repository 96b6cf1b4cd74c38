package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Step;

/**
 * What a hookup takes over untouched from the one before it, in the order in which hookups are first come to: what was proven
 * there needs no second proof here.
 */
final class Inherited {
    private final List<Hookup> order = new ArrayList<>();

    Inherited(Plan plan) {
        Set<String> seen = new LinkedHashSet<>();
        for (Step step : plan.steps()) {
            step.hookup().ifPresent(seen::add);
        }
        seen.forEach(id -> plan.hookup(id).ifPresent(order::add));
    }

    /** Chains of a hookup that do not stand like this in the one before. */
    List<Chain> fresh(Hookup hookup) {
        int at = order.indexOf(hookup);
        return at <= 0
                ? hookup.chains()
                : hookup.chains().stream()
                        .filter(chain -> !order.get(at - 1).chains().contains(chain))
                        .toList();
    }

    /** Whether a slip of one hookup would already have been made, and seen, when an earlier one was built. */
    boolean alreadyIn(Slip slip, Hookup earlier) {
        int from = order.indexOf(earlier);
        int to = slip.hookup()
                .flatMap(id ->
                        order.stream().filter(each -> each.id().equals(id)).findFirst())
                .map(order::indexOf)
                .orElse(-1);
        if (from < 0 || to <= from) {
            return from >= 0 && from == to;
        }
        List<Chain> concerned =
                order.get(to).chains().stream().filter(concerned(slip)).toList();
        for (int i = from; i < to; i++) {
            if (!order.get(i).chains().containsAll(concerned)) {
                return false;
            }
        }
        return !concerned.isEmpty();
    }

    private static Predicate<Chain> concerned(Slip slip) {
        return switch (slip.kind()) {
            case TRUNK_OFF -> chain -> chain.items().contains(slip.things().get(0));
            case BUNDLES_SWAPPED -> chain -> slip.things().contains("jack " + chain.jack());
            default -> chain -> chain.connection().equals(slip.things().get(0));
        };
    }
}
