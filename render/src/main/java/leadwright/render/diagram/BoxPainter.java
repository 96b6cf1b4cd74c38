package leadwright.render.diagram;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Draws fan-outs: a box as tall as the rows it gathers, the post's number at each line that enters, its name at the tester's side. */
final class BoxPainter {
    /** Letters that reach below the line need room in a low box. */
    private static final double LIFT = 0.15;

    private BoxPainter() {}

    /** How much is said of the posts that a ribbon takes. */
    enum Detail {
        TABLE,
        ORDER,
        RANGE
    }

    /** Width that its contents want. */
    static double width(Columns.Drawn drawn, String id, Detail detail, Names names) {
        double posts = 5;
        for (Net.Box box : drawn.net().boxes()) {
            if (box.id().equals(id)) {
                for (Map.Entry<String, List<String>> post : box.posts().entrySet()) {
                    posts = Math.max(posts, postWidth(drawn, post, detail));
                }
            }
        }
        return Math.min(92, posts + Math.min(30, Texts.width(names.box(id), Type.KIT)) + 4);
    }

    private static double postWidth(Columns.Drawn drawn, Map.Entry<String, List<String>> post, Detail detail) {
        Optional<Table> table = detail == Detail.TABLE ? table(drawn, post) : Optional.empty();
        return table.map(Table::width)
                .orElseGet(() -> Texts.width(words(post.getValue(), detail == Detail.RANGE), Type.NOTE) + 1);
    }

    private static Optional<Table> table(Columns.Drawn drawn, Map.Entry<String, List<String>> post) {
        return post.getValue().size() == 1
                ? Optional.empty()
                : Table.of(post.getValue(), drawn.rowHeight().getOrDefault(post.getKey(), 0.0));
    }

    private static String words(List<String> entries, boolean few) {
        return entries.size() == 1 ? entries.get(0) : Table.instead(entries, few, false);
    }

    /** @param elsewhere the sheet on which its trunk is drawn; empty where that is this one */
    static void draw(Svg svg, Names names, Columns.Drawn drawn, Net.Box box, Columns.Column column, String elsewhere) {
        Lie.Span span = drawn.lie().boxes().get(box.id());
        boolean isNew = drawn.net().into(box.id()).stream().anyMatch(Net.Line::anyNew)
                || drawn.net().outOf(box.id()).stream().anyMatch(Net.Line::anyNew);
        svg.open("g", "class", "fan-out");
        svg.line("title", box.id().replace('/', ' '));
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
        double name = Math.min(30, Texts.width(names.box(box.id()), Type.KIT));
        double room = column.width() - name - 3.4;
        double widest = 4;
        for (Map.Entry<String, List<String>> post : box.posts().entrySet()) {
            double y = drawn.lie().to().get(post.getKey());
            Optional<Table> table = table(drawn, post).filter(each -> each.width() <= room);
            if (table.isPresent()) {
                write(svg, table.get(), column.left() + 1.5, y);
                widest = Math.max(widest, table.get().width());
                continue;
            }
            String words = words(post.getValue(), false);
            if (Texts.width(words, Type.NOTE) > room) {
                words = words(post.getValue(), true);
            }
            if (post.getValue().size() > 1 && Texts.width(words, Type.NOTE) > room) {
                words = Table.instead(post.getValue(), true, true);
            }
            svg.text(column.left() + 1.2, y, Svg.Anchor.START, words, Type.NOTE);
            widest = Math.max(widest, Texts.width(words, Type.NOTE) + 1);
        }
        svg.fitted(
                column.right() - 1.2,
                (span.top() + span.bottom()) / 2 - LIFT,
                column.width() - widest - 1.9,
                Svg.Anchor.END,
                names.box(box.id()),
                Type.KIT);
        if (!elsewhere.isEmpty() && span.bottom() - span.top() > 2 * Table.LINE + 1) {
            double y = (span.top() + span.bottom()) / 2 - LIFT + Table.LINE;
            svg.fitted(column.right() - 1.2, y, column.width() - widest - 1.9, Svg.Anchor.END, elsewhere, Table.TYPE);
        }
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
    static void item(Svg svg, Names names, String item, Columns.Column column, double y, boolean isNew) {
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
                y - LIFT,
                column.width() - 1.4,
                Svg.Anchor.MIDDLE,
                names.item(item),
                Type.KIT.in(isNew ? Ink.BLACK : Ink.QUIET));
    }
}
