package leadwright.planner.order;

import java.util.BitSet;
import java.util.List;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Readings that behave alike: taken in the same state, mode and hookups, after the same others. They are taken together.
 *
 * @param index position in the list of units
 * @param stand what they ask of device and mains
 * @param hookups hookups that may take them
 * @param demands numbers of the demands that must be selected; those that ask nothing of the wiring have none
 * @param places numbers of the places that the probe must touch, each with its demand
 * @param before units that must have been taken
 * @param readings the readings, in clause order
 */
record Unit(
        int index,
        Stand stand,
        Phase phase,
        BitSet hookups,
        BitSet demands,
        BitSet places,
        BitSet before,
        List<Obligation> readings) {
    Unit {
        readings = List.copyOf(readings);
    }

    /** Whether only one hookup may take it. */
    boolean bound() {
        return hookups.cardinality() == 1;
    }

    boolean ordinary() {
        return phase == Phase.ORDINARY;
    }
}
