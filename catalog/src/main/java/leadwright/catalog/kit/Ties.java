package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** Which jacks a tester can tie: any set, or runs of neighbours only. */
public enum Ties {
    ANY,
    RUNS;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
