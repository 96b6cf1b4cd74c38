package leadwright.render.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import leadwright.render.export.TextMeasure;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** A circuit figure read back from its source, to be measured. */
public final class Drawn {

    private record Text(String text, double pt, Rectangle2D place) {}

    private record Stroke(String look, double width, List<Line2D> pieces) {}

    private final Element svg;
    private final List<Text> texts = new ArrayList<>();
    private final List<Rectangle2D> stations = new ArrayList<>();
    private final List<Stroke> strokes = new ArrayList<>();

    public Drawn(String source) throws Exception {
        svg = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(source)))
                .getDocumentElement();
        each("text").forEach(this::text);
        each("polyline").forEach(this::stroke);
        each("rect").stream()
                .filter(rect -> rect.getAttribute("class").equals("station"))
                .forEach(rect -> stations.add(new Rectangle2D.Double(
                        number(rect, "x"), number(rect, "y"), number(rect, "width"), number(rect, "height"))));
    }

    private List<Element> each(String name) {
        NodeList nodes = svg.getElementsByTagName(name);
        List<Element> found = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            found.add((Element) nodes.item(i));
        }
        return found;
    }

    private static double number(Element element, String name) {
        return Double.parseDouble(element.getAttribute(name));
    }

    private void text(Element element) {
        double size = number(element, "font-size");
        double pt = size / TextMeasure.MM_PER_PT;
        boolean bold = element.getAttribute("font-weight").equals("bold");
        double y = number(element, "y");
        double over = size * TextMeasure.CAP_HEIGHT;
        double under = size * TextMeasure.DESCENT;
        String words = element.getTextContent();
        texts.add(new Text(
                words,
                pt,
                new Rectangle2D.Double(
                        number(element, "x"), y - over, TextMeasure.widthMm(words, pt, bold), over + under)));
    }

    private void stroke(Element element) {
        double[] at = Arrays.stream(element.getAttribute("points").split("[ ,]"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        List<Line2D> pieces = new ArrayList<>();
        for (int i = 0; i + 3 < at.length; i += 2) {
            pieces.add(new Line2D.Double(at[i], at[i + 1], at[i + 2], at[i + 3]));
        }
        strokes.add(new Stroke(element.getAttribute("class"), number(element, "stroke-width"), pieces));
    }

    /** It says what it is, its text is large enough, and nothing covers a text. */
    public void isLegible() {
        assertThat(svg.getAttribute("role")).isEqualTo("img");
        assertThat(svg.getAttribute("version")).isEqualTo("1.1");
        assertThat(each("title").get(0).getTextContent()).isNotBlank();
        assertThat(each("desc").get(0).getTextContent()).isNotBlank();
        Rectangle2D page = new Rectangle2D.Double(0, 0, CircuitFigure.WIDTH, CircuitFigure.HEIGHT);
        for (Text each : texts) {
            assertThat(each.pt()).as(each.text()).isGreaterThanOrEqualTo(8.4999);
            assertThat(page.contains(each.place()))
                    .as("%s on the page", each.text())
                    .isTrue();
            for (Text other : texts) {
                assertThat(each != other && each.place().intersects(other.place()))
                        .as("%s over %s", each.text(), other.text())
                        .isFalse();
            }
            for (Stroke stroke : strokes) {
                for (Line2D piece : stroke.pieces()) {
                    Rectangle2D wide = new Rectangle2D.Double(
                            each.place().getX() - stroke.width() / 2,
                            each.place().getY() - stroke.width() / 2,
                            each.place().getWidth() + stroke.width(),
                            each.place().getHeight() + stroke.width());
                    assertThat(piece.intersects(wide))
                            .as("a line of '%s' through '%s'", stroke.look(), each.text())
                            .isFalse();
                }
            }
            for (Rectangle2D box : stations) {
                assertThat(box.intersects(each.place()) && !box.contains(each.place()))
                        .as("%s over the edge of its box", each.text())
                        .isFalse();
            }
        }
    }

    /** What the boxes say, in the order of their numbers. */
    public List<String> stations() {
        List<String> said = new ArrayList<>();
        for (int i = 0; i < stations.size(); i++) {
            Rectangle2D box = stations.get(i);
            List<String> inside = texts.stream()
                    .filter(text -> box.contains(text.place()))
                    .map(Text::text)
                    .toList();
            assertThat(inside.get(0)).as("its number").isEqualTo(String.valueOf(i + 1));
            said.add(String.join(" ", inside.subList(1, inside.size())));
        }
        return said;
    }

    /** The heavy line leads from each box to the next, from the last to the first, and through no other box. */
    public void isOneLoop() {
        List<Stroke> way =
                strokes.stream().filter(each -> each.look().equals("way")).toList();
        assertThat(way).hasSameSizeAs(stations);
        for (int i = 0; i < way.size(); i++) {
            List<Line2D> pieces = way.get(i).pieces();
            Rectangle2D from = stations.get(i);
            Rectangle2D to = stations.get((i + 1) % stations.size());
            Line2D first = pieces.get(0);
            Line2D last = pieces.get(pieces.size() - 1);
            assertThat(touches(from, first.getX1(), first.getY1()))
                    .as("begins at box %d", i + 1)
                    .isTrue();
            assertThat(touches(to, last.getX2(), last.getY2()))
                    .as("ends at the box after %d", i + 1)
                    .isTrue();
            for (Rectangle2D box : stations) {
                Rectangle2D inner = new Rectangle2D.Double(
                        box.getX() + 0.1, box.getY() + 0.1, box.getWidth() - 0.2, box.getHeight() - 0.2);
                assertThat(pieces.stream().anyMatch(piece -> piece.intersects(inner)))
                        .as("the way after box %d runs through another box", i + 1)
                        .isFalse();
            }
        }
    }

    private static boolean touches(Rectangle2D box, double x, double y) {
        Rectangle2D wide = new Rectangle2D.Double(
                box.getX() - 0.02, box.getY() - 0.02, box.getWidth() + 0.04, box.getHeight() + 0.04);
        Rectangle2D inner = new Rectangle2D.Double(
                box.getX() + 0.02, box.getY() + 0.02, box.getWidth() - 0.04, box.getHeight() - 0.04);
        return wide.contains(x, y) && !inner.contains(x, y);
    }

    /** Whether the switch in a conductor is shown open; its word stands on the height of the conductor's name. */
    public boolean isOpen(String conductor) {
        double height = texts.stream()
                .filter(each -> each.text().equals(conductor))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no conductor " + conductor))
                .place()
                .getY();
        return texts.stream()
                .filter(each -> each.text().equals("OPEN"))
                .anyMatch(each -> Math.abs(each.place().getY() - height) < 0.5);
    }
}
