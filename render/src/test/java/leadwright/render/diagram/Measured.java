package leadwright.render.diagram;

import java.awt.geom.Rectangle2D;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import leadwright.render.export.TextExtents;
import leadwright.render.export.TextMeasure;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/**
 * A drawing as a ruler sees it: read back from its source, the ink of its texts as Batik sets them, sharing nothing with what
 * laid it out.
 */
final class Measured {
    final List<Wire> wires = new ArrayList<>();
    final List<Box> boxes = new ArrayList<>();
    final List<Box> plates = new ArrayList<>();
    final List<Text> texts = new ArrayList<>();
    final Document document;

    record Point(double x, double y) {}

    /** A level or upright stretch. */
    record Segment(Point a, Point b) {
        boolean level() {
            return a.y() == b.y();
        }

        double low() {
            return level() ? Math.min(a.x(), b.x()) : Math.min(a.y(), b.y());
        }

        double high() {
            return level() ? Math.max(a.x(), b.x()) : Math.max(a.y(), b.y());
        }

        double at() {
            return level() ? a.y() : a.x();
        }
    }

    record Wire(String kind, String title, List<Segment> segments, String colour, double width, String dash) {
        Point start() {
            return segments.get(0).a();
        }

        Point end() {
            return segments.get(segments.size() - 1).b();
        }

        boolean stays() {
            return kind.endsWith(" stays");
        }
    }

    record Box(double left, double top, double right, double bottom, String kind) {
        boolean touches(Box other, double by) {
            return left < other.right - by
                    && other.left < right - by
                    && top < other.bottom - by
                    && other.top < bottom - by;
        }

        boolean within(Box other) {
            return left >= other.left - 0.01
                    && right <= other.right + 0.01
                    && top >= other.top - 0.01
                    && bottom <= other.bottom + 0.01;
        }

        boolean onEdge(Point p) {
            boolean beside = p.y() > top - 0.01 && p.y() < bottom + 0.01;
            return beside && (Math.abs(p.x() - left) < 0.02 || Math.abs(p.x() - right) < 0.02);
        }
    }

    record Text(String content, double pt, boolean bold, Box ink, String colour) {}

    Measured(String svg) {
        try {
            document = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new InputSource(new StringReader(svg)));
        } catch (Exception e) {
            throw new AssertionError("not well-formed", e);
        }
        for (Element path : all("path")) {
            if (path.getAttribute("class").startsWith("wire ")) {
                wires.add(new Wire(
                        path.getAttribute("class").substring(5),
                        path.getElementsByTagName("title").item(0).getTextContent(),
                        segments(path.getAttribute("d")),
                        path.getAttribute("stroke"),
                        Double.parseDouble(path.getAttribute("stroke-width")),
                        path.getAttribute("stroke-dasharray")));
            }
        }
        for (Element rect : all("rect")) {
            String kind = rect.getAttribute("class");
            double x = number(rect, "x");
            double y = number(rect, "y");
            Box box = new Box(x, y, x + number(rect, "width"), y + number(rect, "height"), kind);
            if (kind.equals("plate")) {
                plates.add(box);
            } else if (!kind.equals("page") && !kind.equals("zone")) {
                boxes.add(box);
            }
        }
        List<Rectangle2D> inks = TextExtents.of(svg);
        List<Element> all = all("text");
        for (int i = 0; i < all.size(); i++) {
            texts.add(text(all.get(i), inks.get(i)));
        }
    }

    /** Elements of a kind in document order. */
    List<Element> all(String name) {
        List<Element> all = new ArrayList<>();
        NodeList nodes = document.getElementsByTagName(name);
        for (int i = 0; i < nodes.getLength(); i++) {
            all.add((Element) nodes.item(i));
        }
        return all;
    }

    /** Places where two wires pass over each other. */
    List<Point> crossings() {
        List<Point> found = new ArrayList<>();
        for (int i = 0; i < wires.size(); i++) {
            for (int j = 0; j < wires.size(); j++) {
                for (Segment level : wires.get(i).segments()) {
                    for (Segment upright : wires.get(j).segments()) {
                        if (i != j
                                && level.level()
                                && !upright.level()
                                && upright.at() > level.low()
                                && upright.at() < level.high()
                                && level.at() > upright.low()
                                && level.at() < upright.high()) {
                            found.add(new Point(upright.at(), level.at()));
                        }
                    }
                }
            }
        }
        return found;
    }

    /** Least distance of wires that run side by side for at least so many millimetres; infinite where none do. */
    double closest(double sideBySide) {
        double closest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < wires.size(); i++) {
            for (int j = i + 1; j < wires.size(); j++) {
                for (Segment a : wires.get(i).segments()) {
                    for (Segment b : wires.get(j).segments()) {
                        double shared = Math.min(a.high(), b.high()) - Math.max(a.low(), b.low());
                        if (a.level() == b.level() && shared >= sideBySide) {
                            closest = Math.min(closest, Math.abs(a.at() - b.at()));
                        }
                    }
                }
            }
        }
        return closest;
    }

    /** Whether two stretches pass over each other. */
    static boolean cross(Segment a, Segment b) {
        Segment level = a.level() ? a : b;
        Segment upright = a.level() ? b : a;
        return a.level() != b.level()
                && upright.at() > level.low()
                && upright.at() < level.high()
                && level.at() > upright.low()
                && level.at() < upright.high();
    }

    /** Least distance of two stretches. */
    static double apart(Segment a, Segment b) {
        double x = gap(left(a), right(a), left(b), right(b));
        double y = gap(
                a.level() ? a.at() : a.low(),
                a.level() ? a.at() : a.high(),
                b.level() ? b.at() : b.low(),
                b.level() ? b.at() : b.high());
        return Math.hypot(x, y);
    }

    private static double left(Segment a) {
        return a.level() ? a.low() : a.at();
    }

    private static double right(Segment a) {
        return a.level() ? a.high() : a.at();
    }

    private static double gap(double low, double high, double otherLow, double otherHigh) {
        return Math.max(0, Math.max(low - otherHigh, otherLow - high));
    }

    /** Whether a stretch runs within 0.8 mm along the edge of a box for five millimetres. */
    static boolean hugs(Segment segment, Box box) {
        double low = segment.level() ? box.left() : box.top();
        double high = segment.level() ? box.right() : box.bottom();
        double near = segment.level() ? box.top() : box.left();
        double far = segment.level() ? box.bottom() : box.right();
        double shared = Math.min(segment.high(), high) - Math.max(segment.low(), low);
        return shared >= 5 && Math.min(Math.abs(segment.at() - near), Math.abs(segment.at() - far)) < 0.8;
    }

    /** Whether a stretch runs through the inside of a box. */
    static boolean through(Segment segment, Box box) {
        double from = segment.level() ? box.left() : box.top();
        double to = segment.level() ? box.right() : box.bottom();
        double near = segment.level() ? box.top() : box.left();
        double far = segment.level() ? box.bottom() : box.right();
        return segment.at() > near + 0.05
                && segment.at() < far - 0.05
                && Math.min(segment.high(), to) - Math.max(segment.low(), from) > 0.05;
    }

    private static final Pattern STEP = Pattern.compile("([MHV])(-?[\\d.]+)(?: (-?[\\d.]+))?");

    private static List<Segment> segments(String path) {
        List<Segment> segments = new ArrayList<>();
        Point at = new Point(0, 0);
        Matcher step = STEP.matcher(path);
        int read = 0;
        while (step.find()) {
            read += step.group().length();
            double value = Double.parseDouble(step.group(2));
            Point next = switch (step.group(1)) {
                case "M" -> new Point(value, Double.parseDouble(step.group(3)));
                case "H" -> new Point(value, at.y());
                default -> new Point(at.x(), value);
            };
            if (!step.group(1).equals("M")) {
                segments.add(new Segment(at, next));
            }
            at = next;
        }
        if (read != path.length()) {
            throw new AssertionError("a wire that is not made of level and upright lines: " + path);
        }
        return segments;
    }

    private static Text text(Element text, Rectangle2D ink) {
        return new Text(
                text.getTextContent(),
                number(text, "font-size") / TextMeasure.MM_PER_PT,
                text.getAttribute("font-weight").equals("bold"),
                new Box(ink.getMinX(), ink.getMinY(), ink.getMaxX(), ink.getMaxY(), "text"),
                text.getAttribute("fill"));
    }

    private static double number(Element element, String name) {
        return Double.parseDouble(element.getAttribute(name).isEmpty() ? "0" : element.getAttribute(name));
    }
}
