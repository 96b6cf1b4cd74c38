package leadwright.planner.audit;

import leadwright.catalog.device.Words;

/** What every plan must hold; each has a row in docs/audit.md. */
public enum Invariant {
    ITEM_KNOWN,
    STOCK,
    ITEM_ONCE,
    BRANCHES,
    MATING,
    CONTACTS,
    JACK_KNOWN,
    JACK_SHARED,
    JACK_CROWDED,
    BUNDLE_JOINED,
    CONNECTION_KNOWN,
    THERAPY_ALONE,
    RATING,
    UNSHROUDED,
    REACH,
    EARTH_PATH,
    EARTH_SOURCE,
    COVERAGE,
    TIES,
    IDLE_JACKS,
    FLOATING_JOINED,
    MAINS_ON_B,
    MEANING,
    LIMIT,
    PAIRED,
    STEP_NUMBERS,
    READ_ONCE,
    LOOK_FIRST,
    PUT_BACK_LAST,
    STATE_CHANGE,
    DOUBLE_FAULT,
    STATE_HELD,
    DEVICE_ON,
    HANDLING,
    MAKE_SAFE,
    SAFE_WAIT,
    SOURCE_OFF,
    JOINT,
    HOOKUP_COMPLETE,
    EARTH_LEAD_PARTED,
    EARTH_LEAD_PROVEN,
    CLIP_PLACE,
    NULLING,
    TOUCH_PLACE,
    TIE_SELECTED,
    EARTH_FIRST,
    EARTH_KNOWN,
    INSULATION_FIRST,
    TOUCH_BEFORE_FAULT,
    NO_FAULT_FIRST,
    MAINS_ON_PART_LAST,
    STOP_RULE,
    CAUTION,
    SECONDS,
    START_UPS,
    PROOF,
    PARTIAL;

    /** As written in messages and documents. */
    public String word() {
        return Words.of(this);
    }
}
