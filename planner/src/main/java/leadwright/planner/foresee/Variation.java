package leadwright.planner.foresee;

/** How an arrangement may differ from what the plan asks for, other than by a wire in the wrong place. */
public enum Variation {
    /** As the plan asks. */
    NONE,
    /** The device's own main switch is open. */
    SWITCH_OFF,
    /** The tester's polarity stays normal. */
    POLARITY_STUCK,
    /** The supply conductor that should be open is closed. */
    SUPPLY_NOT_OPENED,
    /** The supply conductor that should be closed is open. */
    SUPPLY_LEFT_OPEN,
    /** The earth that should be open is closed. */
    EARTH_NOT_OPENED,
    /** The earth that should be closed is open. */
    EARTH_LEFT_OPEN,
    /** Jacks that nothing uses are at earth. */
    IDLE_JACKS_EARTHED,
    /** Neither supply conductor is tied to earth. */
    SUPPLY_NOT_EARTHED,
    /** Line and neutral of the wall exchanged. */
    WALL_EXCHANGED,
    /** Another class I device on the same outlet. */
    SECOND_DEVICE,
    /** The device runs from its battery: no conductor of the supply reaches it. */
    ON_BATTERY,
    /** The tester reads alternating current where direct current is asked for. */
    AC_FOR_DC
}
