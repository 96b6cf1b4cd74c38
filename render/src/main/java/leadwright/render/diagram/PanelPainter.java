package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.table.WireMarking;
import leadwright.planner.Plan;

/** Draws the device: groups with their marks, terminals with labels and colours, and what stays open. */
final class PanelPainter {
    /** Right edge of the device. */
    static final double END = 82;

    private static final double SQUARE = 3;
    /** How far the colour's square stands from the edge. */
    private static final double INSET = 1.6;

    private static final double MARK = 4.8;

    /** Widest label of the group of housing, earth and mains. */
    static final double BELOW_LABEL = 60;

    private static final String CONTINUED = ", continued";

    private PanelPainter() {}

    /** Lines of a group's name. */
    static List<String> nameLines(Panel.Group group, List<Unit> units, Fit fit) {
        boolean ribbons = units.stream().anyMatch(Unit::ribbon);
        int lines = ribbons ? 1 : units.size() == 1 ? Math.min(2, fit.nameLines()) : fit.nameLines();
        double room = ribbons ? END - nameLeft(group) - 2 - Texts.width(CONTINUED, Type.GROUP) : nameRoom(group);
        return named(group, room, lines);
    }

    /** The name with the type in letters, which is never cut: that it is read right matters more than anything else here. */
    private static List<String> named(Panel.Group group, double room, int atMost) {
        String type = group.type().map(each -> " (" + each.word() + ")").orElse("");
        List<String> whole = Texts.wrap(group.name() + type, room, Type.GROUP, atMost + 1);
        if (whole.size() <= atMost) {
            return whole;
        }
        List<String> lines = new ArrayList<>(Texts.wrap(group.name(), room, Type.GROUP, atMost));
        String last = lines.isEmpty() ? "" : lines.remove(lines.size() - 1);
        lines.add(Texts.fit(last, room - Texts.width(type, Type.GROUP), Type.GROUP) + type);
        return lines;
    }

    /** Lines of the labels of a ribbon's pins. */
    static List<String> ribbonLines(Unit unit) {
        String labels =
                String.join("  ", unit.pins().stream().map(Panel.Pin::label).toList());
        return Texts.wrap(labels, END - Page.LEFT - 6, Type.KIT, 4);
    }

    private static double nameLeft(Panel.Group group) {
        return Page.LEFT
                + 2
                + group.mark().map(mark -> MARK * mark.ratio() + 1.6).orElse(0.0);
    }

    /** Right end of the labels of a group: at the edge, or left of the squares of its colours. */
    static double labelEnd(Panel.Group group) {
        return END - (wordRoom(group) > 0 ? INSET + SQUARE + 1 : 2.2);
    }

    private static double labelRoom(Panel.Group group) {
        double widest = group.pins().stream()
                .mapToDouble(pin -> Texts.width(Texts.clean(pin.label()), Type.FOLLOWED))
                .max()
                .orElse(0);
        return Math.min(widest, group.below() ? BELOW_LABEL : 34);
    }

    private static double wordRoom(Panel.Group group) {
        return group.pins().stream()
                .mapToDouble(pin -> Texts.width(pin.colourWords(), Type.SMALL))
                .max()
                .orElse(0);
    }

    private static double nameRoom(Panel.Group group) {
        double words = wordRoom(group);
        return labelEnd(group) - labelRoom(group) - (words > 0 ? words + 2 : 0) - 3 - nameLeft(group);
    }

    static void draw(Svg svg, Plan plan, Panel panel, Sheet sheet, Fit fit) {
        List<Row> rows = sheet.rows();
        Heights heights = sheet.heights();
        double top = Page.TOP;
        svg.open("g", "class", "device");
        svg.leaf(
                "rect",
                "class",
                "device frame",
                "x",
                Page.LEFT,
                "y",
                top,
                "width",
                END - Page.LEFT,
                "height",
                heights.bottom() - top,
                "fill",
                "none",
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.FRAME);
        caption(svg, plan);
        int row = 0;
        for (int g = 0; g < panel.groups().size(); g++) {
            int first = row;
            while (row < rows.size() && rows.get(row).group() == g) {
                row++;
            }
            if (row > first) {
                group(svg, panel.groups().get(g), sheet, first, row, fit);
            }
        }
        svg.close();
    }

    private static void caption(Svg svg, Plan plan) {
        double x = Page.LEFT;
        Optional<Marks.Mark> mark = Panel.classMark(plan.device());
        if (mark.isPresent()) {
            Marks.draw(svg, mark.get(), x, Page.CAPTION, 4.4);
            x += 6;
        }
        String what = switch (plan.device().protection()) {
            case CLASS_1 -> "Device, class I";
            case CLASS_2 -> "Device, class II";
            case INTERNALLY_POWERED -> "Device, internally powered";
        };
        svg.text(x, Page.CAPTION, Svg.Anchor.START, what, Type.GROUP);
    }

    private static void group(Svg svg, Panel.Group group, Sheet sheet, int first, int end, Fit fit) {
        List<Row> rows = sheet.rows();
        Heights heights = sheet.heights();
        List<Unit> units = rows.subList(first, end).stream().map(Row::unit).toList();
        boolean ribbons = units.stream().anyMatch(Unit::ribbon);
        double y = heights.rows().get(first);
        double upper = y - rows.get(first).height() / 2 - (ribbons ? Rows.HEADER : 0);
        if (first > 0) {
            double line = upper - Math.min(fit.pad(), rows.get(first).above()) / 2;
            svg.leaf(
                    "path",
                    "class",
                    "hairline",
                    "d",
                    "M" + Svg.number(Page.LEFT) + " " + Svg.number(line) + "H" + Svg.number(END),
                    "stroke",
                    Ink.BLACK,
                    "stroke-width",
                    group.below() ? 0.7 : Ink.HAIRLINE);
        }
        if (!group.below()) {
            List<String> lines = new ArrayList<>(nameLines(group, units, fit));
            if (first == 0 && sheet.continued()) {
                lines.set(lines.size() - 1, lines.get(lines.size() - 1) + CONTINUED);
            }
            double at = ribbons
                    ? upper + Rows.HEADER / 2
                    : units.size() == 1 ? y - (lines.size() - 1) * Rows.NAME_LINE / 2 : y;
            double markAt = ribbons || units.size() > 1 ? at : y;
            group.mark().ifPresent(mark -> Marks.draw(svg, mark, Page.LEFT + 2, markAt, MARK));
            svg.open("g");
            svg.line(
                    "title",
                    group.name() + ", " + group.mark().map(Marks.Mark::meaning).orElse(""));
            for (int i = 0; i < lines.size(); i++) {
                svg.text(nameLeft(group), at + i * Rows.NAME_LINE, Svg.Anchor.START, lines.get(i), Type.GROUP);
            }
            svg.close();
        }
        for (int i = first; i < end; i++) {
            if (rows.get(i).unit().ribbon()) {
                ribbon(svg, rows.get(i).unit(), heights.rows().get(i));
            } else {
                pin(svg, group, rows.get(i).unit().pin(), heights.rows().get(i));
            }
        }
    }

    private static void ribbon(Svg svg, Unit unit, double y) {
        List<String> lines = ribbonLines(unit);
        for (int i = 0; i < lines.size(); i++) {
            svg.text(
                    END - 2.5,
                    y + (i - (lines.size() - 1) / 2.0) * Rows.LABEL_LINE,
                    Svg.Anchor.END,
                    lines.get(i),
                    Type.KIT);
        }
    }

    private static void pin(Svg svg, Panel.Group group, Panel.Pin pin, double y) {
        double room = labelRoom(group) + 0.01;
        svg.fitted(labelEnd(group), y, room, Svg.Anchor.END, pin.label(), Type.FOLLOWED);
        if (pin.marking().flatMap(WireMarking::colour).isEmpty()) {
            return;
        }
        WireMarking marking = pin.marking().orElseThrow();
        svg.text(labelEnd(group) - labelRoom(group) - 2, y, Svg.Anchor.END, pin.colourWords(), Type.SMALL);
        double x = END - INSET - SQUARE;
        double top = y - SQUARE / 2;
        svg.open("g", "class", "colour");
        svg.line("title", marking.colours());
        String main = Ink.fill(marking.colour().orElseThrow());
        String second = marking.second().map(Ink::fill).orElse(main);
        svg.leaf("rect", "class", "zone", "x", x, "y", top, "width", SQUARE, "height", SQUARE, "fill", main);
        if (!second.equals(main)) {
            svg.leaf(
                    "path",
                    "d",
                    "M" + Svg.number(x + SQUARE) + " " + Svg.number(top) + "V" + Svg.number(top + SQUARE) + "H"
                            + Svg.number(x) + "Z",
                    "fill",
                    second);
        }
        svg.leaf(
                "rect",
                "class",
                "zone",
                "x",
                x,
                "y",
                top,
                "width",
                SQUARE,
                "height",
                SQUARE,
                "fill",
                "none",
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.BOX);
        svg.close();
    }
}
