package leadwright.render.diagram;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Draws fan-outs: a box as tall as the rows it gathers, the post's number at each line that enters, its name at the tester's side. */
final class BoxPainter {
    private BoxPainter() {}

    static String name(String box) {
        return box.replace('/', ' ');
    }

    /** Width that its contents want. */
    static double width(Columns.Drawn drawn, String id) {
        double posts = 5;
        for (Net.Box box : drawn.net().boxes()) {
            if (box.id().equals(id)) {
                for (Map.Entry<String, List<String>> post : box.posts().entrySet()) {
                    posts = Math.max(posts, postWidth(drawn, post.getKey(), post.getValue()));
                }
            }
        }
        return Math.min(92, posts + Math.min(30, Texts.width(name(id), Type.KIT)) + 5);
    }

    private static double postWidth(Columns.Drawn drawn, String line, List<String> entries) {
        if (entries.size() == 1) {
            return Texts.width(entries.get(0), Type.NOTE) + 1;
        }
        return table(drawn, line, entries)
                .map(Table::width)
                .orElseGet(() -> Texts.width(Table.instead(entries), Table.TYPE) + 1);
    }

    private static Optional<Table> table(Columns.Drawn drawn, String line, List<String> entries) {
        return Table.of(entries, drawn.rowHeight().getOrDefault(line, 0.0));
    }

    static void draw(Svg svg, Columns.Drawn drawn, Net.Box box, Columns.Column column) {
        Lie.Span span = drawn.lie().boxes().get(box.id());
        boolean isNew = drawn.net().into(box.id()).stream().anyMatch(Net.Line::anyNew)
                || drawn.net().outOf(box.id()).stream().anyMatch(Net.Line::anyNew);
        svg.open("g", "class", "fan-out");
        svg.line("title", name(box.id()));
        svg.leaf(
                "rect",
                "class",
                "box",
                "x",
                column.left(),
                "y",
                span.top(),
                "width",
                column.width(),
                "height",
                span.bottom() - span.top(),
                "fill",
                Ink.WHITE,
                "stroke",
                isNew ? Ink.BLACK : Ink.GREY,
                "stroke-width",
                isNew ? Ink.BOX : Ink.HAIRLINE);
        double widest = 4;
        for (Map.Entry<String, List<String>> post : box.posts().entrySet()) {
            double y = drawn.lie().to().get(post.getKey());
            List<String> entries = post.getValue();
            widest = Math.max(widest, postWidth(drawn, post.getKey(), entries));
            Optional<Table> table = entries.size() == 1 ? Optional.empty() : table(drawn, post.getKey(), entries);
            if (table.isPresent()) {
                write(svg, table.get(), column.left() + 1.5, y);
            } else if (entries.size() > 1) {
                svg.text(column.left() + 1.2, y, Svg.Anchor.START, Table.instead(entries), Table.TYPE);
            } else {
                svg.text(column.left() + 1.2, y, Svg.Anchor.START, entries.get(0), Type.NOTE);
            }
        }
        double room = column.width() - widest - 3;
        svg.fitted(
                column.right() - 1.5, (span.top() + span.bottom()) / 2, room, Svg.Anchor.END, name(box.id()), Type.KIT);
        svg.close();
    }

    private static void write(Svg svg, Table table, double x, double middle) {
        double top = middle - (table.lines() - 1) * Table.LINE / 2;
        for (int i = 0; i < table.entries().size(); i++) {
            svg.fitted(
                    x + i / table.lines() * table.columnWidth(),
                    top + i % table.lines() * Table.LINE,
                    table.columnWidth() - 1.5,
                    Svg.Anchor.START,
                    table.entries().get(i),
                    Table.TYPE);
        }
    }

    /** An item on a line. */
    static void item(Svg svg, String item, Columns.Column column, double y, boolean isNew) {
        svg.leaf(
                "rect",
                "class",
                "box",
                "x",
                column.left(),
                "y",
                y - Page.ITEM_BOX / 2,
                "width",
                column.width(),
                "height",
                Page.ITEM_BOX,
                "fill",
                Ink.WHITE,
                "stroke",
                isNew ? Ink.BLACK : Ink.GREY,
                "stroke-width",
                isNew ? Ink.BOX : Ink.HAIRLINE);
        svg.fitted(
                (column.left() + column.right()) / 2,
                y,
                column.width() - 1.6,
                Svg.Anchor.MIDDLE,
                Net.kind(item),
                Type.KIT.in(isNew ? Ink.BLACK : Ink.QUIET));
    }
}
