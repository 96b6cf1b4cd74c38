package leadwright.planner.audit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Tester;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.TimeSplit;

/** Copies of a plan with one thing wrong. Each method changes just what it names. */
final class Damage {
    private Damage() {}

    static Plan hookups(Plan plan, List<Hookup> hookups) {
        return copy(plan, plan.device(), plan.kit(), hookups, plan.readings(), plan.steps(), plan.time());
    }

    static Plan readings(Plan plan, List<Reading> readings) {
        return copy(plan, plan.device(), plan.kit(), plan.hookups(), readings, plan.steps(), plan.time());
    }

    static Plan steps(Plan plan, List<Step> steps) {
        return copy(plan, plan.device(), plan.kit(), plan.hookups(), plan.readings(), steps, plan.time());
    }

    static Plan device(Plan plan, Device device) {
        return copy(plan, device, plan.kit(), plan.hookups(), plan.readings(), plan.steps(), plan.time());
    }

    static Plan kit(Plan plan, Kit kit) {
        return copy(plan, plan.device(), kit, plan.hookups(), plan.readings(), plan.steps(), plan.time());
    }

    static Plan time(Plan plan, TimeSplit time) {
        return copy(plan, plan.device(), plan.kit(), plan.hookups(), plan.readings(), plan.steps(), time);
    }

    static Plan tester(Plan plan, UnaryOperator<Tester> change) {
        Kit kit = plan.kit();
        return kit(plan, new Kit(kit.name(), change.apply(kit.tester()), kit.items(), kit.checks(), kit.connectors()));
    }

    static Plan partial(Plan plan, boolean partial) {
        return new Plan(
                plan.fingerprint(),
                partial,
                plan.trainingCopy(),
                plan.device(),
                plan.kit(),
                plan.house(),
                plan.rules(),
                plan.occasion(),
                plan.on(),
                plan.hookups(),
                plan.readings(),
                plan.steps(),
                plan.notApplicable(),
                plan.shortfalls(),
                plan.warnings(),
                plan.time(),
                plan.hookupsProof(),
                plan.timeProof());
    }

    static Plan proof(Plan plan, Proof hookups) {
        return new Plan(
                plan.fingerprint(),
                plan.partial(),
                plan.trainingCopy(),
                plan.device(),
                plan.kit(),
                plan.house(),
                plan.rules(),
                plan.occasion(),
                plan.on(),
                plan.hookups(),
                plan.readings(),
                plan.steps(),
                plan.notApplicable(),
                plan.shortfalls(),
                plan.warnings(),
                plan.time(),
                hookups,
                plan.timeProof());
    }

    private static Plan copy(
            Plan plan,
            Device device,
            Kit kit,
            List<Hookup> hookups,
            List<Reading> readings,
            List<Step> steps,
            TimeSplit time) {
        return new Plan(
                plan.fingerprint(),
                plan.partial(),
                plan.trainingCopy(),
                device,
                kit,
                plan.house(),
                plan.rules(),
                plan.occasion(),
                plan.on(),
                hookups,
                readings,
                steps,
                plan.notApplicable(),
                plan.shortfalls(),
                plan.warnings(),
                time,
                plan.hookupsProof(),
                plan.timeProof());
    }

    // ---- hookups

    static Plan firstHookup(Plan plan, Predicate<Hookup> which, UnaryOperator<Hookup> change) {
        List<Hookup> hookups = new ArrayList<>(plan.hookups());
        for (int i = 0; i < hookups.size(); i++) {
            if (which.test(hookups.get(i))) {
                hookups.set(i, change.apply(hookups.get(i)));
                return hookups(plan, hookups);
            }
        }
        throw new AssertionError("no such hookup to damage");
    }

    static Plan chain(Plan plan, int index, UnaryOperator<Chain> change) {
        return firstHookup(plan, hookup -> hookup.chains().size() > index, hookup -> {
            List<Chain> chains = new ArrayList<>(hookup.chains());
            chains.set(index, change.apply(chains.get(index)));
            return new Hookup(hookup.id(), hookup.bundles(), chains, hookup.earth());
        });
    }

    static Chain items(Chain chain, List<String> items) {
        return new Chain(chain.connection(), items, chain.jack(), chain.contacts());
    }

    static Plan bundle(Plan plan, Predicate<Bundle> which, UnaryOperator<Bundle> change) {
        return firstHookup(plan, hookup -> hookup.bundles().stream().anyMatch(which), hookup -> {
            List<Bundle> bundles = new ArrayList<>();
            boolean done = false;
            for (Bundle bundle : hookup.bundles()) {
                bundles.add(!done && which.test(bundle) ? change.apply(bundle) : bundle);
                done |= which.test(bundle);
            }
            return new Hookup(hookup.id(), bundles, hookup.chains(), hookup.earth());
        });
    }

    // ---- readings

    static Plan reading(Plan plan, Predicate<Obligation> which, UnaryOperator<Reading> change) {
        List<Reading> readings = new ArrayList<>(plan.readings());
        int index = index(readings, reading -> which.test(reading.obligation()));
        readings.set(index, change.apply(readings.get(index)));
        return readings(plan, readings);
    }

    static <T> int index(List<T> list, Predicate<T> which) {
        for (int i = 0; i < list.size(); i++) {
            if (which.test(list.get(i))) {
                return i;
            }
        }
        throw new AssertionError("nothing of the kind to damage");
    }

    // ---- steps

    static Plan dropStep(Plan plan, Predicate<Step> which) {
        List<Step> steps = new ArrayList<>(plan.steps());
        steps.remove(index(steps, which));
        return steps(plan, renumber(steps));
    }

    static Plan step(Plan plan, Predicate<Step> which, UnaryOperator<Step> change) {
        List<Step> steps = new ArrayList<>(plan.steps());
        int index = index(steps, which);
        steps.set(index, change.apply(steps.get(index)));
        return steps(plan, steps);
    }

    /** Moves the first step of one kind to just before or behind another. */
    static Plan moveStep(Plan plan, Predicate<Step> which, Predicate<Step> target, boolean behind) {
        List<Step> steps = new ArrayList<>(plan.steps());
        Step moved = steps.remove(index(steps, which));
        int at = index(steps, target) + (behind ? 1 : 0);
        steps.add(at, moved);
        return steps(plan, renumber(steps));
    }

    static List<Step> renumber(List<Step> steps) {
        List<Step> numbered = new ArrayList<>();
        for (Step step : steps) {
            numbered.add(number(step, numbered.size() + 1));
        }
        return numbered;
    }

    static Step number(Step step, int number) {
        return with(step, number, step.state(), step.seconds(), step.caution(), step.onFail());
    }

    static Step with(
            Step step, int number, MainsState state, int seconds, Optional<String> caution, Optional<String> onFail) {
        return new Step(
                number,
                step.does(),
                step.text(),
                step.reading(),
                state,
                step.hookup(),
                step.joint(),
                step.place(),
                seconds,
                step.account(),
                step.writing(),
                caution,
                onFail,
                step.because());
    }

    /** Readings by id, for predicates over steps. */
    static Function<Step, Optional<Obligation>> obligationOf(Plan plan) {
        return step -> step.reading()
                .flatMap(id -> plan.readings().stream()
                        .filter(reading -> reading.id().equals(id))
                        .map(Reading::obligation)
                        .findFirst());
    }
}
