package leadwright.catalog.rules;

import leadwright.catalog.device.Words;

/** Polarity of the tester's outlet, or of a source that puts mains on a part. */
public enum Polarity {
    NORMAL,
    REVERSED;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
