package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;

/**
 * The plain order: hookup after hookup, in each of them reading after reading in clause order, as far as precedence lets
 * it; what had to wait is taken in a further round of the hookups. The same accounting as for the best order.
 */
final class Plain {
    private final Problem problem;
    private final BenchTimes times;
    private final BitSet done = new BitSet();
    private final int[] left;
    private final BitSet closed = new BitSet();
    private int site = -1;
    private int pose;
    private String selected = "";
    private String touching = "";
    private boolean settled;
    private int seconds;

    private Plain(Problem problem) {
        this.problem = problem;
        this.times = problem.scene().times();
        this.pose = problem.poses().start();
        this.left = new int[problem.units().size()];
    }

    static int seconds(Problem problem, List<Obligation> readings) {
        return new Plain(problem).run(readings);
    }

    private int run(List<Obligation> readings) {
        List<Integer> order = new ArrayList<>();
        for (int h = 0; h < problem.hookups(); h++) {
            order.add(h);
        }
        // One that may be first comes first.
        order.sort((a, b) -> Boolean.compare(problem.opening()[a] < 0, problem.opening()[b] < 0));
        site = problem.firstSite()[order.get(0)];
        seconds = problem.opening()[order.get(0)];
        List<Unit> units = new ArrayList<>();
        Map<Obligation, Unit> unitOf = new IdentityHashMap<>();
        problem.units().forEach(unit -> unit.readings().forEach(reading -> unitOf.put(reading, unit)));
        readings.forEach(reading -> units.add(unitOf.get(reading)));
        problem.units().forEach(unit -> left[unit.index()] = unit.readings().size());
        List<String> demands = Units.keys(readings);
        BitSet open = new BitSet();
        open.set(0, readings.size());
        while (!open.isEmpty()) {
            int before = open.cardinality();
            for (int hookup : order) {
                for (int i = open.nextSetBit(0); i >= 0; i = open.nextSetBit(i + 1)) {
                    if (may(units.get(i), hookup)) {
                        take(units.get(i), readings.get(i), demands.get(i), hookup);
                        open.clear(i);
                    }
                }
            }
            if (open.cardinality() == before) {
                throw new IllegalStateException("the readings wait for one another");
            }
        }
        return seconds
                + cheapest(problem.poses().all().size(), this::ends)
                        .orElseThrow()
                        .cost();
    }

    private boolean ends(int at) {
        return problem.poses().end(at);
    }

    private boolean may(Unit unit, int hookup) {
        BitSet missing = (BitSet) unit.before().clone();
        missing.andNot(done);
        if (!unit.hookups().get(hookup) || !missing.isEmpty() || unit.ordinary() && closed.get(hookup)) {
            return false;
        }
        return unit.phase() != Phase.MAINS_ON_PART
                || problem.units().stream()
                        .filter(each -> each.ordinary() && each.hookups().get(hookup))
                        .allMatch(each -> done.get(each.index()));
    }

    private void take(Unit unit, Obligation reading, String demand, int hookup) {
        plug(hookup);
        go(at -> unit.stand().fits(problem.poses().get(at)));
        if (!reading.demand().isNothing() && !selected.equals(demand)) {
            selected = demand;
            seconds += times.select();
            touching = "";
        }
        Optional<String> place = Units.touched(reading).map(each -> demand + " " + each);
        if (place.isPresent() && !touching.equals(place.get())) {
            seconds += times.touch();
        }
        touching = place.orElse("");
        seconds += times.write()
                + switch (reading.phase()) {
                    case INSULATION -> times.action("read-insulation") + times.action("discharge");
                    case MAINS_ON_PART -> times.action("read-mains-on-part");
                    default -> times.action(settled ? "read" : "read-first");
                };
        settled |= reading.phase() == Phase.ORDINARY;
        if (reading.phase() == Phase.MAINS_ON_PART) {
            closed.set(hookup);
        }
        if (--left[unit.index()] == 0) {
            done.set(unit.index());
        }
    }

    private void plug(int hookup) {
        if (problem.hookupOf(site) == hookup) {
            return;
        }
        Replugs.Replug replug = problem.replugs().between(site, hookup);
        go(at -> problem.poses().get(at).dead()
                && !(replug.therapy() && problem.poses().get(at).on()));
        seconds += replug.seconds();
        site = hookup;
        selected = "";
        settled = false;
        touching = "";
    }

    private void go(java.util.function.IntPredicate where) {
        Way way = cheapest(problem.poses().all().size(), where).orElseThrow();
        if (way.pose() != pose) {
            seconds += way.cost();
            pose = way.pose();
            settled = false;
            touching = "";
        }
    }

    private record Way(int pose, int cost) {}

    /** The cheapest way of moves; a fault is passed through only to leave it. */
    private Optional<Way> cheapest(int poses, java.util.function.IntPredicate where) {
        int[] best = new int[poses];
        java.util.Arrays.fill(best, Integer.MAX_VALUE);
        PriorityQueue<Way> queue =
                new PriorityQueue<>(java.util.Comparator.comparingInt(Way::cost).thenComparingInt(Way::pose));
        queue.add(new Way(pose, 0));
        best[pose] = 0;
        while (!queue.isEmpty()) {
            Way way = queue.poll();
            if (way.cost() > best[way.pose()]) {
                continue;
            }
            if (where.test(way.pose())) {
                return Optional.of(way);
            }
            if (way.pose() != pose && problem.poses().get(way.pose()).fault()) {
                continue;
            }
            for (Move move : problem.poses().from(way.pose())) {
                int cost = way.cost() + move.seconds();
                if (cost < best[move.to()]) {
                    best[move.to()] = cost;
                    queue.add(new Way(move.to(), cost));
                }
            }
        }
        return Optional.empty();
    }
}
