package leadwright.planner.audit;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Tester;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** Copies of a plan with one thing wrong. Each method changes just what it names. */
final class Damage {
    private Damage() {}

    /** The record with another value for one of its components. */
    static <T extends Record> T with(T record, String component, Object value) {
        try {
            RecordComponent[] components = record.getClass().getRecordComponents();
            Object[] values = new Object[components.length];
            boolean found = false;
            for (int i = 0; i < components.length; i++) {
                boolean named = components[i].getName().equals(component);
                values[i] = named ? value : components[i].getAccessor().invoke(record);
                found |= named;
            }
            if (!found) {
                throw new AssertionError(record.getClass() + " has no component " + component);
            }
            @SuppressWarnings("unchecked")
            Constructor<T> constructor = (Constructor<T>) record.getClass()
                    .getDeclaredConstructor(Arrays.stream(components)
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new));
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException e) {
            throw new AssertionError("a record that cannot be copied", e);
        }
    }

    /** The list with its first element of a kind changed. */
    static <T> List<T> first(List<T> list, Predicate<? super T> which, UnaryOperator<T> change) {
        List<T> changed = new ArrayList<>(list);
        int index = index(list, which);
        changed.set(index, change.apply(list.get(index)));
        return changed;
    }

    static <T> int index(List<T> list, Predicate<? super T> which) {
        for (int i = 0; i < list.size(); i++) {
            if (which.test(list.get(i))) {
                return i;
            }
        }
        throw new AssertionError("nothing of the kind to damage");
    }

    // ---- device and kit

    static Plan device(Plan plan, UnaryOperator<Device> change) {
        return with(plan, "device", change.apply(plan.device()));
    }

    static Plan items(Plan plan, UnaryOperator<KitItem> change) {
        Kit kit = plan.kit();
        return with(
                plan, "kit", with(kit, "items", kit.items().stream().map(change).toList()));
    }

    static Plan tester(Plan plan, UnaryOperator<Tester> change) {
        return with(
                plan, "kit", with(plan.kit(), "tester", change.apply(plan.kit().tester())));
    }

    static Plan jacks(Plan plan, UnaryOperator<Jacks> change) {
        return tester(plan, tester -> with(tester, "jacks", tester.jacks().map(change)));
    }

    // ---- hookups

    static Plan hookup(Plan plan, Predicate<Hookup> which, UnaryOperator<Hookup> change) {
        return with(plan, "hookups", first(plan.hookups(), which, change));
    }

    static Plan chain(Plan plan, int index, UnaryOperator<Chain> change) {
        return hookup(plan, hookup -> hookup.chains().size() > index, hookup -> {
            Chain chain = hookup.chains().get(index);
            return with(hookup, "chains", first(hookup.chains(), chain::equals, change));
        });
    }

    static Plan bundle(Plan plan, Predicate<Bundle> which, UnaryOperator<Bundle> change) {
        return hookup(
                plan,
                hookup -> hookup.bundles().stream().anyMatch(which),
                hookup -> with(hookup, "bundles", first(hookup.bundles(), which, change)));
    }

    // ---- readings

    static Plan obligation(Plan plan, Predicate<Obligation> which, UnaryOperator<Obligation> change) {
        return with(
                plan,
                "readings",
                first(
                        plan.readings(),
                        reading -> which.test(reading.obligation()),
                        reading -> with(reading, "obligation", change.apply(reading.obligation()))));
    }

    /** Neither listed nor taken. */
    static Plan dropReading(Plan plan, Predicate<Obligation> which) {
        Reading dropped = plan.readings().stream()
                .filter(reading -> which.test(reading.obligation()))
                .findFirst()
                .orElseThrow();
        List<Reading> left = new ArrayList<>(plan.readings());
        left.remove(dropped);
        return with(dropStep(plan, step -> step.reading().equals(Optional.of(dropped.id()))), "readings", left);
    }

    /** Whether a step takes a reading of a kind. */
    static Predicate<Step> takes(Plan plan, Predicate<Obligation> which) {
        return step -> step.reading().stream()
                .flatMap(id ->
                        plan.readings().stream().filter(reading -> reading.id().equals(id)))
                .map(Reading::obligation)
                .anyMatch(which);
    }

    // ---- steps

    static Plan steps(Plan plan, List<Step> steps) {
        List<Step> numbered = new ArrayList<>();
        steps.forEach(step -> numbered.add(with(step, "number", numbered.size() + 1)));
        return with(plan, "steps", numbered);
    }

    static Plan step(Plan plan, Predicate<Step> which, UnaryOperator<Step> change) {
        return with(plan, "steps", first(plan.steps(), which, change));
    }

    static Plan dropStep(Plan plan, Predicate<Step> which) {
        List<Step> steps = new ArrayList<>(plan.steps());
        steps.remove(index(steps, which));
        return steps(plan, steps);
    }

    static Plan dropSteps(Plan plan, Predicate<Step> which) {
        List<Step> steps = new ArrayList<>(plan.steps());
        if (!steps.removeIf(which)) {
            throw new AssertionError("nothing of the kind to damage");
        }
        return steps(plan, steps);
    }

    /** Moves the first step of one kind to just before or behind another. */
    static Plan moveStep(Plan plan, Predicate<Step> which, Predicate<Step> target, boolean behind) {
        List<Step> steps = new ArrayList<>(plan.steps());
        Step moved = steps.remove(index(steps, which));
        steps.add(index(steps, target) + (behind ? 1 : 0), moved);
        return steps(plan, steps);
    }
}
