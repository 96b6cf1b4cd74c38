package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;

/**
 * Phase 10: a hookup in items and jacks.
 *
 * <p>Needs: a draft and its fitting. Gives: bundles, chains and earth paths. Method: for each cell the gathering items of
 * its option from the jack outwards, then its connections in panel order into the seats; item instances numbered in the
 * order in which they are met. Cost: linear.
 */
final class Build {
    private final Scene scene;
    private final Bench bench;
    private final Draft draft;
    private final Fit.Fitting fitting;
    private final String id;
    private final Map<Integer, Integer> taken = new HashMap<>();
    private final List<Chain> chains = new ArrayList<>();
    private final List<Bundle> bundles = new ArrayList<>();

    private Build(Scene scene, Bench bench, Draft draft, Fit.Fitting fitting, String id) {
        this.scene = scene;
        this.bench = bench;
        this.draft = draft;
        this.fitting = fitting;
        this.id = id;
    }

    static Hookup hookup(Scene scene, Fit fit, Draft draft, String id) {
        if (draft.cells() == 0 && !draft.earth()) {
            return new Hookup(id, List.of(), List.of(), List.of());
        }
        Fit.Fitting fitting = fit.best(draft);
        Bench bench = fit.tray(draft.duty()).bench();
        return new Build(scene, bench, draft, fitting, id).build();
    }

    /** An open end: its kind, and the items from it to the jack. */
    private record Open(Socket socket, List<String> items, int jack) {}

    private Hookup build() {
        Map<Integer, List<Integer>> jacks = jacks();
        jacks.keySet().stream()
                .sorted(Comparator.comparingInt(cell -> jacks.get(cell).get(0)))
                .forEach(cell -> wire(cell, jacks.get(cell)));
        bundles.sort(Comparator.comparingInt(bundle -> bundle.jacks().get(0)));
        List<Bundle> named = new ArrayList<>();
        for (Bundle each : bundles) {
            named.add(new Bundle(id + ".b" + (named.size() + 1), each.connections(), each.jacks(), each.links()));
        }
        List<String> order = panel();
        chains.sort(Comparator.comparingInt(chain -> order.indexOf(chain.connection())));
        return new Hookup(id, named, chains, earth());
    }

    /** Jack numbers by cell: as many as its option has trees, and one a place where cells are linked. */
    private Map<Integer, List<Integer>> jacks() {
        Map<Integer, List<Integer>> jacks = new LinkedHashMap<>();
        int next = 1;
        for (int cell : fitting.row()) {
            List<Integer> own = jacks.computeIfAbsent(cell, key -> new ArrayList<>());
            int trees = fitting.options().get(cell).layout().jacks();
            for (int tree = 0; tree < trees; tree++) {
                own.add(next++);
            }
        }
        return jacks;
    }

    private void wire(int cell, List<Integer> jacks) {
        Option.Layout layout = fitting.options().get(cell).layout();
        boolean linked = layout.seats().stream().anyMatch(seat -> seat.leaf().kind() == Leaf.Kind.LINK);
        List<Open> open = new ArrayList<>();
        Socket jack = Socket.jack(scene.jackSocket());
        for (int j = 0; j < layout.jacks(); j++) {
            open.add(new Open(jack, List.of(), jacks.get(j)));
        }
        long reach = layout.seats().stream()
                .mapToLong(seat -> seat.leaf().reach())
                .max()
                .orElse(0);
        for (Option.Placement placement : layout.placements()) {
            place(placement, open, reach);
        }
        int first = chains.size();
        Map<Leaf, List<Integer>> waiting = new HashMap<>();
        draft.connectionsOf(cell).stream()
                .forEach(e -> waiting.computeIfAbsent(scene.leaves().get(e), key -> new ArrayList<>())
                        .add(e));
        List<String> links = new ArrayList<>();
        for (Option.Seat seat : layout.seats()) {
            for (int i = 0; i < seat.count(); i++) {
                Open end = take(open, seat.at());
                List<String> items = new ArrayList<>(instances(seat.route()));
                if (seat.leaf().kind() == Leaf.Kind.LINK) {
                    links.addAll(items);
                    continue;
                }
                items.addAll(end.items());
                String name = scene.name(waiting.get(seat.leaf()).remove(0));
                chains.add(new Chain(name, items, end.jack(), items.size() + 1));
            }
        }
        if (!linked) {
            inPanelOrder(chains.subList(first, chains.size()));
        }
        List<String> order = panel();
        Map<Integer, List<String>> connections = new TreeMap<>();
        for (Chain chain : chains.subList(first, chains.size())) {
            connections.computeIfAbsent(chain.jack(), key -> new ArrayList<>()).add(chain.connection());
        }
        connections.forEach((number, names) -> {
            names.sort(Comparator.comparingInt(order::indexOf));
            bundles.add(new Bundle(id, names, linked ? jacks : List.of(number), linked ? links : List.of()));
        });
    }

    private List<String> panel() {
        return scene.connections().stream().map(each -> each.name()).toList();
    }

    /**
     * Gives the jacks of one cell to its trees in panel order, so that fewer wires cross. The jacks of a cell are always tied
     * together: which of them is whose makes no difference to any reading.
     */
    private void inPanelOrder(List<Chain> cell) {
        List<String> order = panel();
        Map<Integer, Integer> place = new TreeMap<>();
        for (Chain chain : cell) {
            place.merge(chain.jack(), order.indexOf(chain.connection()), Math::min);
        }
        List<Integer> jacks = new ArrayList<>(place.keySet());
        List<Integer> trees =
                jacks.stream().sorted(Comparator.comparing(place::get)).toList();
        cell.replaceAll(chain ->
                new Chain(chain.connection(), chain.items(), jacks.get(trees.indexOf(chain.jack())), chain.contacts()));
    }

    private void place(Option.Placement placement, List<Open> open, long reach) {
        Open end = take(open, placement.at());
        List<String> items = new ArrayList<>(instances(placement.route()));
        items.add(0, instance(placement.part()));
        items.addAll(end.items());
        for (Part.Inlet inlet : placement.part().inlets()) {
            Socket socket = Gather.opened(placement, inlet, reach, fitting.priced());
            open.add(new Open(socket, items, end.jack()));
        }
    }

    /** Takes an open end of the wanted kind, the first of equals. */
    private static Open take(List<Open> open, Socket wanted) {
        for (Open each : open) {
            if (each.socket().equals(wanted)) {
                open.remove(each);
                return each;
            }
        }
        throw new IllegalStateException("no open end " + wanted + " among " + open);
    }

    private List<String> instances(Route route) {
        return route.steps().stream().map(step -> instance(step.part())).toList();
    }

    private String instance(Part part) {
        int number = taken.merge(part.piece(), 1, Integer::sum);
        return bench.items().get(part.piece()).id() + "/" + number;
    }

    private List<EarthPath> earth() {
        return fitting.earth().map(choice -> earth(choice, this::instance)).orElse(List.of());
    }

    /** The earth leads in items, each piece named as it is met. */
    static List<EarthPath> earth(EarthLead.Choice choice, Function<Part, String> instances) {
        List<EarthPath> paths = new ArrayList<>();
        for (EarthLead.Lead lead : choice.leads()) {
            List<String> items = new ArrayList<>();
            lead.route().steps().forEach(step -> items.add(instances.apply(step.part())));
            Collections.reverse(items);
            paths.add(new EarthPath(lead.pole(), lead.point(), lead.socket(), items));
        }
        return paths;
    }
}
