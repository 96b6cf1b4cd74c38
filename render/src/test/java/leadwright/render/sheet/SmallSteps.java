package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** Steps and readings of a plan made by hand, numbered as they come. */
final class SmallSteps {
    private final List<Step> steps = new ArrayList<>();
    private final List<Reading> readings = new ArrayList<>();

    List<Step> steps() {
        return steps;
    }

    List<Reading> readings() {
        return readings;
    }

    private void add(Step.Act does, String text, MainsState state, Optional<String> place, Step.Account account) {
        Optional<String> hookup = readings.size() < 1 ? Optional.empty() : Optional.of("H1");
        steps.add(new Step(
                steps.size() + 1,
                does,
                text,
                Optional.empty(),
                state,
                hookup,
                Optional.empty(),
                place,
                10,
                account,
                0,
                Optional.empty(),
                Optional.empty(),
                "made by hand"));
    }

    void look() {
        add(Step.Act.LOOK, "Look over", MainsState.OFF, Optional.empty(), Step.Account.PREPARE);
    }

    void joints(Hookup hookup) {
        Set<Joint> joints = new LinkedHashSet<>();
        for (Chain chain : hookup.chains()) {
            List<String> ends = new ArrayList<>(List.of(chain.connection()));
            ends.addAll(chain.items());
            ends.add("jack-" + chain.jack());
            for (int i = ends.size() - 1; i > 0; i--) {
                joints.add(new Joint(ends.get(i - 1), ends.get(i)));
            }
        }
        joints.add(new Joint("lead-earth/1", "earth-jack"));
        joints.add(new Joint("jaw/1", "lead-earth/1"));
        joints.forEach(joint -> {
            add(Step.Act.JOIN, "Join " + joint.from(), MainsState.OFF, Optional.empty(), Step.Account.REPLUG);
            Step last = steps.remove(steps.size() - 1);
            steps.add(new Step(
                    last.number(),
                    last.does(),
                    last.text(),
                    last.reading(),
                    last.state(),
                    Optional.of("H1"),
                    Optional.of(joint),
                    last.place(),
                    last.seconds(),
                    last.account(),
                    last.writing(),
                    last.caution(),
                    last.onFail(),
                    last.because()));
        });
    }

    void nulled() {
        add(Step.Act.NULL, "Null the lead", MainsState.OFF, Optional.empty(), Step.Account.NULL);
    }

    void clip(String place) {
        add(Step.Act.CLIP, "Clip to " + place, MainsState.OFF, Optional.of(place), Step.Account.EARTH_LEAD);
    }

    void state(MainsState state) {
        boolean first = steps.stream().noneMatch(step -> step.does() == Step.Act.SWITCH);
        add(Step.Act.SWITCH, "Set " + state.word(), state, Optional.empty(), Step.Account.SWITCH);
        if (first) {
            add(Step.Act.START, "Start the device and wait 75 s.", state, Optional.empty(), Step.Account.START_UP);
        }
    }

    void restore() {
        add(
                Step.Act.SHUT_DOWN,
                "Shut the device down, 20 s.",
                MainsState.OFF,
                Optional.empty(),
                Step.Account.SHUT_DOWN);
        add(Step.Act.RESTORE, "Put back", MainsState.OFF, Optional.empty(), Step.Account.PREPARE);
    }

    void read(MainsState state, Obligation what, Optional<String> hookup) {
        String id = String.format("R%02d", readings.size() + 1);
        readings.add(new Reading(id, what, hookup));
        steps.add(new Step(
                steps.size() + 1,
                Step.Act.READ,
                "Read " + what.key(),
                Optional.of(id),
                state,
                hookup,
                Optional.empty(),
                Optional.empty(),
                10,
                Step.Account.READ,
                5,
                Optional.empty(),
                Optional.empty(),
                "asked for"));
    }
}
