package leadwright.planner.wire;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

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
    private final Map<Cluster, Menu> menus = new HashMap<>();
    private final Map<Cluster, Menu> priced = new HashMap<>();

    Tray(Scene scene, EarthLead earthLead, Duty duty) {
        this.bench = new Bench(scene.kit(), scene.connectors(), duty);
        this.routes = new Routes(bench);
        this.earthLead = earthLead;
        this.stock = Stock.of(scene, bench, routes, earthLead.mostUse());
        String socket = scene.jackSocket();
        boolean capacitance = duty.mains() && scene.hardCapacitance();
        this.gather = new Gather(bench, routes, stock, socket, false, capacitance);
        this.pricedGather = new Gather(bench, routes, stock, socket, true, capacitance);
    }

    Menu menu(Cluster cluster, boolean withCost) {
        return withCost
                ? priced.computeIfAbsent(cluster, pricedGather::menu)
                : menus.computeIfAbsent(cluster, gather::menu);
    }

    /** Options for the earth lead; they take no jack. */
    List<EarthLead.Choice> earth() {
        return earthLead.choices();
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
