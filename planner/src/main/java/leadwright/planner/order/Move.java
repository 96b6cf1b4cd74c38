package leadwright.planner.order;

import java.util.Arrays;
import java.util.List;

/**
 * A change of pose.
 *
 * @param from index of the pose it starts from
 * @param to index of the pose it leads to
 * @param acts what is done, in this order
 * @param seconds what all of it takes
 */
record Move(int from, int to, List<Act> acts, int seconds) {
    Move {
        acts = List.copyOf(acts);
    }

    static Move of(int from, int to, Act... acts) {
        return new Move(
                from,
                to,
                List.of(acts),
                Arrays.stream(acts).mapToInt(Act::seconds).sum());
    }

    /** One step of it. */
    record Act(Kind kind, int seconds) {}

    /** Kinds of act on mains and device. */
    enum Kind {
        OUTLET_ON,
        OUTLET_OFF,
        /** Polarity from one to the other through off, both movements of the outlet included. */
        TURN,
        /** The selector alone, while the outlet is off. */
        SELECT_POLARITY,
        OPEN_SUPPLY,
        CLOSE_SUPPLY,
        OPEN_EARTH,
        CLOSE_EARTH,
        /** A conductor opened first, then the outlet switched on: the device never runs. */
        ON_WITH_SUPPLY_OPEN,
        /** The outlet switched off first, then the conductor closed: the device never runs. */
        OFF_FROM_SUPPLY_OPEN,
        START,
        SHUT_DOWN,
        MODE,
        /** A licensed person gives permanent plant its supply back. */
        ENERGISED,
        /** A licensed person isolates permanent plant. */
        ISOLATED
    }
}
