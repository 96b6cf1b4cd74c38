package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** Whether the lead-capacitance share warns or forbids. */
public enum CapacitanceLimit {
    WARN,
    HARD;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
