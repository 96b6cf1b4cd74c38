package leadwright.planner.foresee;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * What a reading should show. It never decides a verdict; the limit does.
 *
 * @param reading id
 * @param value most likely; empty where only a bound is foreseen
 * @param low least, the tester's accuracy taken off
 * @param high most, the tester's accuracy added; empty where there is no upper bound
 * @param basis what it rests on: {@link Basis#ASSUMED} as soon as an assumed value can move it noticeably
 * @param firm what holds whatever the assumed values are, by the device file and the kit alone; empty where nothing does
 * @param why what makes it so, for people
 */
public record Foreseen(
        String reading,
        Optional<Quantity> value,
        Quantity low,
        Optional<Quantity> high,
        Basis basis,
        Optional<Span> firm,
        String why) {

    /** @param high empty where there is no upper bound */
    public record Span(Quantity low, Optional<Quantity> high) {
        public boolean holds(Quantity read) {
            return read.atLeast(low) && high.map(read::atMost).orElse(true);
        }
    }

    /** Whether a reading lies in the band. */
    public boolean holds(Quantity read) {
        return read.atLeast(low) && high.map(read::atMost).orElse(true);
    }
}
