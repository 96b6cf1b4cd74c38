package leadwright.planner.mistake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.rules.Limit;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Amounts;
import leadwright.planner.foresee.Parameter;
import leadwright.planner.foresee.Setup;
import leadwright.planner.foresee.Situation;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** What a slip makes of a reading, against circuits that are put together and solved anew. */
class ReckoningTest {
    private static final int PAIRS = 400;
    private static final int FINDINGS = 30;
    private static final int DRAWS = 12;

    /** Least mains voltage, as a share of the rated one. */
    private static final double MAINS = 0.9;

    private record Pair(Reckoning.Row row, Slip slip, double shown) {}

    @TestFactory
    Stream<DynamicTest> changed_conductances_give_what_the_rebuilt_circuit_gives() {
        return WatchedPlans.all().stream()
                .map(each -> DynamicTest.dynamicTest(each.name(), () -> {
                    Plan plan = each.plan();
                    double floor =
                            Amounts.accuracy(plan.kit(), "leakage").floor().inSi();
                    Reckoning reckoning = new Reckoning(plan, Situation.ORDINARY);
                    List<Pair> pairs = pairs(plan, reckoning);
                    int stride = Math.max(1, pairs.size() / PAIRS);
                    for (int i = 0; i < pairs.size(); i += stride) {
                        Pair pair = pairs.get(i);
                        Setup setup = reckoning
                                .changed(pair.row().reading(), pair.slip().effect())
                                .orElseThrow();
                        // A direct current that nothing drives is not solved.
                        double rebuilt = setup.hertz() == 0 && pair.shown() == 0 ? 0 : setup.nominal();
                        assertThat(Math.abs(pair.shown() - rebuilt))
                                .as(pair.row().reading().id() + " "
                                        + pair.slip().id() + " " + rebuilt)
                                .isLessThanOrEqualTo(Math.max(1e-6 * rebuilt, 1e-3 * floor));
                    }
                }));
    }

    private static List<Pair> pairs(Plan plan, Reckoning reckoning) {
        List<Slip> slips = Slips.of(plan);
        List<Pair> pairs = new ArrayList<>();
        int stride = Math.max(1, plan.readings().size() / 40);
        for (int i = 0; i < plan.readings().size(); i += stride) {
            Reckoning.Row row = reckoning.row(plan.readings().get(i), slips);
            row.shown().forEach((slip, shown) -> {
                if (slips.get(slip).effect() instanceof Effect.Wires) {
                    pairs.add(new Pair(row, slips.get(slip), shown));
                }
            });
        }
        return pairs;
    }

    /** A limit shows a slip only where no values within the spans let the reading pass: drawn inside them and at their corners. */
    @TestFactory
    Stream<DynamicTest> what_a_limit_shows_it_shows_whatever_the_assumed_values_are() {
        return WatchedPlans.all().stream()
                .map(each -> DynamicTest.dynamicTest(each.name(), () -> {
                    Plan plan = each.plan();
                    Reckoning reckoning = new Reckoning(plan, Situation.ORDINARY);
                    List<Finding> caught = plan.foresight().watch().findings().stream()
                            .filter(finding -> finding.exposure() == Exposure.LIMIT)
                            .filter(finding -> !(finding.slip().effect() instanceof Effect.EarthPath))
                            .toList();
                    int stride = Math.max(1, caught.size() / FINDINGS);
                    for (int i = 0; i < caught.size(); i += stride) {
                        Reading reading = reading(plan, caught.get(i).by().orElseThrow());
                        Setup setup = reckoning
                                .changed(reading, caught.get(i).slip().effect())
                                .orElseThrow();
                        Random random = new Random(i);
                        for (int draw = 0; draw < 2 * DRAWS; draw++) {
                            boolean corner = draw < DRAWS;
                            Map<Parameter, Double> values = new HashMap<>();
                            double read = setup.read(
                                    parameter -> values.computeIfAbsent(parameter, any -> drawn(any, random, corner)));
                            assertThat(fails(plan, reading, read))
                                    .as(caught.get(i).slip().id() + " by " + reading.id() + " reads " + read)
                                    .isTrue();
                        }
                    }
                }));
    }

    private static double drawn(Parameter parameter, Random random, boolean corner) {
        if (corner) {
            return random.nextBoolean() ? parameter.low() : parameter.high();
        }
        double log = Math.log(parameter.low())
                + random.nextDouble() * (Math.log(parameter.high()) - Math.log(parameter.low()));
        return Math.exp(log);
    }

    /** With the mains at its lowest and the tester reading as favourably as its accuracy lets it. */
    private static boolean fails(Plan plan, Reading reading, double read) {
        Limit limit = reading.obligation().limit().orElseThrow();
        boolean ohms = Amounts.dimension(reading.obligation()) == Dimension.RESISTANCE;
        Accuracy accuracy = Amounts.accuracy(plan.kit(), ohms ? "earth" : "leakage");
        double share = accuracy.reading().inSi();
        double floor = accuracy.floor().inSi();
        return switch (limit.bound()) {
            case AT_MOST -> read * MAINS * (1 - share) - floor > limit.value().inSi();
            case AT_LEAST -> read * (1 + share) + floor < limit.value().inSi();
        };
    }

    static Reading reading(Plan plan, String id) {
        Optional<Reading> found =
                plan.readings().stream().filter(each -> each.id().equals(id)).findFirst();
        return found.orElseThrow();
    }
}
