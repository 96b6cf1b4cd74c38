package leadwright.catalog.device;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * A further earth terminal, such as an equipotential stud or the earth terminal of permanent plant.
 *
 * @param terminal connector word
 */
public record EarthPoint(String id, String name, String terminal, Optional<Quantity> distance, Optional<String> from) {}
