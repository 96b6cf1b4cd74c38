package leadwright.catalog.device;

/** What the hand, clip or foil meets at an accessible part. */
public enum Surface {
    METAL,
    PAINTED,
    INSULATING;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
