package leadwright.planner.foresee;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
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

    /** Share of a reading that must be there by the file's values alone for a bound to be firm. */
    private static final double RULING = 0.5;

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
        if (setup.meter() instanceof Meter.Insulation) {
            return insulation(id, band);
        }
        // Where assumed values make most of a reading, nothing else needs to be asked.
        boolean stated = model.share(each -> each.basis() != Basis.ASSUMED) >= RULING;
        Accuracy accuracy = Amounts.accuracy(plan.kit(), "leakage");
        double floor = accuracy.floor().inSi();
        boolean ruled = stated && band.nominal() > floor && spread(model) <= NOTICEABLE * band.nominal();
        Basis basis = ruled ? stated(setup) : Basis.ASSUMED;
        double least = situation.volts().isPresent() ? 0.99 : Assumed.MAINS.low();
        double most = situation.volts().isPresent() ? 1.01 : Assumed.MAINS.high();
        double share = accuracy.reading().inSi();
        double low = Math.max(0, band.low() * least * (1 - share) - floor);
        double high = band.high() * most * (1 + share) + floor;
        Optional<Foreseen.Span> firm = stated && stated(setup) == Basis.DEVICE_FILE
                ? firm(Bands.firm(model), band, least * (1 - share), floor)
                : Optional.empty();
        return new Foreseen(
                id,
                Optional.of(Amounts.rounded(Dimension.CURRENT, band.nominal(), 0)),
                Amounts.rounded(Dimension.CURRENT, low, -1),
                Optional.of(Amounts.rounded(Dimension.CURRENT, high, 1)),
                basis,
                firm,
                why(band, basis));
    }

    /** How far assumed values alone move a reading. */
    private static double spread(Model model) {
        Bands.Band assumed = Bands.of(model, each -> each.basis() == Basis.ASSUMED);
        return assumed.high() - assumed.low();
    }

    /** A lower bound only: what is assumed to be small may in truth be large. */
    private static Optional<Foreseen.Span> firm(Bands.Band firm, Bands.Band band, double share, double floor) {
        double low = firm.low() * share - floor;
        // Only where the file's values make most of the reading.
        return low > RULING * band.nominal()
                ? Optional.of(new Foreseen.Span(Amounts.rounded(Dimension.CURRENT, low, -1), Optional.empty()))
                : Optional.empty();
    }

    private static String why(Bands.Band band, Basis basis) {
        if (band.high() == 0) {
            return "nothing that is modelled drives a current here";
        }
        return basis == Basis.ASSUMED ? "by assumed values" : "by the device file";
    }

    private Foreseen insulation(String id, Bands.Band band) {
        return new Foreseen(
                id,
                Optional.empty(),
                Amounts.rounded(Dimension.RESISTANCE, band.low(), -1),
                Optional.empty(),
                Basis.ASSUMED,
                Optional.empty(),
                "good insulation reads above the tester's range");
    }

    private static Basis stated(Setup setup) {
        boolean device = setup.template().parameters().stream().anyMatch(each -> each.basis() == Basis.DEVICE_FILE);
        return device ? Basis.DEVICE_FILE : Basis.KIT;
    }
}
