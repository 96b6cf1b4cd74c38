package leadwright.render.export;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The two faces every document is set in: DejaVu Sans and DejaVu Sans Bold, read from the program itself and
 * never from the machine, so that text has the same width everywhere and every PDF can embed it.
 */
public final class Fonts {

    /** The family name, as CSS and SVG write it. */
    public static final String FAMILY = "DejaVu Sans";

    /** What is printed for a character that the faces lack. */
    static final int SUBSTITUTE = 0xFFFD;

    private static final String FOLDER = "/net/sf/jasperreports/fonts/dejavu/";

    private Fonts() {}

    /** The TrueType file of the upright face, about 0.7 MB; the array is the caller's own. */
    public static byte[] file(boolean bold) {
        String name = FOLDER + (bold ? "DejaVuSans-Bold.ttf" : "DejaVuSans.ttf");
        try (InputStream in = Fonts.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("The program is incomplete: it lacks " + name);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Text as it is printed: characters that the faces lack are replaced. */
    static String printable(String text) {
        if (text.codePoints().allMatch(Fonts::hasGlyph)) {
            return text;
        }
        StringBuilder printed = new StringBuilder(text.length());
        text.codePoints().map(c -> hasGlyph(c) ? c : SUBSTITUTE).forEach(printed::appendCodePoint);
        return printed.toString();
    }

    static boolean hasGlyph(int codePoint) {
        return Regular.FACE.glyph(codePoint) != 0 && Bold.FACE.glyph(codePoint) != 0;
    }

    static Face face(boolean bold) {
        return bold ? Bold.FACE : Regular.FACE;
    }

    /** One face as read by FontBox; kept for the life of the program, as reading it is half the cost of a short text. */
    record Face(TrueTypeFont font, CmapLookup glyphs) {

        private static Face read(boolean bold) {
            try {
                TrueTypeFont font = new TTFParser(true).parse(new RandomAccessReadBuffer(file(bold)));
                // Without ligatures a search in the document finds "fi" where it was written.
                font.setEnableGsub(false);
                // Both tables are read now: later look-ups touch arrays only, so threads may share the face.
                font.getAdvanceWidth(0);
                return new Face(font, font.getUnicodeCmapLookup());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        int glyph(int codePoint) {
            return glyphs.getGlyphId(codePoint);
        }

        int advance(int codePoint) throws IOException {
            int glyph = glyph(codePoint);
            return font.getAdvanceWidth(glyph != 0 ? glyph : glyph(SUBSTITUTE));
        }

        int unitsPerEm() throws IOException {
            return font.getUnitsPerEm();
        }
    }

    // Nested, so that a face is read when it is first asked for and once only.
    private static final class Regular {
        static final Face FACE = Face.read(false);
    }

    private static final class Bold {
        static final Face FACE = Face.read(true);
    }

    /** The two faces, upright first. */
    static List<Face> faces() {
        return List.of(Regular.FACE, Bold.FACE);
    }
}
