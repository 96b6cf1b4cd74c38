package leadwright.catalog.device;

/** Classification of an applied part; BF and CF are F-type, isolated from earth. */
public enum PartType {
    B,
    BF,
    CF;

    public boolean isFType() {
        return this != B;
    }

    /** As written in a file. */
    public String word() {
        return name();
    }
}
