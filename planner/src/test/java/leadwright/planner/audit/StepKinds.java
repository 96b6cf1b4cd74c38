package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Battery;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Kinds of damage to the frame of a plan, to its states and its cautions. */
final class StepKinds {
    private StepKinds() {}

    static List<Kind> all() {
        List<Kind> all = new ArrayList<>(frame());
        all.addAll(states());
        all.addAll(words());
        return List.copyOf(all);
    }

    private static List<Kind> frame() {
        return List.of(
                Kind.of(
                        Invariant.STEP_NUMBERS,
                        "a wrong number",
                        (plan, dice) -> dice.pick(plan.steps())
                                .map(step -> Damage.step(
                                        plan,
                                        step::equals,
                                        each -> with(each, "number", each.number() + 1 + dice.below(9))))),
                Kind.of(
                        Invariant.READ_ONCE,
                        "a reading that no step takes",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.READ)
                                .map(step -> Mend.without(plan, step)),
                        Invariant.SECONDS,
                        Invariant.EARTH_LEAD_PROVEN),
                Kind.of(
                        Invariant.READ_ONCE,
                        "a reading taken twice",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.READ)
                                .map(step -> {
                                    List<Step> steps = new ArrayList<>(plan.steps());
                                    steps.add(steps.indexOf(step), step);
                                    return Mend.figures(Damage.steps(plan, steps));
                                }),
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.READ_ONCE,
                        "two readings of one number",
                        StepKinds::renumbered,
                        Invariant.STATE_HELD,
                        Invariant.DEVICE_ON,
                        Invariant.SOURCE_OFF,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.EARTH_LEAD_PROVEN,
                        Invariant.CLIP_PLACE,
                        Invariant.NULLING,
                        Invariant.TOUCH_PLACE,
                        Invariant.TIE_SELECTED,
                        Invariant.EARTH_FIRST,
                        Invariant.TOUCH_BEFORE_FAULT,
                        Invariant.NO_FAULT_FIRST,
                        Invariant.MAINS_ON_PART_LAST,
                        Invariant.CAUTION,
                        Invariant.SECONDS,
                        Invariant.SELECTION_SAID,
                        Invariant.INSULATION_FIRST,
                        Invariant.EARTH_LEAD_PARTED,
                        Invariant.PROOF_STEP),
                Kind.of(
                        Invariant.LOOK_FIRST,
                        "the look over left out or done later",
                        (plan, dice) -> {
                            Step look = plan.steps().get(0);
                            return dice.below(3) == 0
                                    ? Optional.of(Mend.without(plan, look))
                                    : Optional.of(Mend.moved(
                                            plan,
                                            look,
                                            1 + dice.below(plan.steps().size() - 1),
                                            look));
                        },
                        Invariant.STATE_HELD,
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.PUT_BACK_LAST,
                        "nothing put back, or too early",
                        StepKinds::putBack,
                        Invariant.SECONDS,
                        Invariant.SOURCE_OFF));
    }

    private static Optional<Plan> renumbered(Plan plan, Dice dice) {
        return plan.readings().size() < 2
                ? Optional.empty()
                : dice.pick(plan.readings())
                        .flatMap(one -> dice.pick(plan.readings(), other -> other != one)
                                .map(other -> with(
                                        plan,
                                        "readings",
                                        Damage.first(
                                                plan.readings(), one::equals, each -> with(each, "id", other.id())))));
    }

    private static Optional<Plan> putBack(Plan plan, Dice dice) {
        List<Step> before = plan.steps().stream()
                .takeWhile(step -> step.does() != Act.RESTORE)
                .toList();
        if (dice.below(3) == 0) {
            return Optional.of(Mend.figures(Damage.dropSteps(plan, step -> step.does() == Act.RESTORE)));
        }
        Step restore = plan.steps().get(before.size());
        // Before something that is handled or switched, else it still ends the plan.
        return dice.pick(before, step -> step.does() != Act.READ && step.does() != Act.LOOK && step.does() != Act.WAIT)
                .map(step -> Mend.moved(
                        plan,
                        restore,
                        plan.steps().indexOf(step),
                        with(restore, "state", stateBefore(plan, plan.steps().indexOf(step)))));
    }

    static MainsState stateBefore(Plan plan, int index) {
        return index == 0
                ? plan.steps().get(0).state()
                : plan.steps().get(index - 1).state();
    }

    private static List<Kind> states() {
        return List.of(
                Kind.of(
                        Invariant.STATE_HELD,
                        "a step said to be in another state",
                        (plan, dice) -> switched(plan)
                                ? dice.pick(plan.steps(), step -> step.does() != Act.SWITCH)
                                        .map(step -> Mend.replaced(
                                                plan,
                                                step,
                                                with(
                                                        step,
                                                        "state",
                                                        dice.pick(outletStates(), each -> each != step.state())
                                                                .orElseThrow())))
                                : Optional.empty(),
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.STATE_HELD,
                        "a reading due in another state",
                        (plan, dice) -> ReadingKinds.obligation(
                                plan,
                                dice,
                                what -> what.phase() == Phase.ORDINARY
                                        && what.state().polarity() != Polarity.NONE,
                                what -> with(
                                        what,
                                        "state",
                                        MainsState.of(
                                                what.state().polarity() == Polarity.NORMAL
                                                        ? Polarity.REVERSED
                                                        : Polarity.NORMAL,
                                                what.state().fault()))),
                        Invariant.PAIRED,
                        Invariant.TOUCH_BEFORE_FAULT,
                        Invariant.NO_FAULT_FIRST,
                        Invariant.EVEN),
                Kind.of(
                        Invariant.STATE_CHANGE,
                        "a shut-down left out",
                        (plan, dice) -> dice.pick(plan.steps(), step -> step.does() == Act.SHUT_DOWN)
                                .map(step -> Mend.without(plan, step)),
                        Invariant.HANDLING,
                        Invariant.MAKE_SAFE),
                Kind.of(
                        Invariant.STATE_CHANGE,
                        "the outlet left on at the end",
                        (plan, dice) -> lastOff(plan)
                                .map(step -> Mend.without(plan, step))
                                .filter(each -> dice.below(99) >= 0),
                        Invariant.STATE_HELD),
                Kind.of(
                        Invariant.DEVICE_ON,
                        "a start left out",
                        (plan, dice) -> dice.pick(
                                        plan.steps(),
                                        step -> step.does() == Act.START
                                                && step.state().powered()
                                                && plan.device().battery() == Battery.NONE)
                                .filter(step -> needed(plan, step))
                                .map(step -> Mend.without(plan, step)),
                        Invariant.STATE_CHANGE),
                Kind.of(
                        Invariant.DOUBLE_FAULT,
                        "mains on a part under a fault",
                        (plan, dice) -> ReadingKinds.obligation(
                                plan,
                                dice,
                                what -> what.phase() == Phase.MAINS_ON_PART
                                        && what.state().polarity() != Polarity.NONE,
                                what -> with(
                                        what,
                                        "state",
                                        MainsState.of(what.state().polarity(), Fault.EARTH_OPEN))),
                        Invariant.PAIRED,
                        Invariant.STATE_HELD,
                        Invariant.EVEN),
                Kind.of(
                        Invariant.DOUBLE_FAULT,
                        "one conductor opened before the other is closed",
                        StepKinds::bothOpen,
                        Invariant.STATE_HELD,
                        Invariant.SECONDS));
    }

    private static List<MainsState> outletStates() {
        return List.of(MainsState.values()).stream()
                .filter(each -> each.polarity() != Polarity.NONE || each == MainsState.OFF)
                .toList();
    }

    /** Whether the tester switches the mains: fixed plant is taken as it is found. */
    private static boolean switched(Plan plan) {
        return !new BenchModel(plan).permanent;
    }

    private static Optional<Step> lastOff(Plan plan) {
        return plan.steps().stream()
                .filter(step -> step.does() == Act.SWITCH && step.place().isEmpty())
                .reduce((before, after) -> after)
                .filter(step -> step.state() == MainsState.OFF);
    }

    /** Whether a reading needs the device on before it is started again. */
    private static boolean needed(Plan plan, Step start) {
        return plan.steps().stream()
                .skip(start.number())
                .takeWhile(step -> step.does() != Act.START)
                .anyMatch(Damage.takes(
                        plan,
                        what -> what.state().powered()
                                && !what.mode().equals("off")
                                && (what.phase() == Phase.ORDINARY || what.phase() == Phase.MAINS_ON_PART)));
    }

    /** The step that closes one conductor before the other is opened is left out. */
    private static Optional<Plan> bothOpen(Plan plan, Dice dice) {
        List<Step> steps = plan.steps();
        return dice.pick(steps, step -> {
                    int index = steps.indexOf(step);
                    Fault before = stateBefore(plan, index).fault();
                    Optional<MainsState> after = steps.stream()
                            .skip(index + 1L)
                            .filter(each ->
                                    each.does() == Act.SWITCH && each.place().isEmpty() || each.does() == Act.START)
                            .map(Step::state)
                            .findFirst();
                    return step.does() == Act.SWITCH
                            && step.state().fault() == Fault.NONE
                            && step.state().polarity() != Polarity.NONE
                            && before != Fault.NONE
                            && after.filter(next ->
                                            next.polarity() == step.state().polarity()
                                                    && next.fault() != Fault.NONE
                                                    && next.fault() != before)
                                    .isPresent();
                })
                .map(step -> Mend.without(plan, step));
    }

    static Step stepOf(Plan plan, Reading reading) {
        return plan.steps().stream()
                .filter(step -> step.reading().equals(Optional.of(reading.id())))
                .findFirst()
                .orElseThrow();
    }

    private static List<Kind> words() {
        return List.of(
                Kind.of(
                        Invariant.STOP_RULE,
                        "a stop rule left out",
                        (plan, dice) -> dice.pick(
                                        plan.steps(),
                                        step -> step.does() == Act.READ
                                                && step.onFail().isPresent()
                                                && Damage.takes(plan, StepKinds::stops)
                                                        .test(step))
                                .map(step -> Mend.replaced(
                                        plan,
                                        step,
                                        with(
                                                step,
                                                "onFail",
                                                dice.below(2) == 0 ? Optional.empty() : Optional.of(" "))))),
                Kind.of(
                        Invariant.CAUTION,
                        "a caution left out",
                        (plan, dice) -> dice.pick(
                                        plan.steps(),
                                        step -> Damage.takes(
                                                                plan,
                                                                what -> what.phase() == Phase.MAINS_ON_PART
                                                                        || what.phase() == Phase.INSULATION)
                                                        .test(step)
                                                || step.does() == Act.SWITCH
                                                        && step.place().isEmpty()
                                                        && step.state().fault() == Fault.SUPPLY_OPEN)
                                .map(step -> Mend.replaced(plan, step, with(step, "caution", Optional.empty())))));
    }

    private static boolean stops(Obligation what) {
        boolean noFault = what.state().fault() == Fault.NONE && what.state().polarity() != Polarity.NONE;
        return what.quantity() == QuantityKind.EARTH_RESISTANCE && what.limit().isPresent()
                || what.quantity() == QuantityKind.INSULATION_RESISTANCE
                || noFault && (what.isTouch() || what.quantity() == QuantityKind.PATIENT_LEAKAGE);
    }
}
