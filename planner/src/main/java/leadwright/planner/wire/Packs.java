package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;

/**
 * Phase 7c: what one hookup takes.
 *
 * <p>Needs: fitting test, twins of the requirements on offer, their weights. Gives: the heaviest set that fits one hookup,
 * or every largest set that is heavy enough. Method: take or leave the next requirement that still fits; after leaving one,
 * its twins as seen from here are left too; a branch that cannot become heavy enough is cut. Cost: exponential at worst, with
 * a budget. Proof: what fits stays fitting with less, so what does not fit now never will. The sets that a hookup ties are
 * sums of its bundles, and bundles that are cut further are sums of the pieces; so beside those there are, no more independent
 * ones come than there are free jacks f ({@link Span}). Of sets that lie in a space of f dimensions any f + 1 have some that
 * add up to nothing; where no f + 1 or fewer do, there are f at most.
 */
final class Packs {
    private static final int MOST_HEAVY = 12;
    /** Of more that are sums no combinations are looked at. */
    private static final int MOST_SUMS = 6;

    private final Scene scene;
    private final Fit fit;
    private final Twins twins;
    private final ToLongFunction<Requirement> weight;
    private final List<Requirement> offered;
    private final Canon canon;
    private final Optional<Pairs> pairs;
    private final boolean[] out;
    private final long mostCases;
    private final boolean ends;
    private boolean unknownFits;
    private boolean unknownMet;
    private long cases;
    private long enough;
    private boolean all;
    private int stopAt = Integer.MAX_VALUE;
    private final List<Draft> found = new ArrayList<>();

    /**
     * @param offered requirements, twins in panel order
     * @param pairs where requirements that can never share a hookup are worth telling
     * @param mostCases budget of fitting tests
     */
    Packs(
            Scene scene,
            Fit fit,
            Twins twins,
            List<Requirement> offered,
            ToLongFunction<Requirement> weight,
            Optional<Pairs> pairs,
            long mostCases) {
        this.scene = scene;
        this.fit = fit;
        this.twins = twins;
        this.pairs = pairs;
        this.offered = offered;
        this.canon = new Canon(twins, offered);
        this.weight = weight;
        this.out = new boolean[scene.requirements().size()];
        this.mostCases = mostCases;
        this.ends = scene.runs() && offered.stream().noneMatch(each -> fit.mayLink(each.duty()));
    }

    /** The heaviest set that fits; what may or may not fit counts as fitting, so that the weight is an upper bound. */
    Draft heaviest() {
        search(1, Integer.MAX_VALUE);
        return found.isEmpty() ? Draft.empty(scene) : found.get(found.size() - 1);
    }

    /** Some sets at least so heavy, the first ones met; none where no set that fits is, if the search was complete. */
    List<Draft> heavy(long heavyEnough) {
        search(heavyEnough, MOST_HEAVY);
        return found;
    }

    /** What no set weighs more than, without a search. */
    long atMost() {
        return most(Draft.empty(scene), offered);
    }

    private void search(long heavyEnough, int some) {
        enough = heavyEnough;
        all = false;
        stopAt = some;
        unknownFits = true;
        Draft nothing = Draft.empty(scene);
        List<Requirement> heaviestFirst = new ArrayList<>(offered);
        heaviestFirst.sort(Comparator.comparingLong((Requirement each) -> -weight.applyAsLong(each)));
        // What the bound counts beside the rest is settled first: then the bound is sharp.
        Stars stars = new Stars(nothing, heaviestFirst, weight, ends);
        if (stars.others().size() < heaviestFirst.size()) {
            heaviestFirst.removeAll(stars.others());
            heaviestFirst.addAll(0, stars.others());
        }
        List<Requirement> beside = new Reach(nothing, heaviestFirst).beside();
        heaviestFirst.removeAll(beside);
        heaviestFirst.addAll(0, beside);
        extend(nothing, fitting(nothing, heaviestFirst), 0);
    }

    /** Every set with the pivot to which nothing can be added, heavy enough, twins once. */
    List<Draft> allWith(Requirement pivot, long heavyEnough) {
        enough = heavyEnough;
        all = true;
        unknownFits = false;
        Draft start = Draft.empty(scene).with(pivot);
        List<Requirement> others =
                offered.stream().filter(each -> each != pivot).toList();
        extend(start, fitting(start, others), weight.applyAsLong(pivot));
        return found;
    }

    /** Whether the search ended within its budget. */
    boolean complete() {
        return cases <= mostCases;
    }

    /** Whether some test gave no answer, so that what was not found may still exist. */
    boolean unknownMet() {
        return unknownMet;
    }

    long cases() {
        return cases;
    }

    private List<Requirement> fitting(Draft draft, List<Requirement> candidates) {
        List<Requirement> fitting = new ArrayList<>();
        Map<Long, Boolean> known = new HashMap<>();
        for (Requirement each : candidates) {
            if (!out[each.index()]) {
                long like = canon.like(each, draft);
                boolean fits = like < 0 ? fits(draft, each) : known.computeIfAbsent(like, key -> fits(draft, each));
                if (fits) {
                    fitting.add(each);
                }
            }
        }
        return fitting;
    }

    private boolean fits(Draft draft, Requirement each) {
        if (pairs.isPresent()) {
            for (Requirement member : draft.members()) {
                if (pairs.get().apart(member, each)) {
                    return false;
                }
            }
        }
        cases++;
        Verdict verdict = fit.fits(draft, each);
        unknownMet |= verdict == Verdict.UNKNOWN;
        return verdict == Verdict.YES || verdict == Verdict.UNKNOWN && unknownFits;
    }

    private void extend(Draft draft, List<Requirement> candidates, long weighs) {
        if (candidates.isEmpty()) {
            offer(draft, weighs);
            return;
        }
        List<Requirement> closed = new ArrayList<>();
        List<Requirement> left = new ArrayList<>(candidates);
        // The most that can be added is looked at again when a good part of the candidates is gone.
        int looked = Integer.MAX_VALUE;
        long most = Long.MAX_VALUE;
        while (!left.isEmpty() && cases <= mostCases && !ended()) {
            if (left.size() <= looked * 3L / 4) {
                looked = left.size();
                most = canReach(left, weighs) ? most(draft, left) : 0;
            }
            if (weighs + most < enough || !canReach(left, weighs)) {
                break;
            }
            Requirement each = left.remove(0);
            Draft next = draft.with(each);
            extend(next, fitting(next, left), weighs + weight.applyAsLong(each));
            close(each, closed);
            for (Requirement twin : twins.equivalents(each, draft)) {
                close(twin, closed);
            }
            left.removeIf(other -> out[other.index()]);
        }
        closed.forEach(each -> out[each.index()] = false);
    }

    private boolean ended() {
        return found.size() >= stopAt;
    }

    private boolean canReach(List<Requirement> left, long weighs) {
        long sum = weighs;
        for (Requirement each : left) {
            sum += weight.applyAsLong(each);
        }
        return sum >= enough;
    }

    private void close(Requirement each, List<Requirement> closed) {
        if (!out[each.index()]) {
            out[each.index()] = true;
            closed.add(each);
        }
    }

    private void offer(Draft draft, long weighs) {
        if (weighs < enough) {
            return;
        }
        if (!all) {
            enough = stopAt == Integer.MAX_VALUE ? weighs + 1 : enough;
            found.add(draft);
            return;
        }
        // Something left out still fits: the larger set is found where it was taken.
        boolean largest = offered.stream()
                .filter(each -> !draft.members().contains(each))
                .noneMatch(each -> out[each.index()] && fits(draft, each));
        if (largest) {
            found.add(draft);
        }
    }

    /**
     * Most that the candidates can add with f free jacks. Of those whose sets are independent of the bundles and of one another
     * no more than f come. Any that is a sum of bundles and others needs all of these with it; where they are more than f it
     * takes a jack like the rest. Only the others of few summands are counted beside, each at most once. Of those no two of
     * which can share a hookup one counts.
     */
    private long most(Draft draft, List<Requirement> candidates) {
        Reach reach = new Reach(draft, candidates);
        List<Requirement> counted = new ArrayList<>(reach.heaviestFirst);
        List<Requirement> beside = reach.beside();
        counted.removeAll(beside);
        long most = heaviestOf(counted, reach.free) + heaviestOf(beside, beside.size());
        Stars stars = new Stars(draft, reach.heaviestFirst, weight, ends);
        return Math.min(
                most,
                stars.most(reach.free)
                        + heaviestOf(stars.others(), stars.others().size()));
    }

    /** Candidates apart into independent ones and sums. */
    private final class Reach {
        private final Span span = new Span();
        private final List<Requirement> heaviestFirst = new ArrayList<>();
        private final List<Requirement> others = new ArrayList<>();
        private final int free;

        Reach(Draft draft, List<Requirement> candidates) {
            for (int cell = 0; cell < draft.cells(); cell++) {
                span.add(draft.connectionsOf(cell));
            }
            heaviestFirst.addAll(candidates);
            heaviestFirst.removeIf(each -> weight.applyAsLong(each) == 0);
            heaviestFirst.sort(Comparator.comparingLong((Requirement each) -> -weight.applyAsLong(each)));
            int independent = 0;
            for (Requirement each : heaviestFirst) {
                if (span.add(each, independent)) {
                    independent++;
                } else {
                    others.add(each);
                }
            }
            free = scene.jackCount() - draft.cells();
        }

        List<Requirement> beside() {
            return Packs.beside(others, span, free);
        }
    }

    /** Those that may come as sums: some of them add up to a sum of so few that all fit on the free jacks. */
    private static List<Requirement> beside(List<Requirement> others, Span span, int free) {
        if (others.size() > MOST_SUMS) {
            return others;
        }
        BitSet[] sums = new BitSet[1 << others.size()];
        sums[0] = new BitSet();
        int beside = 0;
        for (int some = 1; some < sums.length; some++) {
            int first = Integer.numberOfTrailingZeros(some);
            boolean single = some == 1 << first;
            sums[some] = single ? summands(others.get(first), span) : (BitSet) sums[some & some - 1].clone();
            if (!single) {
                sums[some].xor(sums[1 << first]);
            }
            if (sums[some].cardinality() + Integer.bitCount(some) <= free + 1) {
                beside |= some;
            }
        }
        List<Requirement> list = new ArrayList<>();
        for (int i = 0; i < others.size(); i++) {
            if ((beside >> i & 1) == 1) {
                list.add(others.get(i));
            }
        }
        return list;
    }

    private static BitSet summands(Requirement each, Span span) {
        for (int role = Requirement.MEASURED; role <= Requirement.EARTHED; role++) {
            BitSet set = each.with(role);
            if (!set.isEmpty()) {
                return span.summands(set);
            }
        }
        return new BitSet();
    }

    /** Weight of so many at most, one of each group. */
    private long heaviestOf(List<Requirement> heaviestFirst, int count) {
        List<Requirement> one = pairs.isEmpty()
                ? heaviestFirst
                : pairs.get().groups(heaviestFirst).stream()
                        .map(group -> group.get(0))
                        .toList();
        long sum = 0;
        for (int i = 0; i < Math.min(count, one.size()); i++) {
            sum += weight.applyAsLong(one.get(i));
        }
        return sum;
    }
}
