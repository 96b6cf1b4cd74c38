package leadwright.planner.plan;

/**
 * State of the mains at the device. The tester's outlet gives {@code off}, or one polarity with exactly one of no fault,
 * supply open, earth open; permanent plant is only ever found installed and on, or isolated by a licensed person.
 *
 * <p>Supply open is live: one conductor is still at mains.
 */
public enum MainsState {
    OFF("off", Polarity.NONE, Fault.NONE),
    NORMAL("normal", Polarity.NORMAL, Fault.NONE),
    NORMAL_SUPPLY_OPEN("normal/supply-open", Polarity.NORMAL, Fault.SUPPLY_OPEN),
    NORMAL_EARTH_OPEN("normal/earth-open", Polarity.NORMAL, Fault.EARTH_OPEN),
    REVERSED("reversed", Polarity.REVERSED, Fault.NONE),
    REVERSED_SUPPLY_OPEN("reversed/supply-open", Polarity.REVERSED, Fault.SUPPLY_OPEN),
    REVERSED_EARTH_OPEN("reversed/earth-open", Polarity.REVERSED, Fault.EARTH_OPEN),
    INSTALLED_ON("installed-on", Polarity.NONE, Fault.NONE),
    ISOLATED("isolated", Polarity.NONE, Fault.NONE);

    private final String word;
    private final Polarity polarity;
    private final Fault fault;

    MainsState(String word, Polarity polarity, Fault fault) {
        this.word = word;
        this.polarity = polarity;
        this.fault = fault;
    }

    /** Polarity of the tester's outlet; NONE stands for null in the plan. */
    public enum Polarity {
        NONE,
        NORMAL,
        REVERSED
    }

    /** Single fault condition set by the tester. */
    public enum Fault {
        NONE,
        SUPPLY_OPEN,
        EARTH_OPEN;

        public String word() {
            return leadwright.catalog.device.Words.of(this);
        }
    }

    /** As written in a plan. */
    public String word() {
        return word;
    }

    public Polarity polarity() {
        return polarity;
    }

    public Fault fault() {
        return fault;
    }

    /** Mains from the tester on both conductors: the device runs from it. */
    public boolean powered() {
        return polarity != Polarity.NONE && fault != Fault.SUPPLY_OPEN;
    }

    public static MainsState of(Polarity polarity, Fault fault) {
        for (MainsState state : values()) {
            if (state.polarity == polarity && state.fault == fault) {
                return state;
            }
        }
        throw new IllegalArgumentException("no state with " + polarity + " and " + fault);
    }
}
