package leadwright.catalog.device;

/** Protection against electric shock, after IEC 60601-1: class I, class II, internally powered. */
public enum Protection {
    CLASS_1,
    CLASS_2,
    INTERNALLY_POWERED;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
