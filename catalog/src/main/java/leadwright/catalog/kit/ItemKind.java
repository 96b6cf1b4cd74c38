package leadwright.catalog.kit;

import leadwright.catalog.device.Words;

/** Kinds of bench-kit item. */
public enum ItemKind {
    ADAPTER,
    FAN_OUT,
    LEAD,
    CLIP,
    PROBE,
    CONTACT_AID;

    /** As written in a file. */
    public String word() {
        return Words.of(this);
    }
}
