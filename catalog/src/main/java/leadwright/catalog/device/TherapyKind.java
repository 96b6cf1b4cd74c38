package leadwright.catalog.device;

/** The kind of energy a therapy output can give. */
public enum TherapyKind {
    DEFIBRILLATION,
    PACING,
    RF,
    STIMULATION;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
