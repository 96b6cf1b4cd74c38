package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
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
     * @param checks whether its readings are of the supply and of the tester itself
     */
    record Group(MainsState state, Optional<String> mode, boolean checks, List<Line> lines) {

        boolean isOnlyActs() {
            return lines.stream().allMatch(Act.class::isInstance);
        }

        boolean alternative() {
            return readings()
                    .anyMatch(reading -> reading.obligation()
                            .method()
                            .equals(Optional.of(leadwright.catalog.kit.Method.ALTERNATIVE)));
        }

        private Stream<Reading> readings() {
            return lines.stream()
                    .filter(Value.class::isInstance)
                    .map(Value.class::cast)
                    .map(Value::reading);
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

    /** The quantity of a run of rows, said once above them. */
    record Heading(Obligation of) implements Line {}

    /** @param headed whether a heading above says the quantity */
    record Value(Reading reading, boolean headed) implements Line {}

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
                // The ticks at the head cover the looks before the first hookup.
                case LOOK -> step.hookup().ifPresent(hookup -> builder.line(step, new Act(step)));
                // The bar over the rows says the state, the row says clip, tie and touch, the end block restores.
                case SWITCH, CLIP, TIE, TOUCH, RESTORE -> {}
            }
        }
        return new Course(builder.finish());
    }

    private static final class Builder {
        /** Rows of one quantity from which a heading saves more room than it takes. */
        private static final int RUN = 4;

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
            Obligation what = reading.obligation();
            boolean check = what.phase() == Obligation.Phase.CHECK;
            Group group = current(step, Optional.of(what.mode()), check);
            what.note().stream()
                    .flatMap(note -> Stream.of(note.split("; ")))
                    .filter(notes::add)
                    .reduce((one, other) -> one + "; " + other)
                    .ifPresent(note -> group.lines().add(new Note(note)));
            boolean firstWithMains = what.phase() == Obligation.Phase.MAINS_ON_PART
                    && group.readings().noneMatch(each -> each.obligation().phase() == what.phase());
            if (firstWithMains) {
                group.lines().add(new Background());
            }
            group.lines().add(new Value(reading, false));
        }

        void line(Step step, Line line) {
            current(step, Optional.empty(), false).lines().add(line);
        }

        /** The group that a line belongs to; acts before the first reading of a state take on that reading's mode. */
        private Group current(Step step, Optional<String> mode, boolean checks) {
            if (step.hookup().isPresent() && !step.hookup().equals(hookup)) {
                if (!groups.isEmpty()) {
                    close();
                }
                hookup = step.hookup();
            }
            if (groups.isEmpty() || last().state() != step.state() || last().checks() != checks) {
                groups.add(new Group(step.state(), mode, checks, new ArrayList<>()));
            } else if (mode.isPresent() && last().mode().isEmpty()) {
                groups.set(groups.size() - 1, new Group(step.state(), mode, checks, last().lines()));
            } else if (mode.isPresent() && !last().mode().equals(mode)) {
                groups.add(new Group(step.state(), mode, checks, new ArrayList<>()));
            }
            return last();
        }

        private Group last() {
            return groups.get(groups.size() - 1);
        }

        private void close() {
            List<Group> headed = groups.stream().map(Builder::headed).toList();
            done.add(new Stretch(hookup, List.copyOf(parted), List.copyOf(joined), headed));
            parted = new ArrayList<>();
            joined = new ArrayList<>();
            groups = new ArrayList<>();
            notes.clear();
        }

        /** Puts a heading over every run of rows of one quantity that is long enough to gain by it. */
        private static Group headed(Group group) {
            List<Line> lines = new ArrayList<>();
            int at = 0;
            while (at < group.lines().size()) {
                int end = at;
                while (end < group.lines().size()
                        && sameQuantity(group.lines().get(at), group.lines().get(end))) {
                    end++;
                }
                boolean gains = end - at >= RUN;
                if (gains) {
                    lines.add(new Heading(
                            ((Value) group.lines().get(at)).reading().obligation()));
                }
                for (Line line : group.lines().subList(at, Math.max(end, at + 1))) {
                    lines.add(line instanceof Value value ? new Value(value.reading(), gains) : line);
                }
                at = Math.max(end, at + 1);
            }
            return new Group(group.state(), group.mode(), group.checks(), List.copyOf(lines));
        }

        private static boolean sameQuantity(Line one, Line other) {
            if (!(one instanceof Value first) || !(other instanceof Value second)) {
                return false;
            }
            Obligation a = first.reading().obligation();
            Obligation b = second.reading().obligation();
            return a.quantity() == b.quantity()
                    && a.method().equals(b.method())
                    && a.component().equals(b.component());
        }

        List<Stretch> finish() {
            close();
            return done;
        }
    }
}
