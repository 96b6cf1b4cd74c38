package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.NaturalOrder;

/**
 * Phase 13a: what keeps one connection from any jack, however many pieces of everything there are.
 *
 * <p>Needs: scene, a connection, a duty. Gives: nothing where some chain of the kit's kinds of item would do; else what
 * stands in the way: mating, rating or reach, in this order, with the items named. Method: the routes of phase 3 for the
 * connection alone, asking for less and less. Cost: one search of routes a kind of terminal and duty.
 */
final class Barrier {
    private final Scene scene;
    private final Kit plenty;

    private record Asked(Leaf leaf, Duty duty) {}

    private final Map<Asked, Optional<Block>> known = new HashMap<>();
    private final Map<Duty, Bench> benches = new HashMap<>();
    private final Map<Duty, Routes> routes = new HashMap<>();

    enum Kind {
        MATING,
        RATING,
        REACH
    }

    /**
     * Equal for connections that the same thing would help.
     *
     * @param items ids of the items concerned, in natural order
     * @param reach what the chain must be long, in micrometres
     */
    record Block(Kind kind, Leaf leaf, Duty duty, List<String> items, long reach, String because) {}

    /** @param plenty the kit with so many more of everything that the stock is no matter */
    Barrier(Scene scene, Kit plenty) {
        this.scene = scene;
        this.plenty = plenty;
    }

    Optional<Block> of(int connection, Duty duty) {
        return of(scene.leaves().get(connection), duty);
    }

    Optional<Block> of(Leaf leaf, Duty duty) {
        return known.computeIfAbsent(new Asked(leaf, duty), asked -> search(leaf, duty));
    }

    private Optional<Block> search(Leaf leaf, Duty duty) {
        Leaf near = new Leaf(leaf.kind(), leaf.terminal(), 0);
        if (into(near, Duty.ORDINARY).isEmpty()) {
            return Optional.of(mating(near));
        }
        if (into(near, duty).isEmpty()) {
            return Optional.of(rating(near, duty));
        }
        List<Route> chains = into(leaf, duty);
        long longest = chains.stream().mapToLong(Route::length).max().orElse(0);
        return leaf.reach() == 0 || longest >= leaf.reach()
                ? Optional.empty()
                : Optional.of(reach(leaf, duty, longest));
    }

    private List<Route> into(Leaf leaf, Duty duty) {
        return routes.computeIfAbsent(duty, each -> new Routes(bench(each)))
                .into(leaf, Socket.jack(scene.jackSocket()));
    }

    private Bench bench(Duty duty) {
        return benches.computeIfAbsent(duty, each -> new Bench(plenty, scene.connectors(), each));
    }

    private Block mating(Leaf leaf) {
        Bench bench = bench(Duty.ORDINARY);
        SortedSet<String> goOn = new TreeSet<>(NaturalOrder.IDS);
        for (Part part : bench.parts()) {
            if (part.inlets().stream().anyMatch(inlet -> bench.takes(leaf, part, inlet))) {
                goOn.add(part.item().id());
            }
        }
        String because;
        if (leaf.kind() == Leaf.Kind.TOUCH) {
            because = goOn.isEmpty()
                    ? "the kit has no probe to touch with"
                    : "no item leads from probe " + quoted(goOn) + " to a jack (" + scene.jackSocket() + ")";
        } else {
            because = goOn.isEmpty()
                    ? "no item of the kit goes on " + leaf.terminal()
                    : quoted(goOn) + (goOn.size() == 1 ? " goes" : " go") + " on " + leaf.terminal()
                            + ", and no item leads on from there to a jack (" + scene.jackSocket() + ")";
        }
        return new Block(Kind.MATING, leaf, Duty.ORDINARY, List.copyOf(goOn), 0, because);
    }

    private Block rating(Leaf leaf, Duty duty) {
        Bench asked = bench(duty);
        SortedSet<String> weak = new TreeSet<>(NaturalOrder.IDS);
        for (Route route : into(leaf, Duty.ORDINARY)) {
            route.steps().stream()
                    .map(step -> step.part().item())
                    .filter(item -> !asked.usable(item))
                    .forEach(item -> weak.add(item.id()));
        }
        String volts = volts(duty).text();
        List<String> faults = new ArrayList<>();
        for (String id : weak) {
            faults.add("'" + id + "' " + fault(plenty.item(id).orElseThrow(), duty));
        }
        String what = duty.insulation() ? "for the insulation voltage, " : "for mains on an applied part, ";
        String because = "no chain from " + leaf.terminal() + " to a jack is fit " + what + volts + ": "
                + (faults.isEmpty() ? "a joint would be bare or is rated for less" : String.join(", ", faults));
        return new Block(Kind.RATING, leaf, duty, List.copyOf(weak), 0, because);
    }

    private static String fault(KitItem item, Duty duty) {
        if (item.voltage().isEmpty()) {
            return "states no voltage";
        }
        Quantity rated = item.voltage().get();
        return rated.amount() < duty.microvolts() ? "is rated for " + rated.text() : "has a bare end";
    }

    private Block reach(Leaf leaf, Duty duty, long longest) {
        String because = "with " + leaf.terminal() + " a chain must be " + metres(leaf.reach())
                + " long (the distance and a fifth, less the device's own cable); the longest that the kit has is "
                + metres(longest);
        return new Block(Kind.REACH, leaf, duty, List.of(), leaf.reach(), because);
    }

    static Quantity volts(Duty duty) {
        return Quantity.of(Dimension.VOLTAGE, duty.microvolts());
    }

    static String metres(long micrometres) {
        return Quantity.of(Dimension.LENGTH, micrometres).text();
    }

    private static String quoted(SortedSet<String> ids) {
        return "'" + String.join("', '", ids) + "'";
    }
}
