package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** What a tester past its calibration does to a plan. */
public enum PastDue {
    REFUSE,
    TRAINING_COPY;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
