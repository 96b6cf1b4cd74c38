package leadwright.render.edition;

import leadwright.catalog.kit.Method;
import leadwright.planner.plan.Obligation;

/** Readings of leakage current without a source on a part, in words. */
final class LeakageExplained {

    private static final String NETWORK = " the measuring network, which stands for a person's body, ";

    private static final String BACK =
            "to the earth of the supply, and by the supply's own tie between neutral and earth back to where it came from";

    private static final String SMALL =
            "Small, and under the limit: this is what would flow through a person in the place of the measuring network.";

    private static final String LOW =
            "Everything that weakens or breaks this loop reads low, and low passes. With a wire left off, what flows at that wire"
                    + " is missing; with all of them off, or the trunk of a fan-out, the reading shows nothing.";

    private LeakageExplained() {}

    static Explanation earth(boolean functional) {
        String conductor = functional ? "functional earth conductor" : "earth conductor";
        return new Explanation(
                "From the live conductor of the supply, through the capacitors of the mains filter and the insulation inside the"
                        + " device, to its " + (functional ? "functional earth" : "protective earth") + " and by the "
                        + conductor + " of the cord to the tester; there through" + NETWORK + BACK + ".",
                "What the filter is built to let through, and under the limit: were the conductor broken, this current would"
                        + " look for another way.",
                "A second way to earth carries a share of the current past the network: it reads low. So does an earth-test lead"
                        + " that is still plugged in where the tester earths it. With the device switched off only what lies"
                        + " before its switch is read.",
                "Part every other way to earth and repeat. See that the device runs: its supply current is not nothing.");
    }

    static Explanation touch() {
        return new Explanation(
                "From the live conductor, through the insulation and stray capacitance inside the device, to the part that is"
                        + " touched; from there through the probe and" + NETWORK + BACK + ".",
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
                "From the live conductor, through the insulation inside the device to the first part; from there through"
                        + NETWORK + "to the second part, and through the device or its earth back to the supply.",
                SMALL,
                "A probe that touches only one of the two parts, or paint, breaks the loop and reads nothing. Both ends on the same"
                        + " metal read nothing, too.",
                "Lift one end: the value must fall. See that the two parts are not the same metal.");
    }

    static Explanation equipment(Obligation reading, boolean earthed) {
        String joined = earthed
                ? "everything that a person can touch: the earthed metal and the connections that are joined here"
                : "everything that a person can touch, which is joined here";
        String slips = LOW + " A second way to earth carries current past the network.";
        if (reading.method().equals(java.util.Optional.of(Method.ALTERNATIVE))) {
            return new Explanation(
                    "The device is off the mains. From the tester's source to line and neutral of the plug, which are joined, through"
                            + " the filter capacitors and the insulation to " + joined + "; from there through"
                            + NETWORK
                            + "back to the source.",
                    SMALL + " It holds what both polarities would show.",
                    slips
                            + " With the device's mains switch open the loop ends at the switch: it reads next to nothing.",
                    "Source off, open the mains switch, source on: the value must have fallen, else it was never closed.");
        }
        if (reading.method().equals(java.util.Optional.of(Method.DIFFERENTIAL))) {
            return new Explanation(
                    "From the live conductor into the device; what does not come back by the other conductor has gone to earth by"
                            + " some way, whichever. The tester reads the difference of the two, and no network stands in the way"
                            + " of the current.",
                    SMALL,
                    "A second way to earth does not make it low, for it counts too. With the device off or on standby it reads low."
                            + " A joined wire left off takes its share away. Near nothing, the method itself is too coarse.",
                    "See that the device runs. Tie what is joined to earth at the tester, and free it again: the value must change where it carries current.");
        }
        return new Explanation(
                "From the live conductor of the supply, through the capacitors of the mains filter and the insulation inside the"
                        + " device, to " + joined + "; from there through" + NETWORK
                        + (earthed ? "in the place of the earth conductor, " : "") + BACK + ".",
                SMALL
                        + " All of it is gathered in one reading; with the other polarity the other conductor drives it, and the"
                        + " larger of the two counts.",
                slips + " A device that is off or on standby reads low.",
                "Stand the device on an insulating surface with every cable parted. See that it runs. Leave a jack out at the tester: where it carried current the value falls.");
    }

    static Explanation patient(boolean total) {
        return new Explanation(
                "From the live conductor, through the insulation and stray capacitance inside the device, to "
                        + (total ? "all the connections that are joined here" : "the connections that are measured")
                        + "; from there by their wires and jacks through" + NETWORK + BACK + ".",
                "Small, and under the limit: this is what would flow through a patient who is joined to these connections and"
                        + " touches earth.",
                LOW + " A device that is off, or on standby, reads low.",
                "The device's own sign that a wire is off. Outlet off, pull the trunk, on again: the value must have fallen to what the tester shows with nothing plugged in.");
    }

    static Explanation auxiliary(boolean leads) {
        return new Explanation(
                "From the device's own circuit out of the measured connection, by its wire and jack through" + NETWORK
                        + "to the other connections, which are joined as the other pole, and by their wires back into the"
                        + " device. Neither mains nor earth is needed for it.",
                "Small, and under the limit: this is what the device itself sends through a patient"
                        + (leads ? " from one lead to the others." : " to measure, or by a fault."),
                "A wire left off on either side breaks the loop, or takes its share away: it reads nothing or low. Two connections"
                        + " joined by mistake leave nothing to flow between them.",
                "The device's own sign that a wire is off. Outlet off, pull one wire by itself, on again: the reading of its jack must have followed.");
    }

    /** Leakage of a device without mains. */
    static Explanation battery() {
        return new Explanation(
                "From the device's own battery and circuits, through the insulation inside the device, to what is measured; from"
                        + " there through" + NETWORK
                        + "to the other pole that the row names, or the device's own housing, and back into the device. No mains"
                        + " is joined.",
                SMALL,
                LOW + " A device that is not running reads low.",
                "The device's own sign that a wire is off. Outlet off, pull the trunk, on again: the value must have fallen to what the tester shows with nothing plugged in.");
    }

    static Explanation supplyCurrent() {
        return new Explanation(
                "From the live conductor through the device and back by the other one, as in use.",
                "Not nothing while the device runs, and nothing once the supply is open.",
                "A device that is switched off reads nothing, and so do all its leakages then.",
                "This reading is the proof for the others.");
    }
}
