package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import leadwright.catalog.device.PartType;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.TesterSwitch;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;

/** Kinds of damage by leaving readings out. */
final class MissingKinds {
    private MissingKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(
                        Invariant.EVEN,
                        "a subject not read in a state in which others of its kind are",
                        MissingKinds::uneven,
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.DUE,
                        "a quantity neither read nor listed as not done",
                        MissingKinds::unlisted,
                        Invariant.EARTH_KNOWN,
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.DUE,
                        "a quantity not read under a fault that is opened for others",
                        MissingKinds::withoutFault,
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.PAIRED,
                        "one polarity of the supply left out",
                        MissingKinds::onePolarity,
                        Invariant.SECONDS,
                        Invariant.EVEN),
                Kind.of(
                        Invariant.PAIRED,
                        "one polarity of the source left out",
                        (plan, dice) -> dice.pick(
                                        plan.readings(),
                                        reading -> reading.obligation()
                                                        .sourcePolarity()
                                                        .isPresent()
                                                && !reading.obligation()
                                                        .method()
                                                        .equals(Optional.of(Method.ALTERNATIVE)))
                                .map(reading -> ReadingKinds.unread(plan, reading)),
                        Invariant.EVEN));
    }

    private static List<Reading> which(Plan plan, Predicate<Obligation> of) {
        return plan.readings().stream()
                .filter(reading -> of.test(reading.obligation()))
                .toList();
    }

    /** Both polarities of one subject in one condition, where another subject of the same part type has it. */
    private static Optional<Plan> uneven(Plan plan, Dice dice) {
        return dice.pick(
                        plan.readings(),
                        reading -> reading.obligation().phase() == Phase.ORDINARY
                                && !reading.obligation().demand().isNothing())
                .flatMap(reading -> {
                    Obligation what = reading.obligation();
                    Predicate<Obligation> alike = each -> each.quantity() == what.quantity()
                            && each.method().equals(what.method())
                            && each.component().equals(what.component())
                            && each.mode().equals(what.mode())
                            && each.state().fault() == what.state().fault();
                    Predicate<Obligation> own = each -> each.of().equals(what.of());
                    boolean others = plan.readings().stream()
                            .map(Reading::obligation)
                            .anyMatch(each -> alike.test(each)
                                    && !own.test(each)
                                    && each.of().size() == what.of().size()
                                    && !type(plan, what).isEmpty()
                                    && type(plan, each).equals(type(plan, what)));
                    boolean elsewhere = plan.readings().stream()
                            .map(Reading::obligation)
                            .anyMatch(each -> each.quantity() == what.quantity()
                                    && own.test(each)
                                    && each.demand().equals(what.demand())
                                    && !alike.test(each));
                    return others && elsewhere
                            ? Optional.of(ReadingKinds.unread(plan, which(plan, alike.and(own))))
                            : Optional.empty();
                });
    }

    private static List<PartType> type(Plan plan, Obligation what) {
        return plan.device().appliedParts().stream()
                .filter(part -> part.connections().stream()
                        .anyMatch(each -> what.demand().measured().contains(each.name())))
                .map(part -> part.type())
                .distinct()
                .toList();
    }

    /** All readings of a quantity that is named nowhere else in the plan. */
    private static Optional<Plan> unlisted(Plan plan, Dice dice) {
        List<QuantityKind> asked = which(plan, what -> what.phase() == Phase.ORDINARY).stream()
                .map(reading -> reading.obligation().quantity())
                .distinct()
                .filter(quantity -> RuleSets.builtIn().find(plan.rules().id()).orElseThrow().tests(quantity).stream()
                        .anyMatch(row -> row.scope().where().isEmpty()))
                .toList();
        return !plan.shortfalls().isEmpty()
                ? Optional.empty()
                : dice.pick(asked).map(quantity -> {
                    Plan left = ReadingKinds.unread(plan, which(plan, what -> what.quantity() == quantity));
                    return with(with(left, "warnings", List.of()), "notApplicable", List.of());
                });
    }

    private static Optional<Plan> withoutFault(Plan plan, Dice dice) {
        // A reading that the kit does not allow is no silence.
        if (!plan.shortfalls().isEmpty()) {
            return Optional.empty();
        }
        return dice.pick(
                        plan.readings(), reading -> reading.obligation().state().fault() != Fault.NONE)
                .flatMap(reading -> {
                    Obligation what = reading.obligation();
                    Predicate<Obligation> gone = each -> each.quantity() == what.quantity()
                            && each.state().fault() == what.state().fault();
                    boolean others = plan.readings().stream()
                            .map(Reading::obligation)
                            .anyMatch(each ->
                                    each.state().fault() == what.state().fault() && each.quantity() != what.quantity());
                    return others ? Optional.of(ReadingKinds.unread(plan, which(plan, gone))) : Optional.empty();
                });
    }

    private static Optional<Plan> onePolarity(Plan plan, Dice dice) {
        boolean turns = plan.kit().tester().switches().contains(TesterSwitch.POLARITY);
        return turns
                ? dice.pick(
                                plan.readings(),
                                reading -> reading.obligation().state().polarity() != MainsState.Polarity.NONE
                                        && reading.obligation().phase() == Phase.ORDINARY
                                        && twin(plan, reading.obligation()))
                        .map(reading -> ReadingKinds.unread(plan, reading))
                : Optional.empty();
    }

    /** Whether the same is read in the other polarity. */
    private static boolean twin(Plan plan, Obligation what) {
        return plan.readings().stream()
                .map(Reading::obligation)
                .anyMatch(each -> each.quantity() == what.quantity()
                        && each.demand().equals(what.demand())
                        && each.place().equals(what.place())
                        && each.component().equals(what.component())
                        && each.mode().equals(what.mode())
                        && each.state().fault() == what.state().fault()
                        && each.state().polarity() != what.state().polarity());
    }
}
