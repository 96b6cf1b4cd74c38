package leadwright.planner.wire;

import java.util.List;

/**
 * One way to bring all connections of a cell to jacks.
 *
 * @param use scarce pieces taken, by position in {@link Stock#scarce()}; the last entry counts jacks
 * @param femtofarads of all its items together
 * @param cost seconds at the patient connections first, then contacts, then items, then probes where a clip would do; 0 where not asked for
 * @param micrometres of all its items together, which ranks options of one cost; 0 where cost is not asked for
 */
record Option(int[] use, long femtofarads, long cost, long micrometres, Layout layout) {

    /** Stands for an item whose capacitance the kit does not state: more than any limit. */
    static final long UNKNOWN_CAPACITANCE = Long.MAX_VALUE / 4096;

    private static final long SECOND = 10_000_000_000_000L;
    private static final long CONTACT = 1_000_000_000L;
    private static final long ITEM = 10_000L;

    /** Price of so many seconds at patient connections, contacts, items and probes. */
    static long cost(long seconds, int contacts, int items, int probes) {
        return seconds * SECOND + contacts * CONTACT + items * ITEM + probes;
    }

    /** The gathering items in the order they are put in place, from the jacks outwards, and the seats taken in them. */
    record Layout(int jacks, List<Placement> placements, List<Seat> seats) {}

    /** A gathering item, the items between it and an open socket of this kind. */
    record Placement(Part part, Route route, Socket at) {}

    /** So many connections of a leaf, each through its own copy of a route into a socket of this kind. */
    record Seat(Leaf leaf, int count, Route route, Socket at) {}

    /** Whether what costs this is no dearer than the other, or as dear and no longer. */
    static boolean atMost(long cost, long micrometres, long otherCost, long otherMicrometres) {
        return cost < otherCost || cost == otherCost && micrometres <= otherMicrometres;
    }

    /** Whether this takes no more of everything than the other. */
    boolean beats(Option other, boolean priced, boolean capacitance) {
        return Routes.atMost(use, other.use)
                && (!priced || atMost(cost, micrometres, other.cost, other.micrometres))
                && (!capacitance || femtofarads <= other.femtofarads);
    }
}
