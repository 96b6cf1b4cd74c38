package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** Where the touch probe is plugged. */
public enum TouchThrough {
    JACK,
    OWN,
    EARTH_LEAD;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
