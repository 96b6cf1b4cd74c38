package leadwright.planner.audit;

import java.math.BigInteger;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.rules.Condition;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleCase;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.Scope;
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
            Obligation what = reading.obligation();
            if (what.limit().isPresent()) {
                limit(reading.id(), what, what.limit().get());
            } else {
                missing(reading.id(), what);
            }
        }
    }

    /** A reading that is not judged although the rule set has a limit for just this case. */
    private void missing(String id, Obligation what) {
        boolean earth = what.phase() == Obligation.Phase.EARTH;
        boolean judged = earth ? statedEarthed(what) : what.phase() != Obligation.Phase.INSULATION;
        if (!judged) {
            return;
        }
        RuleCase asked = RuleCase.of(
                        what.quantity(),
                        protection(),
                        plan.device().supply().connection(),
                        plan.device().builtTo())
                .condition(Condition.valueOf(what.state().fault().name()))
                .method(what.method())
                .component(what.component());
        for (String name : what.demand().measured()) {
            Optional<PartType> type = type(name);
            asked = type.isPresent() ? asked.type(type.get()) : asked;
        }
        if (what.earthSubject().isPresent()) {
            asked = asked.subject(subject(what.earthSubject().get()));
        }
        RuleCase all = asked;
        rules.limit(asked)
                .ifPresent(row -> breaches.add(
                        Invariant.LIMIT,
                        id,
                        "is not judged, and " + row.id() + " is the limit for "
                                + all.quantity().word()));
    }

    /** Through the outlet of a system the path is longer: it has a limit of its own, which no single device has. */
    private String subject(Obligation.EarthSubject ends) {
        boolean system = plan.device().system().isPresent() && ends == Obligation.EarthSubject.PLUG_TO_PART;
        return (system ? "system-" : "") + ends.word();
    }

    /** Of a part of which nobody states that it is earthed continuity is only looked at. */
    private boolean statedEarthed(Obligation what) {
        return plan.device().touchPoints().stream()
                .noneMatch(point -> what.place().equals(Optional.of(point.id())) && point.earthed() != Earthed.YES);
    }

    /** Class of what feeds the device; of an adapter whose class nobody states, the stricter. */
    private Protection protection() {
        Device device = plan.device();
        if (device.supply().connection() != SupplyConnection.EXTERNAL_ADAPTER) {
            return device.protection();
        }
        return device.adapter().map(adapter -> adapter.protection()).orElse(Protection.CLASS_2);
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
        stated(id, limit, row.get());
        raw(id, what, limit, row.get());
        scope(id, what, limit, row.get().scope());
    }

    /** Clause and mark are the row's; a limit from a weak source is called confirmed only where the house confirms it. */
    private void stated(String id, Limit limit, LimitRow row) {
        breaches.check(
                limit.clause().equals(row.basis().clause()),
                Invariant.LIMIT,
                id,
                limit.id() + " stands in " + row.basis().clause() + ", not in " + limit.clause());
        breaches.check(
                row.basis().mark() != Mark.C || limit.mark() == Mark.C,
                Invariant.LIMIT,
                id,
                limit.id() + " rests on a weaker source than the plan says");
        breaches.check(
                !limit.confirmed()
                        || plan.house().confirmed().stream()
                                .anyMatch(each -> each.limit().equals(limit.id())),
                Invariant.LIMIT,
                id,
                limit.id() + " is called confirmed, and the house does not confirm it");
    }

    /** A source limited to S never shows more than S: raw, what lets the limit L through may read 1/(1/L + 1/S). */
    private void raw(String id, Obligation what, Limit limit, LimitRow row) {
        boolean fed = what.sourcePolarity().isPresent() || what.method().equals(Optional.of(Method.ALTERNATIVE));
        Optional<PartSource> source =
                plan.kit().tester().partSource().filter(each -> fed && each.reading() == SourceReading.RAW);
        if (source.isEmpty() || row.bound() != Limit.Bound.AT_MOST) {
            return;
        }
        BigInteger own = BigInteger.valueOf(row.value().amount());
        BigInteger most = BigInteger.valueOf(source.get().shortCircuit().amount());
        breaches.check(
                BigInteger.valueOf(limit.value().amount())
                                .compareTo(own.multiply(most).divide(own.add(most)))
                        <= 0,
                Invariant.LIMIT,
                id,
                limit.id() + " is not lowered for a source that reads raw");
    }

    private void scope(String id, Obligation what, Limit limit, Scope scope) {
        breaches.check(
                scope.classes().isEmpty() || scope.classes().contains(protection()),
                Invariant.LIMIT,
                id,
                limit.id() + " is for " + scope.classes());
        breaches.check(
                scope.supplies().isEmpty()
                        || scope.supplies().contains(plan.device().supply().connection()),
                Invariant.LIMIT,
                id,
                limit.id() + " is for devices with " + scope.supplies());
        boolean subject = what.earthSubject()
                .flatMap(ends -> scope.subject().map(of -> of.equals(ends.word()) || of.equals(subject(ends))))
                .orElse(true);
        breaches.check(
                what.quantity() != QuantityKind.EARTH_RESISTANCE || subject,
                Invariant.LIMIT,
                id,
                limit.id() + " is for " + scope.subject().orElse(""));
        boolean ofPart = what.of().stream()
                .anyMatch(of -> plan.device().appliedParts().stream()
                        .anyMatch(part -> of.equals(part.id()) || of.startsWith(part.id() + ".")));
        String between = what.insulatedFrom().orElse("");
        String insulated = ofPart ? (between.equals("mains part") ? "mains-to-part" : "part-to-housing") : "mains-to-";
        breaches.check(
                what.quantity() != QuantityKind.INSULATION_RESISTANCE
                        || scope.subject()
                                .filter(of -> ofPart
                                        ? of.equals(insulated)
                                        : of.startsWith(insulated) && !of.endsWith("-part"))
                                .isPresent(),
                Invariant.LIMIT,
                id,
                limit.id() + " is for " + scope.subject().orElse(""));
        List<PartType> types = scope.types();
        for (String name : what.demand().measured()) {
            Optional<PartType> type = type(name);
            breaches.check(
                    types.isEmpty() || type.isEmpty() || types.contains(type.get()),
                    Invariant.LIMIT,
                    id,
                    limit.id() + " is not for the type of " + name);
        }
        List<Condition> conditions = scope.conditions();
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
                scope.methods().isEmpty()
                        || what.method().map(scope.methods()::contains).orElse(false),
                Invariant.LIMIT,
                id,
                limit.id() + " is for another method");
        breaches.check(
                scope.components().isEmpty()
                        || what.component().map(scope.components()::contains).orElse(false),
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
