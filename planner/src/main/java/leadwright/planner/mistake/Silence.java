package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
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
    private final Map<String, Reading> readings = new LinkedHashMap<>();
    private final Reckoning reckoning;

    private Silence(Plan plan, Map<String, Foreseen> foreseen, Situation situation) {
        this.plan = plan;
        this.foreseen = foreseen;
        plan.readings().forEach(each -> readings.put(each.id(), each));
        this.reckoning = new Reckoning(plan, situation);
    }

    /** In the order of {@link Slips}. */
    public static List<Finding> of(Plan plan, Map<String, Foreseen> foreseen, Situation situation) {
        Silence silence = new Silence(plan, foreseen, situation);
        List<Finding> findings = new ArrayList<>();
        Slips.of(plan).forEach(slip -> findings.add(silence.finding(slip)));
        return findings;
    }

    private Finding finding(Slip slip) {
        Map<String, Double> shown = reckoning.with(slip);
        for (Map.Entry<String, Double> each : shown.entrySet()) {
            if (beyondLimit(each.getKey(), each.getValue())) {
                return finding(slip, Exposure.LIMIT, each.getKey(), each.getValue());
            }
        }
        for (Map.Entry<String, Double> each : shown.entrySet()) {
            if (outOfBand(each.getKey(), each.getValue())) {
                return finding(slip, Exposure.BAND, each.getKey(), each.getValue());
            }
        }
        String telling = "";
        double most = 0;
        boolean lower = false;
        for (Map.Entry<String, Double> each : shown.entrySet()) {
            double planned = reckoning.planned(each.getKey()).orElse(each.getValue());
            double change = Math.abs(each.getValue() - planned) / (accuracy(each.getKey(), planned));
            lower |= falselyGood(each.getKey(), planned, each.getValue());
            if (telling.isEmpty() || change > most) {
                telling = each.getKey();
                most = change;
            }
        }
        Exposure exposure = byTheWay(slip)
                ? Exposure.CHECK
                : slip.kind().leavesOut() || lower ? Exposure.SILENT : Exposure.HARMLESS;
        return telling.isEmpty()
                ? new Finding(slip, exposure, Optional.empty(), Optional.empty(), Optional.empty())
                : finding(slip, exposure, telling, shown.get(telling));
    }

    private Finding finding(Slip slip, Exposure exposure, String reading, double shown) {
        Dimension dimension = Amounts.dimension(readings.get(reading).obligation());
        return new Finding(
                slip,
                exposure,
                Optional.of(reading),
                reckoning.planned(reading).map(value -> Amounts.rounded(dimension, value)),
                Optional.of(Amounts.rounded(dimension, shown)));
    }

    /** Beyond its limit although it was not, so far that no assumed value undoes it. */
    private boolean beyondLimit(String id, double shown) {
        Optional<Limit> limit = readings.get(id).obligation().limit();
        double planned = reckoning.planned(id).orElse(shown);
        if (limit.isEmpty()) {
            return false;
        }
        double bound = limit.get().value().inSi();
        return switch (limit.get().bound()) {
            case AT_MOST -> planned <= bound && shown > bound * DOUBT;
            case AT_LEAST -> planned >= bound && shown * DOUBT < bound;
        };
    }

    /** Outside what the device file and the kit alone foresee. */
    private boolean outOfBand(String id, double shown) {
        Optional<Foreseen> band = Optional.ofNullable(foreseen.get(id));
        if (band.isEmpty()) {
            return false;
        }
        Quantity value = Amounts.rounded(Amounts.dimension(readings.get(id).obligation()), shown);
        boolean outside = band.get().basis() != Basis.ASSUMED && !band.get().holds(value);
        return outside || band.get().firm().filter(span -> !span.holds(value)).isPresent();
    }

    /** Lower by more than the tester tells apart, where low passes; the other way round where high does. */
    private boolean falselyGood(String id, double planned, double shown) {
        boolean highIsGood = readings.get(id).obligation().quantity() == QuantityKind.INSULATION_RESISTANCE;
        double gain = highIsGood ? shown - planned : planned - shown;
        return gain > accuracy(id, planned);
    }

    private double accuracy(String id, double value) {
        boolean ohms = Amounts.dimension(readings.get(id).obligation()) == Dimension.RESISTANCE;
        Accuracy accuracy = Amounts.accuracy(plan.kit(), ohms ? "earth" : "leakage");
        return accuracy.reading().inSi() * value + accuracy.floor().inSi();
    }

    /** Whether something that the plan has in any case shows it. */
    private boolean byTheWay(Slip slip) {
        return switch (slip.kind()) {
            case SUPPLY_NOT_EARTHED, WALL_EXCHANGED, WRONG_VOLTAGE -> reads(QuantityKind.SUPPLY_VOLTAGE);
            case FUSE_BLOWN -> reads(QuantityKind.TESTER_CHECK);
            case NULL_WITH_CORD -> nullsAtTheEnd();
            case SECOND_WAY_TO_EARTH, CLIP_ON_PAINT, CLIP_ELSEWHERE, TOOL_IN_JAWS -> false;
            default -> false;
        };
    }

    private boolean reads(QuantityKind quantity) {
        return readings.values().stream().anyMatch(each -> each.obligation().quantity() == quantity);
    }

    private boolean nullsAtTheEnd() {
        return plan.steps().stream()
                        .filter(step -> step.does() == Step.Act.NULL)
                        .count()
                > 1;
    }
}
