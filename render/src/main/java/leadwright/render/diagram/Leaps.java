package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * The exchanges with the fewest crossings, where no line changes its height more than once.
 *
 * <p>Needs one hookup's net, the lines in the order in which they come from the device, and the sockets. From left to right a
 * drawing is a sequence of exchanges, in which lines leap over neighbours, each of which ends with every box gathering what
 * then lies together. Method: a shortest way through the orders of the lines, led by {@link LeapBound}: fewest crossings
 * first, then fewest exchanges, then fewest lines that leap. Lines to one end that lie together and may all still leap, or may all not,
 * are one strand. Cost: at most {@value #MOST} orders are looked at and {@value #KNOWN} kept. Proof: what it finds within that cost has the fewest
 * crossings of all drawings of this kind.
 */
final class Leaps {
    /** Orders looked at for a good way, by how greedily, and for the best one. */
    private static final int FEW = 600;

    private static final int[] GREED = {6, 3, 2};
    private static final int MOST = 4_000;
    private static final int KNOWN = 30_000;

    private static final long CROSSING = 1_000_000;
    private static final long EXCHANGE = 1_000;

    private final Net net;
    private final List<String> sockets;
    private final List<String> ends = new ArrayList<>();
    private final Map<String, Net.Line> byId = new HashMap<>();
    private final LeapBound bound;
    private final Map<String, Long> known = new HashMap<>();
    private final PriorityQueue<Node> queue;
    private final int greed;
    private long below;
    private long count;

    /** Where the lines stand after an exchange, and which have leapt in it. */
    record Exchanged(List<String> order, Set<String> leapt) {
        Exchanged {
            order = List.copyOf(order);
            leapt = Collections.unmodifiableSet(new LinkedHashSet<>(leapt));
        }
    }

    /**
     * @param strands as {@link Strands} pack them
     * @param open whether an exchange has begun and not ended
     * @param cost of the way here
     * @param estimate a bound on the whole way's cost, or what greed makes of it
     * @param more crossings that must still come
     * @param made in which order nodes were made, so that of equals always the same comes first
     */
    private record Node(
            String strands,
            boolean open,
            long cost,
            long estimate,
            int more,
            long made,
            Optional<Node> before,
            Move move) {}

    /** A strand that goes from one index to another; from -1 for the end of an exchange. */
    private record Move(int from, int to) {}

    private Leaps(Net net, List<String> sockets, long below, int greed) {
        this.net = net;
        this.sockets = List.copyOf(sockets);
        this.below = below;
        this.greed = greed;
        net.lines().forEach(line -> byId.put(line.id(), line));
        net.boxes().forEach(box -> ends.add(box.id()));
        ends.addAll(sockets);
        int[] rank = new int[ends.size()];
        boolean[] socket = new boolean[ends.size()];
        for (int end = 0; end < rank.length; end++) {
            String id = ends.get(end);
            socket[end] = sockets.contains(id);
            rank[end] = socket[end]
                    ? sockets.indexOf(id)
                    : net.outOf(id).stream()
                            .mapToInt(line -> sockets.indexOf(line.to()))
                            .min()
                            .orElse(-1);
        }
        this.bound = new LeapBound(rank, socket);
        this.queue = new PriorityQueue<>(Comparator.comparing(Node::estimate)
                .thenComparing(Comparator.comparing(Node::cost).reversed())
                .thenComparing(Node::made));
    }

    /**
     * The exchanges that cross least, if that is less than so many times; nothing where it is not, or where that stayed open.
     *
     * @param start the lines from the device
     */
    static Optional<List<Exchanged>> fewerThan(int below, Net net, List<String> start, List<String> sockets) {
        if (net.boxes().size() + sockets.size() > Strands.ENDS || start.size() > Strands.LINES) {
            return Optional.empty();
        }
        // A good way found at once keeps the search for the best one small.
        List<Node> ways = new ArrayList<>();
        long least = below * CROSSING;
        for (int greed : GREED) {
            new Leaps(net, sockets, least, greed).run(start, FEW).ifPresent(ways::add);
            least = ways.isEmpty() ? least : ways.get(ways.size() - 1).cost();
        }
        Leaps exact = new Leaps(net, sockets, least, 1);
        exact.run(start, MOST).ifPresent(ways::add);
        return ways.isEmpty() ? Optional.empty() : Optional.of(exact.replayed(ways.get(ways.size() - 1), start));
    }

    private Optional<Node> run(List<String> start, int most) {
        StringBuilder first = new StringBuilder();
        start.forEach(
                line -> first.append(Strands.strand(ends.indexOf(byId.get(line).to()), 1, false)));
        rest(gathered(Strands.merged(first)), 0, Optional.empty());
        for (int looked = 0; !queue.isEmpty() && looked < most && known.size() < KNOWN; ) {
            Node node = queue.remove();
            if (node.cost() > known.get(key(node.strands(), node.open()))) {
                continue;
            }
            if (!node.open() && done(node.strands())) {
                return Optional.of(node);
            }
            looked++;
            leap(node);
            if (node.open()) {
                rest(gathered(node.strands()), node.cost(), Optional.of(node));
            }
        }
        return Optional.empty();
    }

    private static String key(String strands, boolean open) {
        return (open ? "!" : ".") + strands;
    }

    /** The lines between two exchanges. */
    private void rest(String strands, long cost, Optional<Node> before) {
        if (cost < known.getOrDefault(key(strands, false), Long.MAX_VALUE)) {
            reach(strands, false, cost, bound.of(strands), before, new Move(-1, -1));
        }
    }

    private void reach(String strands, boolean open, long cost, int more, Optional<Node> before, Move move) {
        if (cost + more * CROSSING < below) {
            known.put(key(strands, open), cost);
            queue.add(new Node(strands, open, cost, cost + greed * more * CROSSING, more, count++, before, move));
        }
    }

    private void leap(Node node) {
        String strands = node.strands();
        for (int i = 0; i < strands.length(); i++) {
            char one = strands.charAt(i);
            if (Strands.leapt(one)) {
                continue;
            }
            int lines = Strands.lines(one);
            int end = Strands.end(one);
            int others = node.more() - bound.of(strands, end);
            for (int by = -1; by <= 1; by += 2) {
                StringBuilder now = new StringBuilder(strands);
                now.setCharAt(i, Strands.strand(end, lines, true));
                long cost = node.cost() + (node.open() ? 0 : EXCHANGE) + lines;
                for (int at = i + by; at >= 0 && at < now.length() && cost < below; at += by) {
                    cost += lines * Strands.lines(now.charAt(at)) * CROSSING;
                    char passed = now.charAt(at);
                    now.setCharAt(at, now.charAt(at - by));
                    now.setCharAt(at - by, passed);
                    String next = Strands.merged(now);
                    if (cost < known.getOrDefault(key(next, true), Long.MAX_VALUE)) {
                        reach(next, true, cost, others + bound.of(next, end), Optional.of(node), new Move(i, at));
                    }
                }
            }
        }
    }

    /** Every box that has all its lines together, in their place what leaves it. */
    private String gathered(String strands) {
        for (int box = 0; box < net.boxes().size(); box++) {
            int first = 0;
            while (first < strands.length() && Strands.end(strands.charAt(first)) != box) {
                first++;
            }
            int last = first;
            int lines = 0;
            while (last < strands.length() && Strands.end(strands.charAt(last)) == box) {
                lines += Strands.lines(strands.charAt(last++));
            }
            if (lines > 0 && lines == net.into(ends.get(box)).size()) {
                StringBuilder next = new StringBuilder(strands.substring(0, first));
                out(ends.get(box)).forEach(line -> next.append(Strands.strand(ends.indexOf(line.to()), 1, false)));
                return gathered(Strands.merged(next.append(strands.substring(last))));
            }
        }
        return strands;
    }

    private List<Net.Line> out(String box) {
        return net.outOf(box).stream()
                .sorted(Comparator.comparing(line -> sockets.indexOf(line.to())))
                .toList();
    }

    private boolean done(String strands) {
        int last = net.boxes().size();
        for (int i = 0; i < strands.length(); i++) {
            int end = Strands.end(strands.charAt(i));
            if (end < last) {
                return false;
            }
            last = end;
        }
        return true;
    }

    /** The way found, told in lines. */
    private List<Exchanged> replayed(Node end, List<String> start) {
        List<Move> moves = new ArrayList<>();
        for (Optional<Node> node = Optional.of(end);
                node.isPresent();
                node = node.get().before()) {
            moves.add(0, node.get().move());
        }
        List<Exchanged> exchanges = new ArrayList<>();
        List<String> lines = new ArrayList<>(start);
        Set<String> leapt = new LinkedHashSet<>();
        Set<String> now = new LinkedHashSet<>();
        for (Move move : moves) {
            if (move.from() < 0) {
                if (!now.isEmpty()) {
                    exchanges.add(new Exchanged(lines, now));
                    now.clear();
                }
                gather(lines);
                continue;
            }
            List<List<String>> strands = strands(lines, leapt);
            List<String> one = strands.remove(move.from());
            strands.add(move.to(), one);
            lines = new ArrayList<>(strands.stream().flatMap(List::stream).toList());
            leapt.addAll(one);
            now.addAll(one);
        }
        return exchanges;
    }

    private List<List<String>> strands(List<String> lines, Set<String> leapt) {
        List<List<String>> strands = new ArrayList<>();
        Optional<String> above = Optional.empty();
        for (String line : lines) {
            boolean same = above.filter(
                            other -> byId.get(other).to().equals(byId.get(line).to())
                                    && leapt.contains(other) == leapt.contains(line))
                    .isPresent();
            if (!same) {
                strands.add(new ArrayList<>());
            }
            strands.get(strands.size() - 1).add(line);
            above = Optional.of(line);
        }
        return strands;
    }

    private void gather(List<String> lines) {
        boolean any = true;
        while (any) {
            any = false;
            for (Net.Box box : net.boxes()) {
                List<String> into =
                        net.into(box.id()).stream().map(Net.Line::id).toList();
                int at = into.stream().mapToInt(lines::indexOf).min().orElse(-1);
                if (at >= 0
                        && at + into.size() <= lines.size()
                        && into.containsAll(lines.subList(at, at + into.size()))) {
                    lines.subList(at, at + into.size()).clear();
                    lines.addAll(at, out(box.id()).stream().map(Net.Line::id).toList());
                    any = true;
                }
            }
        }
    }
}
