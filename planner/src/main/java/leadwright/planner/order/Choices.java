package leadwright.planner.order;

/** What one hookup may do in a stay: sets of its tasks, numbered as {@link Tasks#of} lists them. */
final class Choices {
    private final int[] of;
    private final long[] taskSets;
    private final int[] itemSets;

    /** For each set, tasks of the hookup that must be done before or in the same stay. */
    private final int[] needs;

    /** For each set, tasks that may as well be done in the same stay. */
    private final int[] prompt;

    private final long[] held;
    private final int ordinary;
    private final int last;
    private final int common;
    private final int always;

    Choices(Tasks tasks, int hookup, Stay stay, Excursions excursions) {
        of = tasks.of(hookup);
        int sets = 1 << of.length;
        taskSets = new long[sets];
        itemSets = new int[sets];
        needs = new int[sets];
        prompt = new int[sets];
        held = new long[of.length];
        int shared = 0;
        int sharedItems = 0;
        for (int t = 0; t < of.length; t++) {
            // What holds a task back in its own hookup may be done in the same stay.
            held[t] = tasks.held(of[t]) & ~tasks.ordinary(hookup);
            if (tasks.common(of[t])) {
                shared |= 1 << t;
                sharedItems |= tasks.items(of[t], hookup);
            }
        }
        common = shared;
        always = sharedItems;
        ordinary = local(tasks.ordinary(hookup));
        last = local(tasks.last(hookup));
        boolean single = tasks.kind() == Tasks.Kind.SINGLE;
        for (int t = 0; t < of.length; t++) {
            int bit = 1 << t;
            int after = 0;
            int before = 0;
            for (int other = 0; other < of.length && single; other++) {
                int item = Integer.numberOfTrailingZeros(tasks.items(of[t], hookup));
                int another = Integer.numberOfTrailingZeros(tasks.items(of[other], hookup));
                after |= stay.atOnce(item, another, excursions) ? 1 << other : 0;
                before |= stay.awaits(another, item) ? 1 << other : 0;
            }
            for (int set = bit; set < sets; set++) {
                if ((set & bit) != 0) {
                    taskSets[set] |= 1L << of[t];
                    itemSets[set] |= tasks.items(of[t], hookup);
                    prompt[set] |= after;
                    needs[set] |= before;
                }
            }
        }
    }

    /** The hookup's tasks in a set of all tasks. */
    int local(long left) {
        int set = 0;
        for (int t = 0; t < of.length; t++) {
            set |= (int) (left >> of[t] & 1) << t;
        }
        return set;
    }

    /** Those of the hookup's tasks left that nothing in another hookup holds back. */
    int open(int local, long left) {
        int open = local;
        for (int t = 0; t < of.length; t++) {
            if ((held[t] & left) != 0) {
                open &= ~(1 << t);
            }
        }
        return open;
    }

    /**
     * Whether one stay may do a set: nothing is done before what it waits for, nothing ordinary is left after mains on a part,
     * and nothing is left that may as well be done at once.
     *
     * @param local the hookup's tasks that are left
     * @param open those that may be done
     */
    boolean may(int set, int local, int open) {
        int rest = local & ~set;
        return (needs[set] & rest) == 0
                && (prompt[set] & open & rest) == 0
                && ((set & last) == 0 || (rest & ordinary) == 0);
    }

    /** Whether a stay that does a set may read mains on a part which other hookups may take too, where it is left. */
    boolean mayEnd(int set, int local) {
        return (local & ~set & ordinary) == 0;
    }

    boolean anyCommon(int local) {
        return (local & common) != 0;
    }

    long tasks(int set) {
        return taskSets[set];
    }

    /** @param left items of the hookup's own that are left */
    int items(int set, int left) {
        return itemSets[set] & (left | always);
    }
}
