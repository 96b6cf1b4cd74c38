package leadwright.planner.order;

import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;

/** What a reading asks of device and mains: a pose, but for where the polarity selector stands. */
record Stand(MainsState state, boolean on, int mode) {

    boolean fits(Pose pose) {
        return pose.state() == state && pose.on() == on && pose.mode() == mode;
    }

    /**
     * @throws IllegalArgumentException when a reading wants a device off that its supply keeps on: obligations of this
     *     kind are faults of the program
     */
    static Stand of(Obligation obligation, Scene scene, java.util.List<String> modes) {
        MainsState state = obligation.state();
        boolean off = obligation.mode().equals("off") || obligation.phase() == Obligation.Phase.INSULATION;
        int mode = Math.max(0, modes.indexOf(obligation.mode()));
        if (scene.permanent()) {
            return state == MainsState.INSTALLED_ON
                    ? new Stand(MainsState.INSTALLED_ON, true, mode)
                    : new Stand(MainsState.ISOLATED, false, 0);
        }
        if (state == MainsState.OFF) {
            boolean mayRun = scene.battery() || !scene.device().runsOnMains();
            return off || !mayRun ? new Stand(state, false, 0) : new Stand(state, true, mode);
        }
        if (state.fault() == Fault.SUPPLY_OPEN) {
            boolean on = scene.battery() && scene.toleratesPowerCut();
            return on ? new Stand(state, true, mode) : new Stand(state, false, 0);
        }
        if (off) {
            throw new IllegalArgumentException(obligation.key() + " wants the device off in state " + state.word());
        }
        return new Stand(state, true, mode);
    }
}
