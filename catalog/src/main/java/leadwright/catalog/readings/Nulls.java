package leadwright.catalog.readings;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * Resistance of the test leads as read with their ends together.
 *
 * @param takenOff whether the tester takes it off by itself, so that the readings hold the device alone
 */
public record Nulls(Quantity start, Optional<Quantity> end, boolean takenOff) {}
