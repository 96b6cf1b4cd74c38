package leadwright.render.diagram;

import java.io.StringWriter;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayDeque;
import java.util.Deque;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import leadwright.render.export.TextMeasure;

/**
 * Writes one drawing element by element, so that it is well-formed whatever stands in it. Only what SVG 1.1 knows is
 * written, and looks are attributes on the elements themselves: a drawing set into a page keeps its looks and lends none.
 */
final class Svg {
    static final String FAMILY = "'DejaVu Sans', Verdana, Arial, sans-serif";

    private final StringWriter out = new StringWriter();
    private final XMLStreamWriter xml;
    private final Deque<Boolean> withChildren = new ArrayDeque<>();

    /** Opens a drawing of this size in millimetres. */
    Svg(double width, double height, String title, String description) {
        try {
            // The platform's own writer: what is on the class path must not change a byte.
            xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(out);
        } catch (XMLStreamException e) {
            throw new IllegalStateException("The platform's XML writer is missing", e);
        }
        open(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
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
                FAMILY,
                "fill",
                Ink.BLACK);
        line("title", title);
        line("desc", description);
    }

    /** Opens an element. @param attributes name, value, name, value …; a value may be a number of millimetres */
    void open(String name, Object... attributes) {
        start(name, attributes);
        withChildren.push(false);
    }

    /** Closes the element opened last. */
    void close() {
        boolean children = withChildren.pop();
        try {
            if (children) {
                newLine();
            }
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** An element without content. */
    void leaf(String name, Object... attributes) {
        open(name, attributes);
        close();
    }

    /** An element that says what it is when pointed at. */
    void titled(String title, String name, Object... attributes) {
        open(name, attributes);
        line("title", title);
        close();
    }

    /** An element with a line of text. */
    void line(String name, String text, Object... attributes) {
        start(name, attributes);
        try {
            xml.writeCharacters(Texts.clean(text));
            xml.writeEndElement();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Where a text stands on its base line. */
    enum Anchor {
        START("start"),
        MIDDLE("middle"),
        END("end");

        private final String word;

        Anchor(String word) {
            this.word = word;
        }
    }

    /**
     * A line of text.
     *
     * @param y height of the middle of its capitals
     */
    void text(double x, double y, Anchor anchor, String text, Type type) {
        if (text.isEmpty()) {
            return;
        }
        Object[] attributes = {
            "x",
            x,
            "y",
            y + type.pt() * TextMeasure.MM_PER_PT * TextMeasure.CAP_HEIGHT / 2,
            "font-size",
            size(type.pt()),
            "text-anchor",
            anchor.word,
            "font-weight",
            type.bold() ? "bold" : "normal",
            "fill",
            type.colour()
        };
        line("text", text, attributes);
    }

    /** A line of text set a little smaller, then shortened where it must be; the full text then stands in a title. */
    void fitted(double x, double y, double room, Anchor anchor, String text, Type type) {
        String full = Texts.clean(text);
        Type set = Texts.squeezed(full, room, type);
        String shown = Texts.fit(full, room, set);
        if (shown.equals(full)) {
            text(x, y, anchor, full, set);
            return;
        }
        open("g");
        line("title", full);
        text(x, y, anchor, shown, set);
        close();
    }

    /** Closes the drawing and gives its source. */
    String finish() {
        while (!withChildren.isEmpty()) {
            close();
        }
        try {
            xml.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>" + out + "\n";
    }

    /** Millimetres to a hundredth, the shortest way of writing them. */
    static String number(double value) {
        BigDecimal rounded = BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
    }

    private static String size(double pt) {
        return BigDecimal.valueOf(pt * TextMeasure.MM_PER_PT)
                .setScale(4, RoundingMode.UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    private void start(String name, Object... attributes) {
        try {
            if (!withChildren.isEmpty()) {
                withChildren.pop();
                withChildren.push(true);
            }
            newLine();
            xml.writeStartElement(name);
            for (int i = 0; i < attributes.length; i += 2) {
                Object value = attributes[i + 1];
                String text = value instanceof Number number ? number(number.doubleValue()) : value.toString();
                if (attributes[i].equals("xmlns")) {
                    xml.writeDefaultNamespace(text);
                } else {
                    xml.writeAttribute(attributes[i].toString(), Texts.clean(text));
                }
            }
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    private void newLine() throws XMLStreamException {
        xml.writeCharacters("\n");
    }
}
