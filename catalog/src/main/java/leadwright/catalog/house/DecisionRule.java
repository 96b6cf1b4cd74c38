package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** How a reading near a limit is judged. */
public enum DecisionRule {
    SIMPLE,
    GUARD_BAND;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
