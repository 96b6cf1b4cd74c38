package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
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
    private static final long MOST_CASES_ALONE = 10_000;

    private final Scene scene;
    private final Fit fit;
    private final Twins twins;
    private final Pairs pairs;
    private final List<Requirement> core;
    private final Dual dual;

    Bounds(Scene scene, Fit fit, Twins twins, Pairs pairs, List<Requirement> core) {
        this.scene = scene;
        this.fit = fit;
        this.twins = twins;
        this.pairs = pairs;
        this.core = core;
        this.dual = new Dual(scene, fit, twins, pairs, core);
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
        Bound best = better(known, dual.bound(known, reached));
        if (best.hookups() < reached.size()) {
            best = better(best, strangers());
        }
        return best;
    }

    /** The search for weights. */
    Dual dual() {
        return dual;
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

    static long sum(long[] weights) {
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

    static long weight(Draft draft, long[] weights) {
        return draft.members().stream().mapToLong(each -> weights[each.index()]).sum();
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
