package leadwright.planner.mistake;

import java.util.ArrayList;
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
 * <p>Needs: a plan and its foreseen readings. Gives: a finding for each slip of {@link Slips}. Method: nominal values; a slip is
 * caught by the limit only where what it shows is beyond the limit by more than the span of assumed values could undo, and by the band
 * only where the band rests on the device file. Cost: slips times readings, each a change of a few conductances.
 */
public final class Silence {
    /** The widest factor by which assumed values may lower a reading that the limit should catch; see {@code Assumed}. */
    private static final double DOUBT = 30;

    private final Plan plan;
    private final Map<String, Foreseen> foreseen;

    private Silence(Plan plan, Map<String, Foreseen> foreseen) {
        this.plan = plan;
        this.foreseen = foreseen;
    }

    /** What is known of a slip so far. */
    private static final class Sofar {
        private Exposure exposure = Exposure.HARMLESS;
        private double most = -1;
        private Optional<String> by = Optional.empty();
        private Optional<Quantity> planned = Optional.empty();
        private Optional<Quantity> shown = Optional.empty();
    }

    /** In the order of {@link Slips}. */
    public static List<Finding> of(Plan plan, Map<String, Foreseen> foreseen, Situation situation) {
        Silence silence = new Silence(plan, foreseen);
        List<Slip> slips = Slips.of(plan);
        List<Sofar> sofar = slips.stream().map(each -> new Sofar()).toList();
        Reckoning reckoning = new Reckoning(plan, situation);
        for (Reading reading : plan.readings()) {
            Reckoning.Row row = reckoning.row(reading, slips);
            row.shown().forEach((slip, shown) -> silence.look(sofar.get(slip), row, shown));
        }
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < slips.size(); i++) {
            Sofar end = sofar.get(i);
            findings.add(
                    new Finding(slips.get(i), silence.exposure(slips.get(i), end), end.by, end.planned, end.shown));
        }
        return findings;
    }

    /** The limit comes before the band, and the reading that is moved most speaks for the others. */
    private void look(Sofar sofar, Reckoning.Row row, double shown) {
        double planned = row.planned().orElse(shown);
        Exposure here = beyondLimit(row, planned, shown)
                ? Exposure.LIMIT
                : outOfBand(row, shown)
                        ? Exposure.BAND
                        : falselyGood(row, planned, shown) ? Exposure.SILENT : Exposure.HARMLESS;
        double moved = Math.abs(shown - planned) / accuracy(row, planned);
        boolean stronger = RANK.indexOf(here) < RANK.indexOf(sofar.exposure);
        if (stronger || sofar.most < 0 || moved > sofar.most && RANK.indexOf(here) == RANK.indexOf(sofar.exposure)) {
            Dimension dimension = Amounts.dimension(row.reading().obligation());
            sofar.exposure = stronger ? here : sofar.exposure;
            sofar.most = moved;
            sofar.by = Optional.of(row.reading().id());
            sofar.planned = row.planned().map(value -> Amounts.rounded(dimension, value));
            sofar.shown = Optional.of(Amounts.rounded(dimension, shown));
        }
    }

    private static final List<Exposure> RANK =
            List.of(Exposure.LIMIT, Exposure.BAND, Exposure.SILENT, Exposure.HARMLESS);

    private Exposure exposure(Slip slip, Sofar sofar) {
        if (sofar.exposure == Exposure.LIMIT || sofar.exposure == Exposure.BAND) {
            return sofar.exposure;
        }
        if (byTheWay(slip)) {
            return Exposure.CHECK;
        }
        return slip.kind().leavesOut() ? Exposure.SILENT : sofar.exposure;
    }

    /** Beyond its limit although it was not, so far that no assumed value undoes it. */
    private static boolean beyondLimit(Reckoning.Row row, double planned, double shown) {
        Optional<Limit> limit = row.reading().obligation().limit();
        if (limit.isEmpty()) {
            return false;
        }
        double bound = limit.get().value().inSi();
        return switch (limit.get().bound()) {
            case AT_MOST -> (planned <= bound || shown == Reckoning.OPEN) && shown > bound * DOUBT;
            case AT_LEAST -> planned >= bound && shown * DOUBT < bound;
        };
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
            case FUSE_BLOWN -> reads(QuantityKind.TESTER_CHECK);
            case NULL_WITH_CORD -> nullsAtTheEnd();
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
