package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import leadwright.planner.order.Problem.Block;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Least seconds of one stay in a hookup: from a pose, for a set of items that still have readings of this hookup alone, to
 * a gate. An item is all that is read in one mains state and phase, in whatever mode: a stay changes modes for nothing. A
 * table over all subsets of items, poses and gates, filled from small subsets to large; within a subset the moves between
 * poses are relaxed until nothing improves. A fault is entered only where something is read in it.
 */
final class Stay {
    static final int FAR = Integer.MAX_VALUE / 4;

    /** Blocks of one mains state and phase that differ in the mode at most. */
    record Item(List<Block> blocks, BitSet bound) {
        Phase phase() {
            return blocks.get(0).phase();
        }

        MainsState state() {
            return blocks.get(0).stand().state();
        }

        boolean on() {
            return blocks.get(0).stand().on();
        }

        boolean fits(Pose pose) {
            return pose.state() == state() && pose.on() == on();
        }
    }

    private final Problem problem;
    private final List<Item> items = new ArrayList<>();
    private final boolean[][] fits;
    private final boolean[] freely;
    private final int[] before;
    private final int discount;
    private final boolean[] shared;
    private final int subsets;
    private final int[][] table;

    /** @param discount what coming to a pose may save later where mains on a part is read that other hookups may take too */
    Stay(Problem problem, Gates gates, int hookup, int discount) {
        this.problem = problem;
        this.discount = discount;
        int poses = problem.poses().all().size();
        List<Block> blocks = problem.blocks().get(hookup);
        Map<List<Object>, Item> groups = new LinkedHashMap<>();
        for (Block block : blocks) {
            if (!block.bound().isEmpty()) {
                Stand stand = block.stand();
                Item item = groups.computeIfAbsent(
                        List.of(stand.state(), stand.on(), block.phase()),
                        key -> new Item(new ArrayList<>(), new BitSet()));
                item.blocks().add(block);
                item.bound().or(block.bound());
            }
        }
        items.addAll(groups.values());
        fits = new boolean[items.size()][poses];
        freely = new boolean[poses];
        for (int p = 0; p < poses; p++) {
            Pose pose = problem.poses().get(p);
            for (int i = 0; i < items.size(); i++) {
                fits[i][p] = items.get(i).fits(pose);
            }
            freely[p] = blocks.stream()
                    .anyMatch(block -> !block.free().isEmpty() && block.stand().fits(pose));
        }
        before = new int[items.size()];
        for (int i = 0; i < items.size(); i++) {
            for (int j = 0; j < items.size(); j++) {
                if (i != j && precedes(items.get(j), items.get(i))) {
                    before[i] |= 1 << j;
                }
            }
        }
        shared = new boolean[poses];
        for (Block block : blocks) {
            for (int p = 0; p < poses; p++) {
                shared[p] |= block.phase() == Phase.MAINS_ON_PART
                        && !block.free().isEmpty()
                        && block.stand().fits(problem.poses().get(p));
            }
        }
        subsets = 1 << items.size();
        table = new int[gates.count()][];
        gates.all().forEach(gate -> table[gate] = fill(gates, gate));
    }

    /**
     * What a selection carried into mains on a part may save at a pose. Where the hookup's own readings of that kind can be
     * taken there, they are taken with the others, and what that saves is counted with them.
     */
    int saved(int pose, int subset) {
        if (discount == 0 || !shared[pose]) {
            return 0;
        }
        for (int i = 0; i < items.size(); i++) {
            if (items.get(i).phase() == Phase.MAINS_ON_PART
                    && fits[i][pose]
                    && (subset >> i & 1) == 1
                    && (before[i] & subset) == 0) {
                return 0;
            }
        }
        return discount;
    }

    private boolean precedes(Item first, Item second) {
        if (first.phase() == Phase.ORDINARY && second.phase() == Phase.MAINS_ON_PART) {
            return true;
        }
        return problem.waits(second.bound(), first.bound());
    }

    List<Item> items() {
        return items;
    }

    int least(int gate, int pose, boolean selected, int subset) {
        return table[gate][(subset * problem.poses().all().size() + pose) * 2 + (selected ? 1 : 0)];
    }

    /** Blocks of this hookup that still have readings of its own. */
    int remaining(BitSet done) {
        int subset = 0;
        for (int i = 0; i < items.size(); i++) {
            BitSet bound = items.get(i).bound();
            for (int u = bound.nextSetBit(0); u >= 0; u = bound.nextSetBit(u + 1)) {
                if (!done.get(u)) {
                    subset |= 1 << i;
                    break;
                }
            }
        }
        return subset;
    }

    private int[] fill(Gates gates, int gate) {
        int poses = problem.poses().all().size();
        int[] least = new int[subsets * poses * 2];
        Arrays.fill(least, FAR);
        for (int subset = 0; subset < subsets; subset++) {
            int row = subset * poses * 2;
            if (subset == 0) {
                for (int p = 0; p < poses; p++) {
                    if (gates.of(p) == gate) {
                        least[row + 2 * p] = 0;
                        least[row + 2 * p + 1] = 0;
                    }
                }
            }
            for (int i = 0; i < items.size(); i++) {
                if ((subset >> i & 1) == 1 && (before[i] & subset) == 0) {
                    visit(least, subset, i, row, poses);
                }
            }
            relax(least, subset, row, poses);
        }
        return least;
    }

    private void visit(int[] least, int subset, int item, int row, int poses) {
        int rest = (subset & ~(1 << item)) * poses * 2;
        boolean selects = items.get(item).blocks().stream()
                .anyMatch(block -> !block.demands().isEmpty());
        for (int p = 0; p < poses; p++) {
            if (fits[item][p]) {
                for (int s = 0; s < 2; s++) {
                    int after = least[rest + 2 * p + (selects ? 1 : s)];
                    int seconds = after + leastVisit(items.get(item), s == 1);
                    least[row + 2 * p + s] = Math.min(least[row + 2 * p + s], seconds);
                }
            }
        }
    }

    /** One visit, of whatever mode is left; {@link #further} has the others. */
    private int leastVisit(Item item, boolean selected) {
        return item.blocks().stream()
                .mapToInt(block -> problem.leastVisit(block, selected))
                .min()
                .orElse(0);
    }

    /**
     * Least seconds of the visits in further modes, beyond one for each item that is left. No mode changes under a fault:
     * each of them opens and closes its conductor again.
     */
    int further(BitSet done) {
        int seconds = 0;
        for (Item item : items) {
            int most = 0;
            for (Block block : item.blocks()) {
                BitSet left = (BitSet) block.bound().clone();
                left.andNot(done);
                if (!left.isEmpty()) {
                    boolean fault = item.state().fault() != Fault.NONE;
                    int again = fault ? 2 * problem.scene().times().conductor() : 0;
                    int visit = problem.leastVisit(block, true) + again;
                    seconds += visit;
                    most = Math.max(most, visit);
                }
            }
            seconds -= most;
        }
        return seconds;
    }

    private void relax(int[] least, int subset, int row, int poses) {
        boolean[] enter = new boolean[poses];
        for (int p = 0; p < poses; p++) {
            enter[p] = !problem.poses().get(p).fault() || freely[p];
            for (int i = 0; i < items.size() && !enter[p]; i++) {
                enter[p] = fits[i][p] && (subset >> i & 1) == 1;
            }
        }
        int[] saved = new int[poses];
        for (int p = 0; p < poses; p++) {
            saved[p] = saved(p, subset);
        }
        boolean better = true;
        while (better) {
            better = false;
            for (int p = 0; p < poses; p++) {
                for (Move move : problem.poses().from(p)) {
                    for (int s = 0; s < 2 && enter[move.to()]; s++) {
                        int by = least[row + 2 * move.to() + s] + move.seconds() - saved[move.to()];
                        if (by < least[row + 2 * p + s]) {
                            least[row + 2 * p + s] = by;
                            better = true;
                        }
                    }
                }
            }
        }
    }
}
