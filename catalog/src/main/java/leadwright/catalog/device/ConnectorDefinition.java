package leadwright.catalog.device;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/** A connector that a device or kit file defines for itself. */
public record ConnectorDefinition(
        String id, List<String> mates, Optional<Quantity> current, Optional<Quantity> voltage) {
    public ConnectorDefinition {
        mates = List.copyOf(mates);
    }
}
