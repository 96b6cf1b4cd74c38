package leadwright.planner.plan;

import java.util.Optional;

/**
 * A step of the plan.
 *
 * @param number from 1, consecutive
 * @param does what kind of act it is
 * @param text what to do, for a person
 * @param reading id of the reading it takes; every reading is taken by exactly one step
 * @param state state of the mains during the step; for switch and start, the state they lead to
 * @param hookup hookup that stands, or is being built, during the step
 * @param joint for steps that join or part
 * @param place what clip and touch steps are done to: the touch point, port or earth point (or {@code inlet-earth},
 *     {@code cord-earth}, {@code cord-plug-earth}, {@code reference-earth}) that clip or probe is put on, {@code touch-probe}
 *     where the probe takes the clip's place on the earth lead; for make-safe the id of the therapy output; {@code source}
 *     for a switch step that takes a source of the tester off what is wired; {@link #CORD_IN} and {@link #CORD_OUT} for a look
 *     step that fits the supply cord or has it out; what begins with {@link #PROOF} for a proof step
 * @param seconds bench time
 * @param account which part of the time split the seconds belong to; writing is accounted apart, see {@link #writing}
 * @param writing seconds of {@code seconds} that are for writing a value
 */
public record Step(
        int number,
        Act does,
        String text,
        Optional<String> reading,
        MainsState state,
        Optional<String> hookup,
        Optional<Joint> joint,
        Optional<String> place,
        int seconds,
        Account account,
        int writing,
        Optional<String> caution,
        Optional<String> onFail,
        String because) {

    /** Place of the step that fits the supply cord and plugs it in. */
    public static final String CORD_IN = "supply-cord";

    /** How the place of a proof step begins. */
    public static final String PROOF = "proof-step/";

    /** Place of the step that has the supply cord out of the device and of the outlet. */
    public static final String CORD_OUT = "supply-cord-out";

    /** The same under another number. */
    public Step numbered(int other) {
        return new Step(
                other, does, text, reading, state, hookup, joint, place, seconds, account, writing, caution, onFail,
                because);
    }

    /** Kinds of act. */
    public enum Act {
        LOOK,
        MAKE_SAFE,
        JOIN,
        PART,
        CLIP,
        NULL,
        START,
        SHUT_DOWN,
        WAIT,
        SWITCH,
        TIE,
        TOUCH,
        READ,
        RESTORE;

        public String word() {
            return leadwright.catalog.device.Words.of(this);
        }
    }

    /** Parts of the time split. */
    public enum Account {
        PREPARE,
        START_UP,
        SHUT_DOWN,
        REPLUG,
        EARTH_LEAD,
        NULL,
        PROBE,
        SWITCH,
        READ,
        WRITE;

        public String word() {
            return leadwright.catalog.device.Words.of(this);
        }
    }
}
