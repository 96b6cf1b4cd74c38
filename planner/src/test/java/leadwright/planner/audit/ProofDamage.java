package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;
import static leadwright.planner.audit.Undamaged.WARD;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import leadwright.planner.Plan;
import leadwright.planner.mistake.ProofStep;
import leadwright.planner.mistake.Watch;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Damages to the proof steps, and to the list of what stays unseen. */
final class ProofDamage {
    private ProofDamage() {}

    static List<Deliberate> all() {
        List<Deliberate> all = new ArrayList<>();
        for (String kind : WARD.plan().foresight().watch().proofs().stream()
                .map(each -> each.kind().word())
                .distinct()
                .filter(word -> !word.equals("state-tick"))
                .toList()) {
            all.add(ward(
                    Invariant.PROOF_STEP,
                    kind + " left out, sums mended",
                    plan -> Mend.figures(Damage.dropSteps(plan, is(kind)))));
        }
        all.add(ward(
                Invariant.PROOF_STEP,
                "the clip looked at after the reading",
                plan -> Damage.moveStep(
                        plan,
                        is("look-at-clip"),
                        step -> step.reading().isPresent() && step.does() == Act.READ && afterClip(plan, step),
                        true)));
        all.add(ward(
                Invariant.PROOF_HANDLING,
                "leads counted between two readings with the outlet on",
                plan -> Damage.moveStep(
                        Damage.step(plan, is("count-and-tug"), step -> with(step, "state", MainsState.NORMAL)),
                        is("count-and-tug"),
                        step -> step.does() == Act.READ && step.state() == MainsState.NORMAL,
                        true)));
        all.add(ward(Invariant.SILENT_SAID, "a proof step struck out, its slips not listed", plan -> {
            Watch watch = plan.foresight().watch();
            List<ProofStep> fewer = watch.proofs().subList(1, watch.proofs().size());
            return with(plan, "foresight", with(plan.foresight(), "watch", with(watch, "proofs", fewer)));
        }));
        return all;
    }

    private static Deliberate ward(Invariant named, String what, UnaryOperator<Plan> damage) {
        return new Deliberate(named, what, WARD, damage);
    }

    private static Predicate<Step> is(String kind) {
        return step -> step.place().equals(Optional.of(Step.PROOF + kind));
    }

    private static boolean afterClip(Plan plan, Step read) {
        int looked = Damage.index(plan.steps(), is("look-at-clip")) + 1;
        return read.number() > looked;
    }
}
