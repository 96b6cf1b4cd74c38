package leadwright.render.sheet;

import java.io.StringWriter;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import leadwright.render.paper.Letters;

/**
 * Writes one well-formed page source that reads the same as XML and as HTML. Text and attribute values are data: they are
 * escaped here and nowhere else. Elements nest by the nesting of the calls, so they always close.
 */
final class Xhtml {

    /** Characters that fit on a line of any column. */
    private static final int SHORT = 24;

    private static final Pattern ABBREVIATION = Pattern.compile("\\b[ad]\\.c\\.");

    private final StringWriter page = new StringWriter();
    private final XMLStreamWriter out;

    Xhtml() {
        try {
            // The JDK's own factory: a search for another one costs time at every start.
            out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(page);
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What goes inside an element. */
    @FunctionalInterface
    interface Inside {
        void write() throws XMLStreamException;
    }

    /** The document type, once, before all else. */
    Xhtml docType() {
        return act(() -> out.writeDTD("<!DOCTYPE html>\n"));
    }

    /** An element with a class (none where empty) and what is inside. */
    Xhtml in(String element, String styleClass, Inside inside) {
        return act(() -> {
            start(element, styleClass);
            inside.write();
            out.writeEndElement();
        });
    }

    /** An element with further attributes, given as name and value in turn. */
    Xhtml with(String element, String styleClass, String[] attributes, Inside inside) {
        return act(() -> {
            start(element, styleClass);
            for (int i = 0; i < attributes.length; i += 2) {
                out.writeAttribute(attributes[i], legal(attributes[i + 1]));
            }
            inside.write();
            out.writeEndElement();
        });
    }

    /** An element that holds one text. */
    Xhtml leaf(String element, String styleClass, String text) {
        return in(element, styleClass, () -> text(text));
    }

    Xhtml span(String styleClass, String text) {
        return leaf("span", styleClass, text);
    }

    Xhtml bold(String text) {
        return leaf("b", "", text);
    }

    /** An element without content, such as a line break. */
    Xhtml empty(String element, String... attributes) {
        return act(() -> {
            out.writeEmptyElement(element);
            for (int i = 0; i < attributes.length; i += 2) {
                out.writeAttribute(attributes[i], legal(attributes[i + 1]));
            }
        });
    }

    Xhtml text(String text) {
        return act(() -> out.writeCharacters(legal(text)));
    }

    Xhtml line() {
        return act(() -> out.writeCharacters("\n"));
    }

    /** A square to tick, followed by a space that never breaks from what it ticks. */
    Xhtml tick() {
        return in("span", "tick", () -> text("")).text("\u00a0");
    }

    /** Text in which no abbreviation such as a.c. is split over two lines. */
    Xhtml unparted(String words) {
        Matcher abbreviation = ABBREVIATION.matcher(words);
        int from = 0;
        while (abbreviation.find()) {
            text(words.substring(from, abbreviation.start())).span("unparted", abbreviation.group());
            from = abbreviation.end();
        }
        return text(words.substring(from));
    }

    /** A square to tick with what it ticks, and a space after; short words stay beside their square. */
    Xhtml ticked(String words) {
        if (words.length() > SHORT) {
            return tick().text(words + " ");
        }
        return in("span", "ticked", () -> tick().text(words)).text(" ");
    }

    /** A box to write in, with a label before and a unit inside at its right. */
    Xhtml box(String width, String unit) {
        return in("span", "box " + width, () -> text(unit.isEmpty() ? "\u00a0" : unit));
    }

    Xhtml field(String label, String width, String unit) {
        return in("span", "field", () -> text(label + "\u00a0").box(width, unit))
                .text(" ");
    }

    /** A field that a readings file has too; its name there stands at the box, so that a screen finds it. */
    Xhtml field(String name, String label, String width, String unit) {
        String[] named = {"data-field", name};
        return in(
                        "span",
                        "field",
                        () -> text(label + "\u00a0")
                                .with("span", "box " + width, named, () -> text(unit.isEmpty() ? "\u00a0" : unit)))
                .text(" ");
    }

    /** Markup that this program has written itself and that is well formed: a drawing. */
    Xhtml markup(String wellFormed) {
        return act(() -> {
            // Closes the pending start tag before the text goes past the writer.
            out.writeCharacters("");
            out.flush();
            page.write(wellFormed);
        });
    }

    String finish() {
        act(out::writeEndDocument);
        act(out::flush);
        return page.toString();
    }

    private void start(String element, String styleClass) throws XMLStreamException {
        out.writeStartElement(element);
        if (!styleClass.isEmpty()) {
            out.writeAttribute("class", styleClass);
        }
    }

    private Xhtml act(Inside act) {
        try {
            act.write();
        } catch (XMLStreamException e) {
            throw new IllegalStateException("The page could not be written", e);
        }
        return this;
    }

    /** The text as it may stand in a page. */
    static String legal(String text) {
        return Letters.legal(text);
    }
}
