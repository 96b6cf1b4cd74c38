package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Amounts;
import leadwright.planner.foresee.Basis;
import leadwright.planner.foresee.Foreseen;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/**
 * What becomes of every slip.
 *
 * <p>Needs: a plan and its foreseen readings. Gives: a finding for each slip of {@link Slips}. Method: nominal values tell what may
 * be caught by a limit; it is only where the least reading of the changed circuit, each value anywhere in its span, the mains at
 * its lowest and the tester reading as low as its accuracy lets it, is still beyond the limit. It is caught by the band only
 * where the band rests on the device file. Cost: slips times readings, each a change of a few conductances, and for each slip at most
 * {@value #TRIED} bands. Proof: of 'limit' as good as that of {@link leadwright.planner.foresee.Bands}; a slip that a fourth
 * reading alone would show is called silent, which errs on the safe side.
 */
public final class Silence {
    /** Readings whose limit is tried against a slip: those that it carries farthest beyond. */
    private static final int TRIED = 3;

    private final Plan plan;
    private final Map<String, Foreseen> foreseen;
    private final Reckoning reckoning;

    private Silence(Plan plan, Map<String, Foreseen> foreseen, Situation situation) {
        this.plan = plan;
        this.foreseen = foreseen;
        this.reckoning = new Reckoning(plan, situation);
    }

    /** A reading that fails its limit by nominal values, so many times beyond it. */
    private record Failing(Reckoning.Row row, double shown, double beyond) {}

    /** What is known of a slip so far. */
    private static final class Sofar {
        private Exposure exposure = Exposure.HARMLESS;
        private double most = -1;
        private Optional<String> by = Optional.empty();
        private Optional<Quantity> planned = Optional.empty();
        private Optional<Quantity> shown = Optional.empty();
        private final List<Failing> failing = new ArrayList<>();
    }

    /** In the order of {@link Slips}. */
    public static List<Finding> of(Plan plan, Map<String, Foreseen> foreseen, Situation situation) {
        Silence silence = new Silence(plan, foreseen, situation);
        List<Slip> slips = Slips.of(plan);
        List<Sofar> sofar = slips.stream().map(each -> new Sofar()).toList();
        for (Reading reading : plan.readings()) {
            Reckoning.Row row = silence.reckoning.row(reading, slips);
            row.shown().forEach((slip, shown) -> silence.look(sofar.get(slip), row, shown));
        }
        for (int i = 0; i < slips.size(); i++) {
            silence.limits(slips.get(i), sofar.get(i));
        }
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < slips.size(); i++) {
            Sofar end = sofar.get(i);
            findings.add(
                    new Finding(slips.get(i), silence.exposure(slips.get(i), end), end.by, end.planned, end.shown));
        }
        return findings;
    }

    /** The reading that is moved most speaks for the others. */
    private void look(Sofar sofar, Reckoning.Row row, double shown) {
        double planned = row.planned().orElse(shown);
        beyondLimit(row, planned, shown).ifPresent(sofar.failing::add);
        Exposure here = outOfBand(row, shown)
                ? Exposure.BAND
                : falselyGood(row, planned, shown) ? Exposure.SILENT : Exposure.HARMLESS;
        double moved = Math.abs(shown - planned) / accuracy(row, planned);
        boolean stronger = RANK.indexOf(here) < RANK.indexOf(sofar.exposure);
        if (stronger || sofar.most < 0 || moved > sofar.most && RANK.indexOf(here) == RANK.indexOf(sofar.exposure)) {
            sofar.exposure = stronger ? here : sofar.exposure;
            sofar.most = moved;
            tell(sofar, row, shown);
        }
    }

    private static void tell(Sofar sofar, Reckoning.Row row, double shown) {
        Dimension dimension = Amounts.dimension(row.reading().obligation());
        sofar.by = Optional.of(row.reading().id());
        sofar.planned = row.planned().map(value -> Amounts.rounded(dimension, value));
        sofar.shown = Optional.of(Amounts.rounded(dimension, shown));
    }

    /** Whether a limit shows a slip whatever the values are; it comes before the band. */
    private void limits(Slip slip, Sofar sofar) {
        sofar.failing.stream()
                .sorted(Comparator.comparingDouble(Failing::beyond).reversed())
                .limit(TRIED)
                .filter(each -> fails(slip, each))
                .findFirst()
                .ifPresent(each -> {
                    sofar.exposure = Exposure.LIMIT;
                    tell(sofar, each.row(), each.shown());
                });
    }

    private boolean fails(Slip slip, Failing each) {
        Limit limit = each.row().reading().obligation().limit().orElseThrow();
        double bound = limit.value().inSi();
        if (each.shown() == Reckoning.OPEN) {
            return true;
        }
        return reckoning
                .band(each.row().reading(), slip)
                .filter(band -> switch (limit.bound()) {
                    case AT_MOST -> band.low() - accuracy(each.row(), band.low()) > bound;
                    case AT_LEAST -> band.high() + accuracy(each.row(), band.high()) < bound;
                })
                .isPresent();
    }

    private static final List<Exposure> RANK = List.of(Exposure.BAND, Exposure.SILENT, Exposure.HARMLESS);

    private Exposure exposure(Slip slip, Sofar sofar) {
        if (sofar.exposure == Exposure.LIMIT || sofar.exposure == Exposure.BAND) {
            return sofar.exposure;
        }
        if (byTheWay(slip)) {
            return Exposure.CHECK;
        }
        return slip.kind().leavesOut() ? Exposure.SILENT : sofar.exposure;
    }

    /** Beyond its limit although it should not be. */
    private static Optional<Failing> beyondLimit(Reckoning.Row row, double planned, double shown) {
        Optional<Limit> limit = row.reading().obligation().limit();
        if (limit.isEmpty()) {
            return Optional.empty();
        }
        double bound = limit.get().value().inSi();
        boolean fails = switch (limit.get().bound()) {
            case AT_MOST -> (planned <= bound || shown == Reckoning.OPEN) && shown > bound;
            case AT_LEAST -> planned >= bound && shown < bound;
        };
        double beyond = limit.get().bound() == Limit.Bound.AT_MOST ? shown / bound : bound / shown;
        return fails ? Optional.of(new Failing(row, shown, beyond)) : Optional.empty();
    }

    /** Outside what the device file and the kit alone foresee. */
    private boolean outOfBand(Reckoning.Row row, double shown) {
        Optional<Foreseen> band = Optional.ofNullable(foreseen.get(row.reading().id()));
        if (band.isEmpty()) {
            return false;
        }
        Quantity value = Amounts.rounded(Amounts.dimension(row.reading().obligation()), shown);
        boolean outside = band.get().basis() != Basis.ASSUMED && !band.get().holds(value);
        return outside || band.get().firm().filter(span -> !span.holds(value)).isPresent();
    }

    /** Lower by more than the tester tells apart, where low passes; the other way round where high does. */
    private boolean falselyGood(Reckoning.Row row, double planned, double shown) {
        boolean highIsGood = row.reading().obligation().quantity() == QuantityKind.INSULATION_RESISTANCE;
        double gain = highIsGood ? shown - planned : planned - shown;
        return gain > accuracy(row, planned);
    }

    private double accuracy(Reckoning.Row row, double value) {
        boolean ohms = Amounts.dimension(row.reading().obligation()) == Dimension.RESISTANCE;
        Accuracy accuracy = Amounts.accuracy(plan.kit(), ohms ? "earth" : "leakage");
        return accuracy.reading().inSi() * Math.abs(value) + accuracy.floor().inSi();
    }

    /** Whether something that the plan has in any case shows it. */
    private boolean byTheWay(Slip slip) {
        return switch (slip.kind()) {
            case SUPPLY_NOT_EARTHED, WALL_EXCHANGED, WRONG_VOLTAGE -> reads(QuantityKind.SUPPLY_VOLTAGE);
            case FUSE_BLOWN, SUPPLY_TRIPPED -> reads(QuantityKind.TESTER_CHECK);
            case NULL_WITH_CORD, NULL_TIPS_APART -> nullsAtTheEnd();
            default -> false;
        };
    }

    private boolean reads(QuantityKind quantity) {
        return plan.readings().stream().anyMatch(each -> each.obligation().quantity() == quantity);
    }

    private boolean nullsAtTheEnd() {
        return plan.steps().stream()
                        .filter(step -> step.does() == Step.Act.NULL)
                        .count()
                > 1;
    }
}
