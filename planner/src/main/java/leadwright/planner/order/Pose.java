package leadwright.planner.order;

import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;

/**
 * How device and mains stand: all that a reading can ask of them.
 *
 * @param selector polarity that the tester's selector stands at; NONE before it was ever set
 * @param on whether the device is on
 * @param mode number of the operating mode, 0 being what the device starts in; 0 while it is off
 */
record Pose(MainsState state, Polarity selector, boolean on, int mode) {

    /** Mains from the outlet, no fault: what the fault states are entered from. */
    boolean live() {
        return state.polarity() != Polarity.NONE && state.fault() == Fault.NONE;
    }

    boolean fault() {
        return state.fault() != Fault.NONE;
    }

    /** No mains at the device. */
    boolean dead() {
        return state == MainsState.OFF || state == MainsState.ISOLATED;
    }
}
