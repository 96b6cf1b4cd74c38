package leadwright.planner.audit;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.PartType;
import leadwright.catalog.rules.Condition;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/** Whether each limit is the rule set's for that case, the device's own, or tighter than it. */
final class LimitAudit {
    private final Plan plan;
    private final RuleSet rules;
    private final Breaches breaches;

    LimitAudit(Plan plan, RuleSet rules, Breaches breaches) {
        this.plan = plan;
        this.rules = rules;
        this.breaches = breaches;
    }

    void run() {
        for (Reading reading : plan.readings()) {
            reading.obligation().limit().ifPresent(limit -> limit(reading.id(), reading.obligation(), limit));
        }
    }

    private void limit(String id, Obligation what, Limit limit) {
        Optional<LimitRow> row = rules.limit(limit.id()).or(() -> ofEdition(limit));
        if (row.isEmpty()) {
            breaches.check(
                    ofDevice(what, limit),
                    Invariant.LIMIT,
                    id,
                    "limit " + limit.id() + " is neither the rule set's nor the device's own");
            return;
        }
        breaches.check(
                !looser(limit, row.get()),
                Invariant.LIMIT,
                id,
                limit.value().text() + " is looser than " + row.get().value().text() + " of " + limit.id());
        breaches.check(
                row.get().quantity() == what.quantity(),
                Invariant.LIMIT,
                id,
                limit.id() + " is a limit of " + row.get().quantity().word());
        List<PartType> types = row.get().scope().types();
        for (String name : what.demand().measured()) {
            Optional<PartType> type = type(name);
            breaches.check(
                    types.isEmpty() || type.isEmpty() || types.contains(type.get()),
                    Invariant.LIMIT,
                    id,
                    limit.id() + " is not for the type of " + name);
        }
        List<Condition> conditions = row.get().scope().conditions();
        breaches.check(
                // A limit without a fault is the stricter one: it may stand for a fault, never the other way about.
                conditions.isEmpty()
                        || conditions.contains(Condition.NONE)
                        || conditions.stream()
                                .anyMatch(each ->
                                        each.word().equals(what.state().fault().word())),
                Invariant.LIMIT,
                id,
                limit.id() + " is for " + conditions);
        breaches.check(
                row.get().scope().methods().isEmpty()
                        || what.method()
                                .map(row.get().scope().methods()::contains)
                                .orElse(false),
                Invariant.LIMIT,
                id,
                limit.id() + " is for another method");
        breaches.check(
                row.get().scope().components().isEmpty()
                        || what.component()
                                .map(row.get().scope().components()::contains)
                                .orElse(false),
                Invariant.LIMIT,
                id,
                limit.id() + " is for another component");
    }

    /** A rule set that refers to editions leaves what it does not limit to the edition the device was built to. */
    private Optional<LimitRow> ofEdition(Limit limit) {
        return rules.editions().isEmpty()
                ? Optional.empty()
                : plan.device()
                        .builtTo()
                        .flatMap(RuleSets.builtIn()::find)
                        .filter(edition -> edition.network().equals(rules.network()))
                        .flatMap(edition -> edition.limit(limit.id()));
    }

    private static boolean looser(Limit limit, LimitRow row) {
        if (limit.bound() != row.bound()
                || limit.value().dimension() != row.value().dimension()) {
            return true;
        }
        return limit.bound() == Limit.Bound.AT_MOST
                ? !limit.value().atMost(row.value())
                : !limit.value().atLeast(row.value());
    }

    private boolean ofDevice(Obligation what, Limit limit) {
        return plan.device().limits().stream()
                .anyMatch(each -> each.quantity().equals(what.quantity().word())
                        && limit.bound() == Limit.Bound.AT_MOST
                        && limit.value().dimension() == each.atMost().dimension()
                        && limit.value().atMost(each.atMost()));
    }

    private Optional<PartType> type(String connection) {
        return plan.device().appliedParts().stream()
                .filter(part ->
                        part.connections().stream().anyMatch(each -> each.name().equals(connection)))
                .map(AppliedPart::type)
                .findFirst();
    }
}
