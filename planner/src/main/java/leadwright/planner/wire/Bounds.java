package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;

/**
 * Phase 8: how many hookups are needed at least.
 *
 * <p>Needs: fitting test, twins, requirements none of which follows from another. Gives: bounds with their argument.
 * Method: give the requirements weights; no hookup holds more than the heaviest set that fits one; so there are at least
 * the whole weight divided by that, rounded up. First weight one for those that measure one connection alone, which needs
 * few words; then the weights of phase 8a; then requirements of which no two share a hookup. Cost: a search for a heaviest
 * set per round; each has a budget, and one that ends early gives no bound. Proof: whole numbers throughout.
 */
final class Bounds {
    private static final long MOST_CASES = 500_000;
    /** Fitting tests times connections; tests of a row of jacks take longer. */
    private static final long MOST_WORK = 24_000_000;

    private static final long MOST_CASES_ALONE = 10_000;
    private static final long MOST_CASES_EXACTLY = 30_000;
    private static final int MOST_ROUNDS = 1_000;
    /** A common multiple of the denominators 1 to 12, so that usual weights come out exact. */
    private static final int SCALE = 27_720;

    private final Scene scene;
    private final Fit fit;
    private final Twins twins;
    private final Pairs pairs;
    private final List<Requirement> core;
    private final Map<java.nio.IntBuffer, Draft> drafts = new HashMap<>();
    private List<int[]> used = List.of();

    Bounds(Scene scene, Fit fit, Twins twins, Pairs pairs, List<Requirement> core) {
        this.scene = scene;
        this.fit = fit;
        this.twins = twins;
        this.pairs = pairs;
        this.core = core;
    }

    /**
     * A lower bound.
     *
     * @param weights by requirement number
     * @param heaviest most weight that one hookup holds
     */
    record Bound(int hookups, String argument, long[] weights, long heaviest) {
        Bound raised(int to, String why) {
            return new Bound(to, why, weights, heaviest);
        }

        /** The same number, with equal weights. */
        Bound plain(List<Requirement> core) {
            long[] equal = new long[weights.length];
            core.forEach(each -> equal[each.index()] = 1);
            return new Bound(hookups, argument, equal, core.size());
        }

        long weight(Requirement each) {
            return weights[each.index()];
        }
    }

    /** What needs no search: one, and the sets that a hookup can tie. */
    Bound quick(int reached) {
        return reached > 1 ? better(better(one(), aJackEach()), independent()) : one();
    }

    /** Connections that some requirement measures alone: each takes a jack of its own in some hookup. */
    private Bound aJackEach() {
        BitSet alone = new BitSet();
        core.stream()
                .map(each -> each.with(Requirement.MEASURED))
                .filter(measured -> measured.cardinality() == 1)
                .forEach(alone::or);
        int jacks = Math.max(1, scene.jackCount());
        int count = alone.cardinality();
        int hookups = Math.max(1, (count + jacks - 1) / jacks);
        return new Bound(hookups, aloneArgument(count, jacks, 0, hookups), unit(core), core.size());
    }

    /** The better of the known bound and that of connections which stand alone. */
    Bound alone(Bound known) {
        return better(known, alone());
    }

    /**
     * The best bound found; stops at one that is known to be reached.
     *
     * @param reached hookups that serve all
     */
    Bound best(Bound known, List<Draft> reached) {
        Bound best = better(known, weighed(known, reached));
        if (best.hookups() < reached.size()) {
            best = better(best, strangers());
        }
        return best;
    }

    /** Sets none of which is a sum of others: a hookup of k bundles ties k of them at most. */
    private Bound independent() {
        Span span = new Span();
        for (Requirement each : core) {
            for (int role = Requirement.MEASURED; role <= Requirement.EARTHED; role++) {
                BitSet set = each.with(role);
                if (!set.isEmpty()) {
                    span.add(set);
                }
            }
        }
        int jacks = Math.max(1, scene.jackCount());
        int hookups = Math.max(1, (span.rank() + jacks - 1) / jacks);
        String argument = span.rank()
                + " of the sets to be tied are independent (none is a sum of others, added without"
                + " carry); a hookup has at most " + jacks + " bundles, and what it ties are sums of its bundles, so "
                + span.rank() + "/" + jacks + " rounded up = " + hookups + ".";
        return new Bound(hookups, argument, unit(core), core.size());
    }

    /** The higher; of equals the words of the first with the weights that come nearer to the next number. */
    private Bound better(Bound one, Bound other) {
        if (other.hookups() != one.hookups()) {
            return other.hookups() > one.hookups() ? other : one;
        }
        boolean sharper = sum(other.weights()) * one.heaviest() > sum(one.weights()) * other.heaviest();
        return sharper ? new Bound(one.hookups(), one.argument(), other.weights(), other.heaviest()) : one;
    }

    private static long sum(long[] weights) {
        return java.util.Arrays.stream(weights).sum();
    }

    private Bound one() {
        return new Bound(1, "There cannot be fewer than one.", unit(core), core.size());
    }

    private long[] unit(List<Requirement> family) {
        long[] weights = new long[scene.requirements().size()];
        family.forEach(each -> weights[each.index()] = 1);
        return weights;
    }

    /** For each connection that some requirement measures alone, the requirement that asks for most beside it. */
    private Bound alone() {
        Map<Integer, Requirement> byConnection = new LinkedHashMap<>();
        for (Requirement each : core) {
            BitSet measured = each.with(Requirement.MEASURED);
            if (measured.cardinality() == 1) {
                byConnection.merge(
                        measured.nextSetBit(0),
                        each,
                        (one, other) -> other.all().cardinality() > one.all().cardinality() ? other : one);
            }
        }
        int count = byConnection.size();
        if (count == 0) {
            return one();
        }
        long[] weights = unit(List.copyOf(byConnection.values()));
        Packs packs = packs(each -> weights[each.index()], Optional.empty(), MOST_CASES_ALONE);
        Draft heaviest = packs.heaviest();
        if (!packs.complete()) {
            return one();
        }
        long most = weight(heaviest, weights);
        int hookups = (int) ((count + most - 1) / most);
        return new Bound(hookups, aloneArgument(count, most, packs.cases(), hookups), weights, most);
    }

    private String aloneArgument(int count, long most, long cases, int hookups) {
        int jacks = scene.jackCount();
        String sum = count + "/" + most + " rounded up = " + hookups + ".";
        if (most == jacks) {
            return count + " connections must each stand alone on one of " + jacks + " jacks, so " + sum;
        }
        if (most == jacks - 1) {
            return count + " connections must each stand alone, and what they are read against takes one of the "
                    + jacks + " jacks at least, so " + sum;
        }
        return count + " connections must each stand alone, and no hookup has room for more than " + most
                + " of them beside" + " what they are read against (" + cases + " cases looked at), so " + sum;
    }

    private Packs packs(ToLongFunction<Requirement> weight, Optional<Pairs> apart, long mostCases) {
        return new Packs(scene, fit, twins, core, weight, apart, mostCases);
    }

    private static long weight(Draft draft, long[] weights) {
        return draft.members().stream().mapToLong(each -> weights[each.index()]).sum();
    }

    /** Requirements that an exchange of twins makes of one another, by number. */
    private int[] kinds() {
        int[] kinds = new int[scene.requirements().size()];
        java.util.Arrays.fill(kinds, -1);
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

    /** @param known a bound that is to be passed; where weights cannot pass it the search ends */
    private Bound weighed(Bound known, List<Draft> reached) {
        int[] kinds = kinds();
        int count = java.util.Arrays.stream(kinds).max().orElse(0) + 1;
        int[] counts = new int[count];
        core.forEach(each -> counts[kinds[each.index()]]++);
        Weighing weighing = new Weighing(counts);
        for (Draft each : reached) {
            add(weighing, each, kinds, count);
        }
        long size = scene.connections().size() * (scene.runs() ? 16L : 1L);
        long casesLeft = Math.min(MOST_CASES, MOST_WORK / Math.max(1, size));
        long[] weights = unit(core);
        for (int round = 0; round < MOST_ROUNDS && casesLeft > 0 && weighing.settled(); round++) {
            weighing.settle();
            long[] byKind = Weighing.whole(weighing.weights(), SCALE);
            long[] next = new long[kinds.length];
            core.forEach(each -> next[each.index()] = byKind[kinds[each.index()]]);
            weights = next;
            // The sets known are some of all: the weights that hold for all weigh no more.
            long hoped = (long) Math.ceil(weighing.value() - 2e-3);
            if (weighing.settled() && hoped <= known.hookups()) {
                break;
            }
            used = weighing.used();
            if (handfuls(weighing, next, kinds, count)) {
                continue;
            }
            // What a set must weigh for the bound not to come out as hoped.
            long enough = (sum(next) + hoped - 2) / (hoped - 1);
            Packs packs = packs(each -> next[each.index()], Optional.of(pairs), casesLeft);
            List<Draft> heavy = packs.heavy(enough);
            casesLeft -= packs.cases();
            if (heavy.isEmpty() && packs.complete()) {
                return bound(next, enough - 1, packs.cases(), kinds);
            }
            boolean more = false;
            for (Draft each : heavy) {
                more |= add(weighing, each, kinds, count);
            }
            if (!more) {
                break;
            }
        }
        return exactly(weights, kinds, known, (int) Math.ceil(weighing.value() - 2e-3));
    }

    /** Adds sets of weight above 1 that are found quickly: one beginning with each requirement; whether there were some. */
    private boolean handfuls(Weighing weighing, long[] weights, int[] kinds, int count) {
        List<Requirement> order = new ArrayList<>(core);
        order.sort(java.util.Comparator.comparingLong((Requirement each) -> -weights[each.index()]));
        boolean[] begun = new boolean[count];
        boolean some = false;
        for (Requirement first : order) {
            if (!begun[kinds[first.index()]] && weights[first.index()] > 0) {
                begun[kinds[first.index()]] = true;
                Draft draft = handful(first, order, weights);
                if (weight(draft, weights) > SCALE + SCALE / 1000) {
                    some |= add(weighing, draft, kinds, count);
                }
            }
        }
        return some;
    }

    /**
     * The best bound of these weights that a short search finds: of use for the search of hookups even where it is no better
     * than the known one.
     */
    private Bound exactly(long[] weights, int[] kinds, Bound known, int hoped) {
        for (int target = hoped; target > Math.max(1, known.hookups()); target -= 1 + (target - known.hookups()) / 8) {
            long enough = (sum(weights) + target - 2) / (target - 1);
            Packs packs = packs(each -> weights[each.index()], Optional.of(pairs), MOST_CASES_EXACTLY);
            if (packs.heavy(enough).isEmpty() && packs.complete()) {
                return bound(weights, enough - 1, packs.cases(), kinds);
            }
        }
        Packs packs = packs(each -> weights[each.index()], Optional.of(pairs), MOST_CASES_EXACTLY);
        Draft heaviest = packs.heaviest();
        long most = packs.complete() ? weight(heaviest, weights) : packs.atMost();
        return bound(weights, most, packs.cases(), kinds);
    }

    private boolean add(Weighing weighing, Draft draft, int[] kinds, int count) {
        int[] pattern = pattern(draft, kinds, count);
        drafts.put(java.nio.IntBuffer.wrap(pattern), draft);
        return weighing.add(pattern);
    }

    /** Sets of which the last fractional cover took something, most first: good hookups to try. */
    List<Draft> promising() {
        return used.stream()
                .map(pattern -> drafts.get(java.nio.IntBuffer.wrap(pattern)))
                .filter(java.util.Objects::nonNull)
                .toList();
    }

    private static int[] pattern(Draft draft, int[] kinds, int count) {
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

    private Bound bound(long[] scaled, long scaledHeaviest, long cases, int[] kinds) {
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
        long sum = sum(weights);
        int hookups = (int) ((sum + heaviest - 1) / heaviest);
        String argument = "Give the demands these weights: " + listed(weights, kinds) + ". They weigh " + sum
                + " together, and no hookup holds more than " + heaviest + " (" + cases + " cases looked at), so " + sum
                + "/"
                + heaviest + " rounded up = " + hookups + ".";
        return new Bound(hookups, argument, weights, heaviest);
    }

    private static long gcd(long one, long other) {
        return other == 0 ? one : gcd(other, one % other);
    }

    /** Weights by kind, each kind with one of its demands. */
    private String listed(long[] weights, int[] kinds) {
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

    /** Requirements of which no two share a hookup. */
    private Bound strangers() {
        List<Requirement> family = new ArrayList<>();
        for (Requirement each : core) {
            boolean stranger = family.stream().allMatch(other -> pairs.apart(other, each));
            if (stranger) {
                family.add(each);
            }
        }
        return new Bound(
                family.size(),
                family.size() + " demands of which no two can share a hookup need a hookup each.",
                unit(family),
                1);
    }
}
