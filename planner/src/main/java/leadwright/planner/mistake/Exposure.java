package leadwright.planner.mistake;

import leadwright.catalog.device.Words;

/** What becomes of a slip. */
public enum Exposure {
    /** Some reading fails its limit, whatever the values that are assumed. */
    LIMIT,
    /** Some reading leaves its foreseen band, with values from the device file alone. */
    BAND,
    /** A reading or a step that the plan has in any case shows it: supply voltages, the known resistor, the leads nulled again. */
    CHECK,
    /** No bad device passes for it. */
    HARMLESS,
    /** Every reading still looks right: a proof step is wanted. */
    SILENT;

    /** As written in a plan. */
    public String word() {
        return Words.of(this);
    }
}
