package leadwright.render.edition;

import leadwright.planner.mistake.Cause;
import leadwright.planner.mistake.Fault;
import leadwright.planner.mistake.FaultKind;
import leadwright.planner.mistake.Slip;
import leadwright.planner.mistake.SlipKind;

/**
 * What a cause does, for one who learns; no value in it.
 *
 * @param circuit what it does to the circuit
 * @param readings what it makes readings look like
 * @param bench how it is found at the bench
 */
record CauseExplained(String circuit, String readings, String bench) {

    private static final String TICK =
            "Read the state on the tester before each group of readings, and tick it on the sheet.";

    static CauseExplained of(Cause cause) {
        if (cause instanceof Fault fault) {
            return of(fault.kind());
        }
        SlipKind kind = ((Slip) cause).kind();
        return switch (kind) {
            case WIRE_OFF,
                    NEIGHBOUR_BRANCH,
                    WRONG_BUNDLE,
                    TRUNK_OFF,
                    BUNDLES_SWAPPED,
                    POOR_CONTACT,
                    FOIL_ON_METAL,
                    IDLE_JACKS_EARTHED -> wiring(kind);
            case CLIP_ON_PAINT,
                    CLIP_ELSEWHERE,
                    TOOL_IN_JAWS,
                    NULL_WITH_CORD,
                    NULL_TIPS_APART,
                    LEADS_WARM,
                    SECOND_WAY_TO_EARTH -> earth(kind);
            default -> state(kind);
        };
    }

    static CauseExplained nothing() {
        return new CauseExplained(
                "The circuit is the one that was there last year.",
                "Every reading is where it was, within the tester's accuracy: the last digits differ, and that says nothing.",
                "Nothing is looked for. Some slips move no reading at all, and the same readings would come of them: that is"
                        + " what the proof steps of a plan are for.");
    }

    private static CauseExplained wiring(SlipKind kind) {
        return switch (kind) {
            case WIRE_OFF ->
                new CauseExplained(
                        "The branch between this wire and its jack is open.",
                        "What this wire carried is missing. Alone on its jack, it leaves the reading next to nothing; among"
                                + " others on a fan-out, the reading falls by its share, often too little to see. Low passes.",
                        "Outlet off, tug each end and count the ends against the list. The device's own sign that a lead is"
                                + " off.");
            case WRONG_BUNDLE ->
                new CauseExplained(
                        "The wire leaves its own bundle and is tied to another one.",
                        "One bundle lacks it, the other has it too much, and the two are joined through the part where both"
                                + " belong to it: a reading between them falls, and what was isolated may read high.",
                        "Follow the wire with a finger from the patient end to the jack and compare with the drawing.");
            case TRUNK_OFF ->
                new CauseExplained(
                        "Every wire on that fan-out is open at once.",
                        "All readings of that bundle fall to next to nothing, in every state; the others stand.",
                        "Outlet off, follow each trunk to its jack. A bundle that reads nothing in every state is not a good"
                                + " one: it is not there.");
            case BUNDLES_SWAPPED ->
                new CauseExplained(
                        "Each of the two bundles lies on the other's jack.",
                        "The two rows have changed places: each shows what the other showed last year. The sum of all is"
                                + " unchanged.",
                        "Read the number at each jack against the drawing, with a finger on the trunk.");
            case POOR_CONTACT ->
                new CauseExplained(
                        "A resistance of a bad contact lies in series with the part.",
                        "What flows there falls, the more the better the rest conducts: readings through this contact are low"
                                + " and not steady.",
                        "Outlet off, press the foil or wet the contact anew, and repeat: the value must not change.");
            case FOIL_ON_METAL ->
                new CauseExplained(
                        "The part is joined to the housing, past its own isolation.",
                        "With the housing at earth a reading from the part to earth falls; mains on the part drives far beyond"
                                + " its limit.",
                        "Outlet off, lift the foil clear of all metal, press it down and repeat.");
            case IDLE_JACKS_EARTHED ->
                new CauseExplained(
                        "Parts that should float are tied to the tester's earth.",
                        "Current that used to cross to the part under test through the others now goes to earth, or finds a new"
                                + " way: readings of one part change though its own wires are right.",
                        "Look at the tester's display or in its instructions what it does with jacks that are not used.");
            default ->
                new CauseExplained(
                        "Nothing: the branches of a fan-out are one node.",
                        "No reading changes.",
                        "Count the ends against the list.");
        };
    }

    private static CauseExplained earth(SlipKind kind) {
        return switch (kind) {
            case CLIP_ON_PAINT ->
                new CauseExplained(
                        "There is no path at all through the clip.",
                        "The tester shows no path for this one place; the others stand. It looks like a broken earth and is"
                                + " none.",
                        "Scrape through to bare metal of the part that the row names, and move the clip a little.");
            case CLIP_ELSEWHERE ->
                new CauseExplained(
                        "Another path, as good as the right one, is read in its place.",
                        "The reading looks right: it is the right reading of another part.",
                        "Look at the clip: it belongs on the part that the row names.");
            case TOOL_IN_JAWS ->
                new CauseExplained(
                        "The tool and one contact more lie in series, behind the null.",
                        "This one place reads high, by about the same at each repeat; the others stand.",
                        "Use a probe with its own tip, and null with it.");
            case NULL_TIPS_APART ->
                new CauseExplained(
                        "The null has taken off as much as the tester can, though nothing was in the path.",
                        "All earth readings fall by the same amount, below zero: void, not a pass.",
                        "Tips together and null again.");
            case LEADS_WARM ->
                new CauseExplained(
                        "Warm copper has more resistance than when it was nulled.",
                        "All earth readings rise by some milliohms.",
                        "Let the leads cool and null again; null at the end in any case.");
            case NULL_WITH_CORD ->
                new CauseExplained(
                        "The null has taken the cord's earth conductor off, and every reading lacks it.",
                        "All earth readings fall by the same amount. Low passes, and a worn cord would pass with it.",
                        "Tips together, or clip on the outlet's earth contact, and null again; a reading below what the cord's"
                                + " own copper could be is a warning.");
            default ->
                new CauseExplained(
                        "A second path of little resistance lies beside the device's own.",
                        "Earth readings fall, and leakage that the tester should see goes past it: readings against earth are low"
                                + " or nothing, also with the earth open.",
                        "The device stands insulated, and nothing but the hookup touches it: look round it before the first"
                                + " reading.");
        };
    }

    private static CauseExplained state(SlipKind kind) {
        return switch (kind) {
            case SWITCH_OFF ->
                new CauseExplained(
                        "The mains goes no further than the device's switch.",
                        "Most leakage readings fall at once, in every state: what lies behind the switch is not tested.",
                        "The mains lamp is lit, or the current drawn is not zero.");
            case POLARITY_NOT_TURNED ->
                new CauseExplained(
                        "The live conductor is the same one as before.",
                        "The rows under 'reversed' repeat those under 'normal' to the digit; where the two insulations differ,"
                                + " last year's did not.",
                        TICK);
            case SUPPLY_NOT_OPENED ->
                new CauseExplained(
                        "Both conductors still feed the device.",
                        "The rows under 'supply open' repeat those without a fault. Last year they were higher.",
                        TICK + " With the supply open the mains lamp goes out, or no current is drawn. Still live.");
            case SUPPLY_LEFT_OPEN ->
                new CauseExplained(
                        "The neutral is open where it should be closed: the whole mains part hangs on the live conductor.",
                        "Rows without a fault show what the rows with the supply open show: high, for one kind of fault counts"
                                + " among ordinary use.",
                        TICK);
            case EARTH_NOT_OPENED ->
                new CauseExplained(
                        "The earth conductor still carries the leakage away.",
                        "The rows under 'earth open' are low, like those with the earth closed. Low passes, and what they should"
                                + " show stays unknown.",
                        TICK + " Nothing that is earthed touches the device.");
            case EARTH_LEFT_OPEN ->
                new CauseExplained(
                        "The leakage that the earth conductor carried finds its way through whoever touches the device: here, the"
                                + " tester.",
                        "Rows with the earth closed show what the rows with the earth open show: high.",
                        TICK);
            case SUPPLY_NOT_EARTHED ->
                new CauseExplained(
                        "The circuit has no way back to the source: leakage to earth has nothing to drive it but stray"
                                + " capacitance.",
                        "Everything against earth reads low. All passes, and nothing was tested.",
                        "Read line to earth and neutral to earth at the tester's outlet before the first leakage reading.");
            case WALL_EXCHANGED ->
                new CauseExplained(
                        "What the tester calls normal is reversed, and the other way round.",
                        "The rows under 'normal' and under 'reversed' have changed places, and with the supply open the wrong"
                                + " conductor is the one that is opened.",
                        "Read neutral to earth at the tester's outlet: it is a few volts at most.");
            case WRONG_VOLTAGE ->
                new CauseExplained(
                        "Leakage through capacitance follows voltage and frequency.",
                        "Every leakage reading has changed in the same proportion; earth and insulation stand.",
                        "Read the supply voltage before the first leakage reading, and write it down.");
            case SECOND_DEVICE ->
                new CauseExplained(
                        "The other device's leakage joins this one's on the same earth conductor.",
                        "What is read on the earth conductor rises; what is read at housing and parts with the earth closed"
                                + " hardly does.",
                        "One device on the outlet, and nothing else.");
            case STANDBY ->
                new CauseExplained(
                        "The filter is on the mains as before; what stands behind the electronic switch is not.",
                        "Readings hardly move.",
                        "See that the device is on, by its own display, before the first reading in power.");
            case ON_BATTERY ->
                new CauseExplained(
                        "No conductor of the supply reaches the device.",
                        "Readings that the mains drives fall to nothing, though the device runs.",
                        "See that the mains lamp is lit, or that current is drawn.");
            case SUPPLY_TRIPPED ->
                new CauseExplained(
                        "Nothing drives a current any more.",
                        "Every leakage reading is nothing from then on; earth and insulation stand.",
                        "Read the known resistor at the end; a device without a battery has stopped.");
            case AC_FOR_DC ->
                new CauseExplained(
                        "The circuit is right; the tester weighs another component of the current.",
                        "Rows of direct current show what the rows of alternating current show.",
                        "See what the tester says that it reads before the first such row.");
            case FUSE_BLOWN ->
                new CauseExplained(
                        "Nothing reaches the measuring network.",
                        "Every leakage reading is nothing, in every state; earth and insulation stand. Nothing is that good.",
                        "Read the known resistor at the start and at the end.");
            default -> throw new IllegalArgumentException("no explanation for " + kind);
        };
    }

    private static CauseExplained of(FaultKind kind) {
        return switch (kind) {
            case CORD_WORN ->
                new CauseExplained(
                        "The cord's earth conductor has more resistance, and lies in every path from the plug.",
                        "All readings from the plug rise by the same amount, the cord alone too; those from the inlet stand.",
                        "Flex the cord along its length while reading; read again with another cord. Then clean the contacts or"
                                + " replace the cord.");
            case JOINT_WORN ->
                new CauseExplained(
                        "A joint on the way to this one part has more resistance.",
                        "The reading of this place rises; the others stand.",
                        "Re-seat the clip on bare metal and repeat once: the value stays. Then the joint is opened, cleaned and"
                                + " tightened by who may do so.");
            case LINE_TO_HOUSING ->
                new CauseExplained(
                        "A resistance joins line to the housing, beside the filter's capacitor.",
                        "Leakage to earth rises where line is the live conductor, and with the supply open; with the other"
                                + " polarity it hardly does. With the earth open the housing shows it.",
                        "Compare both polarities: one high and one as before points at one conductor. Insulation is read with the"
                                + " outlet off.");
            case NEUTRAL_TO_HOUSING ->
                new CauseExplained(
                        "A resistance joins neutral to the housing, beside the filter's capacitor.",
                        "Leakage to earth rises where neutral is the live conductor, which is with polarity reversed, and with"
                                + " the supply open.",
                        "Compare both polarities: one high and one as before points at one conductor. Insulation is read with the"
                                + " outlet off.");
            case LINE_TO_METAL ->
                new CauseExplained(
                        "A resistance joins line to metal that no earth protects.",
                        "The touch current of that one place rises, earth open or not; what the earth conductor carries stands.",
                        "Move the probe to another place and back: only this one is high.");
            case LINE_TO_PART ->
                new CauseExplained(
                        "A resistance joins line to the inside of the applied part.",
                        "What is read at that part rises: without a source in the states in which line is live, with mains on the part"
                                + " most where source and line stand against each other. The other parts hardly change.",
                        "Take the part off and read again; then another cable, then the part's module.");
            case PART_TO_HOUSING ->
                new CauseExplained(
                        "The part no longer floats: a resistance joins it to the housing.",
                        "With mains on the part the reading rises far; with the earth open the part carries what the housing"
                                + " does. Ordinary readings may look right.",
                        "Dry and clean the connector, read again; then another cable, then the part's module.");
            case PART_TO_PART ->
                new CauseExplained(
                        "A resistance joins two parts that should be isolated from each other.",
                        "What is put on the one comes out at the other: readings between the two rise, and with mains on the one"
                                + " part it finds the earth through the other.",
                        "Take one of the two off: the reading of the other falls back.");
        };
    }
}
