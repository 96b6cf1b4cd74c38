package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import leadwright.planner.order.Problem.Block;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Phase 8, first part: the problem without the names of what is selected, best first.
 *
 * <p>Needs a problem and its {@link Bound}. Gives the cheapest route of a relaxed problem, hence a bound on every route, and
 * a route that {@link Charge} can charge in full. Relaxed is one thing: a visit saves a selection whenever the visit before
 * it in this stay selected anything that it might ask for. Then what an ordinary visit costs does not hang on what it takes,
 * taking all that is ready is best, and nothing is lost by having taken more; only where a way through a fault is shorter than
 * one around it may what other hookups can take be left for later, in part or in whole. Method: the search of {@link Search} over site,
 * pose, last block that selected, units taken; and a partial order is dropped when another one stands where it stands, has
 * taken at least as much, and has cost no more ({@link Dominance}). Cost: exponential at worst; {@code limit} bounds the
 * nodes. Proof: the argument of {@link Solver} for going class by class; a finished search has settled every partial order
 * that its bound or another partial order did not rule out.
 */
final class Sketch {
    private static final int VISIT = 1;
    private static final int REPLUG = 2;

    private final Problem problem;
    private final Bound bound;
    private final Grain grain;
    private final Lineup lineup;
    private final int limit;
    private final int units;
    private final int words;
    private final boolean closing;
    private final Store store;
    private final Agenda agenda = new Agenda();
    private final Dominance dominance;
    private final long[][] before;
    private final long[][] ofHookup;
    private final long[][] orderly;
    private final List<List<Entry>> entries = new ArrayList<>();
    private final long[][] touchOf;
    private int settled;

    /** A block with its units in words, and what a visit of it costs at most and at least. */
    private record Entry(
            Block block,
            int[] bound,
            int[] free,
            boolean fine,
            boolean excuse,
            int plain,
            int carried,
            boolean selects) {}

    Sketch(Problem problem, Bound bound, Grain grain, Lineup lineup, int limit) {
        this.problem = problem;
        this.bound = bound;
        this.grain = grain;
        this.lineup = lineup;
        this.limit = limit;
        this.units = problem.units().size();
        this.closing = problem.units().stream().anyMatch(unit -> unit.ordinary() && !unit.bound())
                && problem.units().stream().anyMatch(unit -> unit.phase() == Phase.MAINS_ON_PART);
        this.words = (units + (closing ? problem.hookups() : 0)) / 64 + 1;
        this.store = new Store(words);
        this.dominance = new Dominance(problem, words, units);
        this.before = new long[units][];
        this.ofHookup = new long[problem.hookups()][words];
        this.orderly = new long[problem.hookups()][words];
        for (Unit unit : problem.units()) {
            before[unit.index()] = words(unit.before());
            for (int h = unit.hookups().nextSetBit(0);
                    h >= 0;
                    h = unit.hookups().nextSetBit(h + 1)) {
                set(ofHookup[h], unit.index());
                if (unit.ordinary() && unit.bound()) {
                    set(orderly[h], unit.index());
                }
            }
        }
        for (int h = 0; h < problem.hookups(); h++) {
            entries.add(
                    problem.blocks().get(h).stream().map(block -> entry(block)).toList());
        }
        this.touchOf = new long[problem.poses().all().size()][];
        for (int p = 0; p < touchOf.length; p++) {
            touchOf[p] = touches(problem.poses().get(p));
        }
    }

    private Entry entry(Block block) {
        return new Entry(
                block,
                block.bound().stream().toArray(),
                block.free().stream().toArray(),
                grain.fine(block.phase()),
                dominance.shortens(block.stand()),
                problem.leastVisit(block, false),
                problem.leastVisit(block, true),
                !block.demands().isEmpty());
    }

    private long[] words(BitSet set) {
        long[] all = new long[words];
        long[] given = set.toLongArray();
        System.arraycopy(given, 0, all, 0, given.length);
        return all;
    }

    private static void set(long[] words, int bit) {
        words[bit >> 6] |= 1L << bit;
    }

    private static boolean has(long[] words, int bit) {
        return (words[bit >> 6] >> bit & 1) == 1;
    }

    private static boolean holds(long[] all, long[] part) {
        for (int w = 0; w < part.length; w++) {
            if ((part[w] & ~all[w]) != 0) {
                return false;
            }
        }
        return true;
    }

    /** Touch readings without a fault in the polarity of this pose. */
    private long[] touches(Pose pose) {
        long[] set = new long[words];
        for (Unit unit : problem.units()) {
            boolean same = unit.stand().state().polarity() == pose.state().polarity()
                    && unit.stand().state().fault() == Fault.NONE;
            if (same && unit.readings().get(0).isTouch()) {
                set(set, unit.index());
            }
        }
        return set;
    }

    /** The cheapest route of the relaxed problem, unless the limit ends the search. */
    Search.Outcome run() {
        for (int h = problem.hookups() - 1; h >= 0; h--) {
            if (problem.opening()[h] >= 0) {
                int site = problem.firstSite()[h];
                reach(site, problem.poses().start(), 0, new long[words], problem.opening()[h], -1, 0);
            }
        }
        int least = 0;
        while (!agenda.isEmpty()) {
            int seconds = agenda.least();
            int node = agenda.take();
            if (store.expanded(node) || seconds != store.cost(node) + store.bound(node)) {
                continue;
            }
            store.expand(node);
            settled++;
            least = Math.max(least, seconds);
            long[] done = store.done(node);
            if (finished(node, done)) {
                return new Search.Outcome(Optional.of(route(node)), store.cost(node), settled);
            }
            if (store.size() >= limit) {
                return new Search.Outcome(Optional.empty(), least, settled);
            }
            if (!dominance.settle(store.site(node), store.pose(node), store.tie(node), done, store.cost(node))) {
                expand(node, done);
            }
        }
        throw new IllegalStateException("the readings cannot all be taken in any order");
    }

    private boolean finished(int node, long[] done) {
        for (int u = 0; u < units; u++) {
            if (!has(done, u)) {
                return false;
            }
        }
        return problem.poses().end(store.pose(node));
    }

    private void reach(int site, int pose, int last, long[] done, int cost, int parent, int act) {
        int node = store.find(site, pose, last, done);
        if (node >= 0) {
            if (store.cost(node) <= cost) {
                return;
            }
        } else {
            if (dominance.rules(site, pose, last, done, cost)) {
                return;
            }
            int rest = bound.rest(site, pose, last > 0, BitSet.valueOf(done).get(0, units));
            if (rest == Bound.NEVER) {
                return;
            }
            node = store.add(~node, site, pose, last, done, rest);
        }
        store.reach(node, last, done, cost, parent, act);
        agenda.put(cost + store.bound(node), node);
    }

    private void expand(int node, long[] done) {
        replug(node, done);
        List<Move> moves = problem.poses().from(store.pose(node));
        for (int m = moves.size() - 1; m >= 0; m--) {
            Move move = moves.get(m);
            int act = (m + 1) << 2;
            if (problem.poses().get(move.to()).fault()) {
                visits(node, done, move.to(), move.seconds(), act);
            } else {
                reach(store.site(node), move.to(), store.tie(node), done, store.cost(node) + move.seconds(), node, act);
            }
        }
        if (!problem.poses().get(store.pose(node)).fault()) {
            visits(node, done, store.pose(node), 0, 0);
        }
    }

    private void replug(int node, long[] done) {
        int site = store.site(node);
        Pose pose = problem.poses().get(store.pose(node));
        boolean live = pose.live() && problem.scene().mayReplugUnderPower() && holds(done, touchOf[store.pose(node)]);
        if (!pose.dead() && !live) {
            return;
        }
        for (int h = problem.hookups() - 1; h >= 0; h--) {
            if (h == problem.hookupOf(site) || holds(done, ofHookup[h])) {
                continue;
            }
            Replugs.Replug replug = problem.replugs().between(site, h);
            boolean allowed = pose.dead() ? !(replug.therapy() && pose.on()) : replug.underPower();
            if (allowed) {
                reach(h, store.pose(node), 0, done, store.cost(node) + replug.seconds(), node, REPLUG);
            }
        }
    }

    private void visits(int node, long[] done, int pose, int seconds, int act) {
        int hookup = problem.hookupOf(store.site(node));
        Pose at = problem.poses().get(pose);
        List<Entry> all = entries.get(hookup);
        for (int b = all.size() - 1; b >= 0; b--) {
            Entry entry = all.get(b);
            if (!entry.block().stand().fits(at) || closed(hookup, entry.block(), done)) {
                continue;
            }
            long[] next = done.clone();
            boolean some = take(entry.bound(), done, next);
            if (entry.fine() && entry.free().length > 0) {
                fine(node, done, pose, entry, next, some, seconds, act);
                continue;
            }
            int cost = seconds + (carries(store.tie(node), entry) ? entry.carried() : entry.plain());
            long[] whole = next.clone();
            boolean more = take(entry.free(), done, whole);
            if (more && entry.excuse()) {
                // Part of a class may be left for a later visit, which is then welcome for the way through the fault.
                visit(node, pose, entry, next, cost, act);
            }
            if (some || more) {
                visit(node, pose, entry, whole, cost, act);
            }
        }
    }

    /** Takes what is ready; whether there was anything. */
    private boolean take(int[] from, long[] done, long[] into) {
        boolean some = false;
        for (int u : from) {
            if (!has(done, u) && holds(done, before[u])) {
                set(into, u);
                some = true;
            }
        }
        return some;
    }

    /** Every choice among the readings that choose their hookup one by one. */
    private void fine(int node, long[] done, int pose, Entry entry, long[] bound, boolean some, int seconds, int act) {
        BitSet ready = new BitSet();
        for (int u : entry.free()) {
            if (!has(done, u) && holds(done, before[u])) {
                ready.set(u);
            }
        }
        BitSet own = new BitSet();
        for (int u : entry.bound()) {
            if (has(bound, u) && !has(done, u)) {
                own.set(u);
            }
        }
        boolean carries = carries(store.tie(node), entry);
        for (BitSet extra : lineup.choices(ready, BitSet.valueOf(done).get(0, units), new BitSet())) {
            if (!some && extra.isEmpty()) {
                continue;
            }
            BitSet taken = (BitSet) own.clone();
            taken.or(extra);
            BitSet demands = new BitSet();
            taken.stream().forEach(u -> demands.or(problem.units().get(u).demands()));
            long[] next = bound.clone();
            extra.stream().forEach(u -> set(next, u));
            int cost = problem.visit(taken, entry.block().phase(), demands, carries && !demands.isEmpty());
            visit(node, pose, entry, next, seconds + cost, act);
        }
    }

    /** Whether the visit before this one may have selected last what this one asks for first. */
    private static boolean carries(int last, Entry entry) {
        boolean again = last - 1 == entry.block().index() && entry.block().phase() != Phase.ORDINARY;
        return last > 0 && !again && entry.block().links().get(last - 1);
    }

    private void visit(int node, int pose, Entry entry, long[] next, int seconds, int act) {
        int hookup = problem.hookupOf(store.site(node));
        if (closing && entry.block().phase() == Phase.MAINS_ON_PART) {
            set(next, units + hookup);
            if (stuck(next)) {
                return;
            }
        }
        int last = entry.selects() ? entry.block().index() + 1 : store.tie(node);
        reach(store.site(node), pose, last, next, store.cost(node) + seconds, node, act | VISIT);
    }

    /** Nothing ordinary follows mains on a part in its hookup; that comes after all ordinary readings of the hookup. */
    private boolean closed(int hookup, Block block, long[] done) {
        return block.phase() == Phase.ORDINARY && closing && has(done, units + hookup)
                || block.phase() == Phase.MAINS_ON_PART && !holds(done, orderly[hookup]);
    }

    /** Whether an ordinary reading is left that only ended hookups could take. */
    private boolean stuck(long[] done) {
        for (Unit unit : problem.units()) {
            if (unit.ordinary() && !has(done, unit.index())) {
                boolean open = false;
                for (int h = unit.hookups().nextSetBit(0);
                        h >= 0 && !open;
                        h = unit.hookups().nextSetBit(h + 1)) {
                    open = !has(done, units + h);
                }
                if (!open) {
                    return true;
                }
            }
        }
        return false;
    }

    private Route route(int end) {
        List<Route.Leg> legs = new ArrayList<>();
        for (int node = end; node >= 0; node = store.parent(node)) {
            int parent = store.parent(node);
            int act = parent < 0 ? REPLUG : store.act(node);
            Optional<Move> move = act >> 2 == 0
                    ? Optional.empty()
                    : Optional.of(problem.poses().from(store.pose(parent)).get((act >> 2) - 1));
            List<Unit> visited = new ArrayList<>();
            for (int u = 0; u < units && (act & VISIT) != 0; u++) {
                if (has(store.done(node), u) && !has(store.done(parent), u)) {
                    visited.add(problem.units().get(u));
                }
            }
            legs.add(new Route.Leg(store.site(node), (act & REPLUG) != 0, move, visited, store.pose(node)));
        }
        Collections.reverse(legs);
        return new Route(legs, store.cost(end));
    }
}
