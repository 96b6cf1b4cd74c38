package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import leadwright.catalog.house.House;
import leadwright.catalog.table.Connectors;
import leadwright.planner.measure.Families;
import leadwright.planner.measure.Instance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The searches for heavy sets beside all subsets, and rows of ties beside all orders. */
class HeavyTest {
    private static final int MOST_DEMANDS = 12;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void everySearchSaysWhatAllSubsetsSay(int seed) {
        for (Instance.Family family : Instance.Family.values()) {
            compare(Families.draw(family, 8 + seed % 3 * 2, seed), seed);
        }
    }

    private static void compare(Instance instance, int seed) {
        Connectors connectors = Scene.connectors(instance.device(), instance.kit(), Connectors.builtIn());
        Scene scene = Scene.of(instance.device(), instance.kit(), House.defaults(), connectors, instance.obligations());
        EarthLead earth = new EarthLead(instance.device(), instance.kit(), connectors, List.of(), Optional.empty());
        Fit fit = new Fit(scene, earth);
        List<Requirement> core = Followers.leaders(scene, scene.requirements()).stream()
                .limit(MOST_DEMANDS)
                .toList();
        Random random = new Random(seed);
        long[] weights = new long[scene.requirements().size()];
        int[] kinds = new int[weights.length];
        core.forEach(each -> {
            weights[each.index()] = random.nextInt(7);
            kinds[each.index()] = each.index();
        });
        long heaviest = heaviest(scene, fit, core, weights);
        // Weights differ within a kind here: no requirement may stand for another.
        Twins none = new Twins(scene, core.subList(0, 0));
        for (long enough = Math.max(1, heaviest - 1); enough <= heaviest + 1; enough++) {
            Heavy heavy = new Heavy(scene, fit, none, core, weights, kinds, Long.MAX_VALUE);
            assertThat(heavy.heavy(enough).isEmpty())
                    .as("%s from %d", instance, enough)
                    .isEqualTo(enough > heaviest);
        }
        long[] equal = new long[weights.length];
        core.forEach(each -> equal[each.index()] = 1);
        Twins twins = new Twins(scene, core);
        long most = heaviest(scene, fit, core, equal);
        for (Optional<Pairs> pairs : List.of(Optional.<Pairs>empty(), Optional.of(new Pairs(scene, fit)))) {
            Packs packs = new Packs(scene, fit, twins, core, each -> 1, pairs, Long.MAX_VALUE);
            assertThat((long) packs.heaviest().members().size())
                    .as("%s", instance)
                    .isEqualTo(most);
        }
    }

    private static long heaviest(Scene scene, Fit fit, List<Requirement> core, long[] weights) {
        long heaviest = 0;
        for (int some = 1; some < 1 << core.size(); some++) {
            List<Requirement> set = new ArrayList<>();
            long weight = 0;
            for (int i = 0; i < core.size(); i++) {
                if ((some >> i & 1) == 1) {
                    set.add(core.get(i));
                    weight += weights[core.get(i).index()];
                }
            }
            if (weight > heaviest && fit.fits(Draft.of(scene, set)) != Verdict.NO) {
                heaviest = weight;
            }
        }
        return heaviest;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void tiesCanStandInARowWhenTheirGroupsCan(long seed) {
        Random random = new Random(seed);
        int possible = 0;
        for (int round = 0; round < 500; round++) {
            int cells = 3 + random.nextInt(5);
            TreeSet<Integer> ties = new TreeSet<>();
            for (int tie = 2 + random.nextInt(4); tie > 0; tie--) {
                int mask = random.nextInt(1 << cells);
                if (Integer.bitCount(mask) > 1) {
                    ties.add(mask);
                }
            }
            List<Integer> list = List.copyOf(ties);
            boolean ordered = Row.order(cells, list).isPresent();
            possible += ordered ? 1 : 0;
            assertThat(Row.isOrderable(cells, list)).as("%s", list).isEqualTo(ordered);
        }
        assertThat(possible).isBetween(50, 450);
    }
}
