package leadwright.catalog.rules;

import leadwright.catalog.device.Words;

/** Condition under which a reading is taken: none, or one fault that the tester sets. Two at once do not exist. */
public enum Condition {
    NONE,
    SUPPLY_OPEN,
    EARTH_OPEN;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
