package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.takes;
import static leadwright.planner.audit.Damage.with;
import static leadwright.planner.audit.Undamaged.RESCUE;
import static leadwright.planner.audit.Undamaged.RESTS_EARTHED;
import static leadwright.planner.audit.Undamaged.SECOND_LEAD;
import static leadwright.planner.audit.Undamaged.THROUGH_LEAD;
import static leadwright.planner.audit.Undamaged.UNDER_POWER;
import static leadwright.planner.audit.Undamaged.WARD;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.SamplePlans.Sample;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Damages to the steps of the hands: plugging, clipping, touching, making safe. */
final class HandDamage {
    private static final Predicate<Step> SOURCE_OFF =
            step -> step.does() == Act.SWITCH && step.place().equals(Optional.of("source"));

    private final List<Deliberate> all = new ArrayList<>();

    private HandDamage() {}

    static List<Deliberate> all() {
        HandDamage damage = new HandDamage();
        damage.leads();
        damage.earthLead();
        damage.therapy();
        damage.source();
        return List.copyOf(damage.all);
    }

    private void ward(Invariant named, String what, UnaryOperator<Plan> damage) {
        on(WARD, named, what, damage);
    }

    private void on(Sample sample, Invariant named, String what, UnaryOperator<Plan> damage) {
        all.add(new Deliberate(named, what, sample, damage));
    }

    private void leads() {
        ward(Invariant.HOOKUP_COMPLETE, "a lead never joined", plan -> Damage.dropStep(plan, HandDamage::joinsLead));
        ward(
                Invariant.JOINT,
                "a lead parted that is not joined",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.JOIN && joinedThenParted(plan, step)));
        ward(
                Invariant.HANDLING,
                "a lead joined in a live state",
                plan -> Damage.moveStep(plan, HandDamage::joinsLead, step -> step.does() == Act.START, true));
        on(
                UNDER_POWER,
                Invariant.HANDLING,
                "leads moved under power although the device file forbids it",
                plan -> Damage.device(
                        plan,
                        device -> with(
                                device,
                                "forbids",
                                List.of(new leadwright.catalog.device.Forbidden(
                                        "replug-under-power", "the input stage does not bear it")))));
        ward(
                Invariant.TOUCH_PLACE,
                "a place that is not touched",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.TOUCH));
        ward(
                Invariant.TIE_SELECTED,
                "a selection dropped",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.TIE));
    }

    private void earthLead() {
        ward(Invariant.NULLING, "the nulling dropped", plan -> Damage.dropStep(plan, step -> step.does() == Act.NULL));
        ward(Invariant.NULLING, "the nulling at the end dropped", plan -> {
            return Damage.dropStep(plan, lastNulling(plan)::equals);
        });
        ward(
                Invariant.CLIP_PLACE,
                "a clip that is not moved",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.CLIP));
        ward(
                Invariant.EARTH_LEAD_PARTED,
                "an earth lead left on a jack that rests earthed",
                plan -> Damage.tester(
                        plan,
                        tester -> with(
                                tester,
                                "earthJack",
                                tester.earthJack()
                                        .map(jack -> new EarthJack(jack.socket(), Optional.of(AtRest.EARTHED))))));
        on(
                RESTS_EARTHED,
                Invariant.EARTH_LEAD_PARTED,
                "the parting of the earth lead dropped",
                plan -> Damage.dropStep(
                        plan, step -> step.does() == Act.PART && step.account() == Step.Account.EARTH_LEAD));
        on(
                RESTS_EARTHED,
                Invariant.EARTH_LEAD_PROVEN,
                "no proof that the earth lead is off",
                plan -> Damage.dropReading(plan, what -> what.quantity() == QuantityKind.PROOF));
        on(
                RESTS_EARTHED,
                Invariant.EARTH_LEAD_PROVEN,
                "the proof taken while the earth lead is on",
                plan -> Damage.moveStep(
                        plan,
                        takes(plan, what -> what.quantity() == QuantityKind.PROOF),
                        step -> step.does() == Act.PART && step.account() == Step.Account.EARTH_LEAD,
                        false));
        on(
                THROUGH_LEAD,
                Invariant.TOUCH_PLACE,
                "touch current read through the earth lead with its clip still on",
                plan -> Damage.dropStep(
                        plan, step -> step.does() == Act.CLIP && step.place().equals(Optional.of("touch-probe"))));
        on(
                SECOND_LEAD,
                Invariant.REFERENCE_ON,
                "the second lead not put back on the reference earth after nulling",
                plan -> Damage.dropStep(plan, lastOnReference(plan)::equals));
        on(
                SECOND_LEAD,
                Invariant.REFERENCE_ON,
                "the leads nulled once more after the second lead went back",
                plan -> Damage.moveStep(plan, lastNulling(plan)::equals, lastOnReference(plan)::equals, true));
    }

    private void therapy() {
        on(
                RESCUE,
                Invariant.MAKE_SAFE,
                "no therapy output made safe",
                plan -> Damage.dropSteps(plan, step -> step.does() == Act.MAKE_SAFE));
        for (String output :
                RESCUE.plan().device().outputs().stream().map(each -> each.id()).toList()) {
            on(
                    RESCUE,
                    Invariant.MAKE_SAFE,
                    "only the others made safe, not " + output,
                    plan -> Damage.dropSteps(
                            plan,
                            step -> step.does() == Act.MAKE_SAFE && step.place().equals(Optional.of(output))));
        }
        on(
                RESCUE,
                Invariant.MAKE_SAFE,
                "an output made safe while the device is on",
                plan -> Damage.moveStep(
                        plan, step -> step.does() == Act.MAKE_SAFE, step -> step.does() == Act.START, true));
        on(
                RESCUE,
                Invariant.MAKE_SAFE,
                "a start that does not look at the plugged output first",
                plan -> Damage.step(
                        plan,
                        step -> step.does() == Act.START && step.text().contains("disarmed"),
                        step -> with(step, "text", "Start the device and wait until it is ready.")));
        on(
                RESCUE,
                Invariant.MAKE_SAFE,
                "a start that looks at another output than the plugged one",
                plan -> Damage.step(
                        plan,
                        step -> step.does() == Act.START && step.text().contains("spoons"),
                        step -> with(step, "text", step.text().replace("spoons", "others"))));
        on(
                RESCUE,
                Invariant.SAFE_WAIT,
                "a wait left out",
                plan -> Damage.dropSteps(plan, step -> step.does() == Act.WAIT));
        on(
                RESCUE,
                Invariant.SAFE_WAIT,
                "a wait one second too short",
                plan -> Damage.step(
                        plan,
                        step -> step.does() == Act.WAIT && step.seconds() > 0,
                        step -> with(step, "seconds", step.seconds() - 1)));
    }

    private void source() {
        ward(
                Invariant.SOURCE_OFF,
                "the outlet switched with the source on a part",
                plan -> Damage.dropSteps(plan, SOURCE_OFF));
        on(
                UNDER_POWER,
                Invariant.SOURCE_OFF,
                "leads moved under power with the source still on the part",
                plan -> Damage.dropStep(plan, step -> SOURCE_OFF.test(step) && handled(plan, step)));
    }

    private static Step lastOnReference(Plan plan) {
        return plan.steps().stream()
                .filter(step -> step.does() == Act.CLIP && step.place().equals(Optional.of("reference-earth")))
                .reduce((before, after) -> after)
                .orElseThrow();
    }

    private static Step lastNulling(Plan plan) {
        return plan.steps().stream()
                .filter(step -> step.does() == Act.NULL)
                .reduce((before, after) -> after)
                .orElseThrow();
    }

    private static boolean joinsLead(Step step) {
        return step.does() == Act.JOIN && step.account() == Step.Account.REPLUG;
    }

    private static boolean joinedThenParted(Plan plan, Step join) {
        return plan.steps().stream()
                .anyMatch(step -> step.does() == Act.PART && step.joint().equals(join.joint()));
    }

    /** Whether a lead is moved next, with the mains on. */
    private static boolean handled(Plan plan, Step off) {
        Step next = plan.steps().get(off.number());
        return (next.does() == Act.PART || next.does() == Act.JOIN)
                && next.state().polarity() != MainsState.Polarity.NONE;
    }
}
