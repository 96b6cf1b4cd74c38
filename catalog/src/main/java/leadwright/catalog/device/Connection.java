package leadwright.catalog.device;

import java.util.Optional;

/**
 * One conductor end that the bench may have to reach: a patient connection, an unearthed accessible part, a port, or the
 * tester's touch probe.
 *
 * @param name full name: {@code ecg.R}, {@code ibp.p1.dome-1}, {@code housing.bezel-screw}, {@code port.lan},
 *     {@code touch-probe}
 * @param kind what it is
 * @param part id of its applied part; the touch point's or port's id for the others
 * @param function full name of the function measured as one: {@code ecg}, {@code ibp.p1}; equal to {@code part} for
 *     an applied part without functions, and for others
 * @param terminal word for the terminal (a connector id, or a surface word for housing and ports)
 * @param label what is printed on the wire in the IEC code, where the set gives one
 */
public record Connection(
        String name, Kind kind, String part, String function, String terminal, Optional<String> label) {

    /** What a connection belongs to. */
    public enum Kind {
        PATIENT,
        HOUSING,
        PORT,
        TOUCH_PROBE
    }
}
