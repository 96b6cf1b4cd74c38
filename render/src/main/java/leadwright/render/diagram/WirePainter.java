package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Draws the lines of one hookup: stretches of wire, the items on them, the numbers of the joints. */
final class WirePainter {
    private static final double HALO = 0.8;

    private final Svg svg;
    private final Columns columns;
    private final Columns.Drawn drawn;
    private final Map<String, String> trunks;

    /** @param trunks the sheet of a fan-out's trunk where that is not this one, by box id */
    WirePainter(Svg svg, Columns columns, Columns.Drawn drawn, Map<String, String> trunks) {
        this.svg = svg;
        this.columns = columns;
        this.drawn = drawn;
        this.trunks = Map.copyOf(trunks);
    }

    /** A stretch of wire with its ends; {@code turn} where it changes its height. */
    private record Stretch(
            Net.Line line, Net.Piece piece, double x0, double x1, double y0, double y1, Optional<Double> turn) {

        String path() {
            String begin = "M" + Svg.number(x0) + " " + Svg.number(y0);
            return turn.map(x -> begin + "H" + Svg.number(x) + "V" + Svg.number(y1) + "H" + Svg.number(x1))
                    .orElse(begin + "H" + Svg.number(x1));
        }

        /** Where this one's upright part crosses a level part of another; empty where it does not. */
        Optional<double[]> crosses(Stretch other) {
            if (turn.isEmpty()) {
                return Optional.empty();
            }
            double x = turn.get();
            double top = Math.min(y0, y1);
            double end = Math.max(y0, y1);
            double split = other.turn().orElse(other.x1());
            if (x > other.x0() && x < split && other.y0() > top && other.y0() < end) {
                return Optional.of(new double[] {x, other.y0()});
            }
            if (other.turn().isPresent() && x > split && x < other.x1() && other.y1() > top && other.y1() < end) {
                return Optional.of(new double[] {x, other.y1()});
            }
            return Optional.empty();
        }
    }

    void draw() {
        List<Stretch> level = new ArrayList<>();
        List<Stretch> turning = new ArrayList<>();
        for (Net.Line line : drawn.net().lines()) {
            for (Stretch each : stretches(line)) {
                (each.turn().isPresent() ? turning : level).add(each);
            }
        }
        svg.open("g", "class", "wires", "fill", "none");
        level.forEach(this::wire);
        List<Stretch> done = new ArrayList<>(level);
        for (Stretch each : inOrder(turning)) {
            for (Stretch other : done) {
                each.crosses(other).ifPresent(at -> halo(at[0], at[1], each));
            }
            wire(each);
            done.add(each);
        }
        svg.close();
        svg.open("g", "class", "items");
        drawn.net().lines().forEach(this::items);
        level.forEach(this::ribbon);
        for (int c = 0; c < drawn.routing().columns().size(); c++) {
            for (String id : drawn.routing().columns().get(c)) {
                Columns.Column column = columns.boxes().get(c + columns.shift(drawn.routing()));
                drawn.net().boxes().stream()
                        .filter(box -> box.id().equals(id))
                        .forEach(box -> BoxPainter.draw(
                                svg, columns.names(), drawn, box, column, trunks.getOrDefault(box.id(), "")));
            }
        }
        svg.close();
        svg.open("g", "class", "numbers");
        drawn.net().lines().forEach(line -> stretches(line).forEach(this::number));
        svg.close();
    }

    /** Turning lines so that, where it can be, one that is crossed comes before the one that crosses it. */
    private static List<Stretch> inOrder(List<Stretch> turning) {
        List<Stretch> left = new ArrayList<>(turning);
        Set<Stretch> order = new LinkedHashSet<>();
        while (!left.isEmpty()) {
            Stretch next = left.stream()
                    .filter(each -> left.stream()
                            .noneMatch(other ->
                                    other != each && each.crosses(other).isPresent()))
                    .findFirst()
                    .orElse(left.get(0));
            order.add(next);
            left.remove(next);
        }
        return new ArrayList<>(order);
    }

    private List<Stretch> stretches(Net.Line line) {
        List<Columns.Column> stops = stops(line);
        double y = drawn.lie().from().get(line.id());
        double yEnd = drawn.lie().to().get(line.id());
        List<Stretch> all = new ArrayList<>();
        double x = start(line);
        for (int i = 0; i < line.pieces().size(); i++) {
            boolean last = i == line.pieces().size() - 1;
            double to = last ? end(line) : stops.get(i).left();
            Optional<Double> turn = last
                    ? Optional.ofNullable(drawn.tracks().get(line.id())).map(track -> trackX(line.id(), track))
                    : Optional.empty();
            all.add(new Stretch(line, line.pieces().get(i), x, to, y, last ? yEnd : y, turn));
            x = last ? to : stops.get(i).right();
        }
        return all;
    }

    private double trackX(String line, int track) {
        int column = drawn.routing().exchangeOf(line).orElseThrow().column();
        int channel = column + columns.shift(drawn.routing());
        return columns.channels().get(channel) + 0.5 + track * columns.setting().pitch();
    }

    private int column(String box) {
        for (int c = 0; c < drawn.routing().columns().size(); c++) {
            if (drawn.routing().columns().get(c).contains(box)) {
                return c + columns.shift(drawn.routing());
            }
        }
        return -1;
    }

    private double start(Net.Line line) {
        int column = column(line.from());
        return column < 0 ? columns.panelEnd() : columns.boxes().get(column).right();
    }

    private double end(Net.Line line) {
        int column = column(line.to());
        return column < 0 ? columns.tester() : columns.boxes().get(column).left();
    }

    private List<Columns.Column> stops(Net.Line line) {
        int column = column(line.from());
        return column < 0 ? columns.hand() : columns.after().get(column);
    }

    private void wire(Stretch each) {
        Ink.Look look = each.line().look();
        List<Object> attributes = new ArrayList<>(List.of(
                "class",
                "wire " + look.word + (each.piece().isNew() ? "" : " stays"),
                "d",
                each.path(),
                "stroke",
                each.piece().isNew() ? look.colour : Ink.GREY,
                "stroke-width",
                each.piece().isNew() ? look.width : look.width / 2));
        if (!look.dash.isEmpty()) {
            attributes.addAll(List.of("stroke-dasharray", look.dash));
        }
        String steps = each.piece().number();
        svg.titled(each.line().title() + (steps.isEmpty() ? "" : ", step " + steps), "path", attributes.toArray());
    }

    /** The oblique stroke and the number of wires of a ribbon. */
    private void ribbon(Stretch each) {
        if (each.line().wires() == 1 || each.x0() > columns.panelEnd()) {
            return;
        }
        double x = each.x0() + columns.panelGap() - Columns.RIBBON;
        svg.leaf(
                "path",
                "class",
                "stroke",
                "d",
                "M" + Svg.number(x - 0.9) + " " + Svg.number(each.y0() + 1.6) + "L" + Svg.number(x + 0.9) + " "
                        + Svg.number(each.y0() - 1.6),
                "stroke",
                Ink.BLACK,
                "stroke-width",
                Ink.BOX);
        svg.text(
                each.x0() + columns.setting().stub(),
                each.y0() - 3.4,
                Svg.Anchor.START,
                each.line().wires() + " wires",
                Type.NOTE);
    }

    private void halo(double x, double y, Stretch crossing) {
        double half = crossing.line().look().width / 2 + HALO;
        svg.leaf(
                "path",
                "class",
                "halo",
                "d",
                "M" + Svg.number(x) + " " + Svg.number(y - 0.7) + "V" + Svg.number(y + 0.7),
                "stroke",
                Ink.WHITE,
                "stroke-width",
                2 * half);
    }

    private void items(Net.Line line) {
        double y = drawn.lie().from().get(line.id());
        List<Columns.Column> stops = stops(line);
        for (int i = 0; i < line.items().size(); i++) {
            boolean isNew =
                    line.pieces().get(i).isNew() || line.pieces().get(i + 1).isNew();
            BoxPainter.item(svg, columns.names(), line.items().get(i), stops.get(i), y, isNew);
        }
    }

    private void number(Stretch each) {
        String number = each.piece().number();
        if (number.isEmpty() || !each.piece().isNew() || !columns.setting().plates()) {
            return;
        }
        double plate = plate(each);
        double middle = each.x0() + columns.setting().stub() + plate / 2;
        double width = Columns.plateWidth(each.piece());
        svg.leaf(
                "rect",
                "class",
                "plate",
                "x",
                middle - width / 2,
                "y",
                each.y0() - 1.9,
                "width",
                width,
                "height",
                3.8,
                "fill",
                Ink.WHITE);
        svg.text(middle, each.y0(), Svg.Anchor.MIDDLE, number, Type.NUMBER);
    }

    /** Width of the plates in the gap where a stretch begins, so that they stand in one column. */
    private double plate(Stretch each) {
        if (each.x0() <= columns.panelEnd()) {
            return columns.panelPlate();
        }
        List<Columns.Column> all = new ArrayList<>(columns.hand());
        all.addAll(columns.boxes());
        columns.after().forEach(all::addAll);
        return all.stream()
                .filter(column -> Math.abs(column.right() - each.x0()) < 1e-6)
                .map(Columns.Column::plate)
                .findFirst()
                .orElse(Columns.plateWidth(each.piece()));
    }
}
