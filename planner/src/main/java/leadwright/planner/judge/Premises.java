package leadwright.planner.judge;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.readings.Nulls;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.readings.Shown;
import leadwright.catalog.rules.QuantityKind;

/**
 * What must hold before a reading says anything: the tester in calibration and working, the supply referenced to earth, the
 * leads nulled. A reading whose premise fails is void; it is never taken for a pass.
 */
final class Premises {

    /** Operating uncertainty that IEC 61557-16 allows for leakage at most (ed. 1), where the kit states none. */
    private static final double LEAKAGE_AT_MOST = 0.15;
    /** The same for resistances, from memory. */
    private static final double RESISTANCE_AT_MOST = 0.30;

    private final PlannedTest plan;
    private final Readings readings;
    private final Mains mains;
    private final LocalDate date;
    private final Map<String, Shown> shown = new LinkedHashMap<>();

    /** What the check readings came to, by reading id. */
    private final Map<String, Check> checks = new LinkedHashMap<>();

    /** A check reading: whether it came out as it must, and the words for it. */
    record Check(boolean good, String words) {}

    Premises(PlannedTest plan, Readings readings, Mains mains, LocalDate date) {
        this.plan = plan;
        this.readings = readings;
        this.mains = mains;
        this.date = date;
        readings.taken()
                .forEach(taken ->
                        taken.shown().ifPresent(each -> shown.put(taken.id().value(), each.value())));
        plan.readings().forEach(each -> check(each).ifPresent(check -> checks.put(each.id(), check)));
    }

    /** Why nothing that was read with the tester counts; empty where it was in calibration. */
    Optional<String> pastDue() {
        return plan.bench()
                .calibratedUntil()
                .filter(date::isAfter)
                .map(until -> "the tester's calibration was due on " + until + ", before the readings of " + date);
    }

    Optional<Check> check(String id) {
        return Optional.ofNullable(checks.get(id));
    }

    /** Why a reading of the device says nothing; empty where it may be judged. */
    Optional<String> voids(PlannedReading planned) {
        Optional<String> pastDue = pastDue();
        if (pastDue.isPresent()) {
            return pastDue;
        }
        for (PlannedReading each : plan.readings()) {
            Check check = checks.get(each.id());
            if (check != null && !check.good() && bearsOn(each, planned)) {
                return Optional.of(each.id() + ": " + check.words());
            }
        }
        return planned.isThroughLeads() ? leads() : Optional.empty();
    }

    private static boolean bearsOn(PlannedReading check, PlannedReading planned) {
        return check.quantity() == QuantityKind.TESTER_CHECK
                ? check.function().equals(planned.function())
                : planned.isLeakage();
    }

    private Optional<Check> check(PlannedReading planned) {
        return switch (planned.quantity()) {
            case TESTER_CHECK -> testerCheck(planned);
            case SUPPLY_VOLTAGE -> {
                if (planned.key().contains("/line-to-earth")) {
                    yield earthReference(planned);
                }
                yield planned.key().contains("/neutral-to-earth") ? neutralNearEarth(planned) : Optional.empty();
            }
            case PROOF -> planned.key().contains("/earth-lead-off") ? earthLeadOff(planned) : Optional.empty();
            default -> Optional.empty();
        };
    }

    private Optional<Quantity> value(String id) {
        return shown.get(id) instanceof Shown.Value value ? Optional.of(value.amount()) : Optional.empty();
    }

    // ---- the tester's own check

    private Optional<Check> testerCheck(PlannedReading planned) {
        Optional<PlannedTest.Resistor> resistor = planned.of().stream()
                .flatMap(id -> Optional.ofNullable(plan.bench().checks().get(id)).stream())
                .findFirst();
        if (resistor.isEmpty() || !shown.containsKey(planned.id())) {
            return Optional.empty();
        }
        Optional<Quantity> read = value(planned.id());
        if (read.isEmpty()) {
            return Optional.of(new Check(false, "the known resistor gave no value: the tester is not proven to work"));
        }
        boolean current = planned.component().isPresent();
        return current ? currentCheck(read.get(), resistor.get()) : Optional.of(ohmsCheck(read.get(), resistor.get()));
    }

    private Check ohmsCheck(Quantity read, PlannedTest.Resistor resistor) {
        double middle = resistor.value().amount();
        double half = middle * share(resistor.tolerance()) + halfWidth("earth", middle, RESISTANCE_AT_MOST);
        return within(read, middle - half, middle + half);
    }

    private Optional<Check> currentCheck(Quantity read, PlannedTest.Resistor resistor) {
        if (mains.nominal().isEmpty() && mains.measured().isEmpty()) {
            return Optional.empty();
        }
        // Where the voltage was not measured, the range in which a tester has to work: IEC 61557-1, 85 % to 110 %.
        double low = mains.measured()
                .map(Quantity::amount)
                .map(volts -> volts * (1 - voltmeter(volts)))
                .orElseGet(() -> mains.nominal().orElseThrow().amount() * 0.85);
        double high = mains.measured()
                .map(Quantity::amount)
                .map(volts -> volts * (1 + voltmeter(volts)))
                .orElseGet(() -> mains.nominal().orElseThrow().amount() * 1.10);
        double ohms = resistor.value().amount();
        double least = 1e9 * low / (ohms * (1 + share(resistor.tolerance())));
        double most = 1e9 * high / (ohms * (1 - share(resistor.tolerance())));
        return Optional.of(within(
                read,
                least - halfWidth("leakage", least, LEAKAGE_AT_MOST),
                most + halfWidth("leakage", most, LEAKAGE_AT_MOST)));
    }

    private double voltmeter(double volts) {
        Accuracy stated = plan.bench().accuracy().get("voltage");
        return stated == null ? 0 : Uncertainty.halfWidth(stated, volts) / volts;
    }

    private double halfWidth(String function, double amount, double otherwise) {
        Accuracy stated = plan.bench().accuracy().get(function);
        return stated == null ? amount * otherwise : Uncertainty.halfWidth(stated, amount);
    }

    private static double share(Quantity ratio) {
        return ratio.amount() / 1e6;
    }

    private static Check within(Quantity read, double least, double most) {
        boolean good = read.amount() >= least && read.amount() <= most;
        String band = rounded(read.dimension(), least) + " to " + rounded(read.dimension(), most);
        return good
                ? new Check(true, "the known resistor reads as it must: " + band)
                : new Check(
                        false,
                        "the known resistor reads " + read.text() + " and not " + band
                                + ": a blown fuse, a stuck relay or a wrong range; nothing read with it counts");
    }

    /** To three figures, for a person. */
    private static String rounded(Dimension dimension, double amount) {
        long whole = new java.math.BigDecimal(Math.max(amount, 0))
                .round(new java.math.MathContext(3, java.math.RoundingMode.HALF_EVEN))
                .longValue();
        return Quantity.of(dimension, whole).text();
    }

    // ---- the supply, and the earth lead

    private Optional<Quantity> lineToNeutral() {
        return plan.readings().stream()
                .filter(each -> each.key().contains("/line-to-neutral"))
                .flatMap(each -> value(each.id()).stream())
                .findFirst();
    }

    /**
     * A neutral that is earthed at its source stands a few volts above earth. How many are too many is not stated; but with
     * line to earth within a tenth of line to neutral, more than that tenth contradicts the other two readings.
     */
    private Optional<Check> neutralNearEarth(PlannedReading planned) {
        Optional<Quantity> toEarth = value(planned.id());
        Optional<Quantity> toNeutral = lineToNeutral();
        if (toEarth.isEmpty() || toNeutral.isEmpty()) {
            return Optional.empty();
        }
        boolean good = toEarth.get().amount() <= toNeutral.get().amount() / 10;
        return Optional.of(
                good
                        ? new Check(true, "below a tenth of line to neutral; a few volts are usual")
                        : new Check(
                                false,
                                "neutral to earth is " + toEarth.get().text()
                                        + " where a few volts are usual, and line to"
                                        + " neutral " + toNeutral.get().text()
                                        + ": the supply is not referenced to earth, or its conductors are changed over"));
    }

    private Optional<Check> earthReference(PlannedReading planned) {
        Optional<Quantity> toEarth = value(planned.id());
        Optional<Quantity> toNeutral = lineToNeutral();
        if (toEarth.isEmpty() || toNeutral.isEmpty()) {
            return Optional.empty();
        }
        long apart = Math.abs(toEarth.get().amount() - toNeutral.get().amount());
        boolean good = apart <= toNeutral.get().amount() / 10;
        return Optional.of(
                good
                        ? new Check(true, "within 10 % of line to neutral: the supply is referenced to earth")
                        : new Check(
                                false,
                                "line to earth is " + toEarth.get().text() + " and line to neutral "
                                        + toNeutral.get().text()
                                        + ": the supply is not referenced to earth, and every leakage reads low"));
    }

    private Optional<Check> earthLeadOff(PlannedReading planned) {
        Shown read = shown.get(planned.id());
        if (read == null) {
            return Optional.empty();
        }
        boolean open = read instanceof Shown.NoPath || read instanceof Shown.Above;
        return Optional.of(
                open
                        ? new Check(true, "no path: the earth lead is off")
                        : new Check(
                                false,
                                "the earth test finds a path (" + read.text()
                                        + "): the earth lead was still on, and leakage went past the tester"));
    }

    // ---- the leads

    /** The leads' resistance, where it counts. */
    Optional<Nulls> nulls() {
        return readings.nulls().filter(each -> !plan.bench().fourWire());
    }

    /** How much the leads' resistance changed between start and end. */
    Quantity drift() {
        Optional<Nulls> nulls = nulls();
        long drift = nulls.flatMap(Nulls::end)
                .map(end -> Math.abs(end.amount() - nulls.orElseThrow().start().amount()))
                .orElse(0L);
        return Quantity.of(Dimension.RESISTANCE, drift);
    }

    private Optional<String> leads() {
        if (nulls().isEmpty()) {
            return Optional.empty();
        }
        Nulls nulls = nulls().get();
        List<String> reasons = new ArrayList<>();
        Accuracy earth = plan.bench().accuracy().get("earth");
        if (earth != null && drift().amount() > earth.floor().amount()) {
            reasons.add("the leads read " + nulls.start().text() + " at the start and "
                    + nulls.end().orElseThrow().text() + " at the end, more apart than the tester's "
                    + earth.floor().text() + ": null again and repeat");
        }
        plan.bench()
                .nullUpTo()
                .filter(most -> nulls.takenOff() && nulls.start().compareTo(most) > 0)
                .ifPresent(most -> reasons.add("the leads have " + nulls.start().text()
                        + ", and the tester nulls up to " + most.text() + " only"));
        return reasons.stream().findFirst();
    }
}
