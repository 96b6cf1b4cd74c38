package leadwright.planner.compare;

import leadwright.catalog.device.Words;

/** What a change is about, in the order in which a person at the bench cares. */
public enum Concern {
    /** What the plans were made for; it stands at the head, and is no difference at the bench by itself. */
    PLANNED_FOR("Planned for"),
    HAZARDS("Hazards"),
    LIMITS("Limits"),
    TESTS("Tests"),
    WIRING("Wiring"),
    ORDER("Order"),
    TIME("Time and proof");

    private final String heading;

    Concern(String heading) {
        this.heading = heading;
    }

    /** As headings name it. */
    public String heading() {
        return heading;
    }

    public String word() {
        return Words.of(this);
    }
}
