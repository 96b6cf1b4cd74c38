package leadwright.planner.wire;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.kit.ItemKind;

/**
 * The kit laid out for one duty: bench, routes, what can run short, and the menus found so far.
 */
final class Tray {
    private final Bench bench;
    private final Routes routes;
    private final Stock stock;
    private final EarthLead earthLead;
    private final Gather gather;
    private final Gather pricedGather;
    private final String jackSocket;
    private Optional<Optional<PlainKit>> plain = Optional.empty();
    private final Map<Cluster, Menu> menus = new HashMap<>();
    private final Map<Cluster, Menu> priced = new HashMap<>();

    Tray(Scene scene, EarthLead earthLead, Duty duty, int mostArrangements) {
        this.bench = new Bench(scene.kit(), scene.connectors(), duty);
        this.routes = new Routes(bench);
        this.earthLead = earthLead;
        this.stock = Stock.of(scene, bench, routes, earthLead.mostUse());
        this.jackSocket = scene.jackSocket();
        boolean capacitance = duty.mains() && scene.hardCapacitance();
        Handling handling = new Handling(scene.connectors(), scene.house().times());
        this.gather = new Gather(bench, routes, stock, jackSocket, Optional.empty(), capacitance, mostArrangements);
        this.pricedGather =
                new Gather(bench, routes, stock, jackSocket, Optional.of(handling), capacitance, mostArrangements);
    }

    Menu menu(Cluster cluster, boolean withCost) {
        return withCost
                ? priced.computeIfAbsent(cluster, pricedGather::menu)
                : menus.computeIfAbsent(cluster, gather::menu);
    }

    /** The kit as numbers of places, where it is so plain; the leaves are the same at every call. */
    Optional<PlainKit> plain(List<Leaf> leaves) {
        if (plain.isEmpty()) {
            plain = Optional.of(PlainKit.of(this, leaves, jackSocket));
        }
        return plain.get();
    }

    /** Options for the earth lead; they take no jack. */
    List<EarthLead.Choice> earth() {
        return earthLead.choices();
    }

    /** No more links than there are items that go into a jack and lead on to an end that gathers. */
    int mostLinks() {
        Set<Integer> first = new TreeSet<>();
        for (Routes.Label label : routes.from(Leaf.link(jackSocket))) {
            boolean joins = bench.parts().stream()
                    .filter(Part::gathers)
                    .flatMap(part -> part.inlets().stream())
                    .anyMatch(inlet -> bench.mates(label.end(), inlet.end()));
            if (joins) {
                first.add(label.route().steps().get(0).part().piece());
            }
        }
        return first.stream()
                .mapToInt(piece -> bench.items().get(piece).stock())
                .sum();
    }

    /**
     * Pieces that may join jacks in a way that is not searched: a lead with a stackable plug that stands in two jacks itself,
     * and one between branches of two fan-outs that each stand in a jack of their own and do not go into one another.
     */
    int unsearchedLinks() {
        Leaf link = Leaf.link(jackSocket);
        Set<Integer> pieces = new TreeSet<>();
        for (Part part : bench.parts()) {
            boolean stands = part.gathers() && bench.mates(part.out(), jackSocket);
            if (stands && part.inlets().stream().anyMatch(inlet -> bench.takes(link, part, inlet))) {
                pieces.add(part.piece());
            }
            if (part.item().kind() != ItemKind.FAN_OUT && betweenFanOuts(part)) {
                pieces.add(part.piece());
            }
        }
        return pieces.stream()
                .mapToInt(piece -> bench.items().get(piece).stock())
                .sum();
    }

    private boolean betweenFanOuts(Part lead) {
        List<Part> fans = bench.parts().stream()
                .filter(part -> part.item().kind() == ItemKind.FAN_OUT && bench.mates(part.out(), jackSocket))
                .toList();
        for (Part one : fans) {
            for (Part other : fans) {
                String here = one.inlets().get(0).end();
                String there = other.inlets().get(0).end();
                if (bench.mates(lead.out(), here)
                        && bench.mates(lead.inlets().get(0).end(), there)
                        && !bench.mates(other.out(), here)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** What the menus have cost so far. */
    long work() {
        return gather.work() + pricedGather.work();
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
}
