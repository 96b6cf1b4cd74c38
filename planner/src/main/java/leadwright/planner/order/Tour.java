package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import leadwright.planner.order.Problem.Block;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Least seconds of all stays to come, re-plugging between them included.
 *
 * <p>The blocks of a hookup fall into tasks: those that wait for the same blocks of other hookups and are waited for by the
 * same. A stay does any set of tasks that nothing in another hookup holds back. Splitting a task over two stays never pays
 * where hookups change with everything off: the second stay's way from off to off could be walked in the first. The answer
 * for a set of tasks left, a place and a gate is kept.
 *
 * <p>A bare tour counts re-plugging alone: there splitting never pays whatever the gates.
 */
final class Tour {
    /** Which precedence between hookups counts; less makes fewer tasks and a lower bound. */
    enum Heed {
        ALL,
        /** Insulation first and mains on a part last, but not touch readings before faults. */
        PHASES,
        NOTHING
    }

    /** A mask of tasks has one bit each. */
    private static final int MOST_TASKS = 24;

    private static final int MOST_KEPT = 100_000;

    private final Problem problem;
    private final Gates gates;
    private final List<Stay> stays;
    private final Heed heed;
    private final boolean bare;
    private final int[][] tasksOf;
    private final List<Integer> itemsOf = new ArrayList<>();
    private final List<Integer> hookupOf = new ArrayList<>();
    private final List<Long> held = new ArrayList<>();
    private final int[][][] ways = new int[3][][];
    private final Map<Long, Integer> kept = new HashMap<>();
    private boolean filling = true;
    private boolean full;

    Tour(Problem problem, Gates gates, List<Stay> stays, Heed heed, boolean bare) {
        this.problem = problem;
        this.gates = gates;
        this.stays = stays;
        this.heed = heed;
        this.bare = bare;
        this.tasksOf = new int[stays.size()][];
        for (int kind = 0; kind < 3; kind++) {
            ways[kind] = ways(kind);
        }
        divide();
    }

    int tasks() {
        return itemsOf.size();
    }

    /**
     * Works out the answers from every beginning.
     *
     * @return whether they are few enough to be kept; the tour must not be used otherwise
     */
    boolean fill() {
        if (tasks() > MOST_TASKS) {
            return false;
        }
        long all = (1L << tasks()) - 1;
        for (int h = 0; h < problem.hookups(); h++) {
            stay(problem.firstSite()[h], h, problem.poses().start(), false, -1, all, false);
        }
        // Later questions differ in the hookup from which a tour sets out, no more.
        filling = false;
        return !full;
    }

    int[] tasksOf(int hookup) {
        return tasksOf[hookup];
    }

    /** Blocks of the task, as a subset of its hookup's items. */
    int items(int task) {
        return itemsOf.get(task);
    }

    private boolean free(int task, long left) {
        return (held.get(task) & left) == 0;
    }

    private void divide() {
        Map<Integer, Map<List<Object>, Integer>> groups = new LinkedHashMap<>();
        List<BitSet> heldBy = new ArrayList<>();
        for (int h = 0; h < stays.size(); h++) {
            List<Block> items = stays.get(h).items();
            Map<List<Object>, Integer> own = new LinkedHashMap<>();
            for (int i = 0; i < items.size(); i++) {
                BitSet waits = waitsFor(items.get(i), h);
                boolean apart =
                        problem.scene().battery() && !items.get(i).stand().on();
                List<Object> key = List.of(waits, awaitedBy(items.get(i), h), apart);
                Integer task = own.get(key);
                if (task == null) {
                    task = itemsOf.size();
                    own.put(key, task);
                    itemsOf.add(0);
                    hookupOf.add(h);
                    heldBy.add(waits);
                }
                itemsOf.set(task, itemsOf.get(task) | 1 << i);
            }
            groups.put(h, own);
            tasksOf[h] = own.values().stream().mapToInt(Integer::intValue).toArray();
        }
        for (int task = 0; task < itemsOf.size(); task++) {
            long mask = 0;
            for (int other = 0; other < itemsOf.size() && itemsOf.size() <= MOST_TASKS; other++) {
                List<Block> items = stays.get(hookupOf.get(other)).items();
                for (int i = 0; i < items.size(); i++) {
                    boolean in = (itemsOf.get(other) >> i & 1) == 1;
                    if (in && items.get(i).bound().intersects(heldBy.get(task))) {
                        mask |= 1L << other;
                    }
                }
            }
            held.add(mask);
        }
    }

    private boolean heeded(Phase first, Phase second) {
        return heed == Heed.ALL || heed == Heed.PHASES && first != second;
    }

    /** Units of other hookups alone that must come before some unit of this block. */
    private BitSet waitsFor(Block block, int hookup) {
        BitSet all = new BitSet();
        block.bound().stream().forEach(u -> all.or(problem.units().get(u).before()));
        for (Unit unit : problem.units()) {
            if (!unit.bound() || unit.hookups().get(hookup) || !heeded(unit.phase(), block.phase())) {
                all.clear(unit.index());
            }
        }
        return all;
    }

    /** Units of other hookups alone that must come after some unit of this block. */
    private BitSet awaitedBy(Block block, int hookup) {
        BitSet all = new BitSet();
        for (Unit unit : problem.units()) {
            if (unit.bound()
                    && !unit.hookups().get(hookup)
                    && heeded(block.phase(), unit.phase())
                    && unit.before().intersects(block.bound())) {
                all.set(unit.index());
            }
        }
        return all;
    }

    /** Shortest re-pluggings, through other hookups too: by kind of gate, off, on without mains, live. */
    private int[][] ways(int kind) {
        int n = problem.hookups();
        int[][] way = new int[2 * n][n];
        for (int from = 0; from < 2 * n; from++) {
            for (int to = 0; to < n; to++) {
                way[from][to] = from % n == to ? 0 : one(from, to, kind);
            }
        }
        for (int over = 0; over < n; over++) {
            for (int from = 0; from < 2 * n; from++) {
                for (int to = 0; to < n; to++) {
                    if (from % n != over) {
                        way[from][to] = Math.min(way[from][to], way[from][over] + way[over][to]);
                    }
                }
            }
        }
        return way;
    }

    private int one(int from, int to, int kind) {
        Replugs.Replug replug = problem.replugs().between(from, to);
        boolean allowed = switch (kind) {
            case 0 -> true;
            case 1 -> !replug.therapy();
            default -> replug.underPower();
        };
        return allowed ? replug.seconds() : Stay.FAR;
    }

    private int way(int site, int hookup, int gate) {
        if (bare) {
            return way(site, hookup);
        }
        int kind = !gates.dead(gate) ? 2 : gates.on(gate) ? 1 : 0;
        return ways[kind][site][hookup];
    }

    /** Least re-plugging from a site to a hookup, whatever the gate. */
    int way(int site, int hookup) {
        return Math.min(ways[0][site][hookup], ways[2][site][hookup]);
    }

    /** Least re-plugging that one more stay in a hookup costs. */
    int detour(int hookup) {
        int least = Stay.FAR;
        for (int from = 0; from < 2 * problem.hookups(); from++) {
            if (problem.hookupOf(from) == hookup) {
                continue;
            }
            least = Math.min(least, way(from, hookup));
            for (int to = 0; to < problem.hookups(); to++) {
                if (to != hookup && to != problem.hookupOf(from)) {
                    least = Math.min(least, way(from, hookup) + way(hookup, to) - way(from, to));
                }
            }
        }
        return Math.max(0, least);
    }

    /** From a finished stay at this site and gate, with these tasks left. */
    private int rest(int site, int gate, long left) {
        if (left == 0) {
            return bare || gates.end(gate) ? 0 : Stay.FAR;
        }
        long key = (left << 16) | (long) site << 6 | gate;
        Integer known = kept.get(key);
        if (known != null) {
            return known;
        }
        int least = Stay.FAR;
        for (int h = 0; h < stays.size() && !full; h++) {
            if (h != problem.hookupOf(site)) {
                int way = way(site, h, gate);
                if (way < Stay.FAR) {
                    least = Math.min(
                            least,
                            way
                                    + stay(
                                            h,
                                            h,
                                            gates.entry(gate),
                                            false,
                                            stays.get(h).items(),
                                            left));
                }
            }
        }
        full |= filling && kept.size() >= MOST_KEPT;
        kept.put(key, least);
        return least;
    }

    private int stay(int site, int hookup, int pose, boolean selected, List<Block> items, long left) {
        return stay(site, hookup, pose, selected, (1 << items.size()) - 1, left, true);
    }

    /**
     * From within a stay: some of the tasks that are free are done before it ends.
     *
     * @param items blocks of the hookup that are left
     * @param some whether it must do something
     */
    int stay(int site, int hookup, int pose, boolean selected, int items, long left, boolean some) {
        int[] own = tasksOf[hookup];
        int least = Stay.FAR;
        int open = 0;
        for (int t = 0; t < own.length; t++) {
            if ((left >> own[t] & 1) == 1 && free(own[t], left)) {
                open |= 1 << t;
            }
        }
        for (int chosen = open; ; chosen = chosen - 1 & open) {
            if (chosen != 0 || !some) {
                long rest = left;
                int subset = 0;
                for (int t = 0; t < own.length; t++) {
                    if ((chosen >> t & 1) == 1) {
                        rest &= ~(1L << own[t]);
                        subset |= itemsOf.get(own[t]) & items;
                    }
                }
                for (int gate = 0; gate < (bare ? 1 : gates.count()); gate++) {
                    int here = bare ? 0 : stays.get(hookup).least(gate, pose, selected, subset);
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
