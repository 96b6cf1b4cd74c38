package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import leadwright.render.export.TextMeasure;

/** Text from input files made fit to be drawn: nothing invisible in it, and no longer than its place. */
final class Texts {
    /** Room of a character that the shipped faces lack, over the type size: other faces draw most within it. */
    private static final double UNKNOWN_EM = 1.3;

    private static final String CUT = "\u2026";

    private Texts() {}

    /**
     * The text on one line, without what XML forbids and without control and format characters: these include the marks
     * that would turn the direction of the text around them.
     */
    static String clean(String text) {
        if (plain(text)) {
            return text;
        }
        StringBuilder clean = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (Character.getType(c)) {
                case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR -> clean.append(' ');
                case Character.FORMAT, Character.SURROGATE, Character.UNASSIGNED -> {}
                default -> clean.appendCodePoint(c);
            }
        });
        return clean.toString().strip().replaceAll(" {2,}", " ");
    }

    /** Whether a text is plain ASCII with single spaces inside: most are, and need no cleaning. */
    private static boolean plain(String text) {
        boolean space = true;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < ' ' || c > '~' || c == ' ' && space) {
                return false;
            }
            space = c == ' ';
        }
        return !space || text.isEmpty();
    }

    /** Width in millimetres; a character without a glyph counts as a wide one. */
    static double width(String text, Type type) {
        return width(text, type.pt(), type.bold());
    }

    static double width(String text, double pt, boolean bold) {
        return text.codePoints().mapToDouble(c -> width(c, pt, bold)).sum();
    }

    private static double width(int c, double pt, boolean bold) {
        return TextMeasure.hasGlyph(c)
                ? TextMeasure.widthMm(Character.toString(c), pt, bold)
                : UNKNOWN_EM * pt * TextMeasure.MM_PER_PT;
    }

    /** The type, or one up to a sixth smaller where the text then has room; never below 8.5 points. */
    static Type squeezed(String text, double room, Type type) {
        for (double pt = type.pt(); pt >= Math.max(8.5, type.pt() * 5 / 6); pt -= 0.5) {
            Type smaller = new Type(pt, type.bold(), type.colour());
            if (width(text, smaller) <= room) {
                return smaller;
            }
        }
        return type;
    }

    /** The text, cut at the end where it is wider than its room; what is cut is marked by three dots. */
    static String fit(String text, double room, Type type) {
        if (width(text, type) <= room) {
            return text;
        }
        double left = room - width(CUT, type);
        return left < 0 ? CUT : head(text, left, type).stripTrailing() + CUT;
    }

    /** As much of the beginning as has room. */
    private static String head(String text, double room, Type type) {
        double width = 0;
        int n = 0;
        while (n < text.length()) {
            int c = text.codePointAt(n);
            width += width(c, type.pt(), type.bold());
            if (width > room) {
                break;
            }
            n += Character.charCount(c);
        }
        return text.substring(0, n);
    }

    /** The text on at most so many lines, broken between words where it can be; the last line is cut to fit. */
    static List<String> wrap(String text, double room, Type type, int atMost) {
        List<String> lines = new ArrayList<>();
        String line = "";
        String rest = clean(text);
        while (!rest.isEmpty()) {
            int space = rest.indexOf(' ');
            String word = space < 0 ? rest : rest.substring(0, space);
            String longer = line.isEmpty() ? word : line + " " + word;
            if (width(longer, type) <= room) {
                line = longer;
                rest = space < 0 ? "" : rest.substring(space + 1);
                continue;
            }
            if (lines.size() == atMost - 1) {
                lines.add(fit(line.isEmpty() ? rest : line + " " + rest, room, type));
                return lines;
            }
            if (line.isEmpty()) {
                String head = headOf(word, room, type);
                lines.add(head);
                rest = rest.substring(head.length());
            } else {
                lines.add(line);
                line = "";
            }
        }
        if (!line.isEmpty()) {
            lines.add(line);
        }
        return lines;
    }

    private static String headOf(String word, double room, Type type) {
        String head = head(word, room, type);
        return head.isEmpty() ? word.substring(0, word.offsetByCodePoints(0, 1)) : head;
    }
}
