package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Looks for an order of the rows with fewer crossings than one wire against another gives: wires that lie together are gathered
 * and then cross as one trunk.
 *
 * <p>Needs panel, nets, sockets. Gives an order of the rows inside the parts. Method: from the exact order of wires one by
 * one, each hookup that crosses tries its bundles in another order, one bundle moved at a time, with the rows ordered anew for
 * it; what crosses less over all hookups, as routed in one exchange or two, is kept, and the search begins
 * again; of all orders kept on the way that one is taken which crosses least in as many exchanges as it takes. Cost: at most {@value #MOST} orders are
 * looked at. Proof: none of the least; the start is among the orders compared, so it is never worse.
 */
final class RowSearch {
    private static final int MOST = 600;

    private final Panel panel;
    private final List<Net> nets;
    private final List<Socket> sockets;
    private final Set<List<String>> seen = new HashSet<>();
    private final List<Panel> way = new ArrayList<>();
    private Panel best;
    private int fewest;

    private RowSearch(Panel panel, List<Net> nets, List<Socket> sockets) {
        this.panel = panel;
        this.nets = nets;
        this.sockets = sockets;
    }

    static Panel improved(Panel panel, List<Net> nets, List<Socket> sockets) {
        return new RowSearch(panel, nets, sockets).run();
    }

    private Panel run() {
        List<List<List<String>>> bundles = new ArrayList<>();
        nets.forEach(net -> bundles.add(RowOrder.bundles(panel, net, sockets)));
        best = ordered(bundles);
        way.add(best);
        fewest = crossings(best);
        seen.add(pins(best));
        int tried = 0;
        boolean better = true;
        while (better && fewest > 1) {
            better = false;
            for (int h = 0; h < nets.size() && !better; h++) {
                if (crossings(best, nets.get(h)) == 0) {
                    continue;
                }
                for (List<List<String>> moved : oneMoved(bundles.get(h))) {
                    List<List<String>> before = bundles.set(h, moved);
                    if (tried++ < MOST && lessCrossed(ordered(bundles))) {
                        better = true;
                        break;
                    }
                    bundles.set(h, before);
                }
            }
        }
        return fewest > 1 ? fewestOfAll() : best;
    }

    /** Of the orders on the way here the one with the fewest crossings of all, the latest of equals. */
    private Panel fewestOfAll() {
        Panel chosen = best;
        long least = Long.MAX_VALUE;
        for (Panel each : way) {
            long crossings = nets.stream()
                    .mapToLong(
                            net -> Routing.of(net, Units.singles(each), sockets).crossings())
                    .sum();
            if (crossings <= least) {
                least = crossings;
                chosen = each;
            }
        }
        return chosen;
    }

    private boolean lessCrossed(Panel other) {
        if (!seen.add(pins(other))) {
            return false;
        }
        int crossings = crossings(other);
        if (crossings >= fewest) {
            return false;
        }
        best = other;
        way.add(other);
        fewest = crossings;
        return true;
    }

    private Panel ordered(List<List<List<String>>> bundles) {
        List<Map<String, Integer>> ranks = bundles.stream().map(RowOrder::ranks).toList();
        return RowOrder.byRanks(panel, nets, ranks);
    }

    private static List<String> pins(Panel panel) {
        return panel.pins().stream().map(Panel.Pin::id).toList();
    }

    private int crossings(Panel order) {
        return nets.stream().mapToInt(net -> crossings(order, net)).sum();
    }

    private int crossings(Panel order, Net net) {
        return Routing.quick(net, Units.singles(order), sockets).crossings();
    }

    /** The bundles with one of them at another place, for every one and every place. */
    private static List<List<List<String>>> oneMoved(List<List<String>> bundles) {
        List<List<List<String>>> all = new ArrayList<>();
        for (int from = 0; from < bundles.size(); from++) {
            for (int to = 0; to < bundles.size(); to++) {
                if (from != to) {
                    List<List<String>> moved = new ArrayList<>(bundles);
                    moved.add(to, moved.remove(from));
                    all.add(moved);
                }
            }
        }
        return all;
    }
}
