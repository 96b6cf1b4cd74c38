package leadwright.catalog.device;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * An accessible part of the housing.
 *
 * @param distance routed distance from the tester's place or from the point named in {@code from}
 * @param from another point's id from which the distance counts
 */
public record TouchPoint(
        String id, String name, Earthed earthed, Surface surface, Optional<Quantity> distance, Optional<String> from) {
    public Connection connection() {
        return new Connection("housing." + id, Connection.Kind.HOUSING, id, id, surface.word(), Optional.empty());
    }
}
