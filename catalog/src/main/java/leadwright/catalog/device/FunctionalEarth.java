package leadwright.catalog.device;

/** Whether and how the device has a functional earth. */
public enum FunctionalEarth {
    NONE,
    VIA_CORD,
    TERMINAL;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
