package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** When insulation resistance is asked for. */
public enum InsulationPolicy {
    NEVER,
    AFTER_REPAIR,
    ALWAYS;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
