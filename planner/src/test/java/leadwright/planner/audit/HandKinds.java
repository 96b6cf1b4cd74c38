package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Kinds of damage to what hands do: plugging, touching, selecting, making safe. */
final class HandKinds {
    private HandKinds() {}

    static List<Kind> all() {
        List<Kind> all = new ArrayList<>(leads());
        all.addAll(safety());
        return List.copyOf(all);
    }

    private static List<Kind> leads() {
        return List.of(
                Kind.of(
                        Invariant.HOOKUP_COMPLETE,
                        "a lead never joined",
                        (plan, dice) ->
                                dice.pick(plan.steps(), HandKinds::joinsLead).map(step -> without(plan, step))),
                Kind.of(
                        Invariant.HOOKUP_COMPLETE,
                        "a lead left from the hookup before",
                        (plan, dice) -> dice.pick(
                                        plan.steps(),
                                        step -> step.does() == Act.PART
                                                && step.account() == Step.Account.REPLUG
                                                && !ofEarth(plan, step)
                                                && readBeforeJoined(plan, step))
                                .map(step -> without(plan, step)),
                        Invariant.MAKE_SAFE,
                        Invariant.SAFE_WAIT,
                        Invariant.JOINT),
                Kind.of(
                        Invariant.JOINT,
                        "an item plugged in elsewhere while it is still in the earth jack",
                        (plan, dice) -> dice.pick(
                                        plan.steps(),
                                        step -> step.does() == Act.PART
                                                && ofEarth(plan, step)
                                                && plan.steps().stream()
                                                        .skip(step.number())
                                                        .anyMatch(each -> each.does() == Act.JOIN
                                                                && from(each).equals(from(step))
                                                                && !each.joint().equals(step.joint())))
                                .map(step -> without(plan, step)),
                        Invariant.EARTH_LEAD_PARTED,
                        Invariant.EARTH_LEAD_PROVEN),
                Kind.of(
                        Invariant.JOINT,
                        "a joint said to be of another hookup",
                        (plan, dice) -> plan.hookups().size() < 2
                                ? Optional.empty()
                                : dice.pick(plan.steps(), step -> step.does() == Act.JOIN)
                                        .flatMap(step -> dice.pick(plan.hookups(), each -> !has(plan, each, step))
                                                .map(other -> Mend.replaced(
                                                        plan, step, with(step, "hookup", Optional.of(other.id())))))),
                Kind.of(
                        Invariant.JOINT,
                        "a joint joined twice",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.JOIN)
                                .map(step -> {
                                    List<Step> steps = new ArrayList<>(plan.steps());
                                    steps.add(steps.indexOf(step), step);
                                    return Mend.figures(Damage.steps(plan, steps));
                                })),
                Kind.of(
                        Invariant.JOINT,
                        "a joint parted that is not joined",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.JOIN && parted(plan, step))
                                .map(step -> Mend.without(plan, step)),
                        Invariant.EARTH_PATH,
                        Invariant.HOOKUP_COMPLETE),
                Kind.of(
                        Invariant.HANDLING,
                        "a lead, or the earth lead, handled in a live state",
                        HandKinds::live,
                        Invariant.EARTH_PATH,
                        Invariant.MAKE_SAFE,
                        Invariant.JOINT,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.EARTH_LEAD_PARTED,
                        Invariant.EARTH_LEAD_PROVEN,
                        Invariant.CLIP_PLACE,
                        Invariant.TOUCH_PLACE,
                        Invariant.TIE_SELECTED,
                        Invariant.PROOF_STEP),
                Kind.of(
                        Invariant.TOUCH_PLACE,
                        "a place that is not touched",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.TOUCH)
                                .map(step -> Mend.without(plan, step))),
                Kind.of(
                        Invariant.TOUCH_PLACE,
                        "another place touched",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.TOUCH)
                                .map(step -> Mend.replaced(plan, step, with(step, "place", Optional.of("phantom"))))),
                Kind.of(
                        Invariant.TIE_SELECTED,
                        "a selection left out",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.TIE)
                                .map(step -> Mend.without(plan, step))),
                Kind.of(
                        Invariant.SELECTION_SAID,
                        "another jack named in a selection",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.TIE)
                                .flatMap(step -> otherJack(step.text(), dice)
                                        .map(text -> Mend.replaced(plan, step, with(step, "text", text))))),
                Kind.of(
                        Invariant.SELECTION_SAID,
                        "a selection for another reading",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.TIE)
                                .flatMap(step -> dice.pick(
                                                plan.steps(),
                                                other -> other.does() == Act.TIE
                                                        && !jacks(other.text()).equals(jacks(step.text())))
                                        .map(other -> Mend.replaced(plan, step, with(step, "text", other.text()))))));
    }

    /** The roles and jacks of a selection, without the names of what is on them. */
    private static List<String> jacks(String text) {
        return Pattern.compile("(measured|against|tied to \\w+) jacks? [0-9, ]+")
                .matcher(text)
                .results()
                .map(each -> each.group())
                .toList();
    }

    private static Optional<String> otherJack(String text, Dice dice) {
        List<java.util.regex.MatchResult> numbers = Pattern.compile("(?<=jacks? )[0-9]+(?=[, ])")
                .matcher(text)
                .results()
                .toList();
        return dice.pick(numbers)
                .map(number -> text.substring(0, number.start())
                        + (Integer.parseInt(number.group()) + 17)
                        + text.substring(number.end()));
    }

    /** A joint that is never made is never parted either. */
    private static Plan without(Plan plan, Step step) {
        List<Step> steps = new ArrayList<>(plan.steps());
        Act other = step.does() == Act.JOIN ? Act.PART : Act.JOIN;
        int index = steps.indexOf(step);
        List<Step> later = steps.subList(index + 1, steps.size());
        later.stream()
                .filter(each -> each.does() == other && each.joint().equals(step.joint()))
                .findFirst()
                .ifPresent(steps::remove);
        steps.remove(step);
        return Mend.figures(Damage.steps(plan, steps));
    }

    private static String from(Step step) {
        return step.joint().map(joint -> Joints.plain(joint).from()).orElse("");
    }

    private static boolean ofEarth(Plan plan, Step step) {
        return step.joint()
                .map(Joints::plain)
                .filter(new BenchModel(plan).earthJoints::contains)
                .isPresent();
    }

    private static boolean has(Plan plan, Hookup hookup, Step step) {
        return step.joint()
                .map(Joints::plain)
                .filter(joint -> Joints.ofLeads(hookup, plan.kit()).contains(joint)
                        || Joints.ofEarth(hookup).contains(joint))
                .isPresent();
    }

    /** Whether something is read before the same joint is made again: only then does it matter that it is still there. */
    private static boolean readBeforeJoined(Plan plan, Step part) {
        return plan.steps().stream()
                .skip(part.number())
                .takeWhile(step -> step.does() != Act.JOIN || !step.joint().equals(part.joint()))
                .anyMatch(step -> leaks(plan, step));
    }

    private static boolean joinsLead(Step step) {
        return step.does() == Act.JOIN && step.account() == Step.Account.REPLUG;
    }

    private static boolean parted(Plan plan, Step join) {
        return plan.steps().stream()
                .skip(join.number())
                .anyMatch(step -> step.does() == Act.PART && step.joint().equals(join.joint()));
    }

    /** The step comes where the mains is on, and says so. */
    private static Optional<Plan> live(Plan plan, Dice dice) {
        if (new BenchModel(plan).permanent) {
            return Optional.empty();
        }
        List<Step> live = plan.steps().stream()
                .filter(step ->
                        step.state().polarity() != Polarity.NONE && step.state().fault() != Fault.NONE
                                || step.does() == Act.TOUCH && step.state().polarity() != Polarity.NONE)
                .toList();
        return dice.pick(
                        plan.steps(),
                        step -> Set.of(Act.JOIN, Act.PART, Act.CLIP).contains(step.does())
                                && step.state().polarity() == Polarity.NONE)
                .flatMap(step -> dice.pick(live)
                        .map(target -> Mend.moved(
                                plan,
                                step,
                                plan.steps().indexOf(target)
                                        + (plan.steps().indexOf(step)
                                                        < plan.steps().indexOf(target)
                                                ? 0
                                                : 1),
                                with(step, "state", target.state()))));
    }

    static boolean leaks(Plan plan, Step step) {
        return Damage.takes(plan, what -> what.phase() == Phase.ORDINARY || what.phase() == Phase.MAINS_ON_PART)
                .test(step);
    }

    private static List<Kind> safety() {
        return List.of(
                Kind.of(
                        Invariant.MAKE_SAFE,
                        "a therapy output not made safe",
                        (plan, dice) -> dice.pick(plan.steps(), step -> needed(plan, step))
                                .map(step -> Mend.without(plan, step))),
                Kind.of(
                        Invariant.MAKE_SAFE,
                        "another therapy output made safe",
                        (plan, dice) -> dice.pick(plan.steps(), step -> needed(plan, step))
                                .map(step -> Mend.replaced(plan, step, with(step, "place", Optional.of("phantom"))))),
                Kind.of(
                        Invariant.MAKE_SAFE,
                        "a start that does not look at the plugged output",
                        (plan, dice) -> dice.pick(
                                        plan.steps(),
                                        step -> step.does() == Act.START
                                                && step.text().contains("disarmed"))
                                .map(step -> Mend.replaced(
                                        plan,
                                        step,
                                        with(step, "text", "Start the device and wait until it is ready.")))),
                Kind.of(
                        Invariant.SAFE_WAIT,
                        "a wait after making safe cut short",
                        (plan, dice) -> dice.pick(
                                        plan.steps(),
                                        step -> step.does() == Act.WAIT && step.seconds() > 0 && waits(plan, step))
                                .map(step ->
                                        Mend.replaced(plan, step, with(step, "seconds", dice.below(step.seconds()))))),
                Kind.of(
                        Invariant.SOURCE_OFF,
                        "a source left on what is wired",
                        (plan, dice) -> dice.pick(
                                        plan.steps(),
                                        step -> step.does() == Act.SWITCH
                                                && step.place().equals(Optional.of("source")))
                                .map(step -> Mend.without(plan, step))));
    }

    /** Whether it makes safe what is not: the first time, or after a start. */
    private static boolean needed(Plan plan, Step safe) {
        return safe.does() == Act.MAKE_SAFE
                && Stream.iterate(safe.number() - 2, index -> index >= 0, index -> index - 1)
                        .map(plan.steps()::get)
                        .takeWhile(step -> step.does() != Act.START)
                        .noneMatch(step ->
                                step.does() == Act.MAKE_SAFE && step.place().equals(safe.place()));
    }

    /** Whether the wait is that of a therapy output: it follows a making safe. */
    private static boolean waits(Plan plan, Step wait) {
        return Stream.iterate(wait.number() - 2, index -> index >= 0, index -> index - 1)
                .map(plan.steps()::get)
                .takeWhile(step -> step.does() != Act.READ && step.does() != Act.START)
                .anyMatch(step -> step.does() == Act.MAKE_SAFE);
    }
}
