package leadwright.render.circuit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import leadwright.render.circuit.Circuit.At;
import leadwright.render.circuit.Circuit.Conductor;
import leadwright.render.circuit.Pen.Line;
import leadwright.render.circuit.Station.Row;
import leadwright.render.export.TextMeasure;

/**
 * A circuit as an SVG 1.1 drawing as wide as the text of a page. Columns are supply, tester, leads and device; the way of the
 * current is one heavy loop through numbered boxes, what is beside it is thin. All is placed by rule: nothing is moved until
 * it fits, and what would not fit is refused.
 */
public final class CircuitFigure {

    /** Width of every figure, in millimetres. */
    public static final double WIDTH = 172;

    /** Height of every figure, in millimetres. */
    public static final double HEIGHT = 66;

    private static final double TOP = 18.5;
    private static final double BOTTOM = 55.5;
    private static final double BOX = 12;
    private static final double OTHER = 31;
    private static final double EARTH = 43;
    private static final double SIDE_LEFT = Zone.DEVICE.left + 11;
    private static final double GAP = 3;
    private static final double SWITCH = Zone.TESTER.left + 18;
    private static final double NUMBER = 4.6;
    private static final double LABEL_PT = 9;
    private static final double SMALL_PT = 8.5;

    private final Circuit circuit;
    private final Pen pen;
    private final Map<Station, Place> places = new LinkedHashMap<>();

    /** A box by its middle line. */
    private record Place(double left, double width, double middle) {
        double right() {
            return left + width;
        }

        double over() {
            return middle - BOX / 2;
        }

        double under() {
            return middle + BOX / 2;
        }
    }

    private CircuitFigure(Circuit circuit, String title) {
        this.circuit = circuit;
        String beside = circuit.beside();
        this.pen = new Pen(
                WIDTH, HEIGHT, title, circuit.words() + (beside.isEmpty() ? "" : " Beside it: " + beside + "."));
    }

    /**
     * @param title what the figure is of, in few words
     * @throws IllegalArgumentException when a name does not fit its box
     */
    public static String svg(Circuit circuit, String title) {
        return new CircuitFigure(circuit, title).draw();
    }

    private String draw() {
        for (Row row : Row.values()) {
            for (Zone zone : Zone.values()) {
                place(zone, row);
            }
        }
        for (Zone zone : Zone.values()) {
            if (occupied(zone)) {
                pen.box("zone", zone.left, 1, zone.width, HEIGHT - 2, 0.25);
                pen.text(zone.left + 2, 5.5, zone.title, LABEL_PT, true, Pen.QUIET);
            }
        }
        way();
        circuit.other().ifPresent(this::other);
        circuit.earth().ifPresent(this::earth);
        int number = 1;
        for (Station station : circuit.way()) {
            box(station, number++);
        }
        return pen.finish();
    }

    private boolean occupied(Zone zone) {
        boolean passed =
                circuit.other().filter(each -> each.at() != At.WITHOUT_SWITCH).isPresent();
        return passed && zone != Zone.LEADS || circuit.way().stream().anyMatch(each -> each.zone() == zone);
    }

    /** Stations of one zone and row share its width; along the bottom the first of them stands at the right. */
    private void place(Zone zone, Row row) {
        List<Station> here = new ArrayList<>(circuit.way().stream()
                .filter(each -> each.zone() == zone && each.row() == row)
                .toList());
        if (here.isEmpty()) {
            return;
        }
        if (row == Row.BOTTOM) {
            java.util.Collections.reverse(here);
        }
        double middle = row == Row.TOP ? TOP : row == Row.BOTTOM ? BOTTOM : (TOP + BOTTOM) / 2;
        double left = row == Row.SIDE ? SIDE_LEFT : zone.left + 2;
        double room = zone.right() - 2 - left;
        double width = (room - GAP * (here.size() - 1)) / here.size();
        for (Station each : here) {
            places.put(each, new Place(left, width, middle));
            left += width + GAP;
        }
    }

    private void way() {
        List<Station> way = circuit.way();
        for (int i = 0; i < way.size(); i++) {
            boolean last = i == way.size() - 1;
            join(way.get(i), way.get((i + 1) % way.size()), last && circuit.broken());
        }
    }

    private void join(Station one, Station next, boolean broken) {
        Place from = places.get(one);
        Place to = places.get(next);
        if (one.row() == next.row()) {
            boolean rightwards = one.row() == Row.TOP;
            pen.line(
                    Line.WAY,
                    rightwards ? from.right() : from.left(),
                    from.middle(),
                    rightwards ? to.left() : to.right(),
                    to.middle());
        } else if (one.row() == Row.BOTTOM && next.row() == Row.TOP) {
            closing(from, to, broken);
        } else {
            down(from, to);
        }
    }

    /** Down at the right, or straight on where the next box is not below. */
    private void down(Place from, Place to) {
        double x = Math.min(from.right(), Math.max(from.left(), SIDE_LEFT + 14));
        if (x <= from.left() || x >= from.right()) {
            x = (from.left() + from.right()) / 2;
        }
        if (x > to.left() && x < to.right()) {
            pen.line(Line.WAY, x, from.under(), x, to.over());
        } else {
            pen.line(Line.WAY, x, from.under(), x, to.middle(), to.left() > x ? to.left() : to.right(), to.middle());
        }
    }

    /** Up at the left, from the last box along the bottom to the first along the top. */
    private void closing(Place from, Place to, boolean broken) {
        if (to.left() > from.left() + 9) {
            pen.line(Line.WAY, from.left() + 9, from.over(), from.left() + 9, to.middle(), to.left(), to.middle());
            return;
        }
        double x = to.left() + 9;
        if (broken) {
            pen.line(Line.WAY, x, to.under(), x, OTHER);
            pen.dot(x, OTHER + 0.75, false);
            pen.dot(x, EARTH, false);
            pen.line(Line.WAY, x - 5, OTHER + 2, x, EARTH);
            pen.text(x + 3, (OTHER + EARTH) / 2, At.OPEN.word, SMALL_PT, true, Pen.INK);
        }
        double begins = broken ? EARTH + 0.75 : to.under();
        if (x > from.left() && x < from.right()) {
            pen.line(Line.WAY, x, from.over(), x, begins);
        } else {
            pen.line(Line.WAY, from.left(), from.middle(), x, from.middle(), x, begins);
        }
    }

    /** The conductor by which the current would go back in use: it ends at the supply's tie to earth. */
    private void other(Conductor conductor) {
        double device = Zone.DEVICE.left + 6;
        double supply = Zone.SUPPLY.left + 11;
        beside(conductor, Line.BESIDE, OTHER, supply, device);
        pen.line(Line.BESIDE, device, OTHER, device, TOP + BOX / 2);
        pen.dot(supply, OTHER, true);
    }

    private void earth(Conductor conductor) {
        double device = Zone.DEVICE.left + 6;
        double supply = Zone.SUPPLY.left + 11;
        beside(conductor, Line.EARTH_BESIDE, EARTH, supply, device);
        pen.dot(supply, EARTH, true);
        pen.dot(device, EARTH, true);
    }

    private void beside(Conductor conductor, Line look, double y, double from, double to) {
        double name = Zone.LEADS.left + 2;
        double room = Zone.LEADS.right() - 1 - name;
        pen.text(name, y - 2.4, fitted(conductor.name(), room, SMALL_PT), SMALL_PT, false, Pen.INK);
        if (conductor.at() == At.WITHOUT_SWITCH) {
            pen.line(look, from, y, to, y);
            return;
        }
        double far = SWITCH + 9;
        pen.line(look, from, y, SWITCH - 0.75, y);
        pen.line(look, far + 0.75, y, to, y);
        if (conductor.at() == At.OPEN) {
            pen.line(Line.BESIDE, SWITCH, y, far - 1.2, y - 4);
        } else {
            pen.line(Line.BESIDE, SWITCH, y, far, y);
        }
        pen.dot(SWITCH, y, false);
        pen.dot(far, y, false);
        pen.text(far + 3, y - 2.4, conductor.at().word, SMALL_PT, conductor.at() == At.OPEN, Pen.INK);
    }

    private void box(Station station, int number) {
        Place place = places.get(station);
        pen.box("station", place.left(), place.over(), place.width(), BOX, 0.35);
        pen.text(place.left() + 1.5, place.middle(), String.valueOf(number), LABEL_PT, true, Pen.INK);
        double label = Math.max(NUMBER, 2.6 + TextMeasure.widthMm(String.valueOf(number), LABEL_PT, true));
        List<String> lines = lines(station.label(), place.width() - label - 0.8);
        double y = place.middle() - (lines.size() - 1) * 1.8;
        for (String line : lines) {
            pen.text(place.left() + label, y, line, lines.size() > 2 ? SMALL_PT : LABEL_PT, false, Pen.INK);
            y += 3.6;
        }
    }

    private static String fitted(String text, double room, double pt) {
        if (TextMeasure.widthMm(text, pt, false) > room) {
            throw new IllegalArgumentException("no room for '" + text + "'");
        }
        return text;
    }

    private static List<String> lines(String label, double room) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : label.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && TextMeasure.widthMm(longer, LABEL_PT, false) > room) {
                lines.add(line);
                line = word;
            } else {
                line = longer;
            }
        }
        lines.add(line);
        if (lines.size() > 3) {
            throw new IllegalArgumentException("no room for '" + label + "'");
        }
        return lines.stream()
                .map(each -> fitted(each, room, lines.size() > 2 ? SMALL_PT : LABEL_PT))
                .toList();
    }
}
