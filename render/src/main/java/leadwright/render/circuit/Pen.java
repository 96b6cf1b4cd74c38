package leadwright.render.circuit;

import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import leadwright.render.export.TextMeasure;

/** Draws lines, boxes and text into one SVG 1.1 source. Millimetres. */
final class Pen {

    static final String INK = "#1a1a1a";
    static final String EARTH = "#00614a";
    static final String QUIET = "#444444";

    private final StringWriter out = new StringWriter();
    private final XMLStreamWriter xml;

    Pen(double width, double height, String title, String description) {
        try {
            // The platform's own writer: what is on the class path must not change a byte.
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(out);
            xml.writeStartElement("svg");
            xml.writeDefaultNamespace("http://www.w3.org/2000/svg");
            attributes(
                    "version",
                    "1.1",
                    "width",
                    number(width) + "mm",
                    "height",
                    number(height) + "mm",
                    "viewBox",
                    "0 0 " + number(width) + " " + number(height),
                    "role",
                    "img",
                    "font-family",
                    "'DejaVu Sans', Verdana, Arial, sans-serif",
                    "fill",
                    INK);
            words("title", title);
            words("desc", description);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** How a line is drawn: dash and width carry the meaning, colour is a second help. */
    enum Line {
        WAY("way", INK, 1.0, ""),
        BESIDE("beside", INK, 0.35, ""),
        EARTH_BESIDE("beside earth", EARTH, 0.7, "5 1.2 0.8 1.2");

        private final String word;
        private final String colour;
        private final double width;
        private final String dash;

        Line(String word, String colour, double width, String dash) {
            this.word = word;
            this.colour = colour;
            this.width = width;
            this.dash = dash;
        }
    }

    /** A line of straight pieces through these points, x and y in turn. */
    void line(Line look, double... points) {
        StringBuilder list = new StringBuilder();
        for (int i = 0; i < points.length; i += 2) {
            list.append(list.length() == 0 ? "" : " ")
                    .append(number(points[i]))
                    .append(',')
                    .append(number(points[i + 1]));
        }
        String[] drawn = {
            "class",
            look.word,
            "points",
            list.toString(),
            "fill",
            "none",
            "stroke",
            look.colour,
            "stroke-width",
            number(look.width)
        };
        if (look.dash.isEmpty()) {
            leaf("polyline", drawn);
        } else {
            String[] dashed = java.util.Arrays.copyOf(drawn, drawn.length + 2);
            dashed[drawn.length] = "stroke-dasharray";
            dashed[drawn.length + 1] = look.dash;
            leaf("polyline", dashed);
        }
    }

    void box(String word, double x, double y, double width, double height, double stroke) {
        leaf(
                "rect",
                "class",
                word,
                "x",
                number(x),
                "y",
                number(y),
                "width",
                number(width),
                "height",
                number(height),
                "fill",
                "#ffffff",
                "stroke",
                INK,
                "stroke-width",
                number(stroke));
    }

    /** A joint, filled; or the contact of a switch, an open ring. */
    void dot(double x, double y, boolean filled) {
        leaf(
                "circle",
                "cx",
                number(x),
                "cy",
                number(y),
                "r",
                "0.75",
                "fill",
                filled ? INK : "#ffffff",
                "stroke",
                INK,
                "stroke-width",
                "0.35");
    }

    /** A line of text that begins here. @param y height of the middle of its capitals */
    void text(double x, double y, String text, double pt, boolean bold, String colour) {
        try {
            xml.writeCharacters("\n");
            xml.writeStartElement("text");
            attributes(
                    "x",
                    number(x),
                    "y",
                    number(y + pt * TextMeasure.MM_PER_PT * TextMeasure.CAP_HEIGHT / 2),
                    "font-size",
                    BigDecimal.valueOf(pt * TextMeasure.MM_PER_PT)
                            .setScale(4, RoundingMode.UP)
                            .stripTrailingZeros()
                            .toPlainString(),
                    "font-weight",
                    bold ? "bold" : "normal",
                    "fill",
                    colour);
            xml.writeCharacters(text);
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    String finish() {
        try {
            xml.writeCharacters("\n");
            xml.writeEndElement();
            xml.close();
            return out.toString();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    private void leaf(String name, String... attributes) {
        try {
            xml.writeCharacters("\n");
            xml.writeStartElement(name);
            attributes(attributes);
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    private void words(String name, String text) throws XMLStreamException {
        xml.writeCharacters("\n");
        xml.writeStartElement(name);
        xml.writeCharacters(text);
        xml.writeEndElement();
    }

    private void attributes(String... pairs) throws XMLStreamException {
        for (int i = 0; i < pairs.length; i += 2) {
            xml.writeAttribute(pairs[i], pairs[i + 1]);
        }
    }

    static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }
}
