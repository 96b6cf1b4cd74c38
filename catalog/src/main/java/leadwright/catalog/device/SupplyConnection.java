package leadwright.catalog.device;

/** How the device is joined to the mains. */
public enum SupplyConnection {
    DETACHABLE_CORD,
    FIXED_CORD,
    PERMANENT,
    EXTERNAL_ADAPTER,
    NONE;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
