package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation.Phase;

/**
 * What a {@link Tour} has to do, in tasks: sets of items of one hookup that go together, and what several hookups may do.
 *
 * <p>Items of a hookup that wait for the same items of other hookups and are waited for by the same are one task. Splitting it
 * over two stays never pays where hookups change with everything off: the second stay's way from off to off could be walked in
 * the first, but for turning the polarity selector; so a hookup that is come to more than once anyway has tasks of one
 * polarity. Where hookups change under power every item is a task.
 */
final class Tasks {
    /** Which precedence between hookups counts; less makes fewer tasks and a lower bound. */
    enum Heed {
        ALL,
        /** Insulation first and mains on a part last, but not touch readings before faults. */
        PHASES,
        NOTHING
    }

    /** Which of the tasks that several hookups may do count; fewer make a lower bound. */
    enum Share {
        ALL,
        /** Those that no other task does on the way: no other set of hookups within theirs, no reading of one hookup's own. */
        LEAST,
        NONE
    }

    /** What a tour counts, and how far it splits stays. */
    enum Kind {
        /** Where hookups change with everything off. */
        WHOLE,
        /** Every item a task of its own: wherever hookups change. */
        SINGLE,
        /** Re-plugging alone. */
        BARE
    }

    /** An item of no stay: a bare tour knows no items. */
    private static final int BARE = 1 << 30;

    private final Problem problem;
    private final Ways ways;
    private final List<Stay> stays;
    private final Heed heed;
    private final Share share;
    private final Kind kind;
    private final List<int[]> itemsOf = new ArrayList<>();
    private final List<Long> held = new ArrayList<>();
    private final List<BitSet> shared = new ArrayList<>();
    private final int[][] tasksOf;
    private final long[] ordinary;
    private final long[] last;

    Tasks(Problem problem, Ways ways, List<Stay> stays, Heed heed, Share share, Kind kind) {
        this.problem = problem;
        this.ways = ways;
        this.stays = stays;
        this.heed = heed;
        this.share = share;
        this.kind = kind;
        this.tasksOf = new int[stays.size()][];
        this.ordinary = new long[stays.size()];
        this.last = new long[stays.size()];
        divide();
    }

    Kind kind() {
        return kind;
    }

    Share share() {
        return share;
    }

    int size() {
        return itemsOf.size();
    }

    /** Tasks that a hookup may do, its own first. */
    int[] of(int hookup) {
        return tasksOf[hookup];
    }

    /** Items of a hookup that are in a task, as a set. */
    int items(int task, int hookup) {
        return itemsOf.get(task)[hookup];
    }

    /** Whether several hookups may do it. */
    boolean common(int task) {
        return task >= itemsOf.size() - shared.size();
    }

    /** Tasks that must be done before this one. */
    long held(int task) {
        return held.get(task);
    }

    /** Tasks of a hookup with readings that come before mains on a part in it. */
    long ordinary(int hookup) {
        return ordinary[hookup];
    }

    /** Tasks of a hookup with mains on a part. */
    long last(int hookup) {
        return last[hookup];
    }

    /** What of the tasks is left, where these items of each hookup are, and all units but these. */
    long left(int[] items, BitSet done) {
        long left = 0;
        int own = itemsOf.size() - shared.size();
        for (int h = 0; h < items.length; h++) {
            for (int task : tasksOf[h]) {
                if (task < own && (itemsOf.get(task)[h] & items[h]) != 0) {
                    left |= 1L << task;
                }
            }
        }
        for (int s = 0; s < shared.size(); s++) {
            BitSet units = shared.get(s);
            for (int u = units.nextSetBit(0); u >= 0; u = units.nextSetBit(u + 1)) {
                if (!done.get(u)) {
                    left |= 1L << own + s;
                    break;
                }
            }
        }
        return left;
    }

    /** An item of a hookup. */
    private record Place(int hookup, int item) {}

    private void divide() {
        List<Place> places = new ArrayList<>();
        for (int h = 0; h < stays.size(); h++) {
            for (int i = 0; i < stays.get(h).own(); i++) {
                places.add(new Place(h, i));
            }
        }
        List<Waiting> waiting = places.stream()
                .map(here -> new Waiting(
                        here.hookup(),
                        places.stream().filter(other -> waits(here, other)).toList(),
                        places.stream().filter(other -> waits(other, here)).toList(),
                        kind == Kind.WHOLE ? elsewhere(here, true) : new BitSet(),
                        kind == Kind.WHOLE ? elsewhere(here, false) : new BitSet(),
                        kind != Kind.BARE
                                && problem.scene().battery()
                                && !item(here).on()))
                .toList();
        Map<List<Object>, Integer> groups = new LinkedHashMap<>();
        int[] taskOf = new int[places.size()];
        List<List<Place>> waits = new ArrayList<>();
        for (int p = 0; p < places.size(); p++) {
            Place here = places.get(p);
            Waiting own = waiting.get(p);
            Stay stay = stays.get(here.hookup());
            boolean shares = stay.own() < stay.items().size();
            boolean often = shares
                    || waiting.stream()
                                    .filter(other -> other.hookup() == here.hookup())
                                    .distinct()
                                    .count()
                            > 1;
            // Come to twice anyway, it may be read in one polarity each time, and the selector turned elsewhere.
            boolean turns = kind != Kind.BARE
                    && (often
                            || ways.detour(here.hookup())
                                    < problem.scene().times().selector());
            Polarity polarity = turns ? item(here).state().polarity() : Polarity.NONE;
            // Where the hookup is come to for what others may do too, mains on a part of its own may go with that.
            boolean later = shares && item(here).phase() == Phase.MAINS_ON_PART;
            int alone = kind == Kind.SINGLE ? here.item() : -1;
            Integer task = groups.putIfAbsent(List.of(own, polarity, later, alone), itemsOf.size());
            if (task == null) {
                task = itemsOf.size();
                itemsOf.add(new int[stays.size()]);
                waits.add(own.holding());
            }
            itemsOf.get(task)[here.hookup()] |= 1 << here.item();
            taskOf[p] = task;
        }
        for (List<Place> holding : waits) {
            long mask = 0;
            for (Place other : holding) {
                mask |= 1L << taskOf[places.indexOf(other)];
            }
            held.add(mask);
        }
        for (int p = 0; p < places.size(); p++) {
            long[] of = item(places.get(p)).phase() == Phase.MAINS_ON_PART ? last : ordinary;
            of[places.get(p).hookup()] |= 1L << taskOf[p];
        }
        share(places, taskOf);
        for (int h = 0; h < stays.size(); h++) {
            int hookup = h;
            tasksOf[h] = IntStream.range(0, itemsOf.size())
                    .filter(task -> itemsOf.get(task)[hookup] != 0)
                    .toArray();
        }
    }

    /**
     * Tasks that any of several hookups may do: mains on a part in one state, of which the last visit counts. They come after
     * all ordinary readings of the hookup that does them.
     */
    private void share(List<Place> places, int[] taskOf) {
        Map<List<Object>, BitSet> groups = new LinkedHashMap<>();
        for (Unit unit : problem.units()) {
            if (unit.phase() == Phase.MAINS_ON_PART && !unit.bound()) {
                groups.computeIfAbsent(
                                List.of(unit.hookups(), unit.stand().state(), unit.before()), key -> new BitSet())
                        .set(unit.index());
            }
        }
        for (BitSet units : groups.values()) {
            Unit sample = problem.units().get(units.nextSetBit(0));
            if (!counts(sample, groups.values())) {
                continue;
            }
            int task = itemsOf.size();
            int[] items = new int[stays.size()];
            for (int h = 0; h < stays.size(); h++) {
                if (sample.hookups().get(h)) {
                    items[h] = kind == Kind.BARE ? BARE : sharedItem(h, sample.stand());
                    last[h] |= 1L << task;
                }
            }
            long mask = 0;
            for (int p = 0; p < taskOf.length && heed != Heed.NOTHING; p++) {
                if (problem.waits(units, item(places.get(p)).bound())) {
                    mask |= 1L << taskOf[p];
                }
            }
            itemsOf.add(items);
            held.add(mask);
            shared.add(units);
        }
    }

    /**
     * What an item waits for and is waited for by, in other hookups; and whether it is read with the device off.
     *
     * @param holding items that are all to be done before
     * @param awaiting items that it is to be done before in whole
     * @param earlier units to be taken elsewhere before some of it
     * @param later units to be taken elsewhere after some of it: what lies between may part it from the rest of its hookup
     */
    private record Waiting(
            int hookup, List<Place> holding, List<Place> awaiting, BitSet earlier, BitSet later, boolean apart) {}

    private BitSet elsewhere(Place here, boolean earlier) {
        BitSet bound = item(here).bound();
        BitSet units = new BitSet();
        for (Unit unit : problem.units()) {
            if (earlier && bound.get(unit.index())) {
                units.or(unit.before());
            } else if (!earlier && unit.before().intersects(bound)) {
                units.set(unit.index());
            }
        }
        problem.units().stream()
                .filter(unit -> unit.hookups().get(here.hookup()))
                .forEach(unit -> units.clear(unit.index()));
        return units;
    }

    /** The item that stands for what is shared in this state, as a set. */
    private int sharedItem(int hookup, Stand stand) {
        List<Stay.Item> items = stays.get(hookup).items();
        return IntStream.range(stays.get(hookup).own(), items.size())
                .filter(i -> items.get(i).state() == stand.state())
                .map(i -> 1 << i)
                .sum();
    }

    private boolean counts(Unit unit, Collection<BitSet> groups) {
        if (share != Share.LEAST) {
            return share == Share.ALL;
        }
        boolean own = unit.hookups().stream()
                .anyMatch(h -> stays.get(h).items().stream()
                        .anyMatch(item -> !item.shared()
                                && item.phase() == Phase.MAINS_ON_PART
                                && item.state() == unit.stand().state()));
        return !own
                && groups.stream()
                        .map(group -> problem.units().get(group.nextSetBit(0)))
                        .filter(other -> other.stand().state() == unit.stand().state())
                        .noneMatch(other -> within(other.hookups(), unit.hookups()));
    }

    private static boolean within(BitSet one, BitSet other) {
        BitSet both = (BitSet) one.clone();
        both.and(other);
        return both.equals(one) && !one.equals(other);
    }

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
}
