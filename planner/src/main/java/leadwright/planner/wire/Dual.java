package leadwright.planner.wire;

import java.nio.IntBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Phase 8b: the best weights for the counting bound.
 *
 * <p>Needs: fitting test, twins, requirements none of which follows from another, hookups that serve them. Gives: a bound, and
 * sets that make good hookups. Method: column generation (from memory: Gilmore and Gomory 1961). The weights of phase 8a hold
 * for the sets known; a set that is too heavy for the bound hoped for becomes known; when there is none the bound holds. Where
 * no two requirements are alike sets are searched by phase 7h, else by phase 7c, which tells twins apart better. Cost: a search
 * a round, with a budget; one that ends early gives the bound of the weights so far (from memory: Farley 1990), as far as a
 * last search finds the heaviest set. Proof: whole numbers throughout.
 */
final class Dual {
    private static final long MOST_CASES = 500_000;
    /** Fitting tests times connections; tests of a row of jacks take longer. */
    private static final long MOST_WORK = 24_000_000;

    private static final long MOST_CASES_EXACTLY = 30_000;
    /** Counted cells times machine words; in a last search. */
    private static final long MOST_COUNTED = 36_000_000;

    private static final long MOST_COUNTED_EXACTLY = 8_000_000;
    private static final int MOST_ROUNDS = 1_000;
    /** A common multiple of the denominators 1 to 12, so that usual weights come out exact. */
    private static final int SCALE = 27_720;
    /** What the fractional cover may take too much for its rounding. */
    private static final double ROUNDING = 2e-3;

    private final Scene scene;
    private final Fit fit;
    private final Twins twins;
    private final Pairs pairs;
    private final List<Requirement> core;
    private final int[] kinds;
    private final int count;
    private final boolean alike;
    private final Map<IntBuffer, Draft> drafts = new LinkedHashMap<>();
    private List<int[]> used = List.of();
    private long casesLeft;

    Dual(Scene scene, Fit fit, Twins twins, Pairs pairs, List<Requirement> core) {
        this.scene = scene;
        this.fit = fit;
        this.twins = twins;
        this.pairs = pairs;
        this.core = core;
        this.kinds = kinds();
        this.count = Arrays.stream(kinds).max().orElse(0) + 1;
        this.alike = count < core.size();
    }

    /** Requirements that an exchange of twins makes of one another, by number. */
    private int[] kinds() {
        int[] kinds = new int[scene.requirements().size()];
        Arrays.fill(kinds, -1);
        Draft nothing = Draft.empty(scene);
        int next = 0;
        for (Requirement each : core) {
            if (kinds[each.index()] >= 0) {
                continue;
            }
            List<Requirement> open = new ArrayList<>(List.of(each));
            while (!open.isEmpty()) {
                Requirement member = open.remove(open.size() - 1);
                if (kinds[member.index()] < 0) {
                    kinds[member.index()] = next;
                    open.addAll(twins.equivalents(member, nothing));
                }
            }
            next++;
        }
        return kinds;
    }

    /**
     * The bound of the best weights found.
     *
     * @param known a bound that is to be passed; where weights cannot pass it the search ends
     * @param reached hookups that serve all
     */
    Bound bound(Bound known, List<Draft> reached) {
        int[] counts = new int[count];
        core.forEach(each -> counts[kinds[each.index()]]++);
        Weighing weighing = new Weighing(counts);
        reached.forEach(each -> add(weighing, each));
        casesLeft = alike ? fittings(MOST_CASES) : MOST_COUNTED / words();
        long[] weights = new long[kinds.length];
        core.forEach(each -> weights[each.index()] = 1);
        for (int round = 0; round < MOST_ROUNDS && casesLeft > 0 && weighing.settled(); round++) {
            weighing.settle();
            long[] byKind = Weighing.whole(weighing.weights(), SCALE);
            core.forEach(each -> weights[each.index()] = byKind[kinds[each.index()]]);
            // The sets known are some of all: the weights that hold for all weigh no more.
            long hoped = hoped(weighing, reached);
            if (weighing.settled() && hoped <= known.hookups()) {
                break;
            }
            used = weighing.used();
            if (alike && handfuls(weighing, weights)) {
                continue;
            }
            // What a set must weigh for the bound not to come out as hoped.
            long enough = enough(weights, hoped);
            Found found = heavy(weights, enough, casesLeft);
            casesLeft -= found.cases();
            if (found.none()) {
                return bound(weights, enough - 1, found.cases());
            }
            boolean more = false;
            for (Draft each : found.sets()) {
                more |= add(weighing, each);
            }
            if (!more) {
                break;
            }
        }
        return exactly(weights, known, (int) hoped(weighing, reached));
    }

    private static long hoped(Weighing weighing, List<Draft> reached) {
        return Math.min(reached.size(), (long) Math.ceil(weighing.value() - ROUNDING));
    }

    private static long enough(long[] weights, long hoped) {
        return (Bounds.sum(weights) + hoped - 2) / Math.max(1, hoped - 1);
    }

    private int words() {
        return (scene.connections().size() + 63) / 64;
    }

    private long fittings(long most) {
        long size = scene.connections().size() * (scene.runs() ? 6L : 1L);
        return Math.min(most, MOST_WORK / Math.max(1, size));
    }

    /** @param complete whether there is no other set where none was found */
    private record Found(List<Draft> sets, boolean complete, long cases) {
        boolean none() {
            return sets.isEmpty() && complete;
        }
    }

    /** Sets at least so heavy. */
    private Found heavy(long[] weights, long enough, long mostCases) {
        if (alike) {
            Packs packs = packs(weights, mostCases);
            List<Draft> sets = packs.heavy(enough);
            return new Found(sets, packs.complete(), packs.cases());
        }
        Heavy search = new Heavy(scene, fit, twins, core, weights, kinds, mostCases);
        List<Draft> sets = search.heavy(enough);
        return new Found(sets, search.complete(), search.cases());
    }

    private Packs packs(long[] weights, long mostCases) {
        return new Packs(scene, fit, twins, core, each -> weights[each.index()], Optional.of(pairs), mostCases);
    }

    /** Adds sets of weight above 1 that are found quickly: one beginning with each requirement; whether there were some. */
    private boolean handfuls(Weighing weighing, long[] weights) {
        List<Requirement> order = new ArrayList<>(core);
        order.sort(Comparator.comparingLong((Requirement each) -> -weights[each.index()]));
        boolean[] begun = new boolean[count];
        boolean some = false;
        for (Requirement first : order) {
            if (!begun[kinds[first.index()]] && weights[first.index()] > 0) {
                begun[kinds[first.index()]] = true;
                Draft draft = handful(first, order, weights);
                if (Bounds.weight(draft, weights) > SCALE + SCALE / 1000) {
                    some |= add(weighing, draft);
                }
            }
        }
        return some;
    }

    /**
     * The best bound of these weights that a short search finds: of use for the search of hookups even where it is no better
     * than the known one.
     */
    private Bound exactly(long[] weights, Bound known, int hoped) {
        long budget = alike ? MOST_CASES_EXACTLY : MOST_COUNTED_EXACTLY / words();
        for (int target = hoped; target > Math.max(1, known.hookups()); target -= 1 + target / 8) {
            long enough = enough(weights, target);
            Found found = heavy(weights, enough, budget);
            if (found.none()) {
                return bound(weights, enough - 1, found.cases());
            }
        }
        Packs packs = packs(weights, MOST_CASES_EXACTLY);
        Draft heaviest = packs.heaviest();
        long most = packs.complete() ? Bounds.weight(heaviest, weights) : packs.atMost();
        return bound(weights, most, packs.cases());
    }

    private boolean add(Weighing weighing, Draft draft) {
        int[] pattern = pattern(draft);
        drafts.put(IntBuffer.wrap(pattern), draft);
        return weighing.add(pattern);
    }

    /** Sets of which the last fractional cover took something, most first: good hookups to try. */
    List<Draft> promising() {
        return used.stream()
                .map(pattern -> drafts.get(IntBuffer.wrap(pattern)))
                .filter(java.util.Objects::nonNull)
                .filter(draft -> fit.fits(draft) == Verdict.YES)
                .toList();
    }

    /** All sets met. */
    List<Draft> met() {
        return drafts.values().stream()
                .filter(draft -> fit.fits(draft) == Verdict.YES)
                .toList();
    }

    private int[] pattern(Draft draft) {
        int[] pattern = new int[count];
        draft.members().forEach(each -> pattern[kinds[each.index()]]++);
        return pattern;
    }

    /** A heavy set that fits one hookup, found quickly: the first, then heaviest requirements first. */
    private Draft handful(Requirement first, List<Requirement> order, long[] weights) {
        Draft draft = Draft.empty(scene).with(first);
        for (Requirement each : order) {
            if (weights[each.index()] > 0
                    && each != first
                    && mayJoin(draft, each)
                    && fit.fits(draft, each) == Verdict.YES) {
                draft = draft.with(each);
            }
        }
        return draft;
    }

    private boolean mayJoin(Draft draft, Requirement each) {
        for (Requirement member : draft.members()) {
            if (pairs.apart(member, each)) {
                return false;
            }
        }
        return true;
    }

    private Bound bound(long[] scaled, long scaledHeaviest, long cases) {
        long divisor = 0;
        for (long weight : scaled) {
            divisor = gcd(divisor, weight);
        }
        divisor = Math.max(1, divisor);
        long[] weights = new long[scaled.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = scaled[i] / divisor;
        }
        // Every set weighs a multiple of what divides all weights.
        long heaviest = Math.max(1, scaledHeaviest / divisor);
        long sum = Bounds.sum(weights);
        int hookups = (int) ((sum + heaviest - 1) / heaviest);
        String argument = "Give the demands these weights: " + listed(weights) + ". They weigh " + sum
                + " together, and no hookup holds more than " + heaviest + " (" + cases + " cases looked at), so " + sum
                + "/"
                + heaviest + " rounded up = " + hookups + ".";
        return new Bound(hookups, argument, weights, heaviest);
    }

    private static long gcd(long one, long other) {
        return other == 0 ? one : gcd(other, one % other);
    }

    /** Weights by kind, each kind with one of its demands. */
    private String listed(long[] weights) {
        Map<Integer, List<Requirement>> byKind = new LinkedHashMap<>();
        for (Requirement each : core) {
            if (weights[each.index()] > 0) {
                byKind.computeIfAbsent(kinds[each.index()], key -> new ArrayList<>())
                        .add(each);
            }
        }
        List<String> texts = new ArrayList<>();
        for (List<Requirement> kind : byKind.values()) {
            Requirement first = kind.get(0);
            String many = kind.size() == 1 ? "" : "each of " + kind.size() + " like ";
            texts.add(weights[first.index()] + " for " + many + first.describe());
        }
        return String.join("; ", texts);
    }
}
