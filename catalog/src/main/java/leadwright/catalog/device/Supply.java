package leadwright.catalog.device;

import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * The device's supply.
 *
 * @param connection how it is joined to the mains
 * @param inlet IEC 60320 inlet of a detachable cord, a word of the catalog's mains tables
 * @param cordPlug what goes into the tester's outlet
 * @param system the kind of supply
 * @param lowest lowest rated voltage; equal to {@code highest} where one voltage is stated
 * @param highest highest rated voltage
 * @param frequency rated frequency; the lowest where a range is stated
 * @param current rated current
 */
public record Supply(
        SupplyConnection connection,
        Optional<String> inlet,
        Optional<String> cordPlug,
        SupplySystem system,
        Optional<Quantity> lowest,
        Optional<Quantity> highest,
        Optional<Quantity> frequency,
        Optional<Quantity> current) {}
