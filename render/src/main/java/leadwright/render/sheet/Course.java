package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/**
 * A plan's steps as the bench sheet shows them: stretches between changes of the wiring, in each the states, under each
 * state its lines. What the ticks before and after the table already cover, and what a row says itself (clip, tie, touch),
 * makes no line of its own.
 */
record Course(List<Stretch> stretches) {
    Course {
        stretches = List.copyOf(stretches);
    }

    /**
     * What happens while one hookup stands.
     *
     * @param hookup empty before the first hookup stands
     * @param parted what comes off before it, joints in step order
     * @param joined what goes on
     */
    record Stretch(Optional<String> hookup, List<Step> parted, List<Step> joined, List<Group> groups) {}

    /**
     * Lines under one state bar.
     *
     * @param mode operating mode of its readings; empty where it has none
     */
    record Group(MainsState state, Optional<String> mode, List<Line> lines) {

        boolean isOnlyActs() {
            return lines.stream().allMatch(Act.class::isInstance);
        }

        /** Readings of the supply and of the tester itself. */
        boolean isOnlyChecks() {
            return !values().isEmpty()
                    && values().stream()
                            .allMatch(value -> value.reading().obligation().phase() == Obligation.Phase.CHECK);
        }

        boolean alternative() {
            return values().stream()
                    .anyMatch(value -> value.reading()
                            .obligation()
                            .method()
                            .filter(method -> method == leadwright.catalog.kit.Method.ALTERNATIVE)
                            .isPresent());
        }

        List<Value> values() {
            return lines.stream()
                    .filter(Value.class::isInstance)
                    .map(Value.class::cast)
                    .toList();
        }
    }

    /** A line of the table. */
    sealed interface Line {}

    /** Something to do and tick. */
    record Act(Step step) implements Line {}

    /** The null value is written here; {@code last} for the one that closes the resistance readings. */
    record Null(Step step, boolean last) implements Line {}

    /** What is shown before mains is put on a part, written beside and never subtracted. */
    record Background() implements Line {}

    /** What a person must know about the rows that follow; said once while the hookup stands. */
    record Note(String text) implements Line {}

    record Value(Reading reading) implements Line {}

    static Course of(Plan plan) {
        Map<String, Reading> readings =
                plan.readings().stream().collect(Collectors.toMap(Reading::id, Function.identity()));
        List<Step> nulls = plan.steps().stream()
                .filter(step -> step.does() == Step.Act.NULL)
                .toList();
        Optional<Step> lastNull = nulls.size() < 2 ? Optional.empty() : Optional.of(nulls.get(nulls.size() - 1));
        Builder builder = new Builder(plan.hookups());
        for (Step step : plan.steps()) {
            switch (step.does()) {
                case READ ->
                    builder.value(
                            step,
                            readings.get(step.reading()
                                    .orElseThrow(() -> new IllegalArgumentException("step without its reading"))));
                case JOIN, PART -> builder.joint(step);
                case NULL ->
                    builder.line(
                            step, new Null(step, lastNull.filter(step::equals).isPresent()));
                case START, SHUT_DOWN, WAIT, MAKE_SAFE -> builder.line(step, new Act(step));
                // The bar over the rows says the state; the row says clip, tie and touch; ticks cover look and restore.
                case SWITCH, CLIP, TIE, TOUCH, LOOK, RESTORE -> {}
            }
        }
        return new Course(builder.finish());
    }

    private static final class Builder {
        private final List<String> hookups;
        private final List<Stretch> done = new ArrayList<>();
        private Optional<String> hookup = Optional.empty();
        private List<Step> parted = new ArrayList<>();
        private List<Step> joined = new ArrayList<>();
        private List<Group> groups = new ArrayList<>();
        private final Set<String> notes = new HashSet<>();

        Builder(List<Hookup> hookups) {
            this.hookups = hookups.stream().map(Hookup::id).toList();
        }

        void joint(Step step) {
            if (step.account() == Step.Account.EARTH_LEAD && step.does() == Step.Act.PART) {
                // The earth lead comes off while the hookup stands: a line to tick, not a change of hookup.
                line(step, new Act(step));
                return;
            }
            if (!groups.isEmpty() && !step.hookup().equals(hookup)) {
                close();
            }
            if (groups.isEmpty()) {
                (step.does() == Step.Act.PART ? parted : joined).add(step);
                step.hookup().filter(hookups::contains).ifPresent(id -> hookup = Optional.of(id));
            } else {
                line(step, new Act(step));
            }
        }

        void value(Step step, Reading reading) {
            Group group = current(step, Optional.of(reading.obligation().mode()));
            reading.obligation()
                    .note()
                    .filter(notes::add)
                    .ifPresent(note -> group.lines().add(new Note(note)));
            if (isWithMains(reading) && group.values().stream().noneMatch(each -> isWithMains(each.reading()))) {
                group.lines().add(new Background());
            }
            group.lines().add(new Value(reading));
        }

        private static boolean isWithMains(Reading reading) {
            return reading.obligation().phase() == Obligation.Phase.MAINS_ON_PART;
        }

        void line(Step step, Line line) {
            current(step, Optional.empty()).lines().add(line);
        }

        /** The group that a line belongs to; acts before the first reading of a state take on that reading's mode. */
        private Group current(Step step, Optional<String> mode) {
            if (step.hookup().isPresent() && !step.hookup().equals(hookup)) {
                if (!groups.isEmpty()) {
                    close();
                }
                hookup = step.hookup();
            }
            if (groups.isEmpty() || last().state() != step.state()) {
                groups.add(new Group(step.state(), mode, new ArrayList<>()));
            } else if (mode.isPresent() && last().mode().isEmpty()) {
                groups.set(groups.size() - 1, new Group(step.state(), mode, last().lines()));
            } else if (mode.isPresent() && !last().mode().equals(mode)) {
                groups.add(new Group(step.state(), mode, new ArrayList<>()));
            }
            return last();
        }

        private Group last() {
            return groups.get(groups.size() - 1);
        }

        private void close() {
            done.add(new Stretch(hookup, List.copyOf(parted), List.copyOf(joined), List.copyOf(groups)));
            parted = new ArrayList<>();
            joined = new ArrayList<>();
            groups = new ArrayList<>();
            notes.clear();
        }

        List<Stretch> finish() {
            close();
            return done;
        }
    }
}
