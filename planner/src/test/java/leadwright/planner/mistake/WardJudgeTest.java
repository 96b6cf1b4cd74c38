package leadwright.planner.mistake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Amounts;
import leadwright.planner.foresee.Basis;
import leadwright.planner.foresee.Foreseen;
import leadwright.planner.foresee.Parameter;
import leadwright.planner.foresee.Setup;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.api.Test;

/**
 * A second classification of the ward monitor's slips under IEC 62353: every circuit put together anew and solved plainly, the least
 * reading sought value by value without any derivative, and the classes as the design's words have them.
 */
class WardJudgeTest {
    private static final Plan PLAN = WatchedPlans.ward("iec-62353-2014");
    private static final Accuracy LEAKAGE = Amounts.accuracy(PLAN.kit(), "leakage");
    private static final Reckoning RECKONING = new Reckoning(PLAN, Situation.ORDINARY);

    /** After these the device is tested all the same, and what is read is right or too high. */
    private static final Set<SlipKind> TESTED_ALL_THE_SAME =
            EnumSet.of(SlipKind.NEIGHBOUR_BRANCH, SlipKind.TOOL_IN_JAWS, SlipKind.LEADS_WARM, SlipKind.SECOND_DEVICE);

    /** Shown by the supply voltages, the known resistor and the nulling at the end, all of which this plan has. */
    private static final Set<SlipKind> SHOWN_IN_ANY_CASE = EnumSet.of(
            SlipKind.SUPPLY_NOT_EARTHED,
            SlipKind.WALL_EXCHANGED,
            SlipKind.WRONG_VOLTAGE,
            SlipKind.SUPPLY_TRIPPED,
            SlipKind.FUSE_BLOWN,
            SlipKind.NULL_WITH_CORD,
            SlipKind.NULL_TIPS_APART);

    @Test
    void every_slip_is_of_the_class_that_plain_solving_gives_it() {
        List<String> differing = new ArrayList<>();
        for (Finding finding : PLAN.foresight().watch().findings()) {
            Exposure judged = judged(finding.slip());
            if (judged != finding.exposure()) {
                differing.add(finding.slip().id() + ": " + finding.exposure() + ", judged " + judged);
            }
        }
        assertThat(PLAN.foresight().watch().findings()).hasSizeGreaterThan(200);
        assertThat(differing).isEmpty();
    }

    private static Exposure judged(Slip slip) {
        boolean band = false;
        boolean lower = false;
        for (Reading reading : PLAN.readings()) {
            if (slip.hookup().isEmpty() || slip.hookup().equals(reading.hookup())) {
                if (slip.effect() instanceof Effect.EarthPath path) {
                    if (path.how() == Effect.Earth.OPEN && slip.things().contains(reading.id())) {
                        // No path at all reads beyond any limit.
                        return Exposure.LIMIT;
                    }
                } else {
                    Optional<Setup> planned = RECKONING.changed(reading, new Effect.None());
                    Optional<Setup> changed = RECKONING.changed(reading, slip.effect());
                    if (planned.isPresent() && changed.isPresent()) {
                        double factor = slip.effect() instanceof Effect.Scaled scaled ? scaled.factor() : 1;
                        double right = planned.get().nominal();
                        double shown = changed.get().nominal() * factor;
                        if (alwaysFails(reading, right, shown, changed.get())) {
                            return Exposure.LIMIT;
                        }
                        band |= leavesBand(reading, shown);
                        lower |= right - shown
                                > LEAKAGE.reading().inSi() * right
                                        + LEAKAGE.floor().inSi();
                    }
                }
            }
        }
        if (band) {
            return Exposure.BAND;
        }
        if (SHOWN_IN_ANY_CASE.contains(slip.kind())) {
            return Exposure.CHECK;
        }
        return lower || !TESTED_ALL_THE_SAME.contains(slip.kind()) ? Exposure.SILENT : Exposure.HARMLESS;
    }

    private static boolean leavesBand(Reading reading, double shown) {
        if (reading.obligation().quantity() == QuantityKind.INSULATION_RESISTANCE) {
            return false;
        }
        Optional<Foreseen> foreseen = PLAN.foresight().of(reading.id());
        Quantity value = Amounts.rounded(Dimension.CURRENT, shown);
        return foreseen.filter(each -> each.basis() != Basis.ASSUMED && !each.holds(value))
                        .isPresent()
                || foreseen.flatMap(Foreseen::firm)
                        .filter(span -> !span.holds(value))
                        .isPresent();
    }

    private static boolean alwaysFails(Reading reading, double right, double shown, Setup changed) {
        Optional<Limit> limit = reading.obligation().limit().filter(each -> each.bound() == Limit.Bound.AT_MOST);
        double most = limit.map(each -> each.value().inSi()).orElse(Double.POSITIVE_INFINITY);
        if (right > most || shown <= most) {
            return false;
        }
        double least = leastByTurns(changed) * 0.9;
        return least * (1 - LEAKAGE.reading().inSi()) - LEAKAGE.floor().inSi() > most;
    }

    /** Each value in turn to that end of its span which lowers the reading, until none does. */
    private static double leastByTurns(Setup setup) {
        Map<Parameter, Double> values = new HashMap<>();
        List<Parameter> parameters = List.copyOf(setup.template().parameters());
        parameters.forEach(each -> values.put(each, each.nominal()));
        double least = setup.read(values::get);
        boolean moved = true;
        while (moved) {
            moved = false;
            for (Parameter each : parameters) {
                for (double end : List.of(each.low(), each.high())) {
                    double before = values.put(each, end);
                    double read = setup.read(values::get);
                    if (read < least * (1 - 1e-9)) {
                        least = read;
                        moved = true;
                    } else {
                        values.put(each, before);
                    }
                }
            }
        }
        return least;
    }
}
