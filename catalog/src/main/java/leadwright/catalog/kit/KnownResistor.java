package leadwright.catalog.kit;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/** A known resistor for the tester's own check at start and end. */
public record KnownResistor(String id, Quantity value, Quantity tolerance, Optional<Quantity> voltage) {}
