package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Lays the lines of one hookup on rows of given heights, and notes where these are too close. */
final class Laying {
    /** Half the height of a box on one row. */
    private static final double LOW = Page.ITEM_BOX / 2;

    private final Fit fit;
    private final List<Row> rows;
    private final double top = Page.TOP + Page.STRIP;
    private final double bottom;
    private final Net net;
    private final Routing routing;
    private final List<Socket> sockets;
    private final Map<Lie.Pair, Double> apart;
    private final Map<String, Net.Line> lines = new HashMap<>();
    private final Map<String, Integer> rowOf = new HashMap<>();
    private final Map<String, Double> from = new HashMap<>();
    private final Map<String, Double> to = new HashMap<>();
    private final Map<String, Lie.Span> boxes = new HashMap<>();
    private Optional<Lie.Shortage> shortage = Optional.empty();

    /** @param apart room that pairs of lanes need beyond the usual */
    Laying(
            Fit fit,
            List<Row> rows,
            Heights heights,
            Net net,
            Routing routing,
            List<Socket> sockets,
            Map<Lie.Pair, Double> apart) {
        this.fit = fit;
        this.rows = rows;
        this.bottom = heights.bottom();
        this.net = net;
        this.routing = routing;
        this.sockets = sockets;
        this.apart = apart;
        net.lines().forEach(line -> lines.put(line.id(), line));
        for (int i = 0; i < rows.size(); i++) {
            String id = rows.get(i).unit().id();
            rowOf.put(id, i);
            if (lines.containsKey(id)) {
                from.put(id, heights.rows().get(i));
                to.put(id, heights.rows().get(i));
            }
        }
    }

    Lie lie() {
        for (int column = 0; column <= routing.columns().size(); column++) {
            for (Routing.Exchange exchange : routing.exchanges()) {
                if (exchange.column() == column) {
                    exchange(exchange);
                }
            }
            if (column < routing.columns().size()) {
                routing.columns().get(column).forEach(this::box);
            }
        }
        strip();
        return new Lie(from, to, boxes, shortage);
    }

    private void box(String box) {
        List<Double> into =
                net.into(box).stream().map(line -> to.get(line.id())).sorted().toList();
        double first = into.get(0);
        double last = into.get(into.size() - 1);
        double above = net.into(box).stream()
                .mapToDouble(line -> to.get(line.id()) - halfHeight(line.from()))
                .min()
                .orElseThrow();
        double below = net.into(box).stream()
                .mapToDouble(line -> to.get(line.id()) + halfHeight(line.from()))
                .max()
                .orElseThrow();
        boxes.put(box, new Lie.Span(above, below));
        List<String> out =
                new ArrayList<>(net.outOf(box).stream().map(Net.Line::id).toList());
        out.sort(Comparator.comparing(routing.end()::indexOf));
        for (int i = 0; i < out.size(); i++) {
            double y = (first + last) / 2 + (i - (out.size() - 1) / 2.0) * fit.jack();
            from.put(out.get(i), y);
            to.put(out.get(i), y);
        }
    }

    /** What a fan-out takes above and below the line from a pin or box. */
    private double halfHeight(String from) {
        return Optional.ofNullable(rowOf.get(from))
                .map(rows::get)
                .filter(row -> row.unit().ribbon())
                .map(row -> row.height() / 2 - 0.4)
                .orElse(LOW);
    }

    /** Gives every line that changes places a lane between its new neighbours. */
    private void exchange(Routing.Exchange exchange) {
        List<String> after = exchange.after();
        int i = 0;
        while (i < after.size()) {
            int end = i;
            while (end < after.size() && exchange.movers().contains(after.get(end))) {
                end++;
            }
            if (end > i) {
                lanes(exchange, i, end);
            }
            i = end + 1;
        }
    }

    private void lanes(Routing.Exchange exchange, int begin, int end) {
        List<String> after = exchange.after();
        double[] need = new double[end - begin + 1];
        double sum = 0;
        for (int k = begin; k <= end; k++) {
            need[k - begin] = need(line(after, k - 1), line(after, k));
            sum += need[k - begin];
        }
        double high = begin == 0 ? top : to.get(after.get(begin - 1));
        double low = end == after.size() ? bottom : to.get(after.get(end));
        if (low - high - sum < -1e-9) {
            lackOfRow(after, end, sum - (low - high));
        }
        // Each lane lies as near to where its line comes from as its neighbours let it.
        double least = high;
        double left = sum;
        for (int k = begin; k < end; k++) {
            least += need[k - begin];
            left -= need[k - begin];
            double y = Math.max(least, Math.min(from.get(after.get(k)), low - left));
            y = besideRows(exchange, y, least, after.get(k));
            if (y > low - left + 1e-9) {
                lackOfRow(after, end, y - (low - left));
            }
            to.put(after.get(k), y);
            least = Math.max(least, y);
        }
    }

    /** A lane that does not lie on the row from which another line comes. */
    private double besideRows(Routing.Exchange exchange, double y, double least, String line) {
        for (String other : exchange.movers()) {
            double row = from.get(other);
            if (!other.equals(line) && Math.abs(row - y) < 1.2) {
                return y < row && row - 1.2 >= least ? row - 1.2 : row + 1.2;
            }
        }
        return y;
    }

    private static Optional<String> line(List<String> order, int at) {
        return at >= 0 && at < order.size() ? Optional.of(order.get(at)) : Optional.empty();
    }

    /** Least distance of two neighbouring lines; an absent one stands for the upper or lower end of the rows. */
    private double need(Optional<String> above, Optional<String> below) {
        int high = above.map(this::socket).orElse(-1);
        int low = below.map(this::socket).orElse(sockets.size());
        if (above.isEmpty() || below.isEmpty()) {
            boolean box = above.isPresent() && high < 0 || below.isPresent() && low < 0;
            double strip = fit.jack() * (Lie.slots(sockets, high, low, fit.shortRuns()) + 0.5);
            return box ? fit.lane() / 2 + 1 : Math.max(fit.lane() / 2 + 1, strip);
        }
        String upper = above.get();
        String lower = below.get();
        double more = apart.getOrDefault(new Lie.Pair(net.hookup(), upper, lower), 0.0);
        if (lines.get(upper).to().equals(lines.get(lower).to())) {
            return fit.lane() + more;
        }
        if (high < 0 && low < 0) {
            // Two fan-outs, one above the other.
            return Math.max(fit.lane(), Page.ITEM_BOX + Page.JACK_GAP) + more;
        }
        if (high < 0 || low < 0) {
            return fit.lane() + more;
        }
        double strip = fit.jack() * (Lie.slots(sockets, high, low, fit.shortRuns()) + 1);
        return Math.max(fit.lane(), strip) + more;
    }

    private int socket(String line) {
        String end = lines.get(line).to();
        for (int i = 0; i < sockets.size(); i++) {
            if (sockets.get(i).id().equals(end)) {
                return i;
            }
        }
        return -1;
    }

    /** Sees that the boxes of the jacks have room. */
    private void strip() {
        List<String> end = routing.end();
        for (int k = 0; k <= end.size() && shortage.isEmpty(); k++) {
            double high = k == 0 ? top : to.get(end.get(k - 1));
            double low = k == end.size() ? bottom : to.get(end.get(k));
            double lacking = need(line(end, k - 1), line(end, k)) - (low - high);
            if (lacking > 1e-6) {
                Optional<Lie.Pair> pair =
                        k == 0 || k == end.size() ? Optional.empty() : lanes(end.get(k - 1), end.get(k));
                if (pair.isPresent()) {
                    shortage = Optional.of(new Lie.Shortage(0, lacking, pair));
                } else {
                    lackOfRow(end, k, lacking);
                }
            }
        }
    }

    /** The lanes that could lie further apart to part two lines at the strip, where a row between them could not do it. */
    private Optional<Lie.Pair> lanes(String above, String below) {
        List<String> upper = edge(above, Comparator.reverseOrder());
        List<String> lower = edge(below, Comparator.naturalOrder());
        for (Routing.Exchange exchange : routing.exchanges()) {
            for (int i = 1; i < exchange.after().size(); i++) {
                String a = exchange.after().get(i - 1);
                String b = exchange.after().get(i);
                boolean moved =
                        exchange.movers().contains(a) || exchange.movers().contains(b);
                if (moved && upper.contains(a) && lower.contains(b)) {
                    return Optional.of(new Lie.Pair(net.hookup(), a, b));
                }
            }
        }
        return Optional.empty();
    }

    /** A line, and of those that it gathers always the lowest or the highest, back to the device. */
    private List<String> edge(String line, Comparator<Double> first) {
        List<String> edge = new ArrayList<>(List.of(line));
        Optional<String> next = Optional.of(line);
        while (next.isPresent()) {
            next = net.into(lines.get(next.get()).from()).stream()
                    .map(Net.Line::id)
                    .min(Comparator.comparing(to::get, first));
            next.ifPresent(edge::add);
        }
        return edge;
    }

    /** Notes that room is wanting above a line, or above the next one below that has rows of its own. */
    private void lackOfRow(List<String> order, int at, double by) {
        if (shortage.isPresent()) {
            return;
        }
        int row = rows.size();
        for (int k = at; k < order.size() && row == rows.size(); k++) {
            row = firstRow(order.get(k));
        }
        shortage = Optional.of(new Lie.Shortage(row, by, Optional.empty()));
    }

    /**
     * The row above which room moves a line down: its own, or the highest of those it gathers; for a line on a lane the row of
     * what lies next below; the number of rows where there is none.
     */
    private int firstRow(String line) {
        Optional<Routing.Exchange> exchange = routing.exchangeOf(line);
        if (exchange.isPresent()) {
            List<String> after = exchange.get().after();
            return after.subList(after.indexOf(line) + 1, after.size()).stream()
                    .filter(below -> !exchange.get().movers().contains(below))
                    .findFirst()
                    .map(this::firstRow)
                    .orElse(rows.size());
        }
        if (rowOf.containsKey(lines.get(line).from())) {
            return rowOf.get(lines.get(line).from());
        }
        return net.into(lines.get(line).from()).stream()
                .filter(each -> routing.exchangeOf(each.id()).isEmpty())
                .mapToInt(each -> firstRow(each.id()))
                .min()
                .orElse(rows.size());
    }
}
