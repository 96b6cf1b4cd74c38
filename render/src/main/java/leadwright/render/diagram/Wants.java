package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;

/** What the drawings of a plan want of the columns that they share. */
final class Wants {
    private static final double NARROWEST = 14;

    private final List<Columns.Drawn> all;
    private final Setting setting;
    private final Names names;
    private final int columns;

    Wants(List<Columns.Drawn> all, Setting setting, Names names) {
        this.all = List.copyOf(all);
        this.setting = setting;
        this.names = names;
        this.columns = all.stream()
                .mapToInt(drawn -> drawn.routing().columns().size())
                .max()
                .orElse(0);
    }

    /** Number of columns of fan-outs. */
    int columns() {
        return columns;
    }

    /** Number of columns of items next to the device. */
    int hands() {
        int hands = 0;
        for (Columns.Drawn drawn : all) {
            for (Net.Line line : fromPanel(drawn)) {
                hands = Math.max(hands, line.items().size());
            }
        }
        return hands;
    }

    boolean ribbons() {
        return all.stream().flatMap(drawn -> drawn.net().lines().stream()).anyMatch(line -> line.wires() > 1);
    }

    /** Whether a row has no wire in some hookup. */
    boolean open() {
        return all.stream()
                .anyMatch(drawn -> drawn.rowHeight().keySet().stream()
                        .anyMatch(row -> drawn.net().from(row).isEmpty()));
    }

    double handWidth(int index) {
        double width = narrowest();
        for (Columns.Drawn drawn : all) {
            for (Net.Line line : fromPanel(drawn)) {
                if (line.items().size() > index) {
                    width = Math.max(width, itemWidth(line.items().get(index)));
                }
            }
        }
        return width;
    }

    /** Most items on a line from the device into a fan-out of this column. */
    int itemsInto(int column) {
        int items = 0;
        for (Columns.Drawn drawn : all) {
            List<String> boxes = boxes(drawn, column);
            for (Net.Line line : fromPanel(drawn)) {
                items = boxes.contains(line.to()) ? Math.max(items, line.items().size()) : items;
            }
        }
        return items;
    }

    /** Most items on a line from the device beside the tracks of a column, which must keep clear of them. */
    int itemsBeside(int column) {
        int items = 0;
        for (Columns.Drawn drawn : all) {
            int shift = columns - drawn.routing().columns().size();
            for (Routing.Exchange exchange : drawn.routing().exchanges()) {
                if (exchange.column() + shift == column) {
                    items = Math.max(items, itemsBeside(drawn, exchange));
                }
            }
        }
        return items;
    }

    private static int itemsBeside(Columns.Drawn drawn, Routing.Exchange exchange) {
        double top = Double.MAX_VALUE;
        double end = 0;
        for (String line : exchange.movers()) {
            double from = drawn.lie().from().get(line);
            double to = drawn.lie().to().get(line);
            top = Math.min(top, Math.min(from, to) - Page.TRACK);
            end = Math.max(end, Math.max(from, to) + Page.TRACK);
        }
        int items = 0;
        for (Net.Line line : fromPanel(drawn)) {
            double y = drawn.lie().from().get(line.id());
            items = y > top && y < end ? Math.max(items, line.items().size()) : items;
        }
        return items;
    }

    double boxWidth(int column) {
        double width = setting.lettered() ? 8 : 20;
        for (Columns.Drawn drawn : all) {
            for (String box : boxes(drawn, column)) {
                width = Math.max(width, BoxPainter.width(drawn, box, setting.detail(), names));
            }
        }
        return width;
    }

    /** Number of columns of items behind the fan-outs of a column. */
    int afterCount(int column) {
        return linesFrom(column).stream()
                .mapToInt(line -> line.items().size())
                .max()
                .orElse(0);
    }

    double afterWidth(int column, int index) {
        return linesFrom(column).stream()
                .filter(line -> line.items().size() > index)
                .mapToDouble(line -> itemWidth(line.items().get(index)))
                .max()
                .orElse(narrowest());
    }

    /** Number of tracks before a column of fan-outs, or before the tester. */
    int tracks(int column) {
        int tracks = 0;
        for (Columns.Drawn drawn : all) {
            int shift = columns - drawn.routing().columns().size();
            for (Routing.Exchange exchange : drawn.routing().exchanges()) {
                if (exchange.column() + shift == column) {
                    tracks = Math.max(tracks, Tracks.count(exchange, drawn.tracks()));
                }
            }
        }
        return tracks;
    }

    /** Widest number plate after the item of this index, on lines from the device (column -1) or from a fan-out. */
    double plate(int column, int index) {
        if (!setting.plates()) {
            return 0;
        }
        List<Net.Line> lines = new ArrayList<>();
        if (column < 0) {
            all.forEach(drawn -> lines.addAll(fromPanel(drawn)));
        } else {
            lines.addAll(linesFrom(column));
        }
        return lines.stream()
                .filter(line -> line.pieces().size() > index)
                .mapToDouble(line -> Columns.plateWidth(line.pieces().get(index)))
                .max()
                .orElse(0);
    }

    private static List<Net.Line> fromPanel(Columns.Drawn drawn) {
        return drawn.net().lines().stream()
                .filter(line -> drawn.routing().start().contains(line.id()))
                .toList();
    }

    private List<String> boxes(Columns.Drawn drawn, int column) {
        int own = column - (columns - drawn.routing().columns().size());
        return own < 0 ? List.of() : drawn.routing().columns().get(own);
    }

    private List<Net.Line> linesFrom(int column) {
        List<Net.Line> lines = new ArrayList<>();
        for (Columns.Drawn drawn : all) {
            for (String box : boxes(drawn, column)) {
                lines.addAll(drawn.net().outOf(box));
            }
        }
        return lines;
    }

    private double narrowest() {
        return setting.lettered() ? 6 : NARROWEST;
    }

    private double itemWidth(String item) {
        return Math.min(34, Math.max(narrowest(), Texts.width(names.item(item), Type.KIT) + 2.2));
    }
}
