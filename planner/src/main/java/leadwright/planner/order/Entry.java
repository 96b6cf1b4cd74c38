package leadwright.planner.order;

import leadwright.planner.order.Problem.Block;
import leadwright.planner.plan.Obligation.Phase;

/**
 * A block with its units in arrays, and what a visit of it costs at most and at least.
 *
 * @param fine whether the units that other hookups may take too choose one by one
 * @param passes whether its fault may be come to without a visit: a class that other hookups may take too may have been left
 *     in part, for the way through the fault that is shorter than any other
 * @param plain seconds of a visit into which no selection is carried
 * @param carried seconds of a visit into which one is
 * @param selects whether a visit may select anything
 */
record Entry(
        Block block, int[] bound, int[] free, boolean fine, boolean passes, int plain, int carried, boolean selects) {

    static Entry of(Block block, Problem problem, Grain grain, Excursions excursions) {
        return new Entry(
                block,
                block.bound().stream().toArray(),
                block.free().stream().toArray(),
                grain.fine(block.phase()),
                !block.free().isEmpty() && excursions.shortens(block.stand()),
                problem.leastVisit(block, false),
                problem.leastVisit(block, true),
                !block.demands().isEmpty());
    }

    /**
     * Whether the visit before this one may have selected last what this one asks for first.
     *
     * @param last number of the block that selected last in this stay, counted from 1; 0 where none did
     */
    boolean carries(int last) {
        boolean again = last - 1 == block.index() && block.phase() != Phase.ORDINARY;
        return last > 0 && !again && block.links().get(last - 1);
    }

    /** Whether nothing that only this hookup takes was selected in a visit. */
    boolean quiet(long[] done, long[] next, Problem problem) {
        for (int u : bound) {
            boolean taken = Words.has(next, u) && !Words.has(done, u);
            if (taken && !problem.units().get(u).demands().isEmpty()) {
                return false;
            }
        }
        return true;
    }
}
