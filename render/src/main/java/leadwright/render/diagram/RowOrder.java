package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Phase 3: the order of the rows inside each part, one for the whole plan, so that the wires of all its hookups together cross
 * least. Parts keep their place on the panel; only wires of one part may change places, and do so only where that saves a
 * crossing.
 *
 * <p>Where every wire goes to its jack by itself the number of crossings is the number of pairs of pins on different jacks that
 * stand in the other order than their jacks; {@link RowSearch} also weighs bundles that cross as one trunk. Pairs in different parts do not depend on the order sought here, so each part is a linear ordering problem of its
 * own. Cost: pins that share a box in every hookup count as one class; up to {@value #EXACT} classes are ordered exactly
 * by dynamic programming over sets of classes; beyond that, by the best of two starts with repeated moving of single classes.
 */
final class RowOrder {
    static final int EXACT = 14;
    private static final long CROSSING = 1_000_000;

    private RowOrder() {}

    /** The order with the fewest crossings found: never more than the exact order of wires that go one by one has. */
    static Panel order(Panel panel, List<Net> nets, List<Socket> sockets) {
        return RowSearch.improved(panel, nets, sockets);
    }

    /** The order with the fewest pairs of wires out of the order of their jacks. */
    static Panel oneByOne(Panel panel, List<Net> nets, List<Socket> sockets) {
        return byRanks(
                panel,
                nets,
                nets.stream().map(net -> ranks(bundles(panel, net, sockets))).toList());
    }

    /** @param ranks the place that each pin's wire seeks, for each net */
    static Panel byRanks(Panel panel, List<Net> nets, List<Map<String, Integer>> ranks) {
        List<Panel.Group> groups = new ArrayList<>();
        for (Panel.Group group : panel.groups()) {
            List<Panel.Pin> free = new ArrayList<>();
            List<Panel.Pin> fixed = new ArrayList<>();
            for (Panel.Pin pin : group.pins()) {
                (mayMove(pin, nets) && fixed.isEmpty() ? free : fixed).add(pin);
            }
            List<Panel.Pin> ordered = new ArrayList<>(orderOf(free, nets, ranks));
            ordered.addAll(fixed);
            groups.add(group.with(ordered));
        }
        return new Panel(groups);
    }

    /** Patient pins, and what else of the device goes to a jack. */
    private static boolean mayMove(Panel.Pin pin, List<Net> nets) {
        return switch (pin.kind()) {
            case PATIENT, HOUSING, PORT -> true;
            case PROBE ->
                nets.stream()
                        .flatMap(net -> net.from(pin.id()).stream())
                        .noneMatch(line -> line.to().equals(Socket.TOUCH));
            case TOUCH, EARTH, INLET -> false;
        };
    }

    /** Pins of each bundle, wires that a fan-out gathers together; bundles in the order of their jacks. */
    static List<List<String>> bundles(Panel panel, Net net, List<Socket> sockets) {
        Map<String, Integer> file = new HashMap<>();
        panel.pins().forEach(pin -> file.put(pin.id(), file.size()));
        List<List<String>> bundles = new ArrayList<>();
        for (Socket socket : sockets) {
            List<String> leaves = leaves(net, socket.id(), file);
            if (!leaves.isEmpty()) {
                bundles.add(leaves);
            }
        }
        return bundles;
    }

    /** Position of each pin where bundles stand in this order. */
    static Map<String, Integer> ranks(List<List<String>> bundles) {
        Map<String, Integer> ranks = new LinkedHashMap<>();
        bundles.forEach(bundle -> bundle.forEach(pin -> ranks.putIfAbsent(pin, ranks.size())));
        return ranks;
    }

    private static List<String> leaves(Net net, String end, Map<String, Integer> file) {
        List<List<String>> children = new ArrayList<>();
        for (Net.Line line : net.into(end)) {
            children.add(file.containsKey(line.from()) ? List.of(line.from()) : leaves(net, line.from(), file));
        }
        children.sort(Comparator.comparing(
                child -> child.stream().mapToInt(file::get).min().orElse(Integer.MAX_VALUE)));
        return children.stream().flatMap(List::stream).toList();
    }

    private static List<Panel.Pin> orderOf(List<Panel.Pin> pins, List<Net> nets, List<Map<String, Integer>> ranks) {
        Map<List<String>, List<Panel.Pin>> classes = new LinkedHashMap<>();
        for (Panel.Pin pin : pins) {
            classes.computeIfAbsent(ends(pin, nets), each -> new ArrayList<>()).add(pin);
        }
        List<List<Panel.Pin>> blocks = new ArrayList<>(classes.values());
        List<List<String>> ends = new ArrayList<>(classes.keySet());
        int n = blocks.size();
        Map<String, Integer> position = new HashMap<>();
        pins.forEach(pin -> position.put(pin.id(), position.size()));
        long[][] cost = new long[n][n];
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                cost[a][b] = a == b ? 0 : cost(blocks.get(a), blocks.get(b), ends.get(a), ends.get(b), ranks, position);
            }
        }
        int[] order = n <= EXACT ? exact(cost) : improved(cost);
        List<Panel.Pin> ordered = new ArrayList<>();
        for (int block : order) {
            ordered.addAll(blocks.get(block));
        }
        return ordered;
    }

    /** Where a pin's wire ends in each hookup: pins alike in all of them need no order among themselves. */
    private static List<String> ends(Panel.Pin pin, List<Net> nets) {
        List<String> ends = new ArrayList<>();
        for (Net net : nets) {
            ends.add(net.from(pin.id())
                    .map(line -> line.to().startsWith("jack-") ? line.to() + " " + pin.id() : line.to())
                    .orElse(""));
        }
        return ends;
    }

    /** What it costs to have all of {@code a} above all of {@code b}: crossings first, then departures from the file's order. */
    private static long cost(
            List<Panel.Pin> a,
            List<Panel.Pin> b,
            List<String> aEnds,
            List<String> bEnds,
            List<Map<String, Integer>> ranks,
            Map<String, Integer> position) {
        long cost = 0;
        for (Panel.Pin above : a) {
            for (Panel.Pin below : b) {
                for (int h = 0; h < ranks.size(); h++) {
                    Map<String, Integer> rank = ranks.get(h);
                    boolean both = rank.containsKey(above.id()) && rank.containsKey(below.id());
                    if (both && !aEnds.get(h).equals(bEnds.get(h)) && rank.get(above.id()) > rank.get(below.id())) {
                        cost += CROSSING;
                    }
                }
                cost += position.get(above.id()) > position.get(below.id()) ? 1 : 0;
            }
        }
        return cost;
    }

    /** The order with the least sum of {@code cost[a][b]} over all pairs with a before b; the earliest of equals. */
    static int[] exact(long[][] cost) {
        int n = cost.length;
        long[] best = new long[1 << n];
        int[] last = new int[1 << n];
        for (int set = 1; set < 1 << n; set++) {
            best[set] = Long.MAX_VALUE;
            for (int b = 0; b < n; b++) {
                if ((set & 1 << b) == 0) {
                    continue;
                }
                long sum = best[set ^ 1 << b];
                for (int a = 0; a < n; a++) {
                    sum += (set & 1 << a) != 0 ? cost[a][b] : 0;
                }
                if (sum < best[set]) {
                    best[set] = sum;
                    last[set] = b;
                }
            }
        }
        int[] order = new int[n];
        int set = (1 << n) - 1;
        for (int i = n - 1; i >= 0; i--) {
            order[i] = last[set];
            set ^= 1 << last[set];
        }
        return order;
    }

    /** A good order, by moving single ones from two starts as long as that helps. */
    static int[] improved(long[][] cost) {
        int n = cost.length;
        List<Integer> asIs = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            asIs.add(i);
        }
        List<Integer> byWins = new ArrayList<>(asIs);
        byWins.sort(Comparator.comparing((Integer i) -> {
            long balance = 0;
            for (int j = 0; j < n; j++) {
                balance += cost[i][j] - cost[j][i];
            }
            return balance;
        }));
        List<Integer> first = settled(asIs, cost);
        List<Integer> second = settled(byWins, cost);
        List<Integer> chosen = sum(second, cost) < sum(first, cost) ? second : first;
        return chosen.stream().mapToInt(Integer::intValue).toArray();
    }

    private static List<Integer> settled(List<Integer> start, long[][] cost) {
        List<Integer> order = new ArrayList<>(start);
        boolean better = true;
        while (better) {
            better = false;
            for (int from = 0; from < order.size(); from++) {
                int moved = order.get(from);
                long gain = 0;
                long bestGain = 0;
                int bestTo = from;
                for (int to = from + 1; to < order.size(); to++) {
                    gain += cost[moved][order.get(to)] - cost[order.get(to)][moved];
                    if (gain > bestGain) {
                        bestGain = gain;
                        bestTo = to;
                    }
                }
                gain = 0;
                for (int to = from - 1; to >= 0; to--) {
                    gain += cost[order.get(to)][moved] - cost[moved][order.get(to)];
                    if (gain > bestGain) {
                        bestGain = gain;
                        bestTo = to;
                    }
                }
                if (bestTo != from) {
                    order.remove(from);
                    order.add(bestTo, moved);
                    better = true;
                }
            }
        }
        return order;
    }

    private static long sum(List<Integer> order, long[][] cost) {
        long sum = 0;
        for (int i = 0; i < order.size(); i++) {
            for (int j = i + 1; j < order.size(); j++) {
                sum += cost[order.get(i)][order.get(j)];
            }
        }
        return sum;
    }
}
