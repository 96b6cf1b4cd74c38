package leadwright.planner.order;

import java.util.List;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.TherapyKind;

/** What is said of a therapy output, by the kind of energy that it gives: common practice, no source. */
final class TherapyWords {
    private TherapyWords() {}

    static String because(Output output) {
        return "A therapy output is handled only when it is "
                + switch (output.kind()) {
                    case DEFIBRILLATION -> "discharged and disarmed";
                    case PACING -> "ended and disarmed, so that it gives no pulse,";
                    case STIMULATION -> "stopped and disarmed, so that it gives no pulse,";
                    case RF -> "switched off and cannot be keyed, its footswitch parted,";
                }
                + " and the device is shut down.";
    }

    static String caution(Output output) {
        return switch (output.kind()) {
            case DEFIBRILLATION -> "Pads and paddles never touch the tester's jacks while the device may be charged.";
            case PACING -> "The pacing output never touches the tester's jacks while it may give pulses.";
            case STIMULATION -> "The stimulator's output never touches the tester's jacks while it may give pulses.";
            case RF -> "The RF output never touches the tester's jacks while it may be keyed.";
        };
    }

    /** A started device may give energy: what is plugged to a therapy output is looked at before anything else. */
    static String disarmed(List<Output> plugged) {
        if (plugged.isEmpty()) {
            return "";
        }
        List<String> each = plugged.stream()
                .map(output -> output.id() + " reads back disarmed, "
                        + (output.kind() == TherapyKind.DEFIBRILLATION ? "not charged" : "giving no output"))
                .toList();
        return " Before anything else see that " + String.join(", that ", each)
                + "; if not, shut it down and touch nothing.";
    }
}
