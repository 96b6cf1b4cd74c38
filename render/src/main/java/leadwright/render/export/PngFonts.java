package leadwright.render.export;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.TextAttribute;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.text.AttributedCharacterIterator;
import java.util.Map;
import org.apache.batik.bridge.FontFace;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.gvt.font.AWTGVTFont;
import org.apache.batik.gvt.font.GVTFont;
import org.apache.batik.gvt.font.GVTFontFace;
import org.apache.batik.gvt.font.GVTFontFamily;

/** Gives Batik the shipped faces under every family name, so that a picture looks the same on every machine. */
final class PngFonts implements FontFamilyResolver {

    static final PngFonts RESOLVER = new PngFonts();

    private final GVTFontFamily family = new Family();

    private PngFonts() {}

    @Override
    public GVTFontFamily resolve(String familyName) {
        return family;
    }

    @Override
    public GVTFontFamily resolve(String familyName, FontFace face) {
        return family;
    }

    @Override
    public GVTFontFamily loadFont(InputStream in, FontFace face) {
        throw new ExportException("Drawings are set in the shipped faces only");
    }

    @Override
    public GVTFontFamily getDefault() {
        return family;
    }

    @Override
    public GVTFontFamily getFamilyThatCanDisplay(char c) {
        return family;
    }

    private static final class Family implements GVTFontFamily {
        private final GVTFontFace face = new GVTFontFace(Fonts.FAMILY);
        private final Font regular = read(false);
        private final Font bold = read(true);

        @Override
        public String getFamilyName() {
            return Fonts.FAMILY;
        }

        @Override
        public GVTFontFace getFontFace() {
            return face;
        }

        @Override
        public GVTFont deriveFont(float size, AttributedCharacterIterator text) {
            return deriveFont(size, text.getAttributes());
        }

        // Batik's interface predates generics.
        @Override
        @SuppressWarnings("rawtypes")
        public GVTFont deriveFont(float size, Map attributes) {
            Object weight = attributes.get(TextAttribute.WEIGHT);
            boolean heavy = weight instanceof Float && (Float) weight > TextAttribute.WEIGHT_MEDIUM;
            return new AWTGVTFont(heavy ? bold : regular, size);
        }

        @Override
        public boolean isComplex() {
            return false;
        }

        private static Font read(boolean bold) {
            try {
                return Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(Fonts.file(bold)));
            } catch (FontFormatException | IOException e) {
                throw new IllegalStateException("The program is incomplete: a face cannot be read", e);
            }
        }
    }
}
