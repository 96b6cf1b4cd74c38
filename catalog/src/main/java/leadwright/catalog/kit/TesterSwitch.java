package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** What the tester can open or reverse. */
public enum TesterSwitch {
    EARTH,
    SUPPLY,
    POLARITY;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
