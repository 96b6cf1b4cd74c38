package leadwright.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.device.Battery;
import leadwright.catalog.kit.AtRest;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Uniform-cost search over every state of a small bench, one reading, one switch, one plug-over at a time: no classes, no
 * bound, no pairing by branch and bound. It shares the records of the model with the planner and nothing else.
 */
final class Exhaustive {
    private final Bench bench;
    private final Pairings pairings;
    private final List<Obligation> readings = new ArrayList<>();
    private final List<Integer> takenIn = new ArrayList<>();
    private final List<Integer> before = new ArrayList<>();
    private final List<String> modes = new ArrayList<>(List.of("on"));
    private final boolean earth;
    private final boolean runsUnplugged;
    private final boolean cut;

    Exhaustive(Bench bench) {
        this.bench = bench;
        this.pairings = new Pairings(bench);
        modes.addAll(bench.modes.keySet());
        for (Obligation each : bench.wanted) {
            if (each.phase() != Phase.EARTH) {
                readings.add(each);
                int mask = 0;
                for (String id : bench.takenIn.get(each.key())) {
                    for (int h = 0; h < bench.hookups.size(); h++) {
                        mask |= bench.hookups.get(h).id().equals(id) ? 1 << h : 0;
                    }
                }
                takenIn.add(mask);
            }
        }
        earth = readings.size() < bench.wanted.size();
        runsUnplugged = bench.battery != Battery.NONE;
        cut = bench.toleratesCut.orElse(false);
        for (int i = 0; i < readings.size(); i++) {
            int mask = 0;
            for (int j = 0; j < readings.size(); j++) {
                mask |= precedes(readings.get(j), readings.get(i)) ? 1 << j : 0;
            }
            before.add(mask);
        }
    }

    static boolean precedes(Obligation a, Obligation b) {
        boolean touch = a.isTouch() && a.state().fault() == Fault.NONE;
        if (a.phase() == Phase.INSULATION) {
            return b.phase() != Phase.INSULATION;
        }
        if (a.phase() == Phase.MAINS_ON_PART || b.phase() == Phase.INSULATION) {
            return false;
        }
        if (b.phase() == Phase.MAINS_ON_PART) {
            Set<String> parts = parts(a);
            parts.retainAll(parts(b));
            return touch || !parts.isEmpty();
        }
        boolean same = a.quantity() == b.quantity()
                && a.demand().equals(b.demand())
                && a.place().equals(b.place())
                && a.of().equals(b.of());
        return b.state().fault() != Fault.NONE
                && a.state().fault() == Fault.NONE
                && a.state().polarity() == b.state().polarity()
                && (touch || same);
    }

    private static Set<String> parts(Obligation a) {
        Set<String> parts = new TreeSet<>();
        a.demand().all().stream()
                .filter(each -> each.contains("."))
                .forEach(each -> parts.add(each.substring(0, each.indexOf('.'))));
        return parts;
    }

    private record Node(
            int hookup,
            boolean earthLead,
            MainsState state,
            Polarity selector,
            boolean on,
            int mode,
            String selected,
            boolean settled,
            String touching,
            boolean unread,
            int closed,
            int done) {}

    private record Entry(int cost, long order, Node node) {}

    private final Map<Node, Integer> best = new HashMap<>();
    private final PriorityQueue<Entry> queue =
            new PriorityQueue<>(java.util.Comparator.comparingInt(Entry::cost).thenComparingLong(Entry::order));
    private long count;

    /** Seconds of the whole plan, look over to label. */
    int least() {
        for (int h = 0; h < bench.hookups.size(); h++) {
            Hookup hookup = bench.hookups.get(h);
            if (!earth || !hookup.earth().isEmpty()) {
                int cost = pairings.first(hookup) + (earth ? earthWork() : 0);
                put(cost, new Node(h, earth, MainsState.OFF, Polarity.NONE, false, 0, "", false, "", false, 0, 0));
            }
        }
        while (!queue.isEmpty()) {
            Entry entry = queue.poll();
            Node n = entry.node();
            if (entry.cost() > best.get(n)) {
                continue;
            }
            if (n.done() == (1 << readings.size()) - 1 && n.state() == MainsState.OFF && !n.on()) {
                return entry.cost() + 180 + 60 + 120 + 30;
            }
            read(n, entry.cost());
            if (mayLeave(n)) {
                change(n, entry.cost());
                plug(n, entry.cost());
            }
        }
        throw new IllegalStateException("no order");
    }

    private void put(int cost, Node node) {
        Integer known = best.get(node);
        if (known == null || cost < known) {
            best.put(node, cost);
            queue.add(new Entry(cost, count++, node));
        }
    }

    private int earthWork() {
        int seconds = 2 * 5 + 20 + 20;
        for (Obligation each : bench.wanted) {
            if (each.phase() == Phase.EARTH) {
                int distance = bench.points.get(each.place().orElseThrow());
                seconds += 10 + (2 * distance + 1199) / 1200 + 10 + 15 + 5;
            }
        }
        return seconds + (bench.earthRest == AtRest.OPEN || readings.isEmpty() ? 0 : 3);
    }

    private boolean off(Obligation what) {
        return what.mode().equals("off") || what.phase() == Phase.INSULATION;
    }

    private boolean takeable(Node n, int i) {
        Obligation what = readings.get(i);
        if ((n.done() >> i & 1) == 1 || (takenIn.get(i) >> n.hookup() & 1) == 0 || n.state() != what.state()) {
            return false;
        }
        if ((before.get(i) & ~n.done()) != 0) {
            return false;
        }
        if (what.phase() == Phase.ORDINARY && (n.closed() >> n.hookup() & 1) == 1) {
            return false;
        }
        if (what.phase() == Phase.MAINS_ON_PART) {
            for (int j = 0; j < readings.size(); j++) {
                boolean own = takenIn.get(j) == 1 << n.hookup();
                if (own && readings.get(j).phase() == Phase.ORDINARY && (n.done() >> j & 1) == 0) {
                    return false;
                }
            }
        }
        if (what.state().fault() == Fault.SUPPLY_OPEN && !(runsUnplugged && cut)) {
            return !n.on();
        }
        return off(what) ? !n.on() : n.on() && n.mode() == Math.max(0, modes.indexOf(what.mode()));
    }

    private void read(Node n, int cost) {
        for (int i = 0; i < readings.size(); i++) {
            if (!takeable(n, i)) {
                continue;
            }
            Obligation what = readings.get(i);
            String demand =
                    what.demand().isNothing() ? n.selected() : what.demand().key();
            int seconds = demand.equals(n.selected()) ? 0 : 2;
            String touching =
                    what.place().map(place -> place + " " + what.demand().key()).orElse("");
            seconds += touching.isEmpty() || touching.equals(n.touching()) ? 0 : 8;
            seconds += 5
                    + switch (what.phase()) {
                        case INSULATION -> 40;
                        case MAINS_ON_PART -> 15;
                        default -> n.settled() ? 5 : 10;
                    };
            put(
                    cost + seconds,
                    new Node(
                            n.hookup(),
                            n.earthLead(),
                            n.state(),
                            n.selector(),
                            n.on(),
                            n.mode(),
                            demand,
                            n.settled() || what.phase() == Phase.ORDINARY,
                            touching,
                            false,
                            n.closed() | (what.phase() == Phase.MAINS_ON_PART ? 1 << n.hookup() : 0),
                            n.done() | 1 << i));
        }
    }

    /** A fault is entered to read in it; what only this hookup may read in it, or is half read, is read before it is left. */
    private boolean mayLeave(Node n) {
        if (n.state().fault() == Fault.NONE) {
            return true;
        }
        if (n.unread()) {
            return false;
        }
        for (int i = 0; i < readings.size(); i++) {
            if (!takeable(n, i)) {
                continue;
            }
            if (takenIn.get(i) == 1 << n.hookup()) {
                return false;
            }
            for (int j = 0; j < readings.size(); j++) {
                boolean twin = (n.done() >> j & 1) == 1
                        && readings.get(j).state() == readings.get(i).state()
                        && takenIn.get(j).equals(takenIn.get(i))
                        && before.get(j).equals(before.get(i))
                        && readings.get(j).demand().equals(readings.get(i).demand())
                        && (readings.get(j).place().equals(readings.get(i).place())
                                || readings.get(j).demand().isNothing() && !contested(i) && !contested(j));
                if (twin) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Whether a reading that other hookups may take touches the same place in the same state. */
    private boolean contested(int i) {
        for (int j = 0; j < readings.size(); j++) {
            Obligation one = readings.get(i);
            Obligation other = readings.get(j);
            if (other.demand().isNothing()
                    && other.state() == one.state()
                    && other.mode().equals(one.mode())
                    && other.place().equals(one.place())
                    && !takenIn.get(j).equals(takenIn.get(i))) {
                return true;
            }
        }
        return false;
    }

    private void go(Node n, int cost, MainsState state, Polarity selector, boolean on, int mode) {
        put(
                cost,
                new Node(
                        n.hookup(),
                        n.earthLead(),
                        state,
                        selector,
                        on,
                        on ? mode : 0,
                        n.selected(),
                        false,
                        "",
                        state.fault() != Fault.NONE,
                        n.closed(),
                        n.done()));
    }

    private void change(Node n, int cost) {
        Polarity at = n.state().polarity();
        MainsState live = at == Polarity.NONE ? MainsState.OFF : MainsState.of(at, Fault.NONE);
        int start = bench.startUp;
        int down = bench.shutDown;
        if (n.state() == MainsState.OFF) {
            if (runsUnplugged) {
                go(n, cost + (n.on() ? down : start), MainsState.OFF, n.selector(), !n.on(), 0);
            }
            for (Polarity to : List.of(Polarity.NORMAL, Polarity.REVERSED)) {
                // Polarity is 5 with both outlet movements: 1 is left for the selector.
                int turn = n.selector() == Polarity.NONE || n.selector() == to ? 0 : 1;
                go(n, cost + turn + 2 + (n.on() ? 0 : start), MainsState.of(to, Fault.NONE), to, true, n.mode());
                if (n.on() == (runsUnplugged && cut)) {
                    go(n, cost + turn + 4, MainsState.of(to, Fault.SUPPLY_OPEN), to, n.on(), n.mode());
                }
            }
        } else if (n.state() == live) {
            go(n, cost + 2 + (runsUnplugged ? 0 : down), MainsState.OFF, at, runsUnplugged, n.mode());
            Polarity other = at == Polarity.NORMAL ? Polarity.REVERSED : Polarity.NORMAL;
            go(
                    n,
                    cost + 5 + (runsUnplugged ? 0 : down + start),
                    MainsState.of(other, Fault.NONE),
                    other,
                    true,
                    runsUnplugged ? n.mode() : 0);
            go(n, cost + 2, MainsState.of(at, Fault.EARTH_OPEN), at, true, n.mode());
            go(
                    n,
                    cost + 2 + (cut ? 0 : down),
                    MainsState.of(at, Fault.SUPPLY_OPEN),
                    at,
                    runsUnplugged && cut,
                    n.mode());
        } else {
            boolean supply = n.state().fault() == Fault.SUPPLY_OPEN;
            go(n, cost + 2 + (n.on() ? 0 : start), live, at, true, n.mode());
            if (supply) {
                go(n, cost + 4, MainsState.OFF, at, n.on(), n.mode());
            }
        }
        if (n.on() && n.state().fault() == Fault.NONE) {
            for (int mode = 0; mode < modes.size(); mode++) {
                if (mode != n.mode()) {
                    go(
                            n,
                            cost + (mode == 0 ? 0 : bench.modes.get(modes.get(mode))),
                            n.state(),
                            n.selector(),
                            true,
                            mode);
                }
            }
        }
    }

    private final Map<String, Pairings.Change> changes = new HashMap<>();

    private void plug(Node n, int cost) {
        boolean dead = n.state() == MainsState.OFF;
        boolean live = !dead && n.state().fault() == Fault.NONE && bench.underPower;
        for (int i = 0; i < readings.size() && live; i++) {
            Obligation each = readings.get(i);
            boolean touch = each.isTouch() && each.state() == n.state();
            live = !touch || (n.done() >> i & 1) == 1;
        }
        if (!dead && !live) {
            return;
        }
        Hookup from = bench.hookups.get(n.hookup());
        for (int h = 0; h < bench.hookups.size(); h++) {
            if (h == n.hookup()) {
                continue;
            }
            int to = h;
            Pairings.Change change = changes.computeIfAbsent(
                    n.hookup() + " " + n.earthLead() + " " + h,
                    key -> pairings.between(from, n.earthLead(), bench.hookups.get(to)));
            int seconds = change.seconds();
            boolean therapy = change.changed().stream()
                    .allMatch(changed ->
                            changed.stream().anyMatch(each -> bench.therapy.containsKey(Pairings.part(each))));
            boolean bare = change.changed().stream()
                    .allMatch(changed -> changed.stream()
                            .anyMatch(each -> each.isEmpty()
                                    || each.equals("touch-probe")
                                    || bench.therapy.containsKey(Pairings.part(each))
                                    || each.startsWith("!")));
            if (dead ? !(therapy && n.on()) : !bare) {
                put(
                        cost + seconds,
                        new Node(
                                h,
                                false,
                                n.state(),
                                n.selector(),
                                n.on(),
                                n.mode(),
                                "",
                                false,
                                "",
                                false,
                                n.closed(),
                                n.done()));
            }
        }
    }
}
