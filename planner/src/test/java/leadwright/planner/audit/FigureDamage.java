package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;
import static leadwright.planner.audit.Undamaged.WARD;

import java.util.List;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Step.Act;

/** Damages to the figures. */
final class FigureDamage {
    private FigureDamage() {}

    static List<Deliberate> all() {
        return List.of(
                new Deliberate(
                        Invariant.SECONDS,
                        "a step that takes less",
                        WARD,
                        plan -> Damage.step(
                                plan,
                                step -> step.does() == Act.TIE,
                                step -> with(step, "seconds", step.seconds() - 1))),
                new Deliberate(
                        Invariant.SECONDS,
                        "a check of the supply that takes less",
                        WARD,
                        plan -> Damage.step(
                                plan,
                                Damage.takes(plan, what -> what.quantity() == QuantityKind.SUPPLY_VOLTAGE),
                                step -> with(step, "seconds", step.seconds() - 1))),
                new Deliberate(
                        Invariant.SECONDS,
                        "a clip put on without walking there",
                        WARD,
                        plan -> Damage.step(
                                plan,
                                step -> step.does() == Act.CLIP && step.seconds() > 10,
                                step -> with(step, "seconds", 10))),
                new Deliberate(
                        Invariant.START_UPS,
                        "one start too few in the sum",
                        WARD,
                        plan -> with(
                                plan,
                                "time",
                                with(plan.time(), "startUps", plan.time().startUps() - 1))),
                new Deliberate(
                        Invariant.PROOF,
                        "a bound above the answer",
                        WARD,
                        plan -> with(
                                plan,
                                "hookupsProof",
                                new Proof(plan.hookups().size(), plan.hookups().size() + 1L, "damaged"))),
                new Deliberate(
                        Invariant.PARTIAL,
                        "a whole plan called partial",
                        WARD,
                        plan -> with(plan, "partial", !plan.partial())));
    }
}
