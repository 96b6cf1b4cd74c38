package leadwright.catalog.device;

/** What the device's mains switch opens. */
public enum MainsSwitch {
    BOTH_POLES,
    ONE_POLE,
    ELECTRONIC,
    NONE;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
