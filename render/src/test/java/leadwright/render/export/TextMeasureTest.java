package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.io.ByteArrayInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextMeasureTest {

    @Test
    void empty_text_has_no_width() {
        assertThat(TextMeasure.widthMm("", 11, false)).isZero();
    }

    @Test
    void width_grows_with_size_and_with_every_character() {
        double eleven = TextMeasure.widthMm("press-pin", 11, false);
        assertThat(TextMeasure.widthMm("press-pin", 22, false)).isCloseTo(2 * eleven, within(1e-9));
        assertThat(TextMeasure.widthMm("press-pin 4", 11, false)).isGreaterThan(eleven);
        assertThat(TextMeasure.widthMm("press-pin", 11, true)).isGreaterThan(eleven);
    }

    /** The Java desktop's own font reader is the judge. */
    @ParameterizedTest
    @ValueSource(strings = {"R", "10 of 10", "supply open: STILL LIVE", "4.7 kΩ, 100 µA, 23 °C", "→ ☐ ✓ ✗ № Ж"})
    void agrees_with_an_independent_reader_of_the_font(String text) throws Exception {
        for (boolean bold : new boolean[] {false, true}) {
            Font font = Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(Fonts.file(bold)))
                    .deriveFont(1000f);
            double points = font.createGlyphVector(new FontRenderContext(new AffineTransform(), true, true), text)
                    .getLogicalBounds()
                    .getWidth();
            assertThat(TextMeasure.widthMm(text, 1000, bold))
                    .isCloseTo(points * TextMeasure.MM_PER_PT, within(0.001 * points));
        }
    }

    @Test
    void capital_height_and_descent_are_those_of_the_font() throws Exception {
        double depth = 0;
        for (boolean bold : new boolean[] {false, true}) {
            Font font = Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(Fonts.file(bold)))
                    .deriveFont(1000f);
            FontRenderContext exact = new FontRenderContext(new AffineTransform(), true, true);
            assertThat(-font.createGlyphVector(exact, "H")
                            .getOutline()
                            .getBounds2D()
                            .getY())
                    .isCloseTo(1000 * TextMeasure.CAP_HEIGHT, within(0.5));
            depth = Math.max(
                    depth,
                    font.createGlyphVector(exact, "gpqyj")
                            .getOutline()
                            .getBounds2D()
                            .getMaxY());
        }
        assertThat(depth).isCloseTo(1000 * TextMeasure.DESCENT, within(1.0));
    }

    @Test
    void knows_which_characters_can_be_set() {
        "AzЖΩµ°→☐✓✗№⚠≤±"
                .codePoints()
                .forEach(
                        c -> assertThat(TextMeasure.hasGlyph(c)).as("U+%04X", c).isTrue());
        assertThat(TextMeasure.hasGlyph(0x6F22)).isFalse();
    }
}
