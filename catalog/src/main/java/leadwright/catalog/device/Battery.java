package leadwright.catalog.device;

/** Whether a battery keeps the device on when the mains fails. */
public enum Battery {
    NONE,
    BACKS_UP,
    ONLY;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
