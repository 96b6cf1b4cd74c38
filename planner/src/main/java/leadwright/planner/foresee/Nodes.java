package leadwright.planner.foresee;

/** Names of a bench circuit's nodes. A patient connection, a housing point, a port: its full name; a jack: {@code jack-n}. */
public final class Nodes {
    /** Where the device's supply conductors enter it, behind its main switch. */
    public static final String LINE = "device-line";

    public static final String NEUTRAL = "device-neutral";
    /** The device's protective-earth terminal, at the end of the cord's earth conductor. */
    static final String EARTH_TERMINAL = "earth-terminal";
    /** What is protectively earthed; in class II and internally powered devices the inside of the enclosure. */
    public static final String CHASSIS = "chassis";

    static final String FUNCTIONAL_EARTH = "functional-earth";
    /** The tester's source for mains on an applied part, and of the alternative method. */
    static final String SOURCE = "source";

    private Nodes() {}

    public static String inside(String part) {
        return "inside-" + part;
    }

    public static String jack(int number) {
        return "jack-" + number;
    }

    public static String item(String instance) {
        return "item-" + instance;
    }
}
