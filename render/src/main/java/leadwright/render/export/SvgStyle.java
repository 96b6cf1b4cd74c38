package leadwright.render.export;

import java.awt.BasicStroke;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;

/**
 * The look of one element of a drawing after inheritance. Lengths are in the drawing's own units. A property that
 * would change the look in a way the PDF cannot follow is refused by name rather than ignored.
 */
final class SvgStyle {

    private static final Pattern LENGTH =
            Pattern.compile("([-+]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+]?\\d+)?)\\s*(px|pt|mm|cm|in)?");
    private static final Pattern RGB = Pattern.compile("rgb\\(\\s*(\\d+)\\s*,\\s*(\\d+)\\s*,\\s*(\\d+)\\s*\\)");

    /** What passes from an element to those inside it. */
    private static final Set<String> INHERITED = Set.of(
            "color",
            "fill",
            "fill-opacity",
            "fill-rule",
            "font-size",
            "font-weight",
            "stroke",
            "stroke-dasharray",
            "stroke-dashoffset",
            "stroke-linecap",
            "stroke-linejoin",
            "stroke-miterlimit",
            "stroke-opacity",
            "stroke-width",
            "text-anchor",
            "visibility");

    /** What may be given only with a value that changes nothing. */
    private static final Map<String, Set<String>> HARMLESS_ONLY = Map.ofEntries(
            Map.entry("opacity", Set.of("1")),
            Map.entry("clip-path", Set.of("none")),
            Map.entry("mask", Set.of("none")),
            Map.entry("filter", Set.of("none")),
            Map.entry("marker", Set.of("none")),
            Map.entry("marker-start", Set.of("none")),
            Map.entry("marker-mid", Set.of("none")),
            Map.entry("marker-end", Set.of("none")),
            Map.entry("paint-order", Set.of("normal")),
            Map.entry("vector-effect", Set.of("none")),
            Map.entry("dominant-baseline", Set.of("auto", "alphabetic")),
            Map.entry("alignment-baseline", Set.of("auto", "baseline", "alphabetic")),
            Map.entry("baseline-shift", Set.of("baseline")),
            Map.entry("letter-spacing", Set.of("normal", "0")),
            Map.entry("word-spacing", Set.of("normal", "0")),
            Map.entry("text-decoration", Set.of("none")),
            Map.entry("font-style", Set.of("normal")),
            Map.entry("writing-mode", Set.of("lr-tb", "horizontal-tb")));

    private static final Map<String, Integer> COLOURS = Map.ofEntries(
            Map.entry("black", 0x000000),
            Map.entry("silver", 0xc0c0c0),
            Map.entry("gray", 0x808080),
            Map.entry("grey", 0x808080),
            Map.entry("white", 0xffffff),
            Map.entry("maroon", 0x800000),
            Map.entry("red", 0xff0000),
            Map.entry("purple", 0x800080),
            Map.entry("green", 0x008000),
            Map.entry("lime", 0x00ff00),
            Map.entry("olive", 0x808000),
            Map.entry("yellow", 0xffff00),
            Map.entry("navy", 0x000080),
            Map.entry("blue", 0x0000ff),
            Map.entry("teal", 0x008080),
            Map.entry("aqua", 0x00ffff),
            Map.entry("orange", 0xffa500));

    private final Map<String, String> inherited;
    private final boolean shown;

    private SvgStyle(Map<String, String> inherited, boolean shown) {
        this.inherited = inherited;
        this.shown = shown;
    }

    static SvgStyle initial() {
        return new SvgStyle(Map.of(), true);
    }

    /**
     * The style of an element inside one of this style: presentation attributes, then rules, then its
     * {@code style} attribute.
     */
    SvgStyle inside(Element element, SvgRules rules) {
        Map<String, String> own = new LinkedHashMap<>();
        for (String name : INHERITED) {
            if (element.hasAttribute(name)) {
                own.put(name, element.getAttribute(name).trim());
            }
        }
        for (String name : HARMLESS_ONLY.keySet()) {
            if (element.hasAttribute(name)) {
                own.put(name, element.getAttribute(name).trim());
            }
        }
        if (element.hasAttribute("display")) {
            own.put("display", element.getAttribute("display").trim());
        }
        own.putAll(rules.of(element));
        own.putAll(SvgRules.declarations(element.getAttribute("style")));

        Map<String, String> next = new LinkedHashMap<>(inherited);
        for (Map.Entry<String, String> entry : own.entrySet()) {
            String value = entry.getValue();
            Set<String> harmless = HARMLESS_ONLY.get(entry.getKey());
            if (harmless != null && !harmless.contains(value)) {
                throw new ExportException("The drawing uses " + entry.getKey() + ": " + value
                        + ", which the PDF cannot show (in " + element.getTagName() + ")");
            }
            if (INHERITED.contains(entry.getKey()) && !value.equals("inherit")) {
                next.put(entry.getKey(), value);
            }
        }
        return new SvgStyle(next, shown && !"none".equals(own.get("display")));
    }

    boolean shown() {
        return shown;
    }

    boolean visible() {
        return !text("visibility", "visible").equals("hidden");
    }

    OptionalInt fill() {
        return colour(text("fill", "black"));
    }

    OptionalInt stroke() {
        return strokeWidth() == 0 ? OptionalInt.empty() : colour(text("stroke", "none"));
    }

    float fillOpacity() {
        return (float) number("fill-opacity", 1);
    }

    float strokeOpacity() {
        return (float) number("stroke-opacity", 1);
    }

    boolean evenOdd() {
        return text("fill-rule", "nonzero").equals("evenodd");
    }

    double strokeWidth() {
        return number("stroke-width", 1);
    }

    double fontSize() {
        return number("font-size", 16);
    }

    boolean bold() {
        String weight = text("font-weight", "normal");
        return weight.equals("bold") || weight.equals("bolder") || weight.matches("[6-9]00");
    }

    /** Which part of the text stands at its place: 0 the start, 0.5 the middle, 1 the end. */
    double anchor() {
        return switch (text("text-anchor", "start")) {
            case "middle" -> 0.5;
            case "end" -> 1;
            default -> 0;
        };
    }

    /**
     * The pen, all lengths multiplied by a scale; meant as a carrier of values, widths of zero never reach it.
     */
    BasicStroke pen(double scale) {
        int cap = switch (text("stroke-linecap", "butt")) {
            case "round" -> BasicStroke.CAP_ROUND;
            case "square" -> BasicStroke.CAP_SQUARE;
            default -> BasicStroke.CAP_BUTT;
        };
        int join = switch (text("stroke-linejoin", "miter")) {
            case "round" -> BasicStroke.JOIN_ROUND;
            case "bevel" -> BasicStroke.JOIN_BEVEL;
            default -> BasicStroke.JOIN_MITER;
        };
        float width = (float) (strokeWidth() * scale);
        float miter = (float) Math.max(1, number("stroke-miterlimit", 4));
        String dashes = text("stroke-dasharray", "none");
        if (dashes.equals("none")) {
            return new BasicStroke(width, cap, join, miter);
        }
        List<Float> lengths = new ArrayList<>();
        for (String dash : dashes.split("[\\s,]+")) {
            lengths.add((float) (length(dash) * scale));
        }
        // An odd list is repeated, as SVG says, so that marks and gaps keep alternating.
        int count = lengths.size() % 2 == 0 ? lengths.size() : 2 * lengths.size();
        float[] array = new float[count];
        float sum = 0;
        for (int i = 0; i < count; i++) {
            array[i] = lengths.get(i % lengths.size());
            sum += array[i];
        }
        return sum == 0
                ? new BasicStroke(width, cap, join, miter)
                : new BasicStroke(width, cap, join, miter, array, (float) (number("stroke-dashoffset", 0) * scale));
    }

    /** A length in the drawing's units; absolute units count as CSS has them, 96 units an inch. */
    static double length(String text) {
        Matcher length = LENGTH.matcher(text.trim());
        if (!length.matches()) {
            throw new ExportException("The drawing has a length of an unknown kind: " + text);
        }
        double number = Double.parseDouble(length.group(1));
        String unit = length.group(2) == null ? "px" : length.group(2);
        return switch (unit) {
            case "pt" -> number * 96 / 72;
            case "mm" -> number * 96 / 25.4;
            case "cm" -> number * 96 / 2.54;
            case "in" -> number * 96;
            default -> number;
        };
    }

    private double number(String name, double otherwise) {
        String value = inherited.get(name);
        return value == null ? otherwise : length(value);
    }

    private String text(String name, String otherwise) {
        return inherited.getOrDefault(name, otherwise);
    }

    private OptionalInt colour(String value) {
        String word = value.toLowerCase(Locale.ROOT);
        if (word.equals("none")) {
            return OptionalInt.empty();
        }
        if (word.equals("currentcolor")) {
            String current = text("color", "black");
            return current.equalsIgnoreCase("currentColor") ? OptionalInt.of(0) : colour(current);
        }
        if (word.matches("#[0-9a-f]{6}")) {
            return OptionalInt.of(Integer.parseInt(word.substring(1), 16));
        }
        if (word.matches("#[0-9a-f]{3}")) {
            int rgb = Integer.parseInt(word.substring(1), 16);
            return OptionalInt.of((rgb >> 8) * 0x110000 + (rgb >> 4 & 15) * 0x1100 + (rgb & 15) * 0x11);
        }
        Matcher rgb = RGB.matcher(word);
        if (rgb.matches()) {
            return OptionalInt.of(Integer.parseInt(rgb.group(1)) << 16
                    | Integer.parseInt(rgb.group(2)) << 8
                    | Integer.parseInt(rgb.group(3)));
        }
        Integer named = COLOURS.get(word);
        if (named == null) {
            throw new ExportException("The drawing has a colour of an unknown kind: " + value);
        }
        return OptionalInt.of(named);
    }
}
