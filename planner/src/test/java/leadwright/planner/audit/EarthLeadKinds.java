package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Kinds of damage to what is done with the earth lead: nulling, clipping, parting, proving. */
final class EarthLeadKinds {
    private EarthLeadKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(
                        Invariant.NULLING,
                        "a nulling left out",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.NULL)
                                .map(step -> Mend.without(plan, step))),
                Kind.of(
                        Invariant.CLIP_PLACE,
                        "a clip that is not moved",
                        (plan, dice) -> dice.pick(plan.steps(), step -> clipped(plan, step))
                                .map(step -> Mend.without(plan, step))),
                Kind.of(
                        Invariant.CLIP_PLACE,
                        "a clip on another place",
                        (plan, dice) -> dice.pick(plan.steps(), step -> clipped(plan, step))
                                .map(step -> Mend.replaced(plan, step, with(step, "place", Optional.of("phantom")))),
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.REFERENCE_ON,
                        "the second lead left off the reference earth, or on another place",
                        EarthLeadKinds::notReturned,
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.EARTH_LEAD_PARTED,
                        "an earth lead left on a jack that rests earthed",
                        EarthLeadKinds::left),
                Kind.of(
                        Invariant.EARTH_LEAD_PARTED,
                        "the parting of the earth lead left out",
                        EarthLeadKinds::notParted,
                        Invariant.EARTH_LEAD_PROVEN,
                        Invariant.JOINT),
                Kind.of(
                        Invariant.EARTH_LEAD_PROVEN,
                        "no proof that the earth lead is off, or one taken too early",
                        EarthLeadKinds::unproven));
    }

    /** Whether it puts the clip where an earth reading then wants it. */
    private static boolean clipped(Plan plan, Step clip) {
        return clip.does() == Act.CLIP
                && plan.steps().stream()
                        .skip(clip.number())
                        .takeWhile(
                                step -> step.does() != Act.CLIP || !step.place().equals(clip.place()))
                        .anyMatch(Damage.takes(
                                plan,
                                what -> what.phase() == Phase.EARTH
                                        && what.place().equals(clip.place())));
    }

    /** Where nothing but the second lead ties the tester to earth, its last way there before leakage goes nowhere or elsewhere. */
    private static Optional<Plan> notReturned(Plan plan, Dice dice) {
        List<Step> before = plan.steps().stream()
                .takeWhile(step -> !HandKinds.leaks(plan, step))
                .filter(step -> step.does() == Act.CLIP && step.place().equals(Optional.of("reference-earth")))
                .toList();
        boolean leaks = plan.steps().stream().anyMatch(step -> HandKinds.leaks(plan, step));
        if (!plan.kit().tester().outlets().isEmpty() || !leaks || before.isEmpty()) {
            return Optional.empty();
        }
        Step last = before.get(before.size() - 1);
        if (dice.below(8) == 0) {
            return Optional.of(Mend.without(plan, last));
        }
        return dice.pick(plan.device().touchPoints(), point -> true)
                .map(point -> Mend.replaced(plan, last, with(last, "place", Optional.of(point.id()))));
    }

    private static Plan restsEarthed(Plan plan) {
        return Damage.tester(
                plan,
                tester -> with(
                        tester,
                        "earthJack",
                        tester.earthJack().map(jack -> new EarthJack(jack.socket(), Optional.of(AtRest.EARTHED)))));
    }

    /** A lead that may stay where the jack rests open may not where it is earthed. */
    private static Optional<Plan> left(Plan plan, Dice dice) {
        boolean open = plan.kit()
                .tester()
                .earthJack()
                .flatMap(EarthJack::atRest)
                .filter(AtRest.OPEN::equals)
                .isPresent();
        return open && dice.below(1000) >= 0 && fittedAtLeakage(plan) && !new BenchModel(plan).permanent
                ? Optional.of(restsEarthed(plan))
                : Optional.empty();
    }

    private static boolean fittedAtLeakage(Plan plan) {
        List<Step> before = plan.steps().stream()
                .takeWhile(step -> !HandKinds.leaks(plan, step))
                .filter(step -> step.joint()
                        .filter(joint -> joint.to().equals("earth-jack"))
                        .isPresent())
                .toList();
        return before.size() < plan.steps().size()
                && !before.isEmpty()
                && before.get(before.size() - 1).does() == Act.JOIN
                && plan.steps().stream().anyMatch(step -> HandKinds.leaks(plan, step));
    }

    private static Optional<Plan> notParted(Plan plan, Dice dice) {
        boolean leaks = plan.steps().stream().anyMatch(step -> HandKinds.leaks(plan, step));
        boolean open = plan.kit()
                .tester()
                .earthJack()
                .flatMap(EarthJack::atRest)
                .filter(AtRest.OPEN::equals)
                .isPresent();
        return leaks && !open && !new BenchModel(plan).permanent
                ? dice.pick(
                                plan.steps(),
                                step -> step.does() == Act.PART
                                        && step.joint()
                                                .filter(joint -> joint.to().equals("earth-jack"))
                                                .isPresent()
                                        && plan.steps().stream()
                                                .limit(step.number())
                                                .noneMatch(each -> HandKinds.leaks(plan, each)))
                        .map(step -> Mend.without(plan, step))
                : Optional.empty();
    }

    private static Optional<Plan> unproven(Plan plan, Dice dice) {
        boolean leaks = plan.steps().stream().anyMatch(step -> HandKinds.leaks(plan, step));
        return dice.pick(
                        plan.readings(),
                        reading -> leaks && reading.obligation().quantity() == QuantityKind.PROOF)
                .map(reading -> {
                    if (dice.below(2) == 0) {
                        return ReadingKinds.unread(plan, reading);
                    }
                    Step proof = StepKinds.stepOf(plan, reading);
                    Step parting = plan.steps().stream()
                            .filter(step -> step.does() == Act.PART
                                    && step.joint()
                                            .filter(joint -> joint.to().equals("earth-jack"))
                                            .isPresent())
                            .findFirst()
                            .orElseThrow();
                    return Mend.moved(plan, proof, parting.number() - 1, proof);
                });
    }
}
