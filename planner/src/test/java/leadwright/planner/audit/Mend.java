package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/** Makes a damaged plan look whole everywhere but at its damage, so that no other check speaks first. */
final class Mend {
    private Mend() {}

    /** Sums, start-ups and proofs of the steps and hookups as they are now. */
    static Plan figures(Plan plan) {
        int total = 0;
        int startUps = 0;
        Map<Step.Account, Integer> parts = new EnumMap<>(Step.Account.class);
        for (Step step : plan.steps()) {
            total += step.seconds();
            parts.merge(step.account(), step.seconds() - step.writing(), Integer::sum);
            parts.merge(Step.Account.WRITE, step.writing(), Integer::sum);
            startUps += step.does() == Step.Act.START ? 1 : 0;
        }
        parts.values().removeIf(seconds -> seconds == 0);
        TimeSplit time = new TimeSplit(total, parts, Math.max(total, plan.time().plainOrder()), startUps);
        Proof proof = new Proof(total, Math.min(total, plan.timeProof().lowerBound()), "mended");
        return with(with(plan, "time", time), "timeProof", proof);
    }

    /** An end of joints, a connection or an item instance, under another name, in every hookup and every step. */
    static Plan renamed(Plan plan, String from, String to) {
        return steps(hookups(plan, hookup -> renamed(hookup, from, to)), from, to, step -> true);
    }

    /** The same in one hookup and in the steps that build it. */
    static Plan renamedIn(Plan plan, String hookup, String from, String to) {
        Plan wired = hookups(plan, each -> each.id().equals(hookup) ? renamed(each, from, to) : each);
        return steps(wired, from, to, step -> step.hookup().equals(Optional.of(hookup)));
    }

    private static Plan hookups(Plan plan, UnaryOperator<Hookup> change) {
        return with(plan, "hookups", plan.hookups().stream().map(change).toList());
    }

    private static Plan steps(Plan plan, String from, String to, Predicate<Step> which) {
        return with(
                plan,
                "steps",
                plan.steps().stream()
                        .map(step -> which.test(step)
                                ? with(step, "joint", step.joint().map(joint -> renamed(joint, from, to)))
                                : step)
                        .toList());
    }

    private static Joint renamed(Joint joint, String from, String to) {
        return new Joint(renamed(joint.from(), from, to), renamed(joint.to(), from, to));
    }

    private static String renamed(String end, String from, String to) {
        return end.equals(from) || end.startsWith(from + "#") ? to + end.substring(from.length()) : end;
    }

    private static List<String> renamed(List<String> ends, String from, String to) {
        return ends.stream().map(end -> renamed(end, from, to)).toList();
    }

    private static Hookup renamed(Hookup hookup, String from, String to) {
        List<Chain> chains = new ArrayList<>();
        for (Chain chain : hookup.chains()) {
            boolean moved = from.equals("jack-" + chain.jack()) && to.startsWith("jack-");
            chains.add(new Chain(
                    renamed(chain.connection(), from, to),
                    renamed(chain.items(), from, to),
                    moved ? number(to) : chain.jack(),
                    chain.contacts()));
        }
        List<Bundle> bundles = new ArrayList<>();
        for (Bundle bundle : hookup.bundles()) {
            bundles.add(new Bundle(
                    bundle.id(),
                    renamed(bundle.connections(), from, to),
                    bundle.jacks().stream()
                            .map(jack -> from.equals("jack-" + jack) && to.startsWith("jack-") ? number(to) : jack)
                            .toList(),
                    renamed(bundle.links(), from, to)));
        }
        List<EarthPath> earth = new ArrayList<>();
        for (EarthPath path : hookup.earth()) {
            earth.add(new EarthPath(path.pole(), path.point(), path.socket(), renamed(path.items(), from, to)));
        }
        return new Hookup(hookup.id(), bundles, chains, earth);
    }

    private static int number(String jack) {
        return Integer.parseInt(jack.substring("jack-".length()));
    }

    /** Two ends exchanged in one hookup and in the steps that build it. */
    static Plan exchanged(Plan plan, String hookup, String one, String other) {
        Plan parked = renamedIn(plan, hookup, one, "jack-0");
        return renamedIn(renamedIn(parked, hookup, other, one), hookup, "jack-0", other);
    }

    /** A step taken out, the rest numbered anew. */
    static Plan without(Plan plan, Step step) {
        List<Step> steps = new ArrayList<>(plan.steps());
        steps.remove(step);
        return figures(Damage.steps(plan, steps));
    }

    /** A step taken out and put in at an index of what is left. */
    static Plan moved(Plan plan, Step step, int index, Step as) {
        List<Step> steps = new ArrayList<>(plan.steps());
        steps.remove(step);
        steps.add(index, as);
        return figures(Damage.steps(plan, steps));
    }

    static Plan replaced(Plan plan, Step step, Step by) {
        return figures(Damage.steps(
                plan,
                plan.steps().stream().map(each -> each == step ? by : each).toList()));
    }
}
