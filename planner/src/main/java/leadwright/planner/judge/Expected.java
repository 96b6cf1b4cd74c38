package leadwright.planner.judge;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * What the plan foresees of a reading. It decides no verdict.
 *
 * @param assumed whether assumed values have a say in it
 * @param firm what holds whatever is assumed, by the device's file; empty where nothing does
 */
public record Expected(Span band, boolean assumed, Optional<Span> firm) {

    /** @param high empty where there is no upper bound */
    public record Span(Quantity low, Optional<Quantity> high) {
        boolean holds(Quantity read) {
            return read.dimension() != low.dimension()
                    || read.atLeast(low) && high.map(read::atMost).orElse(true);
        }

        /** For people. */
        public String text() {
            return high.map(most -> low.text() + " to " + most.text()).orElse("at least " + low.text());
        }
    }

    /** What is to be said of a value that passes: nothing where it is what was foreseen. */
    Optional<String> unlike(Quantity read) {
        Optional<Span> missed = firm.filter(span -> !span.holds(read))
                .or(() -> Optional.of(band).filter(span -> !assumed && !span.holds(read)));
        if (missed.isPresent()) {
            return Optional.of("passes, but is not what this hookup should read: check the connection (foreseen "
                    + missed.get().text() + " by the device file)");
        }
        return Optional.of(band)
                .filter(span -> !span.holds(read))
                .map(span -> "not what is foreseen, " + span.text() + " by assumed values: look at the connection");
    }
}
