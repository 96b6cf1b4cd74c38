package leadwright.catalog.house;

import leadwright.catalog.device.Words;

/** Paper size of the documents. */
public enum Paper {
    A4,
    LETTER;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
