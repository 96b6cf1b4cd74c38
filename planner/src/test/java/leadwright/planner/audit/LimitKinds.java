package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;

/** Kinds of damage to limits. */
final class LimitKinds {
    private LimitKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(
                        Invariant.LIMIT,
                        "a limit looser by the smallest unit",
                        (plan, dice) -> limit(plan, dice, true, limit -> with(limit, "value", looser(limit, 1)))),
                Kind.of(
                        Invariant.LIMIT,
                        "a limit twice as loose",
                        (plan, dice) -> limit(
                                plan,
                                dice,
                                false,
                                limit -> with(
                                        limit,
                                        "value",
                                        looser(
                                                limit,
                                                limit.value().amount()
                                                        / (limit.bound() == Limit.Bound.AT_MOST ? 1 : 2))))),
                Kind.of(
                        Invariant.LIMIT,
                        "a ceiling for a floor or the other way about",
                        (plan, dice) -> limit(
                                plan,
                                dice,
                                false,
                                limit -> with(
                                        limit,
                                        "bound",
                                        limit.bound() == Limit.Bound.AT_MOST
                                                ? Limit.Bound.AT_LEAST
                                                : Limit.Bound.AT_MOST))),
                Kind.of(
                        Invariant.LIMIT,
                        "a limit that nobody states",
                        (plan, dice) -> limit(plan, dice, false, limit -> with(limit, "id", "phantom-limit"))),
                Kind.of(Invariant.LIMIT, "the looser limit of another reading of its quantity", LimitKinds::others),
                Kind.of(
                        Invariant.LIMIT,
                        "no limit although the rule set has one",
                        (plan, dice) -> dice.pick(
                                        plan.readings(),
                                        reading -> reading.obligation()
                                                        .limit()
                                                        .filter(limit -> ofRules(plan, limit))
                                                        .isPresent()
                                                && reading.obligation().phase() != Phase.INSULATION)
                                .map(reading -> ReadingKinds.reading(
                                        plan, reading, what -> with(what, "limit", Optional.empty())))),
                Kind.of(
                        Invariant.LIMIT,
                        "a limit with the clause of something else",
                        (plan, dice) -> limit(plan, dice, true, limit -> with(limit, "clause", "99." + dice.below(9)))),
                Kind.of(
                        Invariant.LIMIT,
                        "a limit from memory called sure",
                        (plan, dice) -> dice.pick(
                                        plan.readings(),
                                        reading -> reading.obligation()
                                                .limit()
                                                .filter(limit -> ruled(limit) && limit.unconfirmed())
                                                .isPresent())
                                .map(reading -> {
                                    Limit limit = reading.obligation().limit().orElseThrow();
                                    return limited(
                                            plan,
                                            reading,
                                            dice.below(2) == 0
                                                    ? with(limit, "mark", Mark.A)
                                                    : with(limit, "confirmed", true));
                                })));
    }

    private static Quantity looser(Limit limit, long by) {
        return new Quantity(
                limit.value().dimension(),
                limit.bound() == Limit.Bound.AT_MOST
                        ? limit.value().amount() + by
                        : limit.value().amount() - by);
    }

    /** @param stated whether the limit has to be just what its rule set states */
    private static Optional<Plan> limit(Plan plan, Dice dice, boolean stated, UnaryOperator<Limit> change) {
        return dice.pick(
                        plan.readings(),
                        reading -> reading.obligation()
                                .limit()
                                .filter(limit -> !stated || stated(limit))
                                .isPresent())
                .map(reading -> limited(
                        plan, reading, change.apply(reading.obligation().limit().orElseThrow())));
    }

    private static Plan limited(Plan plan, Reading reading, Limit limit) {
        return ReadingKinds.reading(plan, reading, what -> with(what, "limit", Optional.of(limit)));
    }

    private static boolean stated(Limit limit) {
        return RuleSets.builtIn().ids().stream()
                .map(id -> RuleSets.builtIn().find(id).orElseThrow())
                .map((RuleSet rules) -> rules.limit(limit.id()))
                .flatMap(Optional::stream)
                .anyMatch(row -> row.value().equals(limit.value()));
    }

    /** The rule set's own, not that of the edition the device was built to. */
    private static boolean ofRules(Plan plan, Limit limit) {
        return RuleSets.builtIn()
                .find(plan.rules().id())
                .flatMap(rules -> rules.limit(limit.id()))
                .isPresent();
    }

    private static boolean ruled(Limit limit) {
        return !limit.id().startsWith("device-");
    }

    private static Optional<Plan> others(Plan plan, Dice dice) {
        return dice.pick(
                        plan.readings(), reading -> reading.obligation().limit().isPresent())
                .flatMap(reading -> {
                    Limit own = reading.obligation().limit().orElseThrow();
                    List<Limit> looser = plan.readings().stream()
                            .filter(each -> each.obligation().quantity()
                                    == reading.obligation().quantity())
                            .flatMap(each -> each.obligation().limit().stream())
                            .filter(each -> each.bound() == own.bound()
                                    && (each.bound() == Limit.Bound.AT_MOST
                                            ? each.value().compareTo(own.value()) > 0
                                            : each.value().compareTo(own.value()) < 0))
                            .distinct()
                            .toList();
                    return dice.pick(looser).map(other -> limited(plan, reading, other));
                });
    }
}
