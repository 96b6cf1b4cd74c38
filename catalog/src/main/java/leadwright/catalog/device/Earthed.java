package leadwright.catalog.device;

/** Whether an accessible part is protectively earthed. */
public enum Earthed {
    YES,
    NO,
    UNKNOWN;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
