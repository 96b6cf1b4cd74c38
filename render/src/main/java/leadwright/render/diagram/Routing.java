package leadwright.render.diagram;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Phase 5: in which column each box gathers its lines, and which lines must change places first.
 *
 * <p>Needs the rows in their order and one hookup's net. Boxes whose lines lie next to each other gather them where they are:
 * no bend, no crossing, and what is inside another bundle is gathered before that one, so that it later crosses
 * as one trunk. If lines are then left in another order than their boxes and sockets want, one exchange puts them right, or
 * two where that crosses less: the first only parts the bundles, each to the side where it passes fewer lines, and the second,
 * behind the fan-outs, brings the trunks into the order of the jacks. In an exchange the longest run of lines already in
 * order stays straight, each of the others is moved once, and two lines cross exactly when their order changes. No line is
 * moved twice.
 *
 * @param start lines from the pins, top to bottom
 * @param columns boxes of each column, from the device on
 * @param exchanges none, one or two
 * @param end lines into the sockets, top to bottom
 */
record Routing(List<String> start, List<List<String>> columns, List<Exchange> exchanges, List<String> end) {

    Routing {
        start = List.copyOf(start);
        columns = List.copyOf(columns);
        exchanges = List.copyOf(exchanges);
        end = List.copyOf(end);
    }

    /**
     * A place where lines change their order.
     *
     * @param column the column before which this is; the number of columns for before the sockets
     * @param before lines as they come, top to bottom
     * @param after the same lines in their new order
     * @param movers those of them that leave their height
     */
    record Exchange(int column, List<String> before, List<String> after, Set<String> movers) {
        Exchange {
            before = List.copyOf(before);
            after = List.copyOf(after);
            movers = Collections.unmodifiableSet(new LinkedHashSet<>(movers));
        }

        /** Pairs of lines that it turns round. */
        int crossings() {
            int crossings = 0;
            for (int i = 0; i < before.size(); i++) {
                for (int j = i + 1; j < before.size(); j++) {
                    crossings += after.indexOf(before.get(i)) > after.indexOf(before.get(j)) ? 1 : 0;
                }
            }
            return crossings;
        }
    }

    int crossings() {
        return exchanges.stream().mapToInt(Exchange::crossings).sum();
    }

    /** The exchange in which a line is moved. */
    Optional<Exchange> exchangeOf(String line) {
        return exchanges.stream().filter(each -> each.movers().contains(line)).findFirst();
    }

    private boolean movesTwice() {
        return exchanges.stream().mapToInt(each -> each.movers().size()).sum()
                > exchanges.stream()
                        .flatMap(each -> each.movers().stream())
                        .distinct()
                        .count();
    }

    /** With the fewest crossings of all, as far as that is found. */
    static Routing of(Net net, List<Unit> rows, List<Socket> sockets) {
        Routing quick = quick(net, rows, sockets);
        if (quick.crossings() < 2) {
            return quick;
        }
        List<String> ids = sockets.stream().map(Socket::id).toList();
        return Leaps.fewerThan(quick.crossings(), net, quick.start(), ids)
                .map(known -> new Gathering(net, rows, sockets).run(known))
                .orElse(quick);
    }

    /** With one exchange or two. */
    static Routing quick(Net net, List<Unit> rows, List<Socket> sockets) {
        Routing once = new Gathering(net, rows, sockets).run(false);
        if (once.crossings() < 2) {
            return once;
        }
        Routing twice = new Gathering(net, rows, sockets).run(true);
        return twice.crossings() < once.crossings() && !twice.movesTwice() ? twice : once;
    }
}
