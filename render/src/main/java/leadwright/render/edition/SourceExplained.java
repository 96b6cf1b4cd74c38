package leadwright.render.edition;

import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Obligation;

/** Readings in which the tester puts mains on what is measured, in words. */
final class SourceExplained {

    private static final String SLIPS =
            "A wire left off, a fan-out trunk not plugged in, a plug that is half in: the loop is open, and only what leaks along"
                    + " the leads themselves is left. It reads low, as low as with the leads' device end free, and passes. With several wires in"
                    + " one bundle and one of them off, the others still carry their part, so that the value may hardly change.";

    private static final String EXPOSED =
            "Write down the background first, before the source is put on: what the tester shows. Where the plan warns of what"
                    + " the leads pass by their capacitance, the leads are hooked up with their device end free and the source"
                    + " is on: a part that is really joined reads more than that. The device's own sign that a wire is off. The"
                    + " background is never subtracted.";

    private SourceExplained() {}

    static Explanation of(Obligation reading) {
        if (reading.quantity() == QuantityKind.MAINS_ON_UNEARTHED_METAL
                || reading.quantity() == QuantityKind.MAINS_ON_PORT) {
            return new Explanation(
                    "Small, and under the limit: should mains come on this by a fault, the barrier keeps the current from a patient"
                            + " who is joined to the measured part.",
                    "A lead on paint or beside the metal leaves the loop open: it reads low, and passes. " + SLIPS,
                    EXPOSED);
        }
        return new Explanation(
                "Small, and under the limit: should a patient who is joined to this part come to mains by another fault, the barrier"
                        + " keeps the current back.",
                SLIPS,
                EXPOSED);
    }
}
