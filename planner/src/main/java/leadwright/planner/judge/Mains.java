package leadwright.planner.judge;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.readings.Shown;

/**
 * The mains at the tester's outlet, and the correction of leakage to its nominal voltage where the rule set says so:
 * current times nominal over measured.
 *
 * @param nominal the outlet's nominal voltage; of several, the one nearest to the measured
 * @param measured the lower of what the file states and what was read between the live conductors, so that a correction
 *     is never too small
 * @param due whether the rule set has some reading of the plan corrected
 */
public record Mains(Optional<Quantity> nominal, Optional<Quantity> measured, boolean due) {

    static Mains of(PlannedTest plan, Readings readings) {
        List<Quantity> measured = new ArrayList<>();
        readings.mainsVoltage().ifPresent(volts -> measured.add(volts.value()));
        for (PlannedReading planned : plan.readings()) {
            if (planned.key().contains("/line-to-neutral") || planned.key().contains("/leg-to-leg")) {
                value(readings, planned.id()).ifPresent(measured::add);
            }
        }
        Optional<Quantity> lowest = measured.stream().min(Quantity::compareTo);
        Optional<Quantity> nominal = nearest(plan.bench().nominal(), lowest);
        boolean due = plan.rules().nominalMains().isPresent()
                && nominal.isPresent()
                && plan.readings().stream().anyMatch(each -> fromMains(each) || fromRawSource(each, plan));
        return new Mains(nominal, lowest, due);
    }

    private static Optional<Quantity> value(Readings readings, String id) {
        return readings.taken().stream()
                .filter(taken -> taken.id().value().equals(id))
                .flatMap(taken -> taken.shown().stream())
                .filter(shown -> shown.value() instanceof Shown.Value)
                .map(shown -> ((Shown.Value) shown.value()).amount())
                .filter(amount ->
                        amount.dimension() == leadwright.catalog.quantity.Dimension.VOLTAGE && amount.amount() > 0)
                .findFirst();
    }

    private static Optional<Quantity> nearest(List<Quantity> nominal, Optional<Quantity> measured) {
        return nominal.stream()
                .min(java.util.Comparator.comparingLong((Quantity each) -> Math.abs(
                                each.amount() - measured.map(Quantity::amount).orElse(each.amount())))
                        .thenComparing(java.util.Comparator.reverseOrder()));
    }

    boolean missing() {
        return due && measured.isEmpty();
    }

    /** Too far from the nominal to be a mains voltage at all. */
    boolean unlike() {
        return nominal.isPresent()
                && measured.isPresent()
                && (measured.get().times(2).compareTo(nominal.get()) < 0
                        || measured.get().times(2).compareTo(nominal.get().times(3)) > 0);
    }

    /** A leakage current that the mains at the outlet drives. */
    private static boolean fromMains(PlannedReading planned) {
        boolean live = planned.state().startsWith("normal") || planned.state().startsWith("reversed");
        return planned.isLeakage() && live && !planned.isFromSource();
    }

    private static boolean fromRawSource(PlannedReading planned, PlannedTest plan) {
        return planned.isLeakage()
                && planned.isFromSource()
                && plan.bench()
                        .source()
                        .map(PartSource::reading)
                        .filter(reading -> reading == SourceReading.RAW)
                        .isPresent();
    }

    /**
     * Whether a reading is corrected. What the tester has corrected itself is not corrected again. A raw reading of the
     * limited source is corrected upwards only: whether its source follows the mains is not known, and a correction must
     * not help a device to pass.
     */
    boolean corrects(PlannedReading planned, PlannedTest plan) {
        if (!due || measured.isEmpty()) {
            return false;
        }
        return fromMains(planned)
                || fromRawSource(planned, plan) && measured.get().compareTo(nominal.orElseThrow()) < 0;
    }

    /** The current at nominal voltage, rounded up. */
    Quantity corrected(Quantity current) {
        BigInteger over = BigInteger.valueOf(measured.orElseThrow().amount());
        BigInteger[] parts = BigInteger.valueOf(current.amount())
                .multiply(BigInteger.valueOf(nominal.orElseThrow().amount()))
                .divideAndRemainder(over);
        long whole = parts[0].longValueExact();
        return Quantity.of(current.dimension(), parts[1].signum() > 0 ? whole + 1 : whole);
    }

    double factor() {
        return (double) nominal.orElseThrow().amount() / measured.orElseThrow().amount();
    }
}
