package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** Code of the printed electrode labels and colours. */
public enum LabelCode {
    IEC,
    AHA;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
