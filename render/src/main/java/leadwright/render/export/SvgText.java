package leadwright.render.export;

import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.Text;

/**
 * Where the pieces of one {@code <text>} stand. A piece begins at every {@code <tspan>}; those between two given
 * places are anchored together. White space is collapsed as SVG 1.1 does by default.
 */
final class SvgText {

    /** A piece of text of one style; x and y are the start of its base line in the drawing's units. */
    record Run(String text, SvgStyle style, double x, double y) {}

    private final SvgRules rules;
    private final List<Run> placed = new ArrayList<>();
    private final List<Run> waiting = new ArrayList<>();
    private double x;
    private double y;
    private boolean blankBefore = true;

    SvgText(Element text, SvgStyle style, SvgRules rules) {
        this.rules = rules;
        moveTo(text);
        read(text, style);
        trimEnd();
        place();
    }

    List<Run> runs() {
        return placed;
    }

    private void read(Element element, SvgStyle style) {
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Text) {
                add(((Text) node).getData(), style);
            } else if (node instanceof Element) {
                Element child = (Element) node;
                String name = SvgRules.localName(child);
                if (name.equals("tspan")) {
                    SvgStyle own = style.inside(child, rules);
                    if (own.shown()) {
                        moveTo(child);
                        read(child, own);
                    }
                } else if (!name.equals("title") && !name.equals("desc")) {
                    throw new ExportException("The drawing has text inside " + name + ", which the PDF cannot show");
                }
            }
        }
    }

    private void moveTo(Element element) {
        if (element.hasAttribute("x") || element.hasAttribute("y")) {
            place();
            x = element.hasAttribute("x") ? SvgShapes.number(element, "x") : x;
            y = element.hasAttribute("y") ? SvgShapes.number(element, "y") : y;
            blankBefore = true;
        }
        if (element.hasAttribute("dx") || element.hasAttribute("dy")) {
            double dx = SvgShapes.number(element, "dx");
            double dy = SvgShapes.number(element, "dy");
            place();
            x += dx;
            y += dy;
        }
        for (String unknown : List.of("rotate", "textLength")) {
            if (element.hasAttribute(unknown)) {
                throw new ExportException("The drawing sets text with " + unknown + ", which the PDF cannot show");
            }
        }
    }

    private void add(String raw, SvgStyle style) {
        StringBuilder text = new StringBuilder(raw.length());
        for (int i = 0; i < raw.length(); i++) {
            char c = raw.charAt(i);
            boolean blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
            if (!blank) {
                text.append(c);
            } else if (!blankBefore && c != '\n' && c != '\r') {
                text.append(' ');
            }
            // A line break vanishes, so it neither sets a blank nor ends one.
            if (c != '\n' && c != '\r') {
                blankBefore = blank;
            }
        }
        if (text.length() > 0) {
            waiting.add(new Run(text.toString(), style, 0, 0));
        }
    }

    private void trimEnd() {
        if (!waiting.isEmpty()) {
            Run last = waiting.remove(waiting.size() - 1);
            waiting.add(new Run(last.text().stripTrailing(), last.style(), 0, 0));
        }
    }

    /** Gives the waiting runs their places, all anchored as one by the first of them. */
    private void place() {
        if (waiting.isEmpty()) {
            return;
        }
        double width = 0;
        for (Run run : waiting) {
            width += width(run);
        }
        double at = x - width * waiting.get(0).style().anchor();
        for (Run run : waiting) {
            placed.add(new Run(run.text(), run.style(), at, y));
            at += width(run);
        }
        x = at;
        waiting.clear();
    }

    private static double width(Run run) {
        return TextMeasure.widthEm(run.text(), run.style().bold()) * run.style().fontSize();
    }
}
