package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** What a jack does when not selected. */
public enum AtRest {
    OPEN,
    EARTHED,
    CHOSEN;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
