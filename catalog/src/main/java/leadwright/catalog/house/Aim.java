package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** What a plan is best by. */
public enum Aim {
    HOOKUPS,
    TIME,
    HAND_WORK;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
