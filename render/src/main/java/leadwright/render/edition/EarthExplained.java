package leadwright.render.edition;

/** Readings of resistance, and of the bench itself, in words. */
final class EarthExplained {

    private static final String EARTH_SLIPS =
            "A poor contact adds resistance and reads high: a clip on paint, anodised or floating metal fails, and is seen."
                    + " What reads low is not seen: a second way to earth (data cable, bonding lead, rail, hose, metal"
                    + " bench) takes a share of the current, so the tester sees both ways side by side; a null taken"
                    + " with the device's own cord in the path takes the cord off as well; a clip on other metal"
                    + " measures that metal. A null that was forgotten adds the leads and reads high.";

    private static final String EARTH_EXPOSED =
            "Part every other way to earth and lift the device off metal, then repeat: the value may not rise. Null again at"
                    + " the end: it may not have moved. Below nothing is void. Read every earthed part by itself: a"
                    + " sound stud proves nothing about the housing.";

    private EarthExplained() {}

    static Explanation resistance() {
        return new Explanation(
                "Low, and under the limit: should a live wire touch this part, the current finds copper all the way to earth,"
                        + " the part stays near earth, and the fuse or breaker parts the circuit.",
                EARTH_SLIPS,
                EARTH_EXPOSED);
    }

    static Explanation bondingVoltage() {
        return new Explanation(
                "Next to nothing, and under the limit: a person who touches both bridges no voltage.",
                "Everything that breaks the loop reads nothing and would pass: a probe on paint, a lead not plugged in, the"
                        + " reference lead on metal that is joined to the part.",
                "Touch the same metal with both leads' ends: the continuity range must find the loop closed. Repeat on"
                        + " bare metal.");
    }

    static Explanation insulation() {
        return new Explanation(
                "High, and above the limit: sound insulation lets next to nothing through.",
                "Here a broken loop reads HIGH and would pass: mains switch off, a wire left off, a clip on paint, a lead in the"
                        + " wrong jack. Dirt, damp or a second path read low and fail, and are seen.",
                "Join the two ends of the leads at the device for a moment before the reading, with the source at rest: the"
                        + " resistance range must find the loop. See that the mains switch is closed. Discharge afterwards.");
    }

    static Explanation supplyVoltage() {
        return new Explanation(
                "As the row says: the supply is tied to earth, so that a leakage current has a way back to it.",
                "On a supply that is not tied to earth (isolating transformer, inverter) a leakage current has no way back, and"
                        + " every leakage reads low. A voltmeter that is not connected reads nothing, too.",
                "Compare the three voltages with one another before anything else is read; where they do not fit, no leakage"
                        + " is read at this outlet.");
    }

    static Explanation testerCheck() {
        return new Explanation(
                "What the voltage and the resistor give, within the tolerance of both: the tester sees what is there.",
                "A blown input fuse, a stuck relay or a lead in the wrong jack reads nothing: with such a tester every leakage"
                        + " would read nothing, and pass.",
                "This reading is the proof. It is taken at the start and at the end: when the last one is off, all readings"
                        + " since the last good one are void.");
    }

    static Explanation proof() {
        return new Explanation(
                "No loop: the lead that would carry leakage past the measuring network is off.",
                "A lead left on closes the loop and reads a value: it is seen. A dead earth test finds no loop either.",
                "The known resistor of the earth test, where the kit has one, shows that the test is alive.");
    }
}
