package leadwright.catalog.rules;

import leadwright.catalog.device.Words;

/** What is tied to earth while something else is measured. */
public enum EarthedOthers {
    NOTHING,
    /** The other applied parts, unearthed accessible metal and ports. */
    OTHER_PARTS_METAL_AND_PORTS,
    /** The accessible parts of a device that has no earthed metal, as the way back for the current. */
    HOUSING_WHERE_NOTHING_IS_EARTHED;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
