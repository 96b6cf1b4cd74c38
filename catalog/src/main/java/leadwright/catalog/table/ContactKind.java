package leadwright.catalog.table;

import leadwright.catalog.device.Words;

/** Kind of joint that a terminal makes, for bench times and for what may be handled in which state. */
public enum ContactKind {
    SNAP,
    TOUCH_PROOF,
    PINCH,
    LAB_4MM,
    FOIL,
    BATH,
    FLUID,
    STUD,
    CLIP,
    PROBE,
    /** A surface has no kind of its own: the joint is of the kind of what is put on it. */
    SURFACE;

    /** As written in a file. */
    public String word() {
        return this == LAB_4MM ? "lab-4mm" : Words.of(this);
    }

    /** The kind whose join and part times a joint of this kind takes: studs, clips and probes count as 4 mm. */
    public ContactKind timed() {
        return switch (this) {
            case STUD, CLIP, PROBE, SURFACE -> LAB_4MM;
            default -> this;
        };
    }
}
