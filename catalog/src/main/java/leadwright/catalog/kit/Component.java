package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** Component of a current that a reading takes. */
public enum Component {
    AC,
    DC;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
