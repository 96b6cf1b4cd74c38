package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** Kinds of damage to what comes before what. */
final class PrecedenceKinds {
    private PrecedenceKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(
                        Invariant.EARTH_FIRST,
                        "an earth reading after another phase's",
                        (plan, dice) -> after(
                                plan,
                                dice,
                                what -> what.phase() == Phase.EARTH,
                                (what, next) -> next.phase() == Phase.ORDINARY
                                        || next.phase() == Phase.INSULATION
                                        || next.phase() == Phase.MAINS_ON_PART),
                        Invariant.EARTH_PATH,
                        Invariant.STATE_HELD,
                        Invariant.HANDLING,
                        Invariant.SOURCE_OFF,
                        Invariant.CLIP_PLACE,
                        Invariant.NULLING,
                        Invariant.PROOF_STEP),
                Kind.of(
                        Invariant.INSULATION_FIRST,
                        "insulation after leakage",
                        (plan, dice) -> after(
                                plan,
                                dice,
                                what -> what.phase() == Phase.INSULATION,
                                (what, next) -> next.phase() == Phase.ORDINARY || next.phase() == Phase.MAINS_ON_PART),
                        Invariant.STATE_HELD,
                        Invariant.SOURCE_OFF,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.TIE_SELECTED),
                Kind.of(
                        Invariant.TOUCH_BEFORE_FAULT,
                        "a touch reading after a fault of its polarity",
                        (plan, dice) -> after(
                                plan,
                                dice,
                                what -> what.isTouch() && what.state().fault() == Fault.NONE,
                                (what, next) -> next.state().fault() != Fault.NONE
                                        && next.state().polarity()
                                                == what.state().polarity()),
                        Invariant.STATE_HELD,
                        Invariant.DEVICE_ON,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.TOUCH_PLACE,
                        Invariant.TIE_SELECTED,
                        Invariant.NO_FAULT_FIRST,
                        Invariant.MAINS_ON_PART_LAST,
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.NO_FAULT_FIRST,
                        "a subject read under a fault first",
                        (plan, dice) -> after(
                                plan,
                                dice,
                                what -> what.state().fault() == Fault.NONE && what.phase() == Phase.ORDINARY,
                                (what, next) -> next.state().fault() != Fault.NONE
                                        && next.state().polarity()
                                                == what.state().polarity()
                                        && next.quantity() == what.quantity()
                                        && next.demand().equals(what.demand())
                                        && next.place().equals(what.place())
                                        && next.of().equals(what.of())),
                        Invariant.STATE_HELD,
                        Invariant.DEVICE_ON,
                        Invariant.TOUCH_BEFORE_FAULT,
                        Invariant.MAINS_ON_PART_LAST,
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.MAINS_ON_PART_LAST,
                        "mains on a part before an ordinary reading of its hookup",
                        PrecedenceKinds::mainsEarly,
                        Invariant.STATE_HELD,
                        Invariant.DEVICE_ON,
                        Invariant.SOURCE_OFF,
                        Invariant.TIE_SELECTED,
                        Invariant.SECONDS,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.EARTH_KNOWN,
                        "faults or mains on a part although no earthed part is read",
                        PrecedenceKinds::withoutEarth,
                        Invariant.READ_ONCE,
                        Invariant.DUE));
    }

    /** A reading taken behind one that it should precede. */
    private static Optional<Plan> after(
            Plan plan, Dice dice, Predicate<Obligation> which, BiPredicate<Obligation, Obligation> follows) {
        return dice.pick(plan.readings(), reading -> which.test(reading.obligation()))
                .flatMap(reading -> {
                    Step step = StepKinds.stepOf(plan, reading);
                    return dice.pick(
                                    plan.readings(),
                                    each -> follows.test(reading.obligation(), each.obligation())
                                            && StepKinds.stepOf(plan, each).number() > step.number())
                            .map(target -> {
                                Step behind = StepKinds.stepOf(plan, target);
                                return Mend.moved(plan, step, behind.number() - 1, with(step, "state", behind.state()));
                            });
                });
    }

    private static Optional<Plan> mainsEarly(Plan plan, Dice dice) {
        return dice.pick(plan.readings(), reading -> reading.obligation().phase() == Phase.MAINS_ON_PART)
                .flatMap(reading -> {
                    Step step = StepKinds.stepOf(plan, reading);
                    return dice.pick(
                                    plan.readings(),
                                    each -> each.obligation().phase() == Phase.ORDINARY
                                            && each.hookup().equals(reading.hookup())
                                            && StepKinds.stepOf(plan, each).number() < step.number())
                            .map(target -> Mend.moved(
                                    plan,
                                    step,
                                    StepKinds.stepOf(plan, target).number() - 1,
                                    with(
                                            step,
                                            "state",
                                            StepKinds.stepOf(plan, target).state())));
                });
    }

    /** The cord alone is still read; a plan without faults or mains on a part loses nothing by it. */
    private static Optional<Plan> withoutEarth(Plan plan, Dice dice) {
        List<Reading> points = plan.readings().stream()
                .filter(reading -> reading.obligation().quantity() == QuantityKind.EARTH_RESISTANCE)
                .filter(reading -> !reading.obligation().place().equals(Optional.of("cord-earth")))
                .toList();
        boolean dangerous = plan.readings().stream()
                .map(Reading::obligation)
                .anyMatch(what -> what.state().fault() != Fault.NONE || what.phase() == Phase.MAINS_ON_PART);
        if (points.isEmpty() || !dangerous || dice.below(1000) < 0) {
            return Optional.empty();
        }
        List<Reading> left = new ArrayList<>(plan.readings());
        left.removeAll(points);
        return Optional.of(with(plan, "readings", left));
    }
}
