package leadwright.render.diagram;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.table.WireMarking;
import leadwright.planner.Plan;

/** Draws the device: groups with their marks, terminals with labels and colours, and what stays open. */
final class PanelPainter {
    private final Svg svg;
    private final Labels labels;
    private final Sheet sheet;
    private final Fit fit;

    PanelPainter(Svg svg, Labels labels, Sheet sheet, Fit fit) {
        this.svg = svg;
        this.labels = labels;
        this.sheet = sheet;
        this.fit = fit;
    }

    void draw(Plan plan, Panel panel) {
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
                labels.end() - Page.LEFT,
                "height",
                heights.bottom() - top,
                "fill",
                "none",
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.FRAME);
        caption(plan);
        int row = 0;
        for (int g = 0; g < panel.groups().size(); g++) {
            int first = row;
            while (row < rows.size() && rows.get(row).group() == g) {
                row++;
            }
            if (row > first) {
                group(panel.groups().get(g), first, row);
            }
        }
        svg.close();
    }

    private void caption(Plan plan) {
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

    private void group(Panel.Group group, int first, int end) {
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
                    "M" + Svg.number(Page.LEFT) + " " + Svg.number(line) + "H" + Svg.number(labels.end()),
                    "stroke",
                    Ink.BLACK,
                    "stroke-width",
                    group.below() ? 0.7 : Ink.HAIRLINE);
        }
        if (!group.below()) {
            Labels.Name name = first == 0 && sheet.continued()
                    ? labels.continued(group, units, fit)
                    : labels.name(group, units, fit);
            List<String> lines = name.lines();
            double at = ribbons
                    ? upper + Rows.HEADER / 2
                    : units.size() == 1 ? y - (lines.size() - 1) * Rows.NAME_LINE / 2 : y;
            double markAt = ribbons || units.size() > 1 ? at : y;
            group.mark().ifPresent(mark -> Marks.draw(svg, mark, Page.LEFT + 2, markAt, Labels.MARK));
            svg.open("g");
            svg.line(
                    "title",
                    group.name() + ", " + group.mark().map(Marks.Mark::meaning).orElse(""));
            for (int i = 0; i < lines.size(); i++) {
                svg.text(labels.nameLeft(group), at + i * Rows.NAME_LINE, Svg.Anchor.START, lines.get(i), name.type());
            }
            svg.close();
        }
        for (int i = first; i < end; i++) {
            if (rows.get(i).unit().ribbon()) {
                ribbon(rows.get(i).unit(), heights.rows().get(i));
            } else {
                pin(group, rows.get(i).unit().pin(), heights.rows().get(i));
            }
        }
    }

    private void ribbon(Unit unit, double y) {
        List<String> lines = labels.ribbonLines(unit);
        for (int i = 0; i < lines.size(); i++) {
            svg.text(
                    labels.end() - 2.5,
                    y + (i - (lines.size() - 1) / 2.0) * Rows.LABEL_LINE,
                    Svg.Anchor.END,
                    lines.get(i),
                    Type.KIT);
        }
    }

    private void pin(Panel.Group group, Panel.Pin pin, double y) {
        double room = labels.labelRoom(group) + 0.01;
        svg.fitted(labels.labelEnd(group), y, room, Svg.Anchor.END, pin.label(), Type.FOLLOWED);
        if (pin.marking().flatMap(WireMarking::colour).isEmpty()) {
            return;
        }
        WireMarking marking = pin.marking().orElseThrow();
        svg.text(
                labels.labelEnd(group) - labels.labelRoom(group) - 2, y, Svg.Anchor.END, pin.colourWords(), Type.SMALL);
        double x = labels.end() - Labels.INSET - Labels.SQUARE;
        double top = y - Labels.SQUARE / 2;
        svg.open("g", "class", "colour");
        svg.line("title", marking.colours());
        String main = Ink.fill(marking.colour().orElseThrow());
        String second = marking.second().map(Ink::fill).orElse(main);
        svg.leaf(
                "rect",
                "class",
                "zone",
                "x",
                x,
                "y",
                top,
                "width",
                Labels.SQUARE,
                "height",
                Labels.SQUARE,
                "fill",
                main);
        if (!second.equals(main)) {
            svg.leaf(
                    "path",
                    "d",
                    "M" + Svg.number(x + Labels.SQUARE) + " " + Svg.number(top) + "V" + Svg.number(top + Labels.SQUARE)
                            + "H" + Svg.number(x) + "Z",
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
                Labels.SQUARE,
                "height",
                Labels.SQUARE,
                "fill",
                "none",
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.BOX);
        svg.close();
    }
}
