package leadwright.render.export;

import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.io.IOException;
import java.io.StringReader;
import org.apache.batik.parser.AWTPathProducer;
import org.apache.batik.parser.ParseException;
import org.w3c.dom.Element;

/** The outlines of the shapes of a drawing, in its own units. */
final class SvgShapes {

    private SvgShapes() {}

    /** The outline of a shape element; {@code name} is its local name, one of the seven of SVG. */
    static Shape shape(Element element, String name) {
        return switch (name) {
            case "rect" -> rect(element);
            case "line" ->
                new Line2D.Double(
                        number(element, "x1"), number(element, "y1"), number(element, "x2"), number(element, "y2"));
            case "circle" -> {
                double r = number(element, "r");
                yield new Ellipse2D.Double(number(element, "cx") - r, number(element, "cy") - r, 2 * r, 2 * r);
            }
            case "ellipse" -> {
                double rx = number(element, "rx");
                double ry = number(element, "ry");
                yield new Ellipse2D.Double(number(element, "cx") - rx, number(element, "cy") - ry, 2 * rx, 2 * ry);
            }
            case "polyline" -> points(element, false);
            case "polygon" -> points(element, true);
            case "path" -> path(element);
            default -> throw new IllegalArgumentException(name);
        };
    }

    /** A length given as an attribute, 0 when it is absent. */
    static double number(Element element, String attribute) {
        String value = element.getAttribute(attribute);
        return value.isEmpty() ? 0 : SvgStyle.length(value);
    }

    private static Shape rect(Element element) {
        double x = number(element, "x");
        double y = number(element, "y");
        double width = number(element, "width");
        double height = number(element, "height");
        boolean rounded = element.hasAttribute("rx") || element.hasAttribute("ry");
        if (!rounded) {
            return new Rectangle2D.Double(x, y, width, height);
        }
        // One radius given stands for both.
        double rx = number(element, element.hasAttribute("rx") ? "rx" : "ry");
        double ry = number(element, element.hasAttribute("ry") ? "ry" : "rx");
        return new RoundRectangle2D.Double(
                x, y, width, height, 2 * Math.min(rx, width / 2), 2 * Math.min(ry, height / 2));
    }

    private static Shape points(Element element, boolean closed) {
        String list = element.getAttribute("points").trim();
        Path2D.Double path = new Path2D.Double();
        String[] numbers = list.split("[\\s,]+");
        for (int i = 0; i + 1 < numbers.length; i += 2) {
            double x = SvgStyle.length(numbers[i]);
            double y = SvgStyle.length(numbers[i + 1]);
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        if (closed && path.getCurrentPoint() != null) {
            path.closePath();
        }
        return path;
    }

    private static Shape path(Element element) {
        String data = element.getAttribute("d");
        try {
            return AWTPathProducer.createShape(new StringReader(data), PathIterator.WIND_NON_ZERO);
        } catch (ParseException | IOException e) {
            throw new ExportException("The drawing has a path that cannot be read: " + data, e);
        }
    }
}
