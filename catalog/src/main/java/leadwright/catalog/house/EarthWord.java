package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** The word for earth in documents. */
public enum EarthWord {
    EARTH,
    GROUND;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
