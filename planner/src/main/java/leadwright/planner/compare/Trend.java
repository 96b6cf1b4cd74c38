package leadwright.planner.compare;

import leadwright.catalog.device.Words;

/** Which way a change goes, seen from the first plan to the second. */
public enum Trend {
    /** The second has none of it. */
    WENT,
    /** A limit that lets more pass. */
    RELAXED,
    /** A limit that lets less pass. */
    TIGHTENED,
    LESS,
    MORE,
    EARLIER,
    LATER,
    OTHERWISE,
    /** The first has none of it. */
    CAME;

    /** The same seen from the second plan to the first. */
    Trend opposite() {
        return switch (this) {
            case WENT -> CAME;
            case CAME -> WENT;
            case RELAXED -> TIGHTENED;
            case TIGHTENED -> RELAXED;
            case LESS -> MORE;
            case MORE -> LESS;
            case EARLIER -> LATER;
            case LATER -> EARLIER;
            case OTHERWISE -> OTHERWISE;
        };
    }

    public String word() {
        return Words.of(this);
    }
}
