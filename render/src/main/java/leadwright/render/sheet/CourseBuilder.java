package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.render.sheet.Course.Act;
import leadwright.render.sheet.Course.Background;
import leadwright.render.sheet.Course.Group;
import leadwright.render.sheet.Course.Line;
import leadwright.render.sheet.Course.Stretch;
import leadwright.render.sheet.Course.Value;

/** Takes a plan's steps in order and sorts them into stretches, groups and lines. */
final class CourseBuilder {

    private final List<Stretch> done = new ArrayList<>();
    private Optional<String> hookup = Optional.empty();
    /** Whether the hookup is still being built: joints then belong to the change of wiring. */
    private boolean building;

    private List<Step> opening = new ArrayList<>();
    /** Acts of a hookup that is being built: they belong to its opening if a joint follows, else to its first group. */
    private List<Step> pending = new ArrayList<>();

    private List<Step> parted = new ArrayList<>();
    private List<Step> joined = new ArrayList<>();
    private List<Group> groups = new ArrayList<>();
    private final Set<String> notes = new HashSet<>();
    private Optional<Step> clip = Optional.empty();

    void joint(Step step) {
        enter(step);
        if (building) {
            opening.addAll(pending);
            pending.clear();
            (step.does() == Step.Act.PART ? parted : joined).add(step);
        } else {
            // The earth lead comes off, or on again, while the hookup stands: a line to tick.
            line(step, new Act(step));
        }
    }

    void act(Step step) {
        enter(step);
        if (building) {
            pending.add(step);
        } else {
            line(step, new Act(step));
        }
    }

    void value(Step step, Reading reading) {
        Obligation what = reading.obligation();
        boolean check = what.phase() == Obligation.Phase.CHECK;
        boolean mains = what.phase() == Obligation.Phase.MAINS_ON_PART;
        Group group = current(step, Optional.of(what.mode()), check, mains);
        Optional<String> note = what.note().stream()
                .flatMap(each -> Stream.of(each.split("; ")))
                .filter(notes::add)
                .reduce((one, other) -> one + "; " + other);
        if (mains && group.readings().findAny().isEmpty()) {
            group.lines().add(new Background());
        }
        group.lines().add(new Value(reading, Optional.empty(), note, clip));
        clip = Optional.empty();
    }

    /** The next reading is taken where this step puts the clip. */
    void clip(Step step) {
        enter(step);
        clip = Optional.of(step);
    }

    void line(Step step, Line line) {
        boolean mains = !groups.isEmpty() && last().mains() && !isAfterMains(step);
        current(step, Optional.empty(), false, mains).lines().add(line);
    }

    /** What nobody does while mains is on a part does not stand under its band. */
    private static boolean isAfterMains(Step step) {
        return switch (step.does()) {
            case START, SHUT_DOWN, RESTORE -> true;
            case SWITCH -> step.place().isEmpty();
            case LOOK ->
                step.place()
                        .filter(place -> place.equals(Step.CORD_IN) || place.equals(Step.CORD_OUT))
                        .isPresent();
            default -> false;
        };
    }

    List<Stretch> finish() {
        built();
        close();
        return done;
    }

    private void enter(Step step) {
        if (step.hookup().isPresent() && !step.hookup().equals(hookup)) {
            built();
            if (!groups.isEmpty()) {
                close();
            }
            hookup = step.hookup();
            building = true;
        }
    }

    /** The hookup stands: what was done since its last joint begins its first group. */
    private void built() {
        if (building) {
            building = false;
            List<Step> acts = List.copyOf(pending);
            pending.clear();
            acts.forEach(step -> line(step, new Act(step)));
        }
    }

    /** The group that a line belongs to; acts before the first reading of a state take on that reading's mode. */
    private Group current(Step step, Optional<String> mode, boolean checks, boolean mains) {
        enter(step);
        built();
        if (groups.isEmpty() || last().state() != step.state() || last().checks() != checks) {
            groups.add(new Group(step.state(), mode, checks, mains && mode.isPresent(), new ArrayList<>()));
        } else if (mode.isPresent() && last().mode().isEmpty() && !mains) {
            groups.set(groups.size() - 1, new Group(step.state(), mode, checks, mains, last().lines()));
        } else if (mode.isPresent() && (!last().mode().equals(mode) || last().mains() != mains)) {
            groups.add(new Group(step.state(), mode, checks, mains, new ArrayList<>()));
        } else if (mode.isEmpty() && last().mains() && !mains) {
            groups.add(new Group(step.state(), mode, checks, false, new ArrayList<>()));
        }
        return last();
    }

    private Group last() {
        return groups.get(groups.size() - 1);
    }

    private void close() {
        List<Group> headed = groups.stream().map(Headings::over).toList();
        done.add(new Stretch(hookup, List.copyOf(opening), List.copyOf(parted), List.copyOf(joined), headed));
        opening = new ArrayList<>();
        parted = new ArrayList<>();
        joined = new ArrayList<>();
        groups = new ArrayList<>();
        notes.clear();
    }
}
