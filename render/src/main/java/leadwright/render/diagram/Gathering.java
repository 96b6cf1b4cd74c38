package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Follows the lines of one hookup from the device to the sockets: boxes gather them, exchanges put them in order. */
final class Gathering {
    private final Net net;
    private final List<Socket> sockets;
    private final Map<String, Net.Line> byId = new HashMap<>();
    private final List<String> start = new ArrayList<>();
    private final List<List<String>> columns = new ArrayList<>();
    private final Set<String> open = new LinkedHashSet<>();
    private final List<Routing.Exchange> exchanges = new ArrayList<>();
    private List<String> lines;

    Gathering(Net net, List<Unit> rows, List<Socket> sockets) {
        this.net = net;
        this.sockets = sockets;
        net.lines().forEach(line -> byId.put(line.id(), line));
        rows.forEach(row -> net.from(row.id()).ifPresent(line -> start.add(line.id())));
        net.boxes().forEach(box -> open.add(box.id()));
        lines = new ArrayList<>(start);
    }

    /** With one exchange, or with two, the first of which only parts the bundles. */
    Routing run(boolean partFirst) {
        gather();
        if (partFirst) {
            exchange(parted());
        }
        exchange(target());
        return routing();
    }

    /** With exchanges that are known. */
    Routing run(List<Leaps.Exchanged> known) {
        gather();
        for (Leaps.Exchanged each : known) {
            exchanges.add(new Routing.Exchange(columns.size(), lines, each.order(), each.leapt()));
            lines = new ArrayList<>(each.order());
            gather();
        }
        return routing();
    }

    private Routing routing() {
        if (!open.isEmpty()) {
            throw new IllegalStateException("boxes that no line order gathers: " + open);
        }
        return new Routing(start, settle(), exchanges, lines);
    }

    private void exchange(List<String> target) {
        if (target.equals(lines)) {
            return;
        }
        exchanges.add(new Routing.Exchange(columns.size(), lines, target, movers(lines, target)));
        lines = new ArrayList<>(target);
        gather();
    }

    /** An order in which every box finds its lines together, bundles in whatever order crosses least in all. */
    private List<String> parted() {
        List<List<String>> blocks = new ArrayList<>();
        List<Integer> outs = new ArrayList<>();
        Set<String> placed = new HashSet<>();
        for (Socket socket : sockets) {
            List<String> block =
                    leaves(socket.id()).stream().filter(placed::add).toList();
            if (!block.isEmpty()) {
                blocks.add(block);
                outs.add(net.into(socket.id()).size());
            }
        }
        if (placed.size() < lines.size() || blocks.size() > BlockOrder.SETS) {
            return target();
        }
        return BlockOrder.leastInAll(blocks, outs, lines::indexOf);
    }

    /** Gathers, column after column, every box whose lines lie together. */
    private void gather() {
        List<String> ready = ready();
        while (!ready.isEmpty()) {
            columns.add(ready);
            for (String box : ready) {
                Set<String> into = into(box);
                int at = (int)
                        lines.stream().takeWhile(line -> !into.contains(line)).count();
                lines.removeAll(into);
                lines.addAll(
                        at,
                        net.outOf(box).stream()
                                .sorted(Comparator.comparing(line -> socketIndex(line)))
                                .map(Net.Line::id)
                                .toList());
                open.remove(box);
            }
            ready = ready();
        }
    }

    private List<String> ready() {
        return open.stream().filter(box -> together(into(box))).toList();
    }

    private Set<String> into(String box) {
        Set<String> into = new HashSet<>();
        net.into(box).forEach(line -> into.add(line.id()));
        return into;
    }

    private boolean together(Set<String> some) {
        int first = -1;
        int last = -1;
        for (int i = 0; i < lines.size(); i++) {
            if (some.contains(lines.get(i))) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        return lines.containsAll(some) && last - first == some.size() - 1;
    }

    /** The order in which every box finds its lines together and the sockets stand in theirs. */
    private List<String> target() {
        List<List<String>> blocks = new ArrayList<>();
        Set<String> placed = new HashSet<>();
        for (Socket socket : sockets) {
            // A box that is linked to a second jack is met twice.
            blocks.add(leaves(socket.id()).stream().filter(placed::add).toList());
        }
        // A box that leads on to another sheet has no socket here: it stands where it crosses least, never inside
        // another.
        for (Net.Box box : net.boxes()) {
            if (open.contains(box.id()) && net.outOf(box.id()).isEmpty()) {
                List<String> block = leaves(box.id());
                blocks.add(BlockOrder.leastCrossedPlace(blocks, block, lines::indexOf), block);
            }
        }
        return blocks.stream().flatMap(List::stream).toList();
    }

    private List<String> leaves(String end) {
        List<List<String>> children = new ArrayList<>();
        for (Net.Line line : net.into(end)) {
            if (lines.contains(line.id())) {
                children.add(List.of(line.id()));
            } else if (open.contains(line.from())) {
                children.add(leaves(line.from()));
            }
        }
        return BlockOrder.fewest(children, line -> lines.indexOf(line));
    }

    /** All but a longest run of lines whose order stays; lines into boxes stay before others where there is a choice. */
    private Set<String> movers(List<String> before, List<String> after) {
        int n = before.size();
        int[] place = new int[n];
        long[] best = new long[n];
        int[] previous = new int[n];
        int end = 0;
        for (int i = 0; i < n; i++) {
            place[i] = after.indexOf(before.get(i));
            boolean boxed = !sockets.stream()
                    .map(Socket::id)
                    .toList()
                    .contains(byId.get(before.get(i)).to());
            long weight = moved(before.get(i)) ? 1_000_000 : 1000 + (boxed ? 1 : 0);
            best[i] = weight;
            previous[i] = -1;
            for (int j = 0; j < i; j++) {
                if (place[j] < place[i] && best[j] + weight > best[i]) {
                    best[i] = best[j] + weight;
                    previous[i] = j;
                }
            }
            end = best[i] > best[end] ? i : end;
        }
        Set<String> movers = new LinkedHashSet<>(before);
        for (int i = end; i >= 0; i = previous[i]) {
            movers.remove(before.get(i));
        }
        return movers;
    }

    private boolean moved(String line) {
        return exchanges.stream().anyMatch(each -> each.movers().contains(line));
    }

    /** Moves each box as near to the tester as what follows it allows, so that boxes of a kind share a column. */
    private List<List<String>> settle() {
        Map<String, Integer> column = new HashMap<>();
        for (int c = columns.size() - 1; c >= 0; c--) {
            int own = c;
            int next = exchanges.stream()
                    .mapToInt(Routing.Exchange::column)
                    .filter(each -> each > own)
                    .min()
                    .orElse(columns.size());
            for (String box : columns.get(c)) {
                // What leads on to another sheet may stand inside another box's wires, so it stays before that box.
                int latest = net.outOf(box).isEmpty() ? c : next - 1;
                for (Net.Line out : net.outOf(box)) {
                    latest = Math.min(
                            latest, Optional.ofNullable(column.get(out.to())).orElse(columns.size()) - 1);
                }
                column.put(box, latest);
            }
        }
        List<List<String>> settled = new ArrayList<>();
        for (int c = 0; c < columns.size(); c++) {
            int here = c;
            settled.add(net.boxes().stream()
                    .map(Net.Box::id)
                    .filter(box -> column.get(box) == here)
                    .sorted(Comparator.comparing(box -> order(box)))
                    .toList());
        }
        return settled;
    }

    private int order(String box) {
        return net.boxes().stream().map(Net.Box::id).toList().indexOf(box);
    }

    private int socketIndex(Net.Line line) {
        return sockets.stream().map(Socket::id).toList().indexOf(line.to());
    }
}
