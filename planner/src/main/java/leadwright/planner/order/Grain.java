package leadwright.planner.order;

import leadwright.planner.plan.Obligation.Phase;

/** Which of the readings that several hookups may take choose their hookup one by one; the others go class by class. */
enum Grain {
    NONE,
    UNSETTLED,
    EVERY;

    boolean fine(Phase phase) {
        return this == EVERY || this == UNSETTLED && phase != Phase.ORDINARY;
    }
}
