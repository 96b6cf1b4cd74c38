package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How the lines of one hookup lie, given the heights of the rows.
 *
 * @param from height at which each line starts
 * @param to height at which it ends; another one only for a line that changes places
 * @param boxes top and bottom of each box
 * @param shortage the first place where there is too little room
 */
record Lie(Map<String, Double> from, Map<String, Double> to, Map<String, Span> boxes, Optional<Shortage> shortage) {

    record Span(double top, double bottom) {}

    /** @param row the row above which {@code by} millimetres are wanting; the number of rows for below the last */
    record Shortage(int row, double by) {}

    static Lie of(
            Fit fit, List<Row> rows, List<Double> ys, double bottom, Net net, Routing routing, List<Socket> sockets) {
        return new Builder(fit, rows, ys, bottom, net, routing, sockets).build();
    }

    /** Boxes in the strip from one socket to the next used one; a long run of jacks that are not used here
     * takes two: one for the free, one for those on other sheets.
     */
    static int slots(List<Socket> sockets, int from, int to, int shortRuns) {
        int slots = 0;
        int run = 0;
        for (int i = from + 1; i < to; i++) {
            if (sockets.get(i).jack() > 0) {
                run++;
            } else {
                slots += (run >= shortRuns ? Math.min(run, 2) : run) + 1;
                run = 0;
            }
        }
        return slots + (run >= shortRuns ? Math.min(run, 2) : run);
    }

    private static final class Builder {
        private final Fit fit;
        private final List<Row> rows;
        private final double bottom;
        private final Net net;
        private final Routing routing;
        private final List<Socket> sockets;
        private final Map<String, Net.Line> lines = new HashMap<>();
        private final Map<String, Integer> rowOf = new HashMap<>();
        private final Map<String, Double> from = new HashMap<>();
        private final Map<String, Double> to = new HashMap<>();
        private final Map<String, Span> boxes = new HashMap<>();
        private Optional<Shortage> shortage = Optional.empty();

        Builder(
                Fit fit,
                List<Row> rows,
                List<Double> ys,
                double bottom,
                Net net,
                Routing routing,
                List<Socket> sockets) {
            this.fit = fit;
            this.rows = rows;
            this.bottom = bottom;
            this.net = net;
            this.routing = routing;
            this.sockets = sockets;
            net.lines().forEach(line -> lines.put(line.id(), line));
            for (int i = 0; i < rows.size(); i++) {
                String id = rows.get(i).unit().id();
                rowOf.put(id, i);
                if (lines.containsKey(id)) {
                    from.put(id, ys.get(i));
                    to.put(id, ys.get(i));
                }
            }
        }

        Lie build() {
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
            return new Lie(Map.copyOf(from), Map.copyOf(to), Map.copyOf(boxes), shortage);
        }

        private void box(String box) {
            List<Double> into = net.into(box).stream()
                    .map(line -> to.get(line.id()))
                    .sorted()
                    .toList();
            if (into.isEmpty()) {
                throw new IllegalStateException("a fan-out that nothing enters: " + box);
            }
            double first = into.get(0);
            double last = into.get(into.size() - 1);
            double half = net.into(box).stream()
                    .mapToDouble(line -> rowOf.containsKey(line.from())
                            ? rows.get(rowOf.get(line.from())).unit().ribbon()
                                    ? rows.get(rowOf.get(line.from())).height() / 2 - 0.4
                                    : 2
                            : 2)
                    .max()
                    .orElse(2);
            boxes.put(box, new Span(first - half, last + half));
            List<String> out = new ArrayList<>(routing.end());
            out.retainAll(net.outOf(box).stream().map(Net.Line::id).toList());
            List<String> all =
                    new ArrayList<>(net.outOf(box).stream().map(Net.Line::id).toList());
            all.sort(java.util.Comparator.comparing(out::indexOf));
            for (int i = 0; i < all.size(); i++) {
                double y = (first + last) / 2 + (i - (all.size() - 1) / 2.0) * fit.jack();
                from.put(all.get(i), y);
                to.put(all.get(i), y);
            }
        }

        /** Gives every line that changes places a lane between its new neighbours. */
        private void exchange(Routing.Exchange exchange) {
            List<String> after = exchange.after();
            int i = 0;
            while (i < after.size()) {
                if (!exchange.movers().contains(after.get(i))) {
                    i++;
                    continue;
                }
                int end = i;
                while (end < after.size() && exchange.movers().contains(after.get(end))) {
                    end++;
                }
                lanes(exchange, i, end);
                i = end;
            }
        }

        private void lanes(Routing.Exchange exchange, int begin, int end) {
            List<String> after = exchange.after();
            double[] need = new double[end - begin + 1];
            double sum = 0;
            for (int k = begin; k <= end; k++) {
                need[k - begin] = need(k == 0 ? null : after.get(k - 1), k == after.size() ? null : after.get(k));
                sum += need[k - begin];
            }
            double high = begin == 0 ? Page.TOP + Page.STRIP : to.get(after.get(begin - 1));
            double low = end == after.size() ? bottom : to.get(after.get(end));
            double slack = low - high - sum;
            if (slack < -1e-9) {
                lack(end == after.size() ? null : after.get(end), after, end, -slack);
                slack = 0;
            }
            double share = slack / (end - begin + 1);
            if (begin == 0) {
                share = 0;
                high = low - sum;
            } else if (end == after.size()) {
                share = 0;
            }
            double y = high;
            for (int k = begin; k < end; k++) {
                y += need[k - begin] + share;
                to.put(after.get(k), apart(exchange, y, after.get(k)));
            }
        }

        /** A lane that does not lie on the row from which another line comes. */
        private double apart(Routing.Exchange exchange, double y, String line) {
            for (String other : exchange.movers()) {
                if (!other.equals(line) && Math.abs(from.get(other) - y) < 0.8) {
                    return from.get(other) + (y < from.get(other) ? -0.8 : 0.8);
                }
            }
            return y;
        }

        /** Least distance of two neighbouring lines; null stands for the upper or lower end of the rows. */
        private double need(String above, String below) {
            int high = above == null ? -1 : socket(above);
            int low = below == null ? sockets.size() : socket(below);
            double lane = above == null || below == null ? fit.lane() / 2 + 1 : fit.lane();
            if (above != null && high < 0 || below != null && low < 0 || high == low) {
                return lane;
            }
            double strip = fit.jack() * (Lie.slots(sockets, high, low, fit.shortRuns()) + 1);
            return Math.max(lane, above == null || below == null ? strip - fit.jack() / 2 : strip);
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
            for (int k = 0; k <= end.size(); k++) {
                String above = k == 0 ? null : end.get(k - 1);
                String below = k == end.size() ? null : end.get(k);
                double high = above == null ? Page.TOP + Page.STRIP : to.get(above);
                double low = below == null ? bottom : to.get(below);
                double lacking = need(above, below) - (low - high);
                if (lacking > 1e-6) {
                    lack(below, end, k, lacking);
                }
            }
        }

        /** Notes that room is wanting above a line, or above the next one below that has rows of its own. */
        private void lack(String below, List<String> order, int at, double by) {
            if (shortage.isPresent()) {
                return;
            }
            int row = rows.size();
            for (int k = at; below != null && k < order.size() && row == rows.size(); k++) {
                row = firstRow(order.get(k));
            }
            shortage = Optional.of(new Shortage(row, by));
        }

        /** The highest row from which a line comes without a change of place; the number of rows where there is none. */
        private int firstRow(String line) {
            if (routing.exchangeOf(line).isPresent()) {
                return rows.size();
            }
            Integer row = rowOf.get(lines.get(line).from());
            if (row != null) {
                return row;
            }
            return net.into(lines.get(line).from()).stream()
                    .mapToInt(each -> firstRow(each.id()))
                    .min()
                    .orElse(rows.size());
        }
    }
}
