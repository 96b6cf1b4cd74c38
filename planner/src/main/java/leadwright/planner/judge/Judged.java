package leadwright.planner.judge;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Taken;
import leadwright.catalog.rules.Limit;

/**
 * One reading, judged.
 *
 * @param counted the value that was compared with the limit: as shown, less the leads, at nominal voltage
 * @param leadsOff resistance of the leads that was taken off here
 * @param atNominal whether it was corrected to the nominal mains voltage
 * @param limit what it was compared with
 * @param uncertainty expanded uncertainty of the counted value
 * @param guardBand expanded uncertainty at the limit: the guard band
 * @param conforming probability that the device conforms, for a value inside the uncertainty
 * @param because why the verdict is what it is
 * @param flags what a person must look at, a line each
 */
public record Judged(
        PlannedReading planned,
        Taken taken,
        Optional<Quantity> counted,
        Optional<Quantity> leadsOff,
        boolean atNominal,
        Optional<Limit> limit,
        Optional<Quantity> uncertainty,
        Optional<Quantity> guardBand,
        Optional<Double> conforming,
        Verdict verdict,
        String because,
        List<String> flags,
        Optional<Before> before) {
    public Judged {
        flags = List.copyOf(flags);
    }

    /** The same reading in the last record. */
    public record Before(LocalDate date, Quantity value, Optional<Quantity> uncertainty) {}
}
