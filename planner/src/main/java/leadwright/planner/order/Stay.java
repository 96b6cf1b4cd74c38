package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
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

    private static final int SELECTED = 1;
    private static final int ENDED = 2;
    private static final int WAYS = 4;

    /**
     * Blocks of one mains state and phase that differ in the mode at most.
     *
     * @param bound units that this hookup alone may take; none where the item stands for what other hookups may take too
     */
    record Item(List<Block> blocks, BitSet bound) {
        boolean shared() {
            return bound.isEmpty();
        }

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
    private final int own;
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
        own = items.size();
        items.addAll(shared(blocks));
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
        for (int i = 0; i < own; i++) {
            boolean left = (subset >> i & 1) == 1;
            boolean ends = items.get(i).phase() == Phase.MAINS_ON_PART;
            // What is ordinary comes first: where it is read in another pose, this one must be come to again.
            if (left && (ends ? fits[i][pose] && (before[i] & subset) == 0 : !fits[i][pose])) {
                return 0;
            }
        }
        return discount;
    }

    /** Mains on a part that other hookups may take too: whether it is taken here is for the {@link Tour} to say. */
    private static List<Item> shared(List<Block> blocks) {
        Map<List<Object>, Item> groups = new LinkedHashMap<>();
        for (Block block : blocks) {
            if (block.phase() == Phase.MAINS_ON_PART && !block.free().isEmpty()) {
                Stand stand = block.stand();
                groups.computeIfAbsent(
                                List.of(stand.state(), stand.on()), key -> new Item(new ArrayList<>(), new BitSet()))
                        .blocks()
                        .add(block);
            }
        }
        return List.copyOf(groups.values());
    }

    /** Whether an item waits for another one of this hookup. */
    boolean awaits(int first, int second) {
        return (before[second] >> first & 1) == 1;
    }

    /**
     * Whether a stay that does one item may as well do another, if nothing holds it back: a fault to which the way there and
     * back from where the first is read costs no more than any, and whose visit then is as cheap as it can be.
     */
    boolean atOnce(int first, int fault, Excursions excursions) {
        Item one = items.get(first);
        Item other = items.get(fault);
        boolean alike = one.phase() == Phase.ORDINARY
                && other.phase() == Phase.ORDINARY
                && one.state().fault() == Fault.NONE
                && other.state().fault() != Fault.NONE
                && one.state().polarity() == other.state().polarity();
        int select = problem.scene().times().select();
        if (!alike
                || one.blocks().stream().anyMatch(block -> block.demands().isEmpty())
                || leastVisit(other, false) - leastVisit(other, true) < select) {
            return false;
        }
        int added = excursions.added(other::fits);
        return added > 0
                && IntStream.range(0, fits[first].length)
                        .filter(p -> fits[first][p])
                        .allMatch(p -> excursions.thereAndBack(other::fits, p, added) != Prompt.NONE);
    }

    private boolean precedes(Item first, Item second) {
        if (first.phase() == Phase.ORDINARY && second.phase() == Phase.MAINS_ON_PART) {
            return true;
        }
        return !first.shared() && problem.waits(second.bound(), first.bound());
    }

    /** Items of this hookup alone, then those that are shared. */
    List<Item> items() {
        return items;
    }

    /** How many items are this hookup's alone. */
    int own() {
        return own;
    }

    /** @param ended whether mains was on a part in this stay: nothing ordinary follows that, and so no fault */
    int least(int gate, int pose, boolean selected, boolean ended, int subset) {
        return table[gate][slot(subset, pose) + (selected ? SELECTED : 0) + (ended ? ENDED : 0)];
    }

    private int slot(int subset, int pose) {
        return (subset * problem.poses().all().size() + pose) * WAYS;
    }

    /** Blocks of this hookup that still have readings of its own. */
    int remaining(BitSet done) {
        int subset = 0;
        for (int i = 0; i < own; i++) {
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
        int[] least = new int[subsets * poses * WAYS];
        Arrays.fill(least, FAR);
        for (int subset = 0; subset < subsets; subset++) {
            if (subset == 0) {
                for (int p = 0; p < poses; p++) {
                    if (gates.of(p) == gate) {
                        Arrays.fill(least, slot(0, p), slot(0, p) + WAYS, 0);
                    }
                }
            }
            for (int i = 0; i < items.size(); i++) {
                if ((subset >> i & 1) == 1 && (before[i] & subset) == 0) {
                    visit(least, subset, i, poses);
                }
            }
            relax(least, subset, poses);
        }
        return least;
    }

    private void visit(int[] least, int subset, int item, int poses) {
        int rest = subset & ~(1 << item);
        boolean selects = items.get(item).blocks().stream()
                .anyMatch(block -> !block.demands().isEmpty());
        boolean ends = items.get(item).phase() == Phase.MAINS_ON_PART;
        for (int p = 0; p < poses; p++) {
            if (fits[item][p]) {
                for (int way = 0; way < WAYS; way++) {
                    int next = way | (selects ? SELECTED : 0) | (ends ? ENDED : 0);
                    int seconds = least[slot(rest, p) + next] + leastVisit(items.get(item), (way & SELECTED) != 0);
                    int slot = slot(subset, p) + way;
                    least[slot] = Math.min(least[slot], seconds);
                }
            }
        }
    }

    /** One visit, of whatever mode is left; {@link #further} has the others. */
    private int leastVisit(Item item, boolean selected) {
        if (discount > 0 && item.shared()) {
            // Its selections are counted in full elsewhere.
            return 0;
        }
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

    private void relax(int[] least, int subset, int poses) {
        boolean[][] enter = new boolean[WAYS][poses];
        int[] saved = new int[poses];
        for (int p = 0; p < poses; p++) {
            boolean own = !problem.poses().get(p).fault();
            for (int i = 0; i < items.size() && !own; i++) {
                own = fits[i][p] && (subset >> i & 1) == 1;
            }
            for (int way = 0; way < WAYS; way++) {
                enter[way][p] = own || freely[p] && (way & ENDED) == 0;
            }
            saved[p] = saved(p, subset);
        }
        boolean better = true;
        while (better) {
            better = false;
            for (int p = 0; p < poses; p++) {
                for (Move move : problem.poses().from(p)) {
                    for (int way = 0; way < WAYS; way++) {
                        if (!enter[way][move.to()]) {
                            continue;
                        }
                        int by = least[slot(subset, move.to()) + way] + move.seconds() - saved[move.to()];
                        int slot = slot(subset, p) + way;
                        if (by < least[slot]) {
                            least[slot] = by;
                            better = true;
                        }
                    }
                }
            }
        }
    }
}
