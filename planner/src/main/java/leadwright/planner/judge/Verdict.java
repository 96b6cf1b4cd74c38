package leadwright.planner.judge;

import leadwright.catalog.device.Words;
import leadwright.catalog.house.DecisionRule;

/** Where one reading stands to its limit; what follows from it is the decision rule's. */
public enum Verdict {
    /** Inside the limit by more than the uncertainty, or inside it where the uncertainty is not known. */
    PASS,
    /** Inside the limit by no more than the uncertainty. */
    PASS_INSIDE_UNCERTAINTY,
    /** Beyond the limit by no more than the uncertainty. */
    FAIL_INSIDE_UNCERTAINTY,
    /** Beyond the limit. */
    FAIL,
    /** It says nothing: the tester, the leads or the supply were not as they must be. Take it again. */
    VOID,
    /** A check of the tester, the supply or the earth lead, with nothing against it. */
    AS_EXPECTED,
    /** It has no limit, or no value that can be compared with it. */
    NOT_JUDGED;

    /** As written in a record. */
    public String word() {
        return Words.of(this);
    }

    /** Whether the rule takes the device for conforming in this reading. */
    public boolean accepted(DecisionRule rule) {
        return this == PASS || this == PASS_INSIDE_UNCERTAINTY && rule == DecisionRule.SIMPLE;
    }

    /** Whether the rule rejects the device for this reading. */
    public boolean rejected(DecisionRule rule) {
        return this == FAIL
                || this == FAIL_INSIDE_UNCERTAINTY
                || this == PASS_INSIDE_UNCERTAINTY && rule == DecisionRule.GUARD_BAND;
    }
}
