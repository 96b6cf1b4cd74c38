package leadwright.planner.mistake;

import leadwright.catalog.device.Words;

/** Faults of a device that its readings can show. */
public enum FaultKind {
    CORD_WORN("the supply cord's earth conductor worn or its contact corroded"),
    JOINT_WORN("a corroded earth joint inside the device"),
    LINE_TO_HOUSING("insulation between line and housing damp or damaged"),
    NEUTRAL_TO_HOUSING("insulation between neutral and housing damp or damaged"),
    LINE_TO_METAL("insulation between line and an unearthed metal part damaged"),
    LINE_TO_PART("insulation between line and an applied part damaged"),
    PART_TO_HOUSING("isolation of an applied part from the housing broken"),
    PART_TO_PART("isolation between two applied parts broken");

    private final String words;

    FaultKind(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public String word() {
        return Words.of(this);
    }
}
