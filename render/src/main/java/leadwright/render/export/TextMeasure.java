package leadwright.render.export;

import java.io.IOException;
import java.io.UncheckedIOException;

/**
 * How much room text takes in the shipped faces ({@link Fonts}). Widths are sums of the font's own advance
 * widths: no kerning, no ligatures, so a viewer that kerns sets the text a little narrower, never wider. Those of usual
 * characters stand in a table ({@link Advances}), so that neither a font nor a window toolkit is read for them.
 *
 * <p>A character the font lacks counts as wide as the sign that is printed for it.
 */
public final class TextMeasure {

    /** One typographic point in millimetres. */
    public static final double MM_PER_PT = 25.4 / 72;

    /** Height of a capital letter over the type size: 1493 of 2048 units in both faces. */
    public static final double CAP_HEIGHT = 1493.0 / 2048;

    /** How far g, j, p, q and y reach below the base line, over the type size, in the deeper of the two faces. */
    public static final double DESCENT = 442.0 / 2048;

    private TextMeasure() {}

    /**
     * Width of one line of text.
     *
     * @param text any text; a line break counts as a missing character
     * @param pt type size in points
     * @param bold whether in the bold face
     * @return the width in millimetres, 0 for the empty text
     */
    public static double widthMm(String text, double pt, boolean bold) {
        return widthEm(text, bold) * pt * MM_PER_PT;
    }

    /** Width of one line of text over the type size, so that it serves any unit. */
    public static double widthEm(String text, boolean bold) {
        long units = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            units += advance(text.codePointAt(i), bold);
        }
        return (double) units / Advances.UNITS_PER_EM;
    }

    private static int advance(int codePoint, boolean bold) {
        if (Advances.knows(codePoint)) {
            return Advances.of(codePoint, bold);
        }
        try {
            return Fonts.face(bold).advance(codePoint);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether the shipped faces have a sign for this character; for others a substitute is printed. */
    public static boolean hasGlyph(int codePoint) {
        return Advances.knows(codePoint) ? Advances.hasGlyph(codePoint) : Fonts.hasGlyph(codePoint);
    }
}
