package leadwright.planner.order;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Least seconds of all stays to come, re-plugging between them included.
 *
 * <p>The blocks of a hookup fall into tasks: those that wait for the same blocks of other hookups and are waited for by the
 * same. A stay does any set of tasks that nothing in another hookup holds back. Splitting a task over two stays never pays
 * where hookups change with everything off: the second stay's way from off to off could be walked in the first, but for
 * turning the polarity selector; so a hookup that is come to more than once anyway has tasks of one polarity. The answer
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
    private final Ways ways;
    private final List<Stay> stays;
    private final Heed heed;
    private final boolean bare;
    private final int[][] tasksOf;
    private final List<Integer> itemsOf = new ArrayList<>();
    private final List<Long> held = new ArrayList<>();
    private final Answers kept = new Answers();
    private boolean filling = true;
    private boolean full;

    Tour(Problem problem, Gates gates, Ways ways, List<Stay> stays, Heed heed, boolean bare) {
        this.problem = problem;
        this.gates = gates;
        this.ways = ways;
        this.stays = stays;
        this.heed = heed;
        this.bare = bare;
        this.tasksOf = new int[stays.size()][];
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

    /** An item of a hookup. */
    private record Place(int hookup, int item) {}

    private void divide() {
        List<Place> places = new ArrayList<>();
        for (int h = 0; h < stays.size(); h++) {
            for (int i = 0; i < stays.get(h).items().size(); i++) {
                places.add(new Place(h, i));
            }
        }
        List<Waiting> waiting = places.stream()
                .map(here -> new Waiting(
                        here.hookup(),
                        places.stream().filter(other -> waits(here, other)).toList(),
                        places.stream().filter(other -> waits(other, here)).toList(),
                        !bare && problem.scene().battery() && !item(here).on()))
                .toList();
        Map<List<Object>, Integer> groups = new LinkedHashMap<>();
        int[] taskOf = new int[places.size()];
        List<List<Place>> waits = new ArrayList<>();
        for (int p = 0; p < places.size(); p++) {
            Place here = places.get(p);
            Waiting own = waiting.get(p);
            boolean often = waiting.stream()
                            .filter(other -> other.hookup() == here.hookup())
                            .distinct()
                            .count()
                    > 1;
            // Come to twice anyway, it may be read in one polarity each time, and the selector turned elsewhere.
            boolean turns = !bare
                    && (often
                            || ways.detour(here.hookup())
                                    < problem.scene().times().selector());
            Polarity polarity = turns ? item(here).state().polarity() : Polarity.NONE;
            Integer task = groups.putIfAbsent(List.of(own, polarity), itemsOf.size());
            if (task == null) {
                task = itemsOf.size();
                itemsOf.add(0);
                waits.add(own.holding());
            }
            itemsOf.set(task, itemsOf.get(task) | 1 << here.item());
            taskOf[p] = task;
        }
        for (List<Place> holding : waits) {
            long mask = 0;
            for (Place other : holding) {
                mask |= 1L << taskOf[places.indexOf(other)];
            }
            held.add(mask);
        }
        for (int h = 0; h < stays.size(); h++) {
            int hookup = h;
            tasksOf[h] = IntStream.range(0, places.size())
                    .filter(p -> places.get(p).hookup() == hookup)
                    .map(p -> taskOf[p])
                    .distinct()
                    .toArray();
        }
    }

    /** What an item waits for and is waited for by, in other hookups; and whether it is read with the device off. */
    private record Waiting(int hookup, List<Place> holding, List<Place> awaiting, boolean apart) {}

    private Stay.Item item(Place place) {
        return stays.get(place.hookup()).items().get(place.item());
    }

    /** Whether an item cannot be done with as long as an item of another hookup is not. */
    private boolean waits(Place second, Place first) {
        Phase before = item(first).phase();
        Phase after = item(second).phase();
        boolean heeded = heed == Heed.ALL || heed == Heed.PHASES && before != after;
        return heeded
                && first.hookup() != second.hookup()
                && problem.waits(item(second).bound(), item(first).bound());
    }

    private int way(int site, int hookup, int gate) {
        return bare ? ways.least(site, hookup) : ways.at(site, hookup, gate);
    }

    /** From a finished stay at this site and gate, with these tasks left. */
    private int rest(int site, int gate, long left) {
        if (left == 0) {
            return bare || gates.end(gate) ? 0 : Stay.FAR;
        }
        long key = (left << 16) | (long) site << 6 | gate;
        int known = kept.get(key);
        if (known != Answers.NONE) {
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

    private int stay(int site, int hookup, int pose, boolean selected, List<Stay.Item> items, long left) {
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
