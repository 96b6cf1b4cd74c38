package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import leadwright.planner.Plan;
import leadwright.planner.mistake.Exposure;
import leadwright.planner.mistake.ProofStep;
import leadwright.planner.mistake.Watch;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Kinds of damage to the proof steps and to what stays unseen. */
final class ProofKinds {
    private static final Set<String> HANDS =
            Set.of("count-and-tug", "follow-to-jack", "press-and-look", "read-back-by-two", "nothing-else-touches");

    private ProofKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(
                        Invariant.PROOF_STEP,
                        "a proof step left out",
                        (plan, dice) ->
                                dice.pick(plan.steps(), ProofKinds::proof).map(step -> Mend.without(plan, step)),
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.PROOF_STEP,
                        "a proof step done when all is read",
                        (plan, dice) -> dice.pick(plan.steps(), ProofKinds::proof)
                                .map(step -> Mend.moved(plan, step, beforeRestore(plan) - 1, atTheEnd(plan, step))),
                        Invariant.SOURCE_OFF),
                Kind.of(
                        Invariant.PROOF_STEP,
                        "a proof step that nobody named",
                        (plan, dice) -> dice.pick(plan.steps(), ProofKinds::proof)
                                .map(step -> Mend.replaced(
                                        plan, step, with(step, "place", Optional.of(Step.PROOF + "phantom")))),
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.PROOF_HANDLING,
                        "hands along the leads with the mains on",
                        ProofKinds::live,
                        Invariant.PROOF_STEP),
                Kind.of(
                        Invariant.SILENT_SAID,
                        "a slip that nothing shows is not listed",
                        (plan, dice) -> dice.pick(
                                        proofs(plan), each -> !alone(plan, each).isEmpty())
                                .flatMap(each -> dice.pick(alone(plan, each))
                                        .map(slip -> watch(plan, each, exposes -> exposes.remove(slip))))),
                Kind.of(
                        Invariant.SILENT_SAID,
                        "a proof step said to show what it does not",
                        (plan, dice) -> dice.pick(proofs(plan))
                                .flatMap(each -> dice.pick(
                                                plan.foresight().watch().findings(),
                                                finding -> finding.exposure() != Exposure.SILENT
                                                        || !each.kind()
                                                                .exposes(finding.slip()
                                                                        .kind()))
                                        .map(finding -> watch(
                                                plan,
                                                each,
                                                exposes -> exposes.add(
                                                        finding.slip().id()))))));
    }

    static boolean proof(Step step) {
        return step.place().filter(place -> place.startsWith(Step.PROOF)).isPresent();
    }

    private static boolean hands(Step step) {
        return proof(step) && HANDS.contains(step.place().orElseThrow().substring(Step.PROOF.length()));
    }

    private static List<ProofStep> proofs(Plan plan) {
        return plan.foresight().watch().proofs();
    }

    /** Slips that no other step shows. */
    private static List<String> alone(Plan plan, ProofStep proof) {
        return proof.exposes().stream()
                .filter(slip -> proofs(plan).stream()
                        .noneMatch(other -> other != proof && other.exposes().contains(slip)))
                .sorted()
                .toList();
    }

    private static Plan watch(Plan plan, ProofStep proof, java.util.function.Consumer<Set<String>> change) {
        Set<String> exposes = new LinkedHashSet<>(proof.exposes());
        change.accept(exposes);
        UnaryOperator<ProofStep> changed = each -> with(each, "exposes", Set.copyOf(exposes));
        Watch watch = plan.foresight().watch();
        return with(
                plan,
                "foresight",
                with(
                        plan.foresight(),
                        "watch",
                        with(watch, "proofs", Damage.first(watch.proofs(), each -> each == proof, changed))));
    }

    private static int beforeRestore(Plan plan) {
        return (int) plan.steps().stream()
                .takeWhile(step -> step.does() != Act.RESTORE)
                .count();
    }

    private static Step atTheEnd(Plan plan, Step step) {
        return with(step, "state", StepKinds.stateBefore(plan, beforeRestore(plan)));
    }

    private static Optional<Plan> live(Plan plan, Dice dice) {
        if (new BenchModel(plan).permanent) {
            return Optional.empty();
        }
        return dice.pick(plan.steps(), ProofKinds::hands)
                .flatMap(step -> dice.pick(
                                plan.steps(),
                                target -> target.does() == Act.READ
                                        && target.state().polarity() != Polarity.NONE
                                        && plan.steps().get(target.number() - 2).does() == Act.READ)
                        .map(target -> Mend.moved(
                                plan,
                                step,
                                plan.steps().indexOf(target)
                                        - (plan.steps().indexOf(step)
                                                        < plan.steps().indexOf(target)
                                                ? 1
                                                : 0),
                                with(step, "state", target.state()))));
    }
}
