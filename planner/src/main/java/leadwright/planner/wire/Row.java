package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Phase 5: bundles in the row of jacks of a tester that ties neighbours only.
 *
 * <p>Needs: cells and the sets of cells to be tied. Gives: an order in which every set is a run; where there is none, a
 * row in which some cells stand on several jacks and every set still has a run of its own cells that holds them all.
 * Method: first search over the sets of cells placed so far; then search over what stands at the end of the row, which is
 * all that later jacks depend on. Cost: at most 2^cells · cells; the second has a budget. Proof: both searches are
 * exhaustive. Whether a set is a run depends on which cells are placed before it alone; sets that are pairwise not nested
 * need runs that start at different jacks, so n of them with s cells or more need n + s - 1 jacks.
 */
final class Row {
    private static final int MOST_STATES = 200_000;
    private static final int MOST_TIES = 62;

    private Row() {}

    /** An order of the cells in which every tie is a run, the first in natural order of cells. */
    static Optional<List<Integer>> order(int cells, List<Integer> ties) {
        List<Integer> order = new ArrayList<>();
        return place(cells, ties, 0, order, new HashSet<>()) ? Optional.of(order) : Optional.empty();
    }

    /**
     * Whether there is such an order. Ties that overlap, neither within the other, hang together; there is an order of all
     * exactly where there is one for the ties of each such group (from memory: Fulkerson and Gross 1965), and in it cells that
     * no tie of the group tells apart count as one.
     */
    static boolean isOrderable(int cells, List<Integer> ties) {
        List<Integer> left = new ArrayList<>(ties);
        while (!left.isEmpty()) {
            List<Integer> group = new ArrayList<>(List.of(left.remove(left.size() - 1)));
            for (int at = 0; at < group.size(); at++) {
                int tie = group.get(at);
                for (int other = left.size() - 1; other >= 0; other--) {
                    if (overlap(tie, left.get(other))) {
                        group.add(left.remove(other));
                    }
                }
            }
            if (group.size() > 2 && !isGroupOrderable(cells, group)) {
                return false;
            }
        }
        return true;
    }

    private static boolean overlap(int one, int other) {
        int both = one & other;
        return both != 0 && both != one && both != other;
    }

    private static boolean isGroupOrderable(int cells, List<Integer> group) {
        Set<List<Integer>> kinds = new LinkedHashSet<>();
        for (int cell = 0; cell < cells; cell++) {
            int bit = 1 << cell;
            List<Integer> in = group.stream().filter(tie -> (tie & bit) != 0).toList();
            if (!in.isEmpty()) {
                kinds.add(in);
            }
        }
        int[] masks = new int[group.size()];
        int kind = 0;
        for (List<Integer> in : kinds) {
            for (int tie = 0; tie < masks.length; tie++) {
                masks[tie] |= in.contains(group.get(tie)) ? 1 << kind : 0;
            }
            kind++;
        }
        List<Integer> reduced = Arrays.stream(masks).boxed().toList();
        return place(kinds.size(), reduced, 0, new ArrayList<>(), new HashSet<>());
    }

    private static boolean place(int cells, List<Integer> ties, int placed, List<Integer> order, Set<Integer> dead) {
        if (order.size() == cells) {
            return true;
        }
        if (dead.contains(placed)) {
            return false;
        }
        int next = candidates(cells, ties, placed);
        for (int cell = 0; cell < cells; cell++) {
            if ((next >> cell & 1) == 1) {
                order.add(cell);
                if (place(cells, ties, placed | 1 << cell, order, dead)) {
                    return true;
                }
                order.remove(order.size() - 1);
            }
        }
        dead.add(placed);
        return false;
    }

    /** Cells that may stand next: a tie that has begun must be ended first. */
    static int candidates(int cells, List<Integer> ties, int placed) {
        int next = (1 << cells) - 1 & ~placed;
        for (int tie : ties) {
            int seen = tie & placed;
            if (seen != 0 && seen != tie) {
                next &= tie;
            }
        }
        return next;
    }

    /** Result of the search with several jacks a cell. */
    record Linked(Verdict verdict, List<Integer> row) {}

    /**
     * A row of cells, one a jack, in which every tie has a run that holds all its cells and no other.
     *
     * @param most how many jacks each cell may take
     */
    static Linked linked(int cells, List<Integer> ties, int jacks, int[] most) {
        if (jacks < jacksNeeded(ties)) {
            return new Linked(Verdict.NO, List.of());
        }
        if (ties.size() > MOST_TIES) {
            return new Linked(Verdict.UNKNOWN, List.of());
        }
        LinkSearch search = new LinkSearch(cells, ties, jacks, most);
        boolean found = search.from(List.of(), 0, 0, new int[cells]);
        if (found) {
            return new Linked(Verdict.YES, List.copyOf(search.row));
        }
        return new Linked(search.states > MOST_STATES ? Verdict.UNKNOWN : Verdict.NO, List.of());
    }

    /** Ties of one size are pairwise not nested. */
    private static int jacksNeeded(List<Integer> ties) {
        int needed = 0;
        for (int tie : ties) {
            int size = Integer.bitCount(tie);
            int equals = (int) ties.stream()
                    .filter(other -> Integer.bitCount(other) == size)
                    .count();
            needed = Math.max(needed, equals + size - 1);
        }
        return needed;
    }

    private static final class LinkSearch {
        private final int cells;
        private final List<Integer> ties;
        private final int jacks;
        private final int[] most;
        private final Set<String> dead = new HashSet<>();
        private final List<Integer> row = new ArrayList<>();
        private int states;

        LinkSearch(int cells, List<Integer> ties, int jacks, int[] most) {
            this.cells = cells;
            this.ties = ties;
            this.jacks = jacks;
            this.most = most;
        }

        /**
         * @param recent cells at the end of the row, each once, the last one first
         * @param tied ties that have their run
         */
        boolean from(List<Integer> recent, int seen, long tied, int[] used) {
            if (seen == (1 << cells) - 1 && tied == (1L << ties.size()) - 1) {
                return true;
            }
            if (jacks - row.size() < cells - Integer.bitCount(seen)
                    || ++states > MOST_STATES
                    || !dead.add(row.size() + "|" + recent + "|" + tied + "|" + Arrays.toString(used))) {
                return false;
            }
            for (int cell = 0; cell < cells; cell++) {
                if (used[cell] == most[cell] || !recent.isEmpty() && recent.get(0) == cell) {
                    continue;
                }
                List<Integer> next = new ArrayList<>(recent);
                next.remove((Integer) cell);
                next.add(0, cell);
                row.add(cell);
                used[cell]++;
                if (row.size() <= jacks && from(next, seen | 1 << cell, tied | newlyTied(next), used)) {
                    return true;
                }
                used[cell]--;
                row.remove(row.size() - 1);
            }
            return false;
        }

        private long newlyTied(List<Integer> recent) {
            long now = 0;
            for (int t = 0; t < ties.size(); t++) {
                int tie = ties.get(t);
                int suffix = 0;
                for (int i = 0; i < Integer.bitCount(tie) && i < recent.size(); i++) {
                    suffix |= 1 << recent.get(i);
                }
                if (suffix == tie) {
                    now |= 1L << t;
                }
            }
            return now;
        }
    }
}
