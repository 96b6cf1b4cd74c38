package leadwright.planner.wire;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Proposal;

/**
 * Phase 13b: the smallest additions to a kit with which everything asked is possible.
 *
 * <p>Needs: a kit, kinds of item that may be added, tests that more pieces never fail. Gives: additions, fewest pieces first,
 * then fewest pieces of new kinds, then the lower price; alternatives do without one of the kinds of the first. Method: numbers
 * of pieces are visited in this order, beginning with what every addition must hold. Where a test fails, it is made to fail with
 * as many pieces more as it can (a wall); whatever does must reach over the wall in some kind, and these are visited next.
 * Cost: some tens of tests a wall; a search whose budget ends gives an addition without a needless piece and says that fewer
 * may do. Proof: what does not reach over a wall fails, so the first that passes is the smallest.
 */
final class Additions {
    private static final int MOST_LISTED = 4;

    private final Kit kit;
    private final List<Offer> offers;
    private final int most;
    private final List<Predicate<Kit>> asked;
    private final BooleanSupplier ended;
    private final Map<Tested, Boolean> known = new HashMap<>();
    private final List<int[]> walls = new ArrayList<>();
    private boolean settled = true;
    private int atLeast;

    private record Tested(List<Integer> counts, int test) {}

    private record Found(int[] counts, boolean proven, int atLeast) {}

    /**
     * @param offers kinds of which more can help
     * @param most so many more of a kind are tried
     * @param ended whether the budget of tests has ended
     */
    Additions(Kit kit, List<Offer> offers, int most, List<Predicate<Kit>> asked, BooleanSupplier ended) {
        this.kit = kit;
        this.offers = List.copyOf(offers);
        this.most = most;
        this.asked = List.copyOf(asked);
        this.ended = ended;
    }

    /** Whether any number of pieces of these kinds does. */
    boolean possible() {
        return failing(all()) < 0;
    }

    /** The best first; none where no number of pieces does. */
    List<Proposal> smallest() {
        Optional<Found> first = best(all());
        if (first.isEmpty()) {
            return List.of();
        }
        // Within so many pieces of a kind nothing smaller was left out.
        settled = first.get().proven() && Counts.sum(first.get().counts()) <= most;
        atLeast = first.get().atLeast();
        int[] needed = needed(all());
        List<int[]> found = new ArrayList<>(List.of(first.get().counts()));
        for (int kind = 0; kind < needed.length && settled && !ended.getAsBoolean(); kind++) {
            if (first.get().counts()[kind] > needed[kind]) {
                int[] without = all();
                without[kind] = needed[kind];
                best(without).ifPresent(other -> found.add(other.counts()));
            }
        }
        found.sort(this::compare);
        // One of those that differ in numbers alone.
        Map<Set<Integer>, int[]> byKinds = new LinkedHashMap<>();
        found.forEach(each -> byKinds.putIfAbsent(Counts.kinds(each), each));
        return byKinds.values().stream().limit(MOST_LISTED).map(this::proposal).toList();
    }

    /** Whether the first is proven smallest. */
    boolean settled() {
        return settled;
    }

    /** No addition of fewer pieces does. */
    int atLeast() {
        return atLeast;
    }

    private int[] all() {
        int[] all = new int[offers.size()];
        Arrays.fill(all, most);
        return all;
    }

    private Optional<Found> best(int[] cap) {
        if (failing(cap) >= 0) {
            return Optional.empty();
        }
        int[] needed = needed(cap);
        if (failing(needed) < 0) {
            return Optional.of(new Found(needed, true, Counts.sum(needed)));
        }
        int[] upper = upper(needed, cap);
        PriorityQueue<int[]> open = new PriorityQueue<>(this::compare);
        Set<List<Integer>> seen = new HashSet<>();
        open.add(needed);
        while (!open.isEmpty()) {
            int[] next = open.poll();
            if (compare(next, upper) >= 0) {
                break;
            }
            if (ended.getAsBoolean()) {
                // What every addition must hold has failed by itself.
                int fewest = Math.max(Counts.sum(next), Counts.sum(needed) + 1);
                return Optional.of(new Found(upper, Counts.sum(upper) <= fewest, fewest));
            }
            Optional<int[]> wall = wall(next);
            if (wall.isEmpty()) {
                return Optional.of(new Found(next, true, Counts.sum(next)));
            }
            for (int kind = 0; kind < cap.length; kind++) {
                int over = wall.get()[kind] + 1;
                if (over <= cap[kind]) {
                    int[] higher = next.clone();
                    higher[kind] = over;
                    if (seen.add(Counts.list(higher)) && compare(higher, upper) < 0) {
                        open.add(higher);
                    }
                }
            }
        }
        return Optional.of(new Found(upper, true, Counts.sum(upper)));
    }

    /** What fails and is at least this, as much of everything as still fails; empty where this passes. */
    private Optional<int[]> wall(int[] counts) {
        for (int[] wall : walls) {
            if (Routes.atMost(counts, wall)) {
                return Optional.of(wall);
            }
        }
        int test = failing(counts);
        if (test < 0) {
            return Optional.empty();
        }
        int[] wall = counts.clone();
        for (int kind = 0; kind < wall.length; kind++) {
            wall[kind] = mostThatFails(wall, kind, test);
        }
        walls.add(wall);
        return Optional.of(wall);
    }

    private int mostThatFails(int[] counts, int kind, int test) {
        int[] tried = counts.clone();
        tried[kind] = most;
        if (!passes(tried, test)) {
            return most;
        }
        int low = counts[kind];
        int step = 1;
        // Near first: what is missing is mostly a piece or two.
        while (low + step < most) {
            tried[kind] = low + step;
            if (passes(tried, test)) {
                break;
            }
            low += step;
            step *= 2;
        }
        int high = Math.min(most, low + step);
        while (high - low > 1) {
            tried[kind] = (low + high) / 2;
            if (passes(tried, test)) {
                high = tried[kind];
            } else {
                low = tried[kind];
            }
        }
        return low;
    }

    /** Of each kind what is needed however much there is of the others. */
    private int[] needed(int[] cap) {
        int[] needed = new int[cap.length];
        for (int kind = 0; kind < needed.length; kind++) {
            needed[kind] = least(cap, kind);
        }
        return needed;
    }

    /** Something that does and holds no needless piece. */
    private int[] upper(int[] needed, int[] cap) {
        List<int[]> found = new ArrayList<>(List.of(withoutWaste(cap, true)));
        if (ended.getAsBoolean()) {
            return found.get(0);
        }
        found.add(withoutWaste(cap, false));
        for (int kind = 0; kind < cap.length; kind++) {
            int[] one = needed.clone();
            one[kind] = cap[kind];
            if (failing(one) < 0) {
                one[kind] = least(one, kind);
                found.add(one);
            }
        }
        return found.stream().min(this::compare).orElseThrow();
    }

    /** Taken back kind after kind; from the last kind on, new ones first, or from the first. */
    private int[] withoutWaste(int[] cap, boolean fromLast) {
        int[] counts = cap.clone();
        for (int n = 0; n < counts.length; n++) {
            int kind = fromLast ? counts.length - 1 - n : n;
            counts[kind] = least(counts, kind);
        }
        return counts;
    }

    /** The least of one kind while the others stay. */
    private int least(int[] counts, int kind) {
        int[] tried = counts.clone();
        tried[kind] = 0;
        if (failing(tried) < 0) {
            return 0;
        }
        int low = 0;
        int step = 1;
        while (low + step < counts[kind]) {
            tried[kind] = low + step;
            if (failing(tried) < 0) {
                break;
            }
            low += step;
            step *= 2;
        }
        int high = Math.min(counts[kind], low + step);
        while (high - low > 1) {
            tried[kind] = (low + high) / 2;
            if (failing(tried) < 0) {
                high = tried[kind];
            } else {
                low = tried[kind];
            }
        }
        return high;
    }

    /** The number of a test that fails; -1 where all pass. */
    private int failing(int[] counts) {
        for (int test = 0; test < asked.size(); test++) {
            if (!passes(counts, test)) {
                return test;
            }
        }
        return -1;
    }

    private boolean passes(int[] counts, int test) {
        Tested key = new Tested(Counts.list(counts), test);
        Boolean was = known.get(key);
        if (was != null) {
            return was;
        }
        boolean passes = asked.get(test).test(with(offers, counts));
        known.put(key, passes);
        return passes;
    }

    private Kit with(List<Offer> kinds, int[] counts) {
        List<Proposal.Piece> pieces = pieces(kinds, counts);
        return pieces.isEmpty() ? kit : new Proposal(pieces, "").addedTo(kit);
    }

    private static List<Proposal.Piece> pieces(List<Offer> kinds, int[] counts) {
        List<Proposal.Piece> pieces = new ArrayList<>();
        for (int kind = 0; kind < counts.length; kind++) {
            if (counts[kind] > 0) {
                pieces.add(new Proposal.Piece(
                        kinds.get(kind).item(), counts[kind], kinds.get(kind).text(1)));
            }
        }
        return pieces;
    }

    private Proposal proposal(int[] counts) {
        List<Offer> kinds = new ArrayList<>(offers);
        for (int kind = 0; kind < counts.length; kind++) {
            if (counts[kind] > 0 && kinds.get(kind).isNew()) {
                shorten(kinds, kind, counts);
                fewerBranches(kinds, kind, counts);
            }
        }
        List<String> texts = new ArrayList<>();
        for (int kind = 0; kind < counts.length; kind++) {
            if (counts[kind] > 0) {
                texts.add(kinds.get(kind).text(counts[kind]));
            }
        }
        return new Proposal(pieces(kinds, counts), String.join(" and ", texts));
    }

    /** The least length that does. */
    private void shorten(List<Offer> kinds, int kind, int[] counts) {
        Offer offer = kinds.get(kind);
        List<Long> lengths = offer.lengths();
        int low = -1;
        int high = lengths.size() - 1;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            kinds.set(kind, offer.with(lengths.get(middle)));
            if (does(kinds, counts)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        kinds.set(kind, high < 0 ? offer : offer.with(lengths.get(high)));
    }

    private void fewerBranches(List<Offer> kinds, int kind, int[] counts) {
        Offer offer = kinds.get(kind);
        if (offer.item().kind() != ItemKind.FAN_OUT || !offer.like().isEmpty()) {
            return;
        }
        int low = 1;
        int high = offer.item().branches();
        while (high - low > 1) {
            int middle = (low + high) / 2;
            kinds.set(kind, offer.withBranches(middle));
            if (does(kinds, counts)) {
                high = middle;
            } else {
                low = middle;
            }
        }
        kinds.set(kind, offer.withBranches(high));
    }

    private boolean does(List<Offer> kinds, int[] counts) {
        Kit with = with(kinds, counts);
        return asked.stream().allMatch(each -> each.test(with));
    }

    private int compare(int[] one, int[] other) {
        int pieces = Integer.compare(Counts.sum(one), Counts.sum(other));
        if (pieces != 0) {
            return pieces;
        }
        int fresh = Integer.compare(fresh(one), fresh(other));
        if (fresh != 0) {
            return fresh;
        }
        int price = price(one).compareTo(price(other));
        if (price != 0) {
            return price;
        }
        int kinds =
                Integer.compare(Counts.kinds(one).size(), Counts.kinds(other).size());
        // Kinds stand in natural order: more of the first comes first.
        return kinds != 0 ? kinds : Arrays.compare(other, one);
    }

    private int fresh(int[] counts) {
        int sum = 0;
        for (int kind = 0; kind < counts.length; kind++) {
            sum += offers.get(kind).isNew() ? counts[kind] : 0;
        }
        return sum;
    }

    private BigDecimal price(int[] counts) {
        BigDecimal sum = BigDecimal.ZERO;
        for (int kind = 0; kind < counts.length; kind++) {
            if (counts[kind] > 0) {
                sum = sum.add(offers.get(kind).price().multiply(BigDecimal.valueOf(counts[kind])));
            }
        }
        return sum;
    }
}
