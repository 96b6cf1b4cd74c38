package leadwright.planner.mistake;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * What becomes of one slip.
 *
 * @param by the reading that shows it, or tells most of it
 * @param planned what that reading should show
 * @param shown what it shows with the slip made; by nominal values
 */
public record Finding(
        Slip slip, Exposure exposure, Optional<String> by, Optional<Quantity> planned, Optional<Quantity> shown) {}
