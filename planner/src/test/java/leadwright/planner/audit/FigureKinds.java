package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.planner.Plan;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;
import leadwright.planner.plan.TimeSplit;

/** Kinds of damage to the figures. */
final class FigureKinds {
    /** Steps whose seconds the table of actions gives. */
    private static final Set<Act> TIMED =
            Set.of(Act.START, Act.SHUT_DOWN, Act.TIE, Act.TOUCH, Act.CLIP, Act.NULL, Act.SWITCH, Act.READ);

    private FigureKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(
                        Invariant.SECONDS,
                        "a step that takes longer or less, in the sums too",
                        (plan, dice) -> dice.pick(plan.steps(), step -> TIMED.contains(step.does()) && ofTester(step))
                                .map(step -> Mend.replaced(
                                        plan,
                                        step,
                                        with(
                                                step,
                                                "seconds",
                                                step.seconds() == 0 || dice.below(2) == 0
                                                        ? step.seconds() + 1
                                                        : step.seconds() - 1)))),
                Kind.of(
                        Invariant.SECONDS,
                        "a total that is not the sum",
                        (plan, dice) -> Optional.of(with(
                                plan,
                                "time",
                                with(plan.time(), "total", plan.time().total() + 1 + dice.below(60))))),
                Kind.of(Invariant.SECONDS, "a part of the time moved to another account", FigureKinds::moved),
                Kind.of(
                        Invariant.START_UPS,
                        "another number of start-ups",
                        (plan, dice) -> Optional.of(with(
                                plan,
                                "time",
                                with(plan.time(), "startUps", plan.time().startUps() + 1 + dice.below(5))))),
                Kind.of(Invariant.PROOF, "a bound above the answer", FigureKinds::above),
                Kind.of(Invariant.PROOF, "a proof of another answer", FigureKinds::other),
                Kind.of(
                        Invariant.PARTIAL,
                        "a whole plan called partial or the other way about",
                        (plan, dice) -> Optional.of(with(plan, "partial", !plan.partial())),
                        Invariant.EARTH_KNOWN));
    }

    /** Waits for a licensed person and the like have no time in the table. */
    private static boolean ofTester(Step step) {
        return step.does() != Act.SWITCH || step.state().polarity() != leadwright.planner.plan.MainsState.Polarity.NONE;
    }

    private static Optional<Plan> moved(Plan plan, Dice dice) {
        Map<Step.Account, Integer> parts = new HashMap<>(plan.time().parts());
        List<Step.Account> used = parts.keySet().stream()
                .filter(each -> parts.get(each) > 0)
                .sorted()
                .toList();
        return dice.pick(used).map(from -> {
            Step.Account to = Step.Account.values()[
                    (from.ordinal() + 1 + dice.below(Step.Account.values().length - 1)) % Step.Account.values().length];
            int seconds = 1 + dice.below(parts.get(from));
            parts.merge(from, -seconds, Integer::sum);
            parts.merge(to, seconds, Integer::sum);
            TimeSplit time = plan.time();
            return with(plan, "time", new TimeSplit(time.total(), parts, time.plainOrder(), time.startUps()));
        });
    }

    private static Optional<Plan> above(Plan plan, Dice dice) {
        boolean time = dice.below(2) == 0;
        Proof proof = time ? plan.timeProof() : plan.hookupsProof();
        Proof damaged = new Proof(proof.answer(), proof.answer() + 1 + dice.below(40), proof.argument());
        return Optional.of(with(plan, time ? "timeProof" : "hookupsProof", damaged));
    }

    private static Optional<Plan> other(Plan plan, Dice dice) {
        boolean time = dice.below(2) == 0;
        Proof proof = time ? plan.timeProof() : plan.hookupsProof();
        long off = 1 + dice.below(40);
        Proof damaged = new Proof(proof.answer() + off, proof.lowerBound(), proof.argument());
        return Optional.of(with(plan, time ? "timeProof" : "hookupsProof", damaged));
    }
}
