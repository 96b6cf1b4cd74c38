package leadwright.planner.foresee;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/**
 * Foreseen readings of a plan.
 *
 * <p>Needs: a plan. Gives: for each reading that the model knows a value with a band. Method: circuit analysis, see {@link Setups} and
 * {@link Bands}. Cost: about twenty solutions of a circuit for each reading. Proof: none of the values assumed; the circuits are
 * checked against a general simulator.
 */
public final class Foresee {
    /** An assumed value that moves a reading by less than this share of it does not make it assumed. */
    private static final double NOTICEABLE = 0.1;

    private final Plan plan;
    private final Situation situation;
    private final Setups setups;

    private Foresee(Plan plan, Situation situation) {
        this.plan = plan;
        this.situation = situation;
        this.setups = new Setups(plan.device(), plan.kit(), situation);
    }

    /** By reading id, in the order of the plan. */
    public static Map<String, Foreseen> of(Plan plan, Situation situation) {
        Foresee foresee = new Foresee(plan, situation);
        Map<String, Foreseen> all = new LinkedHashMap<>();
        for (Reading reading : plan.readings()) {
            foresee.foreseen(reading).ifPresent(each -> all.put(reading.id(), each));
        }
        return all;
    }

    private Optional<Foreseen> foreseen(Reading reading) {
        Obligation what = reading.obligation();
        Optional<Setup> setup = setups.of(what, reading.hookup().flatMap(plan::hookup));
        return setup.map(each -> banded(reading.id(), each))
                .or(() -> EarthBudget.of(plan, reading, situation).map(budget -> budget.foreseen(plan.kit())));
    }

    private Foreseen banded(String id, Setup setup) {
        Model model = new Model(setup);
        Bands.Band band = Bands.of(model);
        Bands.Band assumed = Bands.of(model, each -> each.basis() == Basis.ASSUMED);
        if (setup.meter() instanceof Meter.Insulation) {
            return insulation(id, band);
        }
        Accuracy accuracy = accuracy();
        double floor = accuracy.floor().inSi();
        double spread = assumed.high() - assumed.low();
        Basis basis = spread <= NOTICEABLE * band.nominal() + floor ? stated(setup) : Basis.ASSUMED;
        double least = situation.volts().isPresent() ? 0.99 : Assumed.MAINS.low();
        double most = situation.volts().isPresent() ? 1.01 : Assumed.MAINS.high();
        double share = accuracy.reading().inSi();
        double low = Math.max(0, band.low() * least * (1 - share) - floor);
        double high = band.high() * most * (1 + share) + floor;
        return new Foreseen(
                id,
                Optional.of(quantity(Dimension.CURRENT, band.nominal(), 0)),
                quantity(Dimension.CURRENT, low, -1),
                Optional.of(quantity(Dimension.CURRENT, high, 1)),
                basis,
                why(band, basis));
    }

    private static String why(Bands.Band band, Basis basis) {
        if (band.high() == 0) {
            return "nothing in this circuit drives a current";
        }
        return basis == Basis.ASSUMED ? "by assumed values" : "by the device file";
    }

    private Foreseen insulation(String id, Bands.Band band) {
        return new Foreseen(
                id,
                Optional.empty(),
                quantity(Dimension.RESISTANCE, band.low(), -1),
                Optional.empty(),
                Basis.ASSUMED,
                "good insulation reads above the tester's range");
    }

    private static Basis stated(Setup setup) {
        boolean device = setup.template().parameters().stream().anyMatch(each -> each.basis() == Basis.DEVICE_FILE);
        return device ? Basis.DEVICE_FILE : Basis.KIT;
    }

    private Accuracy accuracy() {
        return Optional.ofNullable(plan.kit().tester().accuracy().get("leakage"))
                .orElse(new Accuracy(
                        new Quantity(Dimension.RATIO, Math.round(0.15 / Dimension.RATIO.toSi())),
                        Quantity.microAmperes(5)));
    }

    /** Three figures, rounded outwards where a bound is asked for. */
    static Quantity quantity(Dimension dimension, double si, int direction) {
        double base = si / dimension.toSi();
        if (base < 1) {
            return new Quantity(dimension, direction > 0 && base > 0 ? 1 : 0);
        }
        double step = Math.pow(10, Math.max(0, Math.floor(Math.log10(base)) - 2));
        double figures = base / step;
        double rounded = direction < 0 ? Math.floor(figures) : direction > 0 ? Math.ceil(figures) : Math.rint(figures);
        return new Quantity(dimension, Math.round(rounded * step));
    }
}
