package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** Leakage methods of IEC 62353. */
public enum Method {
    DIRECT,
    DIFFERENTIAL,
    ALTERNATIVE;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
