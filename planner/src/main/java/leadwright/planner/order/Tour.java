package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Least seconds of all stays to come, re-plugging between them included.
 *
 * <p>A stay does any set of {@link Tasks} that nothing in another hookup holds back ({@link Choices}). The answer for a set of
 * tasks left, a place and a gate is kept (M. Held and R. M. Karp, "A dynamic programming approach to sequencing problems",
 * 1962, from memory). Where every item is a task, a stay does at once what costs no more now than at any later time: a fault to
 * which the way there and back is no longer from where it is than from anywhere.
 *
 * <p>A bare tour counts re-plugging alone: there splitting never pays whatever the gates.
 */
final class Tour {
    /** A set of tasks has one bit each, beside the place. */
    private static final int MOST_TASKS = 45;

    private final Problem problem;
    private final Gates gates;
    private final Ways ways;
    private final Tasks tasks;
    private final List<Stay> ending;
    private final List<Stay> others;
    private final boolean bare;
    private final int most;
    private final List<Choices> choices = new ArrayList<>();
    private final Answers kept = new Answers();
    private boolean filling = true;
    private boolean full;

    /**
     * @param ending stays that may read mains on a part which other hookups may take too
     * @param others all other stays
     * @param most answers that may be kept
     */
    Tour(Problem problem, Gates gates, Ways ways, Tasks tasks, List<Stay> ending, List<Stay> others, int most) {
        this.problem = problem;
        this.gates = gates;
        this.ways = ways;
        this.tasks = tasks;
        this.ending = ending;
        this.others = others;
        this.bare = tasks.kind() == Tasks.Kind.BARE;
        this.most = most;
    }

    /**
     * Works out the answers from every beginning.
     *
     * @return whether they are few enough to be kept; the tour must not be used otherwise
     */
    boolean fill() {
        if (tasks.size() > MOST_TASKS) {
            return false;
        }
        Excursions excursions = new Excursions(problem.poses());
        for (int h = 0; h < problem.hookups(); h++) {
            choices.add(new Choices(tasks, h, ending.get(h), excursions));
        }
        long all = (1L << tasks.size()) - 1;
        for (int h = 0; h < problem.hookups() && !full; h++) {
            stay(problem.firstSite()[h], h, problem.poses().start(), false, false, -1, all, false);
        }
        // Later questions differ in the hookup from which a tour sets out, no more.
        filling = false;
        return !full;
    }

    /** How many tasks a hookup may do, and so how many stays at most are counted for it. */
    int tasksOf(int hookup) {
        return tasks.of(hookup).length;
    }

    private int way(int site, int hookup, int gate) {
        return bare ? ways.least(site, hookup) : ways.at(site, hookup, gate);
    }

    /** From a finished stay at this site and gate, with these tasks left. */
    private int rest(int site, int gate, long left) {
        if (left == 0 && (bare || gates.end(gate))) {
            return 0;
        }
        long key = (left << 16) | (long) site << 6 | gate;
        int known = kept.get(key);
        if (known != Answers.NONE) {
            return known;
        }
        int least = Stay.FAR;
        for (int h = 0; h < choices.size() && !full; h++) {
            int way = h == site ? Stay.FAR : way(site, h, gate);
            if (way < Stay.FAR) {
                least = Math.min(least, way + stay(h, h, gates.entry(gate), false, false, -1, left, true));
                if (!bare && !gates.dead(gate)) {
                    least = Math.min(least, way + passing(h, gate, left));
                }
            }
        }
        full |= filling && kept.size() >= most;
        kept.put(key, least);
        return least;
    }

    /**
     * Over a hookup in which nothing is left but what others may read too: a fault may be the shorter way to switch off a
     * device that is on.
     */
    private int passing(int hookup, int gate, long left) {
        int least = Stay.FAR;
        for (int to = 0; to < gates.count(); to++) {
            int here = gates.dead(to) ? others.get(hookup).least(to, gates.entry(gate), false, false, 0) : Stay.FAR;
            if (here < least) {
                least = Math.min(least, here + rest(hookup, to, left));
            }
        }
        return least;
    }

    /**
     * From within a stay: some of the tasks that are free are done before it ends.
     *
     * @param ended whether mains was on a part in it
     * @param items blocks of the hookup that are left
     * @param done units that are taken
     */
    int stay(int site, int pose, boolean selected, boolean ended, int[] items, BitSet done) {
        int hookup = problem.hookupOf(site);
        return stay(site, hookup, pose, selected, ended, items[hookup], tasks.left(items, done), false);
    }

    /** @param some whether it must do something */
    private int stay(
            int site, int hookup, int pose, boolean selected, boolean ended, int items, long left, boolean some) {
        Choices own = choices.get(hookup);
        int local = own.local(left);
        int open = own.open(local, left);
        boolean common = tasks.share() != Tasks.Share.ALL || own.anyCommon(local);
        int count = bare ? 1 : gates.count();
        int least = Stay.FAR;
        for (int chosen = open; ; chosen = chosen - 1 & open) {
            if ((chosen != 0 || !some) && own.may(chosen, local, open)) {
                long rest = left & ~own.tasks(chosen);
                Stay stay = (common && own.mayEnd(chosen, local) ? ending : others).get(hookup);
                int subset = own.items(chosen, items);
                for (int gate = 0; gate < count; gate++) {
                    int here = bare ? 0 : stay.least(gate, pose, selected, ended, subset);
                    if (here < least) {
                        least = Math.min(least, here + rest(site, gate, rest));
                    }
                }
            }
            if (chosen == 0) {
                return least;
            }
        }
    }
}
