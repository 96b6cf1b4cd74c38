package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.planner.Plan;
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
     * @param opening what is done before and while it is built, other than joints
     * @param parted what comes off before it, joints in step order
     * @param joined what goes on
     */
    record Stretch(
            Optional<String> hookup, List<Step> opening, List<Step> parted, List<Step> joined, List<Group> groups) {}

    /**
     * Lines under one state bar.
     *
     * @param mode operating mode of its readings; empty where it has none
     * @param checks whether its readings are of the supply and of the tester itself
     * @param mains whether its readings put mains on a part: hands must know before the first of them
     */
    record Group(MainsState state, Optional<String> mode, boolean checks, boolean mains, List<Line> lines) {

        boolean isOnlyActs() {
            return lines.stream().allMatch(Act.class::isInstance);
        }

        boolean alternative() {
            return readings()
                    .anyMatch(reading -> reading.obligation()
                            .method()
                            .equals(Optional.of(leadwright.catalog.kit.Method.ALTERNATIVE)));
        }

        /**
         * The lines in runs, each a table of its own: what a page break repeats at its head then holds for all of it. A run
         * that begins with a heading has no rows of another quantity in it.
         */
        List<List<Line>> runs() {
            List<List<Line>> runs = new ArrayList<>();
            boolean headed = false;
            for (Line line : lines) {
                boolean other = line instanceof Heading
                        || headed
                                && line instanceof Value value
                                && value.under().isEmpty();
                if (runs.isEmpty()
                        || other && !runs.get(runs.size() - 1).stream().allMatch(Group::leadsIn)) {
                    runs.add(new ArrayList<>());
                }
                headed = other ? line instanceof Heading : headed;
                runs.get(runs.size() - 1).add(line);
            }
            return runs;
        }

        /** What may stand under the heading of the readings that it comes before. */
        private static boolean leadsIn(Line line) {
            return line instanceof Act || line instanceof Background;
        }

        Stream<Reading> readings() {
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

    /**
     * The quantity of a run of rows, said once above them.
     *
     * @param withComponent whether all its rows take the same component
     */
    record Heading(Obligation of, boolean withComponent) implements Line {}

    /**
     * @param under the heading above that says the quantity, where there is one
     * @param note what a person must know about this row and its likes; said once while the hookup stands
     * @param clip the step that puts the clip where this reading is taken
     */
    record Value(Reading reading, Optional<Heading> under, Optional<String> note, Optional<Step> clip)
            implements Line {}

    /** The proof step that compares the clip's place with the reading's. */
    static boolean looksAtClip(Step step) {
        return step.place().equals(Optional.of(Step.PROOF + "look-at-clip"));
    }

    static Course of(Plan plan) {
        Map<String, Reading> readings =
                plan.readings().stream().collect(Collectors.toMap(Reading::id, Function.identity()));
        List<Step> nulls = plan.steps().stream()
                .filter(step -> step.does() == Step.Act.NULL)
                .toList();
        Optional<Step> lastNull = nulls.size() < 2 ? Optional.empty() : Optional.of(nulls.get(nulls.size() - 1));
        CourseBuilder builder = new CourseBuilder();
        int measured = lastMeasured(plan, readings);
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
                case START, SHUT_DOWN, WAIT, MAKE_SAFE -> builder.act(step);
                // The ticks at the head cover the looks before the first hookup.
                case LOOK -> {
                    // The row that the clip was moved for says where it must be, and has the tick.
                    boolean inRow = looksAtClip(step)
                            && plan.steps().get(step.number() - 2).does() == Step.Act.CLIP;
                    if (step.hookup().isPresent() && !inRow) {
                        builder.act(step);
                    }
                }
                // No bar tells that a source is off again: a line to tick before a hand goes near. Nor does a bar come
                // after
                // the last reading, where the outlet goes off.
                case SWITCH -> {
                    if (step.place().isPresent() || step.number() > measured) {
                        builder.act(step);
                    }
                }
                // A row says where the clip is, but not that the probe takes its place on the earth lead.
                case CLIP ->
                    step.place()
                            .filter("touch-probe"::equals)
                            .ifPresentOrElse(probe -> builder.act(step), () -> builder.clip(step));
                // The hookup is stripped before the closing checks; what comes after these stands in the end block.
                case RESTORE -> {
                    if (!isLast(plan, step)) {
                        builder.act(step);
                    }
                }
                // The bar over the rows says the state, the row says tie and touch.
                case TIE, TOUCH -> {}
            }
        }
        return new Course(builder.finish());
    }

    /** Number of the last step that reads something of the device; 0 where none does. */
    private static int lastMeasured(Plan plan, Map<String, Reading> readings) {
        return plan.steps().stream()
                .filter(step -> step.reading()
                        .map(readings::get)
                        .filter(reading -> reading.obligation().phase() != Obligation.Phase.CHECK)
                        .isPresent())
                .mapToInt(Step::number)
                .max()
                .orElse(0);
    }

    private static boolean isLast(Plan plan, Step restore) {
        return plan.steps().stream()
                .filter(step -> step.does() == Step.Act.RESTORE)
                .noneMatch(step -> step.number() > restore.number());
    }
}
