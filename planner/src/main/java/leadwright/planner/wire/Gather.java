package leadwright.planner.wire;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Queue;
import java.util.Set;
import java.util.TreeMap;
import leadwright.catalog.kit.ItemKind;

/**
 * Phase 4: menus of single cells.
 *
 * <p>Needs: bench, routes, stock, a cluster. Gives: all options for it that no other beats. Method: from one jack up, put
 * gathering items (fan-outs, stackable plugs) into open sockets in every way, each arrangement once; seat the connections
 * in each. An item that gathers has two inlets in use or more, so there are fewer of them than connections; with one in use
 * it is part of a route. Cost: in the arrangements, bounded by the stock of gathering items. Proof: every forest of items
 * is reached by placing its gathering items from the jacks outwards.
 */
final class Gather {
    /** Budget of arrangements of a menu. */
    static final int MOST_ARRANGEMENTS = 20_000;

    private final Bench bench;
    private final Routes routes;
    private final Stock stock;
    private final Socket jack;
    private final int jackCount;
    private final Optional<Handling> price;
    private final boolean priced;
    private final boolean capacitance;
    private final int mostArrangements;
    private long work;

    /**
     * @param price present where cost counts, so that dearer options are kept only where they take less
     * @param capacitance whether capacitance counts
     * @param mostArrangements budget of a menu
     */
    Gather(
            Bench bench,
            Routes routes,
            Stock stock,
            String jackSocket,
            Optional<Handling> price,
            boolean capacitance,
            int mostArrangements) {
        this.bench = bench;
        this.routes = routes;
        this.stock = stock;
        this.jack = Socket.jack(jackSocket);
        this.jackCount = stock.limits()[stock.limits().length - 1];
        this.price = price;
        this.priced = price.isPresent();
        this.capacitance = capacitance;
        this.mostArrangements = mostArrangements;
    }

    /** Open sockets, pieces and capacitance taken by gathering items, and their placements. */
    record Arrangement(
            int jacks,
            Map<Socket, Integer> open,
            int[] use,
            long femtofarads,
            int items,
            List<Option.Placement> placements) {

        /** Micrometres of all items placed. */
        long lead() {
            long sum = 0;
            for (Option.Placement each : placements) {
                sum += Bench.length(each.part().item()) + each.route().lead();
            }
            return sum;
        }

        String key() {
            return jacks + java.util.Arrays.toString(use) + open + (femtofarads);
        }

        int places() {
            return open.values().stream().mapToInt(Integer::intValue).sum();
        }
    }

    Menu menu(Cluster cluster) {
        List<Option> options = Menu.fresh();
        Set<String> seen = new HashSet<>();
        Queue<Arrangement> queue = priced ? new ArrayDeque<>() : mostPlacesFirst();
        int most = cluster.isLinked() ? 1 : Math.min(jackCount, cluster.size());
        for (int jacks = 1; jacks <= most; jacks++) {
            Map<Socket, Integer> open = sockets();
            open.put(jack, jacks);
            queue.add(new Arrangement(jacks, open, new int[bench.items().size()], 0, 0, List.of()));
        }
        List<Part> useful = useful(cluster);
        boolean complete = true;
        int arrangements = 0;
        int beaten = Integer.MAX_VALUE;
        while (!queue.isEmpty()) {
            Arrangement arrangement = queue.poll();
            if (arrangement.jacks() >= beaten) {
                continue;
            }
            if (++arrangements > mostArrangements) {
                return new Menu(options, false);
            }
            Seating seating = new Seating(this, arrangement, cluster);
            complete &= seating.into(options);
            work += 1 + seating.states();
            if (seating.takesNothing() && !priced) {
                // Whatever needs as many jacks or more is beaten.
                beaten = Math.min(beaten, arrangement.jacks());
            }
            if (!seating.free() && arrangement.placements().size() < cluster.size() - arrangement.jacks()) {
                for (Arrangement next : extended(arrangement, cluster, useful)) {
                    if (seen.add(next.key())) {
                        queue.add(next);
                    }
                }
            }
        }
        return new Menu(options, complete);
    }

    /** Gathering items that a chain of this cluster can pass. */
    private List<Part> useful(Cluster cluster) {
        List<Leaf> leaves = new ArrayList<>();
        cluster.groups().forEach(group -> leaves.add(group.leaf()));
        List<Part> useful = new ArrayList<>();
        boolean more = true;
        while (more) {
            more = false;
            for (Part part : bench.parts()) {
                if (part.gathers() && !useful.contains(part) && passable(part, leaves)) {
                    more |= useful.add(part);
                    leaves.add(Leaf.trunk(part.out()));
                }
            }
        }
        return useful;
    }

    private boolean passable(Part part, List<Leaf> leaves) {
        boolean probe = part.item().kind() == ItemKind.PROBE;
        return part.inlets().stream()
                .map(inlet -> new Socket(inlet.end(), inlet.also(), probe, 0, inlet.fill(), 0))
                .distinct()
                .anyMatch(socket -> leaves.stream()
                        .anyMatch(leaf -> !routes.into(leaf, socket).isEmpty()));
    }

    private List<Arrangement> extended(Arrangement from, Cluster cluster, List<Part> useful) {
        List<Arrangement> all = new ArrayList<>();
        for (Part part : useful) {
            for (Socket at : from.open().keySet()) {
                List<Route> ways = routes.into(Leaf.trunk(part.out()), at);
                // Where nothing need reach, what goes in directly is better than through more items.
                boolean direct = cluster.reach() == 0 && ways.stream().anyMatch(way -> way.items() == 0);
                for (Route route : direct ? List.of(ways.get(0)) : ways) {
                    int[] use = from.use().clone();
                    for (int piece = 0; piece < use.length; piece++) {
                        use[piece] += route.use()[piece];
                    }
                    use[part.piece()]++;
                    Option.Placement placement = new Option.Placement(part, route, at);
                    if (stock.holds(count(use, from.jacks())) && bringsMore(from, placement, cluster)) {
                        all.add(placed(from, placement, use, cluster));
                    }
                }
            }
        }
        return all;
    }

    /** Whether it opens a kind of end of which there are not yet as many as there are chains. */
    private boolean bringsMore(Arrangement from, Option.Placement placement, Cluster cluster) {
        return placement.part().inlets().stream()
                .map(inlet -> opened(placement, inlet, cluster.reach(), priced))
                .anyMatch(socket -> from.open().getOrDefault(socket, 0) <= cluster.size());
    }

    private Arrangement placed(Arrangement from, Option.Placement placement, int[] use, Cluster cluster) {
        Part part = placement.part();
        Route route = placement.route();
        Socket at = placement.at();
        Map<Socket, Integer> open = sockets();
        open.putAll(from.open());
        open.merge(at, -1, Integer::sum);
        open.values().removeIf(count -> count == 0);
        for (Part.Inlet inlet : part.inlets()) {
            open.merge(opened(placement, inlet, cluster.reach(), priced), 1, Integer::sum);
        }
        List<Option.Placement> placements = new ArrayList<>(from.placements());
        placements.add(placement);
        long own = part.capacitanceKnown() ? part.femtofarads() : Option.UNKNOWN_CAPACITANCE;
        return new Arrangement(
                from.jacks(),
                open,
                use,
                Math.min(Option.UNKNOWN_CAPACITANCE, from.femtofarads() + own + route.femtofarads()),
                from.items() + route.items() + 1,
                List.copyOf(placements));
    }

    /**
     * The open end that an inlet of a placed item is. Length beyond the cluster's reach does not count, so that ends which
     * serve alike are alike.
     */
    static Socket opened(Option.Placement placement, Part.Inlet inlet, long reach, boolean priced) {
        Socket at = placement.at();
        Route route = placement.route();
        boolean probe = placement.part().item().kind() == ItemKind.PROBE;
        long length = Math.min(reach, at.length() + route.length() + inlet.length());
        int depth = priced ? at.depth() + route.items() + 1 : 0;
        return new Socket(inlet.end(), inlet.also(), probe, length, inlet.fill(), depth);
    }

    /** The order in which an arrangement that beats others is soon met. */
    private static Queue<Arrangement> mostPlacesFirst() {
        return new PriorityQueue<>(Comparator.comparingInt(Arrangement::jacks)
                .thenComparingInt((Arrangement each) -> -each.places())
                .thenComparing(Arrangement::key));
    }

    /** Sockets in a fixed order, so that the same kit gives the same plan. */
    private static Map<Socket, Integer> sockets() {
        return new TreeMap<>(java.util.Comparator.comparing(Socket::end)
                .thenComparing(Socket::depth)
                .thenComparing(Socket::length)
                .thenComparing(Socket::fill)
                .thenComparing(Socket::probe)
                .thenComparing(socket -> socket.also().toString()));
    }

    /** Price of one chain, or of a link, which is a lead of its own and counts as one. */
    long cost(Leaf leaf, Route route, Socket socket) {
        int probes = leaf.kind() == Leaf.Kind.SURFACE ? route.probes() : 0;
        return Option.cost(seconds(leaf, route, socket), route.items() + 1 + socket.depth(), route.items(), probes);
    }

    /** Seconds for the joint at a patient connection. */
    private long seconds(Leaf leaf, Route route, Socket socket) {
        if (leaf.kind() != Leaf.Kind.PATIENT || price.isEmpty()) {
            return 0;
        }
        String end = socket.end();
        if (route.items() > 0) {
            Route.Step first = route.steps().get(0);
            end = first.part().inlets().get(first.inlet()).end();
        }
        return price.get().seconds(leaf.terminal(), end);
    }

    int[] count(int[] use, int jacks) {
        int[] counted = stock.of(use);
        counted[counted.length - 1] = jacks;
        return counted;
    }

    /** Arrangements and ways of seating looked at so far. */
    long work() {
        return work;
    }

    Bench bench() {
        return bench;
    }

    Routes routes() {
        return routes;
    }

    Stock stock() {
        return stock;
    }

    boolean priced() {
        return priced;
    }

    boolean capacitance() {
        return capacitance;
    }
}
