package leadwright.render.export;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * How much room text takes in the shipped faces ({@link Fonts}). Widths are sums of the font's own advance
 * widths, read by FontBox: no kerning, no ligatures, so a viewer that kerns sets the text a little narrower, never
 * wider. Only the tables needed are read; no window toolkit is started.
 *
 * <p>A character the font lacks counts as wide as the sign that stands for it.
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
        Face face = bold ? Bold.FACE : Regular.FACE;
        long units = text.codePoints().mapToLong(face::advance).sum();
        return units * pt * MM_PER_PT / face.unitsPerEm;
    }

    /** Whether the shipped faces have a sign for this character; text with others prints a substitute. */
    public static boolean hasGlyph(int codePoint) {
        return Regular.FACE.glyphs.getGlyphId(codePoint) != 0 && Bold.FACE.glyphs.getGlyphId(codePoint) != 0;
    }

    // Nested, so that a face is read when it is first asked for and once only.
    private static final class Regular {
        static final Face FACE = Face.read(false);
    }

    private static final class Bold {
        static final Face FACE = Face.read(true);
    }

    private record Face(TrueTypeFont font, CmapLookup glyphs, int unitsPerEm) {

        static Face read(boolean bold) {
            try {
                TrueTypeFont font = new TTFParser(true).parse(new RandomAccessReadBuffer(Fonts.file(bold)));
                return new Face(font, font.getUnicodeCmapLookup(), font.getUnitsPerEm());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        int advance(int codePoint) {
            try {
                // The reader of the tables keeps a position, so two threads must take turns.
                synchronized (font) {
                    return font.getAdvanceWidth(glyphs.getGlyphId(codePoint));
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
