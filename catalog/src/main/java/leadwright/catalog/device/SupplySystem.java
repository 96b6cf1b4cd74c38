package leadwright.catalog.device;

/** The kind of supply the device is made for. */
public enum SupplySystem {
    LINE_NEUTRAL,
    SPLIT_PHASE,
    PHASE_PHASE,
    THREE_PHASE,
    ISOLATED,
    DC;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
