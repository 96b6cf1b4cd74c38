package leadwright.catalog.rules;

import java.util.Optional;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Quantity;

/**
 * What a leakage method presupposes, and when it cannot be used.
 *
 * @param presupposes in words for a person
 * @param notForLimitsTo limits of this size or below are too small for it
 * @param notWithElectronicSwitch whether it needs a mains switch that stays closed while the device is unplugged
 */
public record MethodRow(
        Method method,
        String presupposes,
        Optional<Quantity> notForLimitsTo,
        boolean notWithElectronicSwitch,
        Basis basis) {}
