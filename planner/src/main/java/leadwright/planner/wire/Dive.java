package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;

/**
 * Phase 9c: hookups along the fractional cover.
 *
 * <p>Needs: sets that fit one hookup, as phase 8 met them. Gives: few hookups that serve all, perhaps. Method: settle the
 * fractional cover of what is left, let further sets of weight above 1 enter, make the set of which the cover takes most a
 * hookup, and so on; further dives take the second best here and there, by fixed seeds. Cost: a fractional cover a hookup.
 * Proof: none; the answer is a wiring.
 */
final class Dive {
    private static final int MOST_ROUNDS = 12;
    private static final int SCALE = 27_720;
    private static final int MOST_DIVES = 8;
    private static final double ROUNDING = 2e-3;
    /** What a cover takes of a set that it takes whole. */
    private static final double WHOLE = 0.99;

    private static final long MOST_CASES = 20_000;
    /** Counted cells times connections. */
    private static final long MOST_WORK = 200_000_000;

    private final Scene scene;
    private final Fit fit;
    private final Twins twins;
    private final List<Requirement> core;
    private final Set<Set<Requirement>> pool = new LinkedHashSet<>();
    private final Random random = new Random(20_27);
    private long work;

    Dive(Scene scene, Fit fit, Twins twins, List<Requirement> core, List<Draft> sets) {
        this.scene = scene;
        this.fit = fit;
        this.twins = twins;
        this.core = core;
        sets.forEach(this::keep);
    }

    private void keep(Draft draft) {
        pool.add(new LinkedHashSet<>(draft.members()));
    }

    /** The fewest hookups found, those that are known where no dive does better. */
    List<Draft> best(List<Draft> known, int enough) {
        List<Draft> best = known;
        long most = MOST_WORK / Math.max(1, scene.connections().size() * (scene.runs() ? 16L : 1L));
        for (int dive = 0; dive < MOST_DIVES && best.size() > enough && work < most; dive++) {
            best = among(best.size() - 1, dive == 0, most).orElse(best);
        }
        return best;
    }

    /** So many hookups that serve all, where a dive finds them. */
    private Optional<List<Draft>> among(int hookups, boolean first, long most) {
        List<List<Requirement>> chosen = new ArrayList<>();
        List<Requirement> left = new ArrayList<>(core);
        while (!left.isEmpty()) {
            Step step = new Step(left);
            double value = step.settle();
            if (work > most || chosen.size() + (int) Math.ceil(value - ROUNDING) > hookups) {
                return Optional.empty();
            }
            for (List<Requirement> set : step.take(first)) {
                List<Requirement> fresh = set.stream().filter(left::contains).toList();
                if (!fresh.isEmpty()) {
                    chosen.add(fresh);
                    left.removeAll(fresh);
                }
            }
        }
        return chosen.size() <= hookups
                ? Optional.of(chosen.stream().map(set -> Draft.of(scene, set)).toList())
                : Optional.empty();
    }

    /** The fractional cover of what is left. */
    private final class Step {
        private final List<Requirement> left;
        private final Map<Requirement, Integer> number = new LinkedHashMap<>();
        private final Weighing weighing;
        private final List<List<Requirement>> sets = new ArrayList<>();
        private final Map<java.nio.IntBuffer, List<Requirement>> byPattern = new LinkedHashMap<>();

        Step(List<Requirement> left) {
            this.left = left;
            left.forEach(each -> number.put(each, number.size()));
            int[] counts = new int[left.size()];
            java.util.Arrays.fill(counts, 1);
            this.weighing = new Weighing(counts);
            left.forEach(each -> byPattern.put(pattern(List.of(each)), List.of(each)));
            pool.forEach(this::add);
        }

        private java.nio.IntBuffer pattern(List<Requirement> set) {
            int[] pattern = new int[left.size()];
            set.forEach(each -> pattern[number.get(each)] = 1);
            return java.nio.IntBuffer.wrap(pattern);
        }

        private boolean add(Set<Requirement> set) {
            List<Requirement> here = set.stream().filter(number::containsKey).toList();
            if (here.isEmpty()) {
                return false;
            }
            java.nio.IntBuffer pattern = pattern(here);
            byPattern.putIfAbsent(pattern, here);
            return weighing.add(pattern.array());
        }

        /** What the cover takes in all. */
        double settle() {
            weighing.settle();
            for (int round = 0; round < MOST_ROUNDS && enter(); round++) {
                weighing.settle();
            }
            return weighing.value();
        }

        private boolean enter() {
            long[] byNumber = Weighing.whole(weighing.weights(), SCALE);
            long[] weights = new long[scene.requirements().size()];
            int[] kinds = new int[weights.length];
            number.forEach((each, n) -> {
                weights[each.index()] = byNumber[n];
                kinds[each.index()] = n;
            });
            Heavy heavy = new Heavy(scene, fit, twins, left, weights, kinds, MOST_CASES);
            boolean some = false;
            for (Draft each : heavy.heavy(SCALE + SCALE / 200)) {
                if (fit.fits(each) == Verdict.YES) {
                    keep(each);
                    some |= add(new LinkedHashSet<>(each.members()));
                }
            }
            work += heavy.cases();
            return some;
        }

        /** Sets to make hookups of: all that the cover takes whole, else the one that it takes most of. */
        List<List<Requirement>> take(boolean first) {
            List<List<Requirement>> whole = new ArrayList<>();
            List<int[]> used = weighing.used();
            List<Double> shares = weighing.shares();
            for (int i = 0; i < used.size(); i++) {
                if (shares.get(i) > WHOLE) {
                    whole.add(byPattern.get(java.nio.IntBuffer.wrap(used.get(i))));
                }
            }
            if (!whole.isEmpty()) {
                return whole;
            }
            int at = first ? 0 : random.nextInt(Math.min(3, used.size()));
            return List.of(byPattern.get(java.nio.IntBuffer.wrap(used.get(at))));
        }
    }
}
