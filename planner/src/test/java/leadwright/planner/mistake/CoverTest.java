package leadwright.planner.mistake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solution;
import org.chocosolver.solver.variables.BoolVar;
import org.chocosolver.solver.variables.IntVar;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The chosen proof steps against all subsets, in drawn instances and in every plan of the samples. */
class CoverTest {
    private static final int DRAWN = 400;

    /** Proof steps up to which every subset is tried. */
    private static final int SUBSETS = 20;

    @Test
    void drawn_instances_of_seeds_1_to_400_are_covered_at_least_cost() {
        for (int seed = 1; seed <= DRAWN; seed++) {
            List<ProofStep> steps = draw(new Random(seed));
            List<ProofStep> chosen = Cover.cheapest(steps);
            Best best = subsets(steps);
            assertThat(Cover.shown(chosen)).as("seed " + seed).isEqualTo(Cover.shown(steps));
            assertThat(Cover.seconds(chosen)).as("seed " + seed).isEqualTo(best.seconds());
            assertThat(chosen).as("seed " + seed).hasSize(best.steps());
        }
    }

    /** Fewest seconds and, of those, fewest steps that show all that can be shown. */
    private record Best(int seconds, int steps) {}

    private static List<ProofStep> draw(Random random) {
        int slips = 1 + random.nextInt(9);
        List<ProofStep> steps = new ArrayList<>();
        for (int i = 0; i < 1 + random.nextInt(11); i++) {
            Set<String> exposes = new HashSet<>();
            for (int s = 0; s < slips; s++) {
                if (random.nextInt(3) == 0) {
                    exposes.add("slip-" + s);
                }
            }
            if (!exposes.isEmpty()) {
                steps.add(new ProofStep(
                        ProofKind.values()[random.nextInt(ProofKind.values().length)],
                        Optional.of("H" + i),
                        List.of(i),
                        random.nextInt(6) * 5,
                        exposes,
                        ""));
            }
        }
        return steps;
    }

    private static Best subsets(List<ProofStep> steps) {
        Set<String> all = Cover.shown(steps);
        Best best = new Best(Integer.MAX_VALUE, 0);
        for (int set = 0; set < 1 << steps.size(); set++) {
            Set<String> shown = new HashSet<>();
            int seconds = 0;
            for (int i = 0; i < steps.size(); i++) {
                if ((set >> i & 1) == 1) {
                    shown.addAll(steps.get(i).exposes());
                    seconds += steps.get(i).seconds();
                }
            }
            int count = Integer.bitCount(set);
            boolean better = seconds < best.seconds() || seconds == best.seconds() && count < best.steps();
            if (better && shown.equals(all)) {
                best = new Best(seconds, count);
            }
        }
        return best;
    }

    @TestFactory
    Stream<DynamicTest> no_other_set_of_steps_shows_as_much_for_less() {
        return WatchedPlans.all().stream()
                .map(each -> DynamicTest.dynamicTest(each.name(), () -> {
                    Watch watch = each.plan().foresight().watch();
                    List<ProofStep> offered = Proofs.of(each.plan(), watch.findings());
                    assertThat(Cover.shown(watch.proofs())).isEqualTo(Cover.shown(offered));
                    int least = offered.size() <= SUBSETS ? leastOfAllSubsets(offered) : leastOfAModel(offered);
                    assertThat(watch.seconds()).isEqualTo(least);
                }));
    }

    /** For each slip the steps that show it, as a set of bits. */
    private static Set<Long> showers(List<ProofStep> steps) {
        Map<String, Long> showers = new HashMap<>();
        for (int i = 0; i < steps.size(); i++) {
            for (String slip : steps.get(i).exposes()) {
                showers.merge(slip, 1L << i, (one, other) -> one | other);
            }
        }
        return Set.copyOf(showers.values());
    }

    private static int leastOfAllSubsets(List<ProofStep> steps) {
        Set<Long> showers = showers(steps);
        int least = Integer.MAX_VALUE;
        for (long set = 0; set < 1L << steps.size(); set++) {
            int seconds = 0;
            for (int i = 0; i < steps.size(); i++) {
                seconds += (set >> i & 1) == 1 ? steps.get(i).seconds() : 0;
            }
            long chosen = set;
            if (seconds < least && showers.stream().allMatch(each -> (each & chosen) != 0)) {
                least = seconds;
            }
        }
        return least;
    }

    /** The same by a general solver, for plans that offer more steps than all subsets of can be gone through. */
    private static int leastOfAModel(List<ProofStep> steps) {
        Model model = new Model();
        BoolVar[] taken = model.boolVarArray(steps.size());
        for (long shower : showers(steps)) {
            List<BoolVar> any = new ArrayList<>();
            for (int i = 0; i < taken.length; i++) {
                if ((shower >> i & 1) == 1) {
                    any.add(taken[i]);
                }
            }
            model.sum(any.toArray(new BoolVar[0]), ">=", 1).post();
        }
        int[] seconds = steps.stream().mapToInt(ProofStep::seconds).toArray();
        IntVar cost = model.intVar(0, IntStream.of(seconds).sum());
        model.scalar(taken, seconds, "=", cost).post();
        Solution best = model.getSolver().findOptimalSolution(cost, false);
        return best.getIntVal(cost);
    }
}
