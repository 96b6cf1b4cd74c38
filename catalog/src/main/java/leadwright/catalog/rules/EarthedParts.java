package leadwright.catalog.rules;

import leadwright.catalog.device.Words;

/** When touch current is read at parts that are earthed in normal use. */
public enum EarthedParts {
    /** Only while their earth is open: with it closed they are at earth. */
    WITH_EARTH_OPEN,
    /** In every state. */
    ALWAYS,
    /** Not at all. */
    NEVER;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
