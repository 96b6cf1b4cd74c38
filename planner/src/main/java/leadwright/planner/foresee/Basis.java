package leadwright.planner.foresee;

import leadwright.catalog.device.Words;

/** What a value rests on. */
public enum Basis {
    /** The device file's {@code electrical:} section or rated values. */
    DEVICE_FILE,
    /** The kit file, and tables of conductors. */
    KIT,
    /** An assumption of this program, with a wide spread. */
    ASSUMED;

    /** As written in a plan. */
    public String word() {
        return Words.of(this);
    }
}
