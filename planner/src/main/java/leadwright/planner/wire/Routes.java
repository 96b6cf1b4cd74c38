package leadwright.planner.wire;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import leadwright.catalog.kit.ItemKind;

/**
 * Phase 3: ways from a terminal to an open socket through items in a row.
 *
 * <p>Needs: a bench. Gives: for a leaf every way worth having: no other way to the same end takes no more of every piece,
 * reaches as far and has no more capacitance. Method: labels in order of the number of items, dominated ones dropped.
 * Cost: in the number of labels, a few per end for real kits; the stock bounds it. Proof: a dropped label can be replaced
 * by the one that dominates it in any chain.
 */
final class Routes {
    private final Bench bench;
    private final int[] stock;
    private final Predicate<Part> allowed;
    private final Map<Leaf, List<Label>> labels = new HashMap<>();

    Routes(Bench bench) {
        this(bench, part -> true);
    }

    /** @param allowed which items may be used, for the earth lead those with the current rating */
    Routes(Bench bench, Predicate<Part> allowed) {
        this.bench = bench;
        this.stock = bench.stock();
        this.allowed = allowed;
    }

    /** What a row of items offers towards the tester. */
    record Label(String end, Route route) {}

    /** Every way worth having from the leaf into the socket, fewest items first. */
    List<Route> into(Leaf leaf, Socket socket) {
        List<Route> routes = new ArrayList<>();
        if (bench.takes(leaf, socket)) {
            routes.add(new Route(List.of(), new int[stock.length], 0, 0));
        }
        for (Label label : from(leaf)) {
            if (bench.mates(label.end(), socket.end())) {
                routes.add(label.route());
            }
        }
        return routes;
    }

    /** All labels of a leaf, fewest items first, then by the natural order of items. */
    List<Label> from(Leaf leaf) {
        return labels.computeIfAbsent(leaf, this::search);
    }

    private List<Label> search(Leaf leaf) {
        List<Label> found = new ArrayList<>();
        Map<String, List<Route>> byEnd = new HashMap<>();
        Deque<Label> open = new ArrayDeque<>();
        open.add(new Label(leaf.terminal(), new Route(List.of(), new int[stock.length], 0, 0)));
        while (!open.isEmpty()) {
            Label label = open.poll();
            for (Part part : bench.parts()) {
                if (label.route().use()[part.piece()] >= stock[part.piece()]
                        || !allowed.test(part)
                        || leaf.kind() == Leaf.Kind.LINK && part.item().kind() == ItemKind.FAN_OUT) {
                    continue;
                }
                for (int inlet = 0; inlet < part.inlets().size(); inlet++) {
                    if (part.converts(inlet)
                            && joins(leaf, label, part, part.inlets().get(inlet))) {
                        Label next = new Label(part.out(), longer(label.route(), part, inlet));
                        if (keep(byEnd.computeIfAbsent(next.end(), end -> new ArrayList<>()), next.route(), leaf)) {
                            found.add(next);
                            open.add(next);
                        }
                    }
                }
            }
        }
        return List.copyOf(found);
    }

    private boolean joins(Leaf leaf, Label label, Part part, Part.Inlet inlet) {
        return label.route().steps().isEmpty() ? bench.takes(leaf, part, inlet) : bench.mates(label.end(), inlet.end());
    }

    private static Route longer(Route route, Part part, int inlet) {
        List<Route.Step> steps = new ArrayList<>(route.steps());
        steps.add(new Route.Step(part, inlet));
        int[] use = route.use().clone();
        use[part.piece()]++;
        long capacitance =
                part.capacitanceKnown() ? route.femtofarads() + part.femtofarads() : Option.UNKNOWN_CAPACITANCE;
        return new Route(
                List.copyOf(steps),
                use,
                route.length() + part.inlets().get(inlet).length(),
                Math.min(Option.UNKNOWN_CAPACITANCE, capacitance));
    }

    /** Adds the route unless a route to the same end is as good in every respect. */
    private static boolean keep(List<Route> routes, Route next, Leaf leaf) {
        for (Route other : routes) {
            if (atMost(other.use(), next.use())
                    && Math.min(other.length(), leaf.reach()) >= Math.min(next.length(), leaf.reach())
                    && other.femtofarads() <= next.femtofarads()) {
                return false;
            }
        }
        routes.add(next);
        return true;
    }

    static boolean atMost(int[] one, int[] other) {
        for (int i = 0; i < one.length; i++) {
            if (one[i] > other[i]) {
                return false;
            }
        }
        return true;
    }
}
