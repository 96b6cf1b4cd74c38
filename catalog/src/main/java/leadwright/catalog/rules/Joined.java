package leadwright.catalog.rules;

import leadwright.catalog.device.Words;

/** Which connections are measured as one. */
public enum Joined {
    /** Each connection in turn. */
    CONNECTION,
    /** All connections of one function. */
    FUNCTION,
    /** All connections of one applied part. */
    PART,
    /** All connections of all applied parts of one type. */
    TYPE,
    /** All patient connections of the device. */
    DEVICE,
    /** Unearthed accessible parts and all applied parts together. */
    HOUSING_AND_PARTS,
    /** Unearthed accessible parts and the applied parts of type B. */
    HOUSING_AND_TYPE_B;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
