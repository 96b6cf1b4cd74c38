package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The table is what the fonts say; {@code -Dleadwright.golden=refresh} writes it anew. */
class AdvancesTest {
    private static final Path TABLE =
            Path.of("src", "main", "resources", "leadwright", "render", "export", Advances.RESOURCE);

    @Test
    void the_table_is_what_the_fonts_say() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        for (int[] run : Advances.RUNS) {
            for (int c = run[0]; c <= run[1]; c++) {
                for (boolean bold : new boolean[] {false, true}) {
                    Fonts.Face face = Fonts.face(bold);
                    out.writeShort(face.glyph(c) != 0 ? face.advance(c) : -face.advance(Fonts.SUBSTITUTE));
                }
            }
        }
        if ("refresh".equals(System.getProperty("leadwright.golden"))) {
            Files.write(TABLE, bytes.toByteArray());
        }
        assertThat(Files.readAllBytes(TABLE)).isEqualTo(bytes.toByteArray());
    }

    @Test
    void every_character_is_as_wide_as_in_the_fonts_in_the_table_or_not() throws IOException {
        for (int c = 0; c < 0x3000; c++) {
            for (boolean bold : new boolean[] {false, true}) {
                Fonts.Face face = Fonts.face(bold);
                assertThat(TextMeasure.widthEm(Character.toString(c), bold))
                        .as("U+%04X", c)
                        .isEqualTo((double) face.advance(c) / face.unitsPerEm());
            }
            assertThat(TextMeasure.hasGlyph(c)).as("U+%04X", c).isEqualTo(Fonts.hasGlyph(c));
        }
        assertThat(Fonts.face(false).unitsPerEm()).isEqualTo(Advances.UNITS_PER_EM);
        assertThat(Fonts.face(true).unitsPerEm()).isEqualTo(Advances.UNITS_PER_EM);
    }
}
