package leadwright.render.edition;

import leadwright.catalog.kit.Method;
import leadwright.planner.plan.Obligation;

/** Readings of leakage current without a source on a part, in words. */
final class LeakageExplained {

    private static final String SMALL =
            "Small, and under the limit: this is what would flow through a person in the place of the measuring network.";

    private static final String LOW =
            "Everything that weakens or breaks this loop reads low, and low passes. With a wire left off, what flows at that wire"
                    + " is missing; with all of them off, or the trunk of a fan-out, the reading shows nothing.";

    private LeakageExplained() {}

    static Explanation earth() {
        return new Explanation(
                "What the filter is built to let through, and under the limit: were the conductor broken, this current would"
                        + " look for another way.",
                "A second way to earth carries a share of the current past the network: it reads low. So does an earth-test lead"
                        + " that is still plugged in where the tester earths it. With the device switched off only what lies"
                        + " before its switch is read.",
                "Part every other way to earth and repeat. See that the device runs: its supply current is not nothing.");
    }

    static Explanation touch() {
        return new Explanation(
                SMALL
                        + " At a part that is earthed, and with its earth closed, next to nothing is right: the earth conductor"
                        + " takes the current.",
                "A probe on paint, on plastic without foil, or beside the part reads low or nothing. Foil that is dry, small or"
                        + " not pressed on reads low. A second way to earth at the device reads low.",
                "Press or move the probe by its insulated handle: the value must not depend on it. Lift the probe: it must fall to what the tester shows"
                        + " with nothing touched.");
    }

    static Explanation between() {
        return new Explanation(
                SMALL,
                "A probe that touches only one of the two parts, or paint, breaks the loop and reads nothing. Both ends on the same"
                        + " metal read nothing, too.",
                "Lift one end: the value must fall. See that the two parts are not the same metal.");
    }

    static Explanation equipment(Obligation reading) {
        String slips = LOW + " A second way to earth carries current past the network.";
        if (reading.method().equals(java.util.Optional.of(Method.ALTERNATIVE))) {
            return new Explanation(
                    SMALL + " It holds what both polarities would show.",
                    slips
                            + " With the device's mains switch open the loop ends at the switch: it reads next to nothing.",
                    "Source off, open the mains switch, source on: the value must have fallen, else it was never closed.");
        }
        if (reading.method().equals(java.util.Optional.of(Method.DIFFERENTIAL))) {
            return new Explanation(
                    SMALL,
                    "A second way to earth does not make it low, for it counts too. With the device off or on standby it reads low."
                            + " A joined wire left off takes its share away. Near nothing, the method itself is too coarse.",
                    "See that the device runs. Tie what is joined to earth at the tester, and free it again: the value must change where it carries current.");
        }
        return new Explanation(
                SMALL
                        + " All of it is gathered in one reading; with the other polarity the other conductor drives it, and the"
                        + " larger of the two counts.",
                slips + " A device that is off or on standby reads low.",
                "Stand the device on an insulating surface with every cable parted. See that it runs. Leave a jack out at the tester: where it carried current the value falls.");
    }

    static Explanation patient() {
        return new Explanation(
                "Small, and under the limit: this is what would flow through a patient who is joined to these connections and"
                        + " touches earth.",
                LOW + " A device that is off, or on standby, reads low.",
                "The device's own sign that a wire is off. Outlet off, pull the trunk, on again: the value must have fallen to what the tester shows with nothing plugged in.");
    }

    static Explanation auxiliary(boolean leads) {
        return new Explanation(
                "Small, and under the limit: this is what the device itself sends through a patient"
                        + (leads ? " from one lead to the others." : " to measure, or by a fault."),
                "A wire left off on either side breaks the loop, or takes its share away: it reads nothing or low. Two connections"
                        + " joined by mistake leave nothing to flow between them.",
                "The device's own sign that a wire is off. Outlet off, pull one wire by itself, on again: the reading of its jack must have followed.");
    }

    /** Leakage of a device without mains. */
    static Explanation battery() {
        return new Explanation(
                SMALL,
                LOW + " A device that is not running reads low.",
                "The device's own sign that a wire is off. Outlet off, pull the trunk, on again: the value must have fallen to what the tester shows with nothing plugged in.");
    }

    static Explanation supplyCurrent() {
        return new Explanation(
                "Not nothing while the device runs, and nothing once the supply is open.",
                "A device that is switched off reads nothing, and so do all its leakages then.",
                "This reading is the proof for the others.");
    }
}
