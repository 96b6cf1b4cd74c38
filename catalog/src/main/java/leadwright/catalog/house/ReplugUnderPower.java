package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** Whether insulated ends may be moved under power. */
public enum ReplugUnderPower {
    NEVER,
    AFTER_EARTH_AND_TOUCH;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
