package leadwright.render.edition;

import java.util.Locale;
import java.util.Optional;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.kit.KnownResistor;
import leadwright.catalog.kit.Method;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.render.sheet.Vocabulary;

/**
 * A worked sum for a kind of reading: how large a value is to be expected, from figures that are assumed and said to be so.
 * Capacitance drives a current of 2π times frequency, capacitance and voltage; all else is Ohm's law. The known resistor of a
 * kit is the one figure that is not assumed.
 */
final class Sums {

    /** Where neither the device nor the tester's outlet states one. */
    private static final double VOLTS = 230;

    private static final double HERTZ = 50;

    private final Obligation reading;
    private final Plan plan;
    private final Vocabulary words;
    private final double volts;
    private final double hertz;

    private Sums(Obligation reading, Plan plan, Vocabulary words) {
        this.reading = reading;
        this.plan = plan;
        this.words = words;
        this.volts = plan.kit().tester().outlets().stream()
                .findFirst()
                .map(outlet -> toEarth(outlet.voltage().inSi(), outlet.system()))
                .or(() -> plan.device()
                        .supply()
                        .highest()
                        .map(each -> toEarth(each.inSi(), plan.device().supply().system())))
                .orElse(VOLTS);
        this.hertz = plan.device().supply().frequency().map(each -> each.inSi()).orElse(HERTZ);
    }

    /** What stands between a live conductor and earth where the supply is as good as symmetrical. */
    private static double toEarth(double volts, SupplySystem system) {
        return switch (system) {
            case SPLIT_PHASE -> volts / 2;
            case PHASE_PHASE, THREE_PHASE -> volts / Math.sqrt(3);
            case LINE_NEUTRAL, ISOLATED, DC -> volts;
        };
    }

    /** The sum, or nothing where there is none to do. */
    static Optional<String> of(Obligation reading, Plan plan, Vocabulary words) {
        return new Sums(reading, plan, words).sum();
    }

    private Optional<String> sum() {
        if (reading.sourcePolarity().isPresent()) {
            return Optional.of("Assumed: leads with " + capacitive(0.5, "of capacitance to earth between them")
                    + " That much is read with nothing joined, and is the background.");
        }
        if (reading.method().equals(Optional.of(Method.DIFFERENTIAL))) {
            return Optional.of(
                    "Assumed: 500.3 mA go in and 500.0 mA come back. 500.3 mA − 500.0 mA = 0.3 mA has gone to earth.");
        }
        return switch (reading.quantity()) {
            case EARTH_RESISTANCE, BONDING_RESISTANCE -> resistance();
            case BONDING_VOLTAGE -> Optional.of("Assumed: 5 µA through a resistor of 1000 Ω. 5 µA × 1000 Ω = 5 mV.");
            case INSULATION_RESISTANCE ->
                Optional.of(
                        "Assumed: 500 V on an insulation of 50 MΩ. 500 V / 50 MΩ = 10 µA; the tester shows the 50 MΩ.");
            case TESTER_CHECK -> check();
            case SUPPLY_VOLTAGE ->
                Optional.of("Assumed: " + volt(volts) + " V between line and neutral. 10 % of it is " + volt(volts / 10)
                        + " V, so that line to earth may read from " + volt(volts * 0.9) + " V to "
                        + volt(volts * 1.1) + " V.");
            case EARTH_LEAKAGE, FUNCTIONAL_EARTH_LEAKAGE, EQUIPMENT_LEAKAGE ->
                Optional.of("Assumed: " + capacitive(2.2, "between the live conductor and what is read"));
            case TOUCH_CURRENT, TOUCH_CURRENT_BETWEEN, PATIENT_LEAKAGE, TOTAL_PATIENT_LEAKAGE ->
                plan.device().runsOnMains()
                        ? Optional.of("Assumed: " + capacitive(0.1, "between the mains part and what is read"))
                        : network();
            case PATIENT_AUXILIARY, LEAD_TO_LEAD -> network();
            default -> Optional.empty();
        };
    }

    private static Optional<String> network() {
        return Optional.of("Assumed: 5 mV stand over the network's 1000 Ω. 5 mV / 1000 Ω = 5 µA.");
    }

    private Optional<String> resistance() {
        // 19.5 Ω/km: copper of 1 mm², class 5, as the table of conductors has it.
        return Optional.of("Assumed: 2 m of copper of 1 mm², which is 19.5 mΩ a metre, and two contacts of 10 mΩ each."
                + " 2 m × 19.5 mΩ + 2 × 10 mΩ = 59 mΩ. A second way of 59 mΩ beside it would halve the reading.");
    }

    private Optional<String> check() {
        return plan.kit().checks().stream()
                .filter(each -> reading.of().contains(each.id()))
                .map(this::check)
                .findFirst();
    }

    private String check(KnownResistor resistor) {
        String value = words.amount(resistor.value());
        double ohms = resistor.value().inSi();
        return ohms < 1000
                ? "The kit's resistor has " + value + ": that is what must be shown, within "
                        + words.amount(resistor.tolerance()) + "."
                : "The kit's resistor has " + value + ". Assumed: " + volt(volts) + " V. " + volt(volts) + " V / "
                        + value + " = " + micro(volts / ohms * 1e6) + " µA.";
    }

    private String capacitive(double nanofarads, String where) {
        double amperes = 2 * Math.PI * hertz * nanofarads * 1e-9 * volts;
        return plain(nanofarads) + " nF " + where + ". 2π × " + volt(hertz) + " Hz × " + plain(nanofarads) + " nF × "
                + volt(volts) + " V = " + micro(amperes * 1e6) + " µA.";
    }

    private static String plain(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    private static String volt(double value) {
        return String.format(Locale.ROOT, "%.0f", value);
    }

    private static String micro(double value) {
        return String.format(Locale.ROOT, value < 10 ? "%.1f" : "%.0f", value);
    }
}
