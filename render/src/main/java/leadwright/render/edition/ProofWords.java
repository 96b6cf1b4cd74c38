package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.planner.mistake.Cause;
import leadwright.planner.mistake.ProofKind;
import leadwright.planner.mistake.Slip;
import leadwright.planner.mistake.SlipKind;
import leadwright.planner.plan.Step;

/** Which step would have shown a slip before it came to a reading. */
final class ProofWords {

    private ProofWords() {}

    static String of(Plan plan, Optional<Cause> cause) {
        if (cause.isEmpty()) {
            return "The proof steps of the plan were done and found nothing.";
        }
        if (!(cause.get() instanceof Slip slip)) {
            return "None: it is the device's own fault, and to find it is what the readings are for.";
        }
        List<String> would = new ArrayList<>();
        for (ProofKind kind : ProofKind.values()) {
            if (kind.exposes(slip.kind())) {
                would.add(words(kind) + inPlan(plan, kind));
            }
        }
        check(slip.kind()).ifPresent(would::add);
        return would.isEmpty()
                ? "None is known: the value itself must be seen."
                : "It would have shown by " + String.join("; or by ", would) + ".";
    }

    /** Numbers of the steps of the plan that do it. */
    private static String inPlan(Plan plan, ProofKind kind) {
        List<String> numbers = plan.steps().stream()
                .filter(step -> step.place().equals(Optional.of(Step.PROOF + kind.word())))
                .map(step -> String.valueOf(step.number()))
                .toList();
        return numbers.isEmpty()
                ? ""
                : " (in this plan: step" + (numbers.size() > 1 ? "s " : " ") + String.join(", ", numbers) + ")";
    }

    private static Optional<String> check(SlipKind kind) {
        return switch (kind) {
            case SUPPLY_NOT_EARTHED, WALL_EXCHANGED, WRONG_VOLTAGE ->
                Optional.of("reading the voltages at the tester's outlet before the first leakage reading");
            case FUSE_BLOWN, SUPPLY_TRIPPED -> Optional.of("reading the known resistor at the start and at the end");
            case NULL_WITH_CORD, NULL_TIPS_APART ->
                Optional.of("nulling again at the end, on the outlet's earth contact");
            case TOOL_IN_JAWS, CLIP_ON_PAINT -> Optional.of("looking at the clip before the value");
            default -> Optional.empty();
        };
    }

    private static String words(ProofKind kind) {
        return switch (kind) {
            case COUNT_AND_TUG -> "counting the ends against the list and tugging each";
            case FOLLOW_TO_JACK -> "following each trunk and single lead to its jack";
            case PRESS_AND_LOOK -> "pressing every foil and looking into every fluid contact";
            case READ_BACK_BY_TWO -> "two persons reading the whole hookup back";
            case LOOK_AT_CLIP -> "looking at the clip: the part that the row names, on bare metal";
            case NOTHING_ELSE_TOUCHES -> "looking round the device before the earth readings and before power";
            case DEVICE_RUNS -> "seeing that the device runs from the mains";
            case SUPPLY_REALLY_OPENS -> "seeing that the device goes off, or draws nothing, with the supply open";
            case COMPONENT_SHOWN -> "seeing that the tester shows that it reads direct current";
            case IDLE_JACKS_LOOKED_UP -> "looking up what the tester does with jacks that are not used";
            case STATE_TICK -> "the tick for the state at the head of each group of readings";
        };
    }
}
