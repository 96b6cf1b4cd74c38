package leadwright.render.edition;

import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Obligation;

/** Readings in which the tester puts mains on what is measured, in words. */
final class SourceExplained {

    private static final String SLIPS =
            "A wire left off, a fan-out trunk not plugged in, a plug that is half in: the loop is open, and only what leaks along"
                    + " the leads themselves is left. It reads low, as low as the background, and passes. With several wires in"
                    + " one bundle and one of them off, the others still carry their part, so that the value may hardly change.";

    private static final String EXPOSED =
            "Write down the background first, with the source on and the device end free: a part that is really joined reads"
                    + " more. The device's own sign that a wire is off. The background is never subtracted.";

    private SourceExplained() {}

    static Explanation of(Obligation reading, boolean earthed) {
        String source = "From the tester's source, which is limited by a resistor, ";
        String what = switch (reading.quantity()) {
            case MAINS_ON_UNEARTHED_METAL -> "to the unearthed metal that is measured";
            case MAINS_ON_PORT -> "to the socket";
            default -> "by the jacks and wires to the connections that are measured";
        };
        String back = reading.method().equals(java.util.Optional.of(Method.ALTERNATIVE))
                ? "to line, neutral and earth of the device, which are joined, and back to the source. The device is off the"
                        + " mains."
                : back(reading, earthed);
        return new Explanation(
                source + what + ", through the barrier inside the device that keeps this part apart from earth, " + back
                        + " The measuring network stands in this loop.",
                "Small, and under the limit: should a patient who is joined to this part come to mains by another fault, the barrier"
                        + " keeps the current back.",
                reading.quantity() == QuantityKind.MAINS_ON_UNEARTHED_METAL
                        ? "A probe on paint or beside the metal leaves the loop open: it reads low, and passes."
                        : SLIPS,
                EXPOSED);
    }

    private static String back(Obligation reading, boolean earthed) {
        if (!reading.demand().against().isEmpty()) {
            return "to the other pole that is joined here, and back to the source.";
        }
        if (!reading.demand().earthed().isEmpty()) {
            return "to what is tied to earth for this reading, and by earth back to the source. Without that tie the current"
                    + " would have nowhere to flow.";
        }
        return earthed
                ? "to the device's protective earth, and by earth back to the source."
                : "to whatever of the device lies at earth, and by earth back to the source.";
    }
}
