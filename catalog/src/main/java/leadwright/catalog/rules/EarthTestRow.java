package leadwright.catalog.rules;

import java.math.BigDecimal;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;

/**
 * The source that a rule set asks for in earth-resistance readings.
 *
 * @param atLeast least test current
 * @param factorOfRated least test current as a multiple of the rated current, where that is more
 * @param openCircuitAtMost highest open-circuit voltage
 * @param lasting least time for which the current flows
 */
public record EarthTestRow(
        Quantity atLeast,
        Optional<BigDecimal> factorOfRated,
        Optional<Quantity> openCircuitAtMost,
        Optional<Quantity> lasting,
        Basis basis) {}
