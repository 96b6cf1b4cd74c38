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
 * one around it may what other hookups can take be left for later, in part or in whole: there the fault is come to without a
 * visit, which costs no more than any such visit. Method: the search of {@link Search} over site,
 * pose, last block that selected, units taken; and a partial order is dropped when another one stands where it stands, has
 * taken at least as much, and has cost no more ({@link Dominance}). Cost: exponential at worst; {@code limit} bounds the
 * nodes. Proof: the argument of {@link Solver} for going class by class; a finished search has settled every partial order
 * that its bound or another partial order did not rule out.
 */
final class Sketch {
    private static final int VISIT = 1;
    private static final int REPLUG = 2;
    private static final int EXACT = 4;

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
    private final Prompt prompt;
    private final long[][] before;
    private final long[][] ofHookup;
    private final long[][] orderly;
    private final List<List<Entry>> entries = new ArrayList<>();
    private final long[][] touchOf;
    private int settled;
    private int weight = EXACT;

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
        Excursions excursions = new Excursions(problem.poses());
        this.dominance = new Dominance(problem, words, units);
        this.prompt = new Prompt(problem, dominance.sound());
        this.before = new long[units][];
        this.ofHookup = new long[problem.hookups()][words];
        this.orderly = new long[problem.hookups()][words];
        for (Unit unit : problem.units()) {
            before[unit.index()] = Words.of(unit.before(), words);
            for (int h = unit.hookups().nextSetBit(0);
                    h >= 0;
                    h = unit.hookups().nextSetBit(h + 1)) {
                Words.set(ofHookup[h], unit.index());
                if (unit.ordinary() && unit.bound()) {
                    Words.set(orderly[h], unit.index());
                }
            }
        }
        for (int h = 0; h < problem.hookups(); h++) {
            entries.add(problem.blocks().get(h).stream()
                    .map(block -> Entry.of(block, problem, grain, excursions))
                    .toList());
        }
        this.touchOf = new long[problem.poses().all().size()][];
        for (int p = 0; p < touchOf.length; p++) {
            touchOf[p] = touches(problem.poses().get(p));
        }
    }

    /** Touch readings without a fault in the polarity of this pose. */
    private long[] touches(Pose pose) {
        long[] set = new long[words];
        for (Unit unit : problem.units()) {
            boolean same = unit.stand().state().polarity() == pose.state().polarity()
                    && unit.stand().state().fault() == Fault.NONE;
            if (same && unit.readings().get(0).isTouch()) {
                Words.set(set, unit.index());
            }
        }
        return set;
    }

    /** The cheapest route of the relaxed problem, unless the limit ends the search. */
    Search.Outcome run() {
        return run(EXACT);
    }

    /**
     * A route of the relaxed problem, unless the limit ends the search.
     *
     * @param weight quarters at which what is still to come counts: above four, far partial orders come first, and the route
     *     need not be the cheapest
     */
    Search.Outcome run(int weight) {
        this.weight = weight;
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
            if (store.expanded(node) || seconds != rank(node)) {
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
            if (!Words.has(done, u)) {
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
            int rest = bound.rest(site, pose, last > 0, BitSet.valueOf(done));
            if (rest == Bound.NEVER) {
                return;
            }
            node = store.add(~node, site, pose, last, done, rest);
        }
        store.reach(node, last, done, cost, parent, act);
        agenda.put(rank(node), node);
    }

    private int rank(int node) {
        return store.cost(node) + store.bound(node) * weight / EXACT;
    }

    private void expand(int node, long[] done) {
        if (visitedAtOnce(node, done)) {
            return;
        }
        replug(node, done);
        List<Move> moves = problem.poses().from(store.pose(node));
        for (int m = moves.size() - 1; m >= 0; m--) {
            Move move = moves.get(m);
            int act = (m + 1) << 2;
            if (problem.poses().get(move.to()).fault()) {
                visits(node, done, move.to(), move.seconds(), act);
            }
            if (!problem.poses().get(move.to()).fault() || passes(node, done, move.to())) {
                reach(store.site(node), move.to(), store.tie(node), done, store.cost(node) + move.seconds(), node, act);
            }
        }
        if (!problem.poses().get(store.pose(node)).fault()) {
            visits(node, done, store.pose(node), 0, 0);
        }
    }

    private boolean passes(int node, long[] done, int pose) {
        int hookup = problem.hookupOf(store.site(node));
        for (Entry entry : entries.get(hookup)) {
            if (entry.passes()
                    && entry.block().stand().fits(problem.poses().get(pose))
                    && !closed(hookup, entry.block(), done)) {
                return true;
            }
        }
        return false;
    }

    /** Makes the first visit that may as well be made at once; whether there is one. */
    private boolean visitedAtOnce(int node, long[] done) {
        int hookup = problem.hookupOf(store.site(node));
        int pose = store.pose(node);
        boolean fresh = problem.units().stream().noneMatch(unit -> Words.has(done, unit.index()));
        for (Entry entry : entries.get(hookup)) {
            int way = prompt.way(hookup, entry.block(), pose, entry.carries(store.tie(node)), fresh);
            if (way == Prompt.NONE
                    || closed(hookup, entry.block(), done)
                    || entry.fine() && entry.free().length > 0
                    || !Prompt.whole(entry.bound(), entry.free(), before, done)) {
                continue;
            }
            long[] next = done.clone();
            take(entry.bound(), done, next);
            take(entry.free(), done, next);
            int cost = entry.carries(store.tie(node)) ? entry.carried() : entry.plain();
            Optional<Move> move = way == 0
                    ? Optional.empty()
                    : Optional.of(problem.poses().from(pose).get(way - 1));
            cost += move.map(Move::seconds).orElse(0);
            visit(node, move.map(Move::to).orElse(pose), entry, next, cost, way << 2);
            return true;
        }
        return false;
    }

    private void replug(int node, long[] done) {
        int site = store.site(node);
        Pose pose = problem.poses().get(store.pose(node));
        boolean live =
                pose.live() && problem.scene().mayReplugUnderPower() && Words.holds(done, touchOf[store.pose(node)]);
        if (!pose.dead() && !live) {
            return;
        }
        for (int h = problem.hookups() - 1; h >= 0; h--) {
            // With nothing left, a hookup may still have the shorter way to switch off a device that is on.
            boolean left = !Words.holds(done, ofHookup[h])
                    || !pose.dead() && entries.get(h).stream().anyMatch(Entry::passes);
            if (h == problem.hookupOf(site) || !left) {
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
            int cost = seconds + (entry.carries(store.tie(node)) ? entry.carried() : entry.plain());
            long[] whole = next.clone();
            boolean more = take(entry.free(), done, whole);
            if (some || more) {
                visit(node, pose, entry, whole, cost, act);
            }
        }
    }

    /** Takes what is ready; whether there was anything. */
    private boolean take(int[] from, long[] done, long[] into) {
        boolean some = false;
        for (int u : from) {
            if (!Words.has(done, u) && Words.holds(done, before[u])) {
                Words.set(into, u);
                some = true;
            }
        }
        return some;
    }

    /** Every choice among the readings that choose their hookup one by one. */
    private void fine(int node, long[] done, int pose, Entry entry, long[] bound, boolean some, int seconds, int act) {
        BitSet ready = new BitSet();
        for (int u : entry.free()) {
            if (!Words.has(done, u) && Words.holds(done, before[u])) {
                ready.set(u);
            }
        }
        BitSet own = new BitSet();
        for (int u : entry.bound()) {
            if (Words.has(bound, u) && !Words.has(done, u)) {
                own.set(u);
            }
        }
        boolean carries = entry.carries(store.tie(node));
        for (BitSet extra : lineup.choices(ready, BitSet.valueOf(done).get(0, units), new BitSet())) {
            if (!some && extra.isEmpty()) {
                continue;
            }
            BitSet taken = (BitSet) own.clone();
            taken.or(extra);
            BitSet demands = new BitSet();
            taken.stream().forEach(u -> demands.or(problem.units().get(u).demands()));
            long[] next = bound.clone();
            extra.stream().forEach(u -> Words.set(next, u));
            int cost = problem.visit(taken, entry.block().phase(), demands, carries && !demands.isEmpty());
            visit(node, pose, entry, next, seconds + cost, act);
        }
    }

    private void visit(int node, int pose, Entry entry, long[] next, int seconds, int act) {
        int hookup = problem.hookupOf(store.site(node));
        if (closing && entry.block().phase() == Phase.MAINS_ON_PART) {
            Words.set(next, units + hookup);
            if (stuck(next)) {
                return;
            }
        }
        int last = entry.selects() ? entry.block().index() + 1 : store.tie(node);
        int cost = store.cost(node) + seconds;
        reach(store.site(node), pose, last, next, cost, node, act | VISIT);
        if (last != store.tie(node) && entry.quiet(store.done(node), next, problem)) {
            // What selects may have been left for another hookup, and what was selected before still is.
            int carried = entry.carries(store.tie(node)) ? entry.plain() - entry.carried() : 0;
            reach(store.site(node), pose, store.tie(node), next, cost + carried, node, act | VISIT);
        }
    }

    /** Nothing ordinary follows mains on a part in its hookup; that comes after all ordinary readings of the hookup. */
    private boolean closed(int hookup, Block block, long[] done) {
        return block.phase() == Phase.ORDINARY && closing && Words.has(done, units + hookup)
                || block.phase() == Phase.MAINS_ON_PART && !Words.holds(done, orderly[hookup]);
    }

    /** Whether an ordinary reading is left that only ended hookups could take. */
    private boolean stuck(long[] done) {
        for (Unit unit : problem.units()) {
            if (unit.ordinary() && !Words.has(done, unit.index())) {
                boolean open = false;
                for (int h = unit.hookups().nextSetBit(0);
                        h >= 0 && !open;
                        h = unit.hookups().nextSetBit(h + 1)) {
                    open = !Words.has(done, units + h);
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
                if (Words.has(store.done(node), u) && !Words.has(store.done(parent), u)) {
                    visited.add(problem.units().get(u));
                }
            }
            legs.add(new Route.Leg(store.site(node), (act & REPLUG) != 0, move, visited, store.pose(node)));
        }
        Collections.reverse(legs);
        return new Route(legs, store.cost(end));
    }
}
