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
 * Phase 8: search over what stands and what is done, best first.
 *
 * <p>Needs a problem and its {@link Bound}. Gives a cheapest route, or the least that any route can cost where the limit
 * on nodes ends the search. State: site, pose, what may be selected, units taken. Moves: re-plug, change pose, visit;
 * a fault is entered only together with the readings taken in it. A visit takes every unit that only this hookup may
 * take and that nothing holds back; of those that others may take too, every choice is tried (where the grain is
 * fine), or all are taken if the visit takes place anyway. The bound never exceeds the true remainder, and a node is opened again
 * when it is reached at less, so that the first finished node is optimal. Cost: exponential at worst; {@code limit}
 * bounds the nodes and so memory.
 */
final class Search {
    private static final int VISIT = 1;
    private static final int REPLUG = 2;

    private final Problem problem;
    private final Bound bound;
    private final Ties ties;
    private final boolean exact;
    private final Grain grain;
    private final int limit;
    private final Store store;
    private final Lineup lineup;
    private final List<Agenda> agendas = new ArrayList<>();
    private boolean layered;
    private int deepest;
    private final int units;
    private final boolean closing;
    private final BitSet[] orderly;
    private int settled;

    /**
     * Outcome.
     *
     * @param route empty where the limit ended the search
     * @param least no route costs less; the route's cost where it is optimal
     * @param settled nodes that were settled
     */
    record Outcome(Optional<Route> route, int least, int settled) {}

    /**
     * @param exact whether selections are followed exactly; otherwise, where readings go class by class, every one that could be
     *     carried over counts as saved
     * @param grain which readings that several hookups may take are shared out in every way
     * @param lineup twins of which it makes no difference which is which
     */
    Search(Problem problem, Bound bound, boolean exact, Grain grain, Lineup lineup, int limit) {
        this.problem = problem;
        this.bound = bound;
        this.ties = new Ties(problem.demands().size());
        this.exact = exact;
        this.grain = grain;
        this.limit = limit;
        this.lineup = lineup;
        this.units = problem.units().size();
        // Where ordinary readings may be taken elsewhere, it must be known which hookups mains on a part has ended.
        this.closing = problem.units().stream().anyMatch(unit -> unit.ordinary() && !unit.bound())
                && problem.units().stream().anyMatch(unit -> unit.phase() == Phase.MAINS_ON_PART);
        this.store = new Store((units + (closing ? problem.hookups() : 0)) / 64 + 1);
        this.orderly = new BitSet[problem.hookups()];
        for (int h = 0; h < orderly.length; h++) {
            int hookup = h;
            orderly[h] = new BitSet();
            problem.units().stream()
                    .filter(unit ->
                            unit.ordinary() && unit.bound() && unit.hookups().get(hookup))
                    .forEach(unit -> orderly[hookup].set(unit.index()));
        }
    }

    /** The cheapest route, unless the limit ends the search. */
    Outcome run() {
        agendas.add(new Agenda());
        begin();
        Agenda agenda = agendas.get(0);
        int least = 0;
        while (!agenda.isEmpty()) {
            int seconds = agenda.least();
            int node = agenda.take();
            if (stale(node, seconds)) {
                continue;
            }
            settle(node);
            least = Math.max(least, seconds);
            BitSet done = BitSet.valueOf(store.done(node));
            if (finished(node, done)) {
                return new Outcome(Optional.of(route(node)), store.cost(node), settled);
            }
            if (store.size() >= limit) {
                return new Outcome(Optional.empty(), least, settled);
            }
            expand(node, done);
        }
        throw new IllegalStateException("the readings cannot all be taken in any order");
    }

    /** A route that need not be the cheapest: of the nodes with equally many units taken, only the best few are expanded. */
    Outcome beam(int width) {
        layered = true;
        for (int layer = 0; layer <= units; layer++) {
            agendas.add(new Agenda());
        }
        begin();
        for (int layer = 0; layer <= units; layer++) {
            Agenda agenda = agendas.get(layer);
            // Where the best few lead nowhere, as when all of them must be re-plugged first, more are tried.
            for (int expanded = 0;
                    !agenda.isEmpty() && (expanded < width || deepest <= layer && store.size() < limit);
                    expanded++) {
                int seconds = agenda.least();
                int node = agenda.take();
                if (stale(node, seconds)) {
                    continue;
                }
                settle(node);
                BitSet done = BitSet.valueOf(store.done(node));
                if (finished(node, done)) {
                    return new Outcome(Optional.of(route(node)), 0, settled);
                }
                expand(node, done);
            }
        }
        return new Outcome(Optional.empty(), 0, settled);
    }

    private void begin() {
        for (int h = problem.hookups() - 1; h >= 0; h--) {
            if (problem.opening()[h] >= 0) {
                int site = problem.firstSite()[h];
                reach(site, problem.poses().start(), Ties.NONE, new BitSet(), problem.opening()[h], -1, 0);
            }
        }
    }

    private boolean stale(int node, int seconds) {
        return store.expanded(node) || seconds != store.cost(node) + store.bound(node);
    }

    private void settle(int node) {
        store.expand(node);
        settled++;
    }

    private boolean finished(int node, BitSet done) {
        return taken(done) == units && problem.poses().end(store.pose(node));
    }

    private int taken(BitSet done) {
        return done.get(0, units).cardinality();
    }

    private void reach(int site, int pose, int tie, BitSet done, int cost, int parent, int act) {
        long[] words = words(done);
        long[] form = words;
        int formTie = tie;
        if (!lineup.isEmpty()) {
            BitSet sorted = (BitSet) done.clone();
            BitSet sortedTie = (BitSet) ties.set(tie).clone();
            lineup.form(sorted, sortedTie);
            form = words(sorted);
            formTie = ties.intern(sortedTie);
        }
        int node = store.find(site, pose, formTie, form);
        if (node >= 0) {
            if (store.cost(node) <= cost) {
                return;
            }
        } else {
            int rest = bound.rest(site, pose, tie != Ties.NONE, done);
            if (rest == Bound.NEVER) {
                return;
            }
            node = store.add(~node, site, pose, formTie, form, rest);
        }
        // What was reached from here before is reached again at less, and with these twins, before the search ends.
        store.reach(node, tie, words, cost, parent, act);
        int layer = layered ? taken(done) : 0;
        deepest = Math.max(deepest, layer);
        agendas.get(layer).put(store.cost(node) + store.bound(node), node);
    }

    private long[] words(BitSet done) {
        long[] words = new long[(units + (closing ? problem.hookups() : 0)) / 64 + 1];
        long[] given = done.toLongArray();
        System.arraycopy(given, 0, words, 0, given.length);
        return words;
    }

    /** Later children come out of the agenda first: visits before moves, moves before re-plugging. */
    private void expand(int node, BitSet done) {
        replug(node, done);
        List<Move> moves = problem.poses().from(store.pose(node));
        for (int m = moves.size() - 1; m >= 0; m--) {
            Move move = moves.get(m);
            int act = (m + 1) << 2;
            Pose to = problem.poses().get(move.to());
            if (to.fault()) {
                visits(node, done, move.to(), move.seconds(), act);
            } else {
                reach(store.site(node), move.to(), store.tie(node), done, store.cost(node) + move.seconds(), node, act);
            }
        }
        if (!problem.poses().get(store.pose(node)).fault()) {
            visits(node, done, store.pose(node), 0, 0);
        }
    }

    private void replug(int node, BitSet done) {
        int site = store.site(node);
        Pose pose = problem.poses().get(store.pose(node));
        if (!pose.dead() && !(pose.live() && problem.scene().mayReplugUnderPower() && touched(pose, done))) {
            return;
        }
        for (int h = problem.hookups() - 1; h >= 0; h--) {
            if (h == problem.hookupOf(site) || nothingLeft(h, done)) {
                continue;
            }
            Replugs.Replug replug = problem.replugs().between(site, h);
            boolean allowed = pose.dead() ? !(replug.therapy() && pose.on()) : replug.underPower();
            if (allowed) {
                reach(h, store.pose(node), Ties.NONE, done, store.cost(node) + replug.seconds(), node, REPLUG);
            }
        }
    }

    private boolean nothingLeft(int hookup, BitSet done) {
        for (Unit unit : problem.units()) {
            if (!done.get(unit.index()) && unit.hookups().get(hookup)) {
                return false;
            }
        }
        return true;
    }

    /** Whether every no-fault touch reading of this polarity has been taken. */
    private boolean touched(Pose pose, BitSet done) {
        return problem.units().stream()
                .filter(unit -> unit.stand().state().polarity() == pose.state().polarity()
                        && unit.stand().state().fault() == Fault.NONE)
                .filter(unit -> unit.readings().get(0).isTouch())
                .allMatch(unit -> done.get(unit.index()));
    }

    private void visits(int node, BitSet done, int pose, int seconds, int act) {
        int site = store.site(node);
        int hookup = problem.hookupOf(site);
        Pose at = problem.poses().get(pose);
        List<Block> blocks = problem.blocks().get(hookup);
        for (int b = blocks.size() - 1; b >= 0; b--) {
            Block block = blocks.get(b);
            if (!block.stand().fits(at) || closed(hookup, block, done)) {
                continue;
            }
            BitSet bound = ready(block.bound(), done);
            for (BitSet extra : extras(block, done, store.tie(node))) {
                BitSet taken = (BitSet) bound.clone();
                taken.or(extra);
                if (!taken.isEmpty()) {
                    visit(node, done, pose, block, taken, seconds, act);
                }
            }
        }
    }

    /** Nothing ordinary follows mains on a part in its hookup; that comes after all ordinary readings of the hookup. */
    private boolean closed(int hookup, Block block, BitSet done) {
        if (block.phase() == Phase.ORDINARY) {
            return closing && done.get(units + hookup);
        }
        if (block.phase() == Phase.MAINS_ON_PART) {
            BitSet missing = (BitSet) orderly[hookup].clone();
            missing.andNot(done);
            return !missing.isEmpty();
        }
        return false;
    }

    private BitSet ready(BitSet of, BitSet done) {
        BitSet ready = new BitSet();
        for (int u = of.nextSetBit(0); u >= 0; u = of.nextSetBit(u + 1)) {
            if (!done.get(u)) {
                BitSet missing = (BitSet) problem.units().get(u).before().clone();
                missing.andNot(done);
                if (missing.isEmpty()) {
                    ready.set(u);
                }
            }
        }
        return ready;
    }

    private List<BitSet> extras(Block block, BitSet done, int tie) {
        BitSet free = ready(block.free(), done);
        // Once the visit is paid for, taking all costs no more here than elsewhere.
        boolean all = free.isEmpty() || !grain.fine(block.phase());
        return all ? List.of(free) : lineup.choices(free, done, ties.set(tie));
    }

    private void visit(int node, BitSet done, int pose, Block block, BitSet taken, int seconds, int act) {
        BitSet demands = new BitSet();
        taken.stream().forEach(u -> demands.or(problem.units().get(u).demands()));
        boolean surely = taken.stream()
                .anyMatch(u -> block.bound().get(u)
                        && !problem.units().get(u).demands().isEmpty());
        boolean vague = !exact && !grain.fine(block.phase()) && !block.free().isEmpty();
        Ties.After after = vague
                ? ties.vague(store.tie(node), block, surely)
                : ties.visit(store.tie(node), demands, problem.blocks().get(problem.hookupOf(store.site(node))));
        BitSet next = (BitSet) done.clone();
        next.or(taken);
        if (closing && block.phase() == Phase.MAINS_ON_PART) {
            next.set(units + problem.hookupOf(store.site(node)));
            if (stuck(next)) {
                return;
            }
        }
        int cost = store.cost(node) + seconds + problem.visit(taken, block.phase(), demands, after.carried());
        reach(store.site(node), pose, after.tie(), next, cost, node, act | VISIT);
    }

    /** Whether an ordinary reading is left that only ended hookups could take. */
    private boolean stuck(BitSet done) {
        BitSet closed = done.get(units, units + problem.hookups());
        for (Unit unit : problem.units()) {
            if (unit.ordinary() && !done.get(unit.index())) {
                BitSet open = (BitSet) unit.hookups().clone();
                open.andNot(closed);
                if (open.isEmpty()) {
                    return true;
                }
            }
        }
        return false;
    }

    private Route route(int last) {
        List<Route.Leg> legs = new ArrayList<>();
        for (int node = last; node >= 0; node = store.parent(node)) {
            int parent = store.parent(node);
            if (parent < 0) {
                legs.add(new Route.Leg(store.site(node), true, Optional.empty(), List.of(), store.pose(node)));
                continue;
            }
            int act = store.act(node);
            Optional<Move> move = act >> 2 == 0
                    ? Optional.empty()
                    : Optional.of(problem.poses().from(store.pose(parent)).get((act >> 2) - 1));
            List<Unit> visited = new ArrayList<>();
            if ((act & VISIT) != 0) {
                BitSet now = BitSet.valueOf(store.done(node));
                now.andNot(BitSet.valueOf(store.done(parent)));
                now.stream()
                        .filter(u -> u < units)
                        .forEach(u -> visited.add(problem.units().get(u)));
            }
            legs.add(new Route.Leg(store.site(node), (act & REPLUG) != 0, move, visited, store.pose(node)));
        }
        Collections.reverse(legs);
        return new Route(legs, store.cost(last));
    }
}
