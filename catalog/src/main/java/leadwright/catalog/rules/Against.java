package leadwright.catalog.rules;

import leadwright.catalog.device.Words;

/** What is tied into one as the other pole of a reading. */
public enum Against {
    /** Earth, through the measuring device: nothing is wired. */
    EARTH,
    OTHER_CONNECTIONS_OF_DEVICE,
    OTHER_CONNECTIONS_OF_PART,
    UNEARTHED_METAL;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
