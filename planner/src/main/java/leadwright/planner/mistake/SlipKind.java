package leadwright.planner.mistake;

import leadwright.catalog.device.Words;

/** Slips that a circuit can show. What it cannot show is listed in docs/silent-mistakes.md. */
public enum SlipKind {
    WIRE_OFF("a wire not pushed home", true),
    NEIGHBOUR_BRANCH("a wire in the next place of the same fan-out", false),
    WRONG_BUNDLE("a wire in the wrong bundle", true),
    TRUNK_OFF("a trunk left out", true),
    BUNDLES_SWAPPED("two bundles exchanged at the tester", true),
    POOR_CONTACT("foil, bath or fluid contact dry, loose or with an air bubble", true),
    FOIL_ON_METAL("foil or bath that reaches earthed metal", true),
    IDLE_JACKS_EARTHED("unused jacks at earth where they should be open", true),
    CLIP_ON_PAINT("earth clip on paint or on metal that floats", true),
    CLIP_ELSEWHERE("earth clip on another earthed part, or on the stud", true),
    SECOND_WAY_TO_EARTH("a cable, rail, hose, metal bench or the earth lead left on the housing", true),
    NULL_WITH_CORD("leads nulled with the device's cord in the path", true),
    NULL_TIPS_APART("leads nulled with the tips not touching each other", true),
    TOOL_IN_JAWS("a tool held in the clip's jaws", false),
    LEADS_WARM("leads warmed by the test current", false),
    SWITCH_OFF("the device's main switch off", true),
    STANDBY("the device in standby", true),
    ON_BATTERY("the device running from its battery", true),
    POLARITY_NOT_TURNED("polarity not turned", true),
    SUPPLY_NOT_OPENED("supply conductor not opened", true),
    SUPPLY_LEFT_OPEN("supply conductor left open", true),
    EARTH_NOT_OPENED("earth not opened", true),
    EARTH_LEFT_OPEN("earth left open", true),
    SUPPLY_NOT_EARTHED("an isolated supply or an inverter", true),
    WALL_EXCHANGED("line and neutral exchanged in the wall", true),
    WRONG_VOLTAGE("a 120 V supply for a 230 V device, or the other way", true),
    SECOND_DEVICE("a second device on the same outlet", false),
    SUPPLY_TRIPPED("the supply tripped, no reading written as zero", true),
    AC_FOR_DC("direct current read with the tester on alternating current", true),
    FUSE_BLOWN("the tester's input fuse blown, or a relay stuck", true);

    private final String words;
    private final boolean leavesOut;

    SlipKind(String words, boolean leavesOut) {
        this.words = words;
        this.leavesOut = leavesOut;
    }

    public String words() {
        return words;
    }

    /** Whether something is then not tested as it should be, whatever the readings say. */
    public boolean leavesOut() {
        return leavesOut;
    }

    /** As written in a plan. */
    public String word() {
        return Words.of(this);
    }
}
