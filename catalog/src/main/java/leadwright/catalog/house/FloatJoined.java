package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** Whether connections that a reading leaves floating may float joined with one another. */
public enum FloatJoined {
    NOTED,
    NEVER;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
