package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.takes;
import static leadwright.planner.audit.Damage.with;
import static leadwright.planner.audit.Undamaged.WARD;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Damages to the order of the steps, to states and to cautions. */
final class StepDamage {
    private final List<Deliberate> all = new ArrayList<>();

    private StepDamage() {}

    static List<Deliberate> all() {
        StepDamage damage = new StepDamage();
        damage.frame();
        damage.precedence();
        damage.states();
        damage.words();
        return List.copyOf(damage.all);
    }

    private void ward(Invariant named, String what, UnaryOperator<Plan> damage) {
        all.add(new Deliberate(named, what, WARD, damage));
    }

    private void frame() {
        ward(
                Invariant.STEP_NUMBERS,
                "a gap in the numbers",
                plan -> Damage.step(plan, step -> step.number() == 5, step -> with(step, "number", 500)));
        ward(
                Invariant.READ_ONCE,
                "a reading that no step takes",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.READ));
        ward(Invariant.READ_ONCE, "a reading taken twice", plan -> {
            List<Step> steps = new ArrayList<>(plan.steps());
            int index = Damage.index(steps, step -> step.does() == Act.READ);
            steps.add(index, steps.get(index));
            return Damage.steps(plan, steps);
        });
        ward(
                Invariant.LOOK_FIRST,
                "the look over comes later",
                plan -> Damage.moveStep(plan, step -> step.does() == Act.LOOK, step -> step.does() == Act.READ, true));
        ward(
                Invariant.PUT_BACK_LAST,
                "put back in the middle",
                plan -> Damage.moveStep(
                        plan, step -> step.does() == Act.RESTORE, step -> step.does() == Act.START, true));
    }

    private void precedence() {
        ward(
                Invariant.EARTH_FIRST,
                "an earth reading after leakage",
                plan -> Damage.moveStep(plan, phase(plan, Phase.EARTH), phase(plan, Phase.ORDINARY), true));
        ward(Invariant.EARTH_KNOWN, "faults although no earthed part is read", StepDamage::withoutEarth);
        ward(
                Invariant.EARTH_KNOWN,
                "nothing dangerous, and no word that the earth is not read",
                plan -> with(withoutEarth(plan), "readings", List.of()));
        ward(Invariant.INSULATION_FIRST, "insulation after leakage", plan -> {
            Obligation last = plan.readings().stream()
                    .map(Reading::obligation)
                    .filter(what -> what.phase() == Phase.ORDINARY)
                    .reduce((before, after) -> after)
                    .orElseThrow();
            return Damage.obligation(
                    plan, last::equals, what -> with(what, "quantity", QuantityKind.INSULATION_RESISTANCE));
        });
        ward(
                Invariant.TOUCH_BEFORE_FAULT,
                "a touch reading after a fault of its polarity",
                plan -> Damage.moveStep(
                        plan,
                        takes(plan, what -> what.isTouch() && what.state() == MainsState.NORMAL),
                        takes(
                                plan,
                                what -> what.state() == MainsState.NORMAL_SUPPLY_OPEN
                                        || what.state() == MainsState.NORMAL_EARTH_OPEN),
                        true));
        ward(Invariant.NO_FAULT_FIRST, "a subject read under a fault first", plan -> {
            Obligation fault = plan.readings().stream()
                    .map(Reading::obligation)
                    .filter(what ->
                            what.state().fault() == Fault.EARTH_OPEN && what.quantity() == QuantityKind.PATIENT_LEAKAGE)
                    .findFirst()
                    .orElseThrow();
            return Damage.moveStep(
                    plan,
                    takes(plan, fault::equals),
                    takes(
                            plan,
                            what -> what.quantity() == fault.quantity()
                                    && what.demand().equals(fault.demand())
                                    && what.component().equals(fault.component())
                                    && what.state().polarity() == fault.state().polarity()
                                    && what.state().fault() == Fault.NONE),
                    false);
        });
        ward(
                Invariant.MAINS_ON_PART_LAST,
                "mains on a part before its ordinary reading",
                plan -> Damage.moveStep(plan, phase(plan, Phase.MAINS_ON_PART), phase(plan, Phase.ORDINARY), false));
    }

    private void states() {
        ward(Invariant.DEVICE_ON, "a start left out", plan -> Damage.dropStep(plan, step -> step.does() == Act.START));
        ward(
                Invariant.STATE_CHANGE,
                "the shut-down left out",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.SHUT_DOWN));
        ward(
                Invariant.STATE_HELD,
                "a reading in another state",
                plan -> Damage.step(
                        plan,
                        phase(plan, Phase.ORDINARY),
                        step -> with(step, "state", MainsState.REVERSED_EARTH_OPEN)));
        ward(
                Invariant.DOUBLE_FAULT,
                "one conductor opened before the other is closed",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.SWITCH && closesBetweenFaults(plan, step)));
    }

    private void words() {
        ward(
                Invariant.STOP_RULE,
                "a stop rule left out",
                plan -> Damage.step(
                        plan, takes(plan, Obligation::isTouch), step -> with(step, "onFail", Optional.empty())));
        ward(
                Invariant.CAUTION,
                "the insulation voltage without its caution",
                plan -> Damage.obligation(
                        plan,
                        what -> what.phase() == Phase.ORDINARY && what.state() == MainsState.NORMAL,
                        what -> with(what, "quantity", QuantityKind.INSULATION_RESISTANCE)));
        ward(
                Invariant.CAUTION,
                "supply open without its caution",
                plan -> Damage.step(
                        plan,
                        step -> step.does() == Act.SWITCH && step.state().fault() == Fault.SUPPLY_OPEN,
                        step -> with(step, "caution", Optional.empty())));
    }

    /** The cord alone is still read. */
    private static Plan withoutEarth(Plan plan) {
        List<Reading> left = plan.readings().stream()
                .filter(reading -> reading.obligation().quantity() != QuantityKind.EARTH_RESISTANCE
                        || reading.obligation().place().equals(Optional.of("cord-earth")))
                .toList();
        return with(plan, "readings", left);
    }

    private static java.util.function.Predicate<Step> phase(Plan plan, Phase phase) {
        return takes(plan, what -> what.phase() == phase);
    }

    private static boolean closesBetweenFaults(Plan plan, Step step) {
        int index = plan.steps().indexOf(step);
        return step.state().fault() == Fault.NONE
                && step.state().polarity() != MainsState.Polarity.NONE
                && before(plan, index).fault() != Fault.NONE
                && after(plan, index)
                        .filter(next -> next.polarity() == step.state().polarity()
                                && next.fault() != Fault.NONE
                                && next.fault() != before(plan, index).fault())
                        .isPresent();
    }

    private static MainsState before(Plan plan, int index) {
        return index == 0 ? MainsState.OFF : plan.steps().get(index - 1).state();
    }

    private static Optional<MainsState> after(Plan plan, int index) {
        return plan.steps().stream()
                .skip(index + 1L)
                .filter(step -> step.does() == Act.SWITCH)
                .map(Step::state)
                .findFirst();
    }
}
