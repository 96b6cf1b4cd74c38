package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Phase 6a: the fitting test for plain kits.
 *
 * <p>Needs: a {@link PlainKit}, how many connections of each leaf each cell has. Gives: yes with the fan-outs of each cell, no,
 * or unknown where the budget ended. Method: choose for each cell the combs (fan-outs for one kind of wire), those that save
 * most first; then every cell has a number of ordinary places to find, fan-outs give N - 1 each, and every free jack one; which
 * fan-out goes to which cell is phase 6b ({@link Shelf}). A choice is cut when even the best use of the combs that are left
 * leaves too many places or too many adapters to find. Cost: exponential at worst in the cells with wires that combs take,
 * with a budget. Proof: in a plain kit ordinary places are all alike, so only their number counts.
 */
final class Places {
    private static final int MOST_CHOICES = 30_000;

    private final PlainKit kit;
    private final int[][] counts;
    private final int jacks;
    private final List<int[]> order = new ArrayList<>();
    private final int[][] combs;
    private final int[] left;
    private int choices;
    private boolean unknown;
    private Optional<Answer> found = Optional.empty();

    /**
     * What each cell has.
     *
     * @param combs by cell, pieces of each comb of the kit
     * @param places by cell, ordinary places that it needs
     * @param shares whose the fan-outs and the jacks are
     */
    record Answer(int[][] combs, int[] places, Shelf.Shares shares, PlainKit.Uses uses) {}

    /**
     * @param counts by cell, by leaf
     * @param jacks of the tester
     */
    Places(PlainKit kit, int[][] counts, int jacks) {
        this.kit = kit;
        this.counts = counts;
        this.jacks = jacks;
        this.combs = new int[counts.length][kit.combs().size()];
        this.left = kit.combs().stream().mapToInt(PlainKit.Comb::stock).toArray();
        for (int cell = 0; cell < counts.length; cell++) {
            for (int leaf = 0; leaf < counts[cell].length; leaf++) {
                if (counts[cell][leaf] > 0 && kit.hasComb(leaf)) {
                    order.add(new int[] {cell, leaf});
                }
            }
        }
        order.sort((one, other) -> Integer.compare(counts[other[0]][other[1]], counts[one[0]][one[1]]));
    }

    Verdict verdict(List<int[]> earth) {
        for (int[] cell : counts) {
            for (int leaf = 0; leaf < cell.length; leaf++) {
                if (cell[leaf] > 0 && !kit.reaches(leaf)) {
                    return Verdict.NO;
                }
            }
        }
        if (choose(0, earth)) {
            return Verdict.YES;
        }
        return unknown || choices > MOST_CHOICES ? Verdict.UNKNOWN : Verdict.NO;
    }

    Optional<Answer> answer() {
        return found;
    }

    private boolean choose(int from, List<int[]> earth) {
        if (++choices > MOST_CHOICES || hopeless(from)) {
            return false;
        }
        if (from == order.size()) {
            return settle(earth);
        }
        int cell = order.get(from)[0];
        int leaf = order.get(from)[1];
        return fill(from, cell, leaf, 0, earth);
    }

    /** So many of each comb for this cell, as many as can be of use first. */
    private boolean fill(int from, int cell, int leaf, int comb, List<int[]> earth) {
        if (comb == kit.combs().size()) {
            return choose(from + 1, earth);
        }
        PlainKit.Comb each = kit.combs().get(comb);
        if (each.leaf() != leaf) {
            // What the cell has of it stays: it may have been given for its other wires.
            return fill(from, cell, leaf, comb + 1, earth);
        }
        int open = Math.max(0, counts[cell][leaf] - seated(cell, leaf));
        int most = Math.min(left[comb], (open + each.branches() - 1) / each.branches());
        for (int taken = most; taken >= 0; taken--) {
            combs[cell][comb] = taken;
            left[comb] -= taken;
            boolean done = fill(from, cell, leaf, comb + 1, earth);
            left[comb] += taken;
            if (done) {
                return true;
            }
            combs[cell][comb] = 0;
            if (choices > MOST_CHOICES) {
                return false;
            }
        }
        return false;
    }

    /** Places that the combs of a cell have for a leaf. */
    private int seated(int cell, int leaf) {
        int seated = 0;
        for (int comb = 0; comb < kit.combs().size(); comb++) {
            if (kit.combs().get(comb).leaf() == leaf) {
                seated += combs[cell][comb] * kit.combs().get(comb).branches();
            }
        }
        return seated;
    }

    /** Ordinary places that a cell needs with its combs. */
    private int ordinary(int cell) {
        int places = 0;
        for (int leaf = 0; leaf < counts[cell].length; leaf++) {
            places += Math.max(0, counts[cell][leaf] - seated(cell, leaf));
        }
        for (int comb : combs[cell]) {
            places += comb;
        }
        return places;
    }

    /** Whether even the best use of the combs that are left cannot save it. */
    private boolean hopeless(int from) {
        int places = 0;
        int[] byLeaf = new int[counts.length == 0 ? 0 : counts[0].length];
        for (int cell = 0; cell < counts.length; cell++) {
            places += ordinary(cell);
            for (int leaf = 0; leaf < byLeaf.length; leaf++) {
                byLeaf[leaf] += Math.max(0, counts[cell][leaf] - seated(cell, leaf));
            }
        }
        for (int comb = 0; comb < left.length; comb++) {
            int[] taken = wiresOfBest(from, comb);
            places -= Arrays.stream(taken).map(wires -> Math.max(0, wires - 1)).sum();
            byLeaf[kit.combs().get(comb).leaf()] -= Arrays.stream(taken).sum();
        }
        // A cell with its own jack and nothing else needs one place, which the jack is.
        if (places > jacks + kit.furtherPlaces()) {
            return true;
        }
        for (int leaf = 0; leaf < byLeaf.length; leaf++) {
            if (byLeaf[leaf] > kit.mostOrdinary(leaf)) {
                return true;
            }
        }
        return false;
    }

    /** Wires that each comb left of this kind could take at best in cells not yet seen to. */
    private int[] wiresOfBest(int from, int comb) {
        PlainKit.Comb each = kit.combs().get(comb);
        List<Integer> loads = new ArrayList<>();
        for (int i = from; i < order.size(); i++) {
            if (order.get(i)[1] == each.leaf()) {
                int wires = counts[order.get(i)[0]][each.leaf()];
                for (int whole = wires / each.branches(); whole > 0; whole--) {
                    loads.add(each.branches());
                }
                loads.add(wires % each.branches());
            }
        }
        return loads.stream()
                .sorted(java.util.Comparator.reverseOrder())
                .limit(left[comb])
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private boolean settle(List<int[]> earth) {
        int[] byLeaf = new int[counts.length == 0 ? 0 : counts[0].length];
        int[] places = new int[counts.length];
        for (int cell = 0; cell < counts.length; cell++) {
            places[cell] = ordinary(cell);
            for (int leaf = 0; leaf < byLeaf.length; leaf++) {
                byLeaf[leaf] += Math.max(0, counts[cell][leaf] - seated(cell, leaf));
            }
        }
        PlainKit.Split split = kit.uses(byLeaf, earth);
        if (split.uses().isEmpty()) {
            unknown |= !split.complete();
            return false;
        }
        Shelf shelf = new Shelf(kit.gains(), places, jacks);
        Optional<Shelf.Shares> shares = shelf.shares();
        if (shares.isEmpty()) {
            unknown |= shelf.unknown();
            return false;
        }
        int[][] chosen = Arrays.stream(combs).map(int[]::clone).toArray(int[][]::new);
        found = Optional.of(
                new Answer(chosen, places, shares.get(), split.uses().get()));
        return true;
    }
}
