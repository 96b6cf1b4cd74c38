package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** Whether a limited source's reading is corrected to the nominal voltage. */
public enum SourceReading {
    CORRECTED,
    RAW;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
