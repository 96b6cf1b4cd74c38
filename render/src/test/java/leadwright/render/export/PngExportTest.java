package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PngExportTest {

    @ParameterizedTest
    @CsvSource({"72, 706, 524", "100, 980, 728", "150, 1470, 1093"})
    void has_the_size_of_the_drawing_at_the_resolution(int dpi, int width, int height) throws Exception {
        BufferedImage picture = read(PngExport.png(ProbePage.drawingFile(0), dpi));
        assertThat(picture.getWidth()).isBetween(width - 1, width + 1);
        assertThat(picture.getHeight()).isBetween(height - 1, height + 1);
    }

    @Test
    void shows_lines_text_and_colours_on_white() throws Exception {
        BufferedImage picture = read(PngExport.png(ProbePage.drawingFile(0), 100));
        assertThat(picture.getRGB(480, 25) & 0xffffff)
                .as("white in the heading band")
                .isEqualTo(0xffffff);
        assertThat(count(picture, 0x1a1a1a)).as("ink").isGreaterThan(5_000);
        assertThat(count(picture, 0x8a3b00)).as("brown of the mains").isGreaterThan(1_000);
        assertThat(count(picture, 0xf0c000)).as("swatches").isGreaterThan(1_000);
    }

    @Test
    void says_its_resolution() {
        byte[] png = PngExport.png(ProbePage.drawingFile(0), 150);
        int at = new String(png, StandardCharsets.ISO_8859_1).indexOf("pHYs");
        assertThat(at).isPositive();
        int dotsPerMetre = ByteBuffer.wrap(png).getInt(at + 4);
        assertThat(dotsPerMetre).isBetween(5_890, 5_920);
    }

    @Test
    void two_runs_give_the_same_bytes() {
        assertThat(PngExport.png(ProbePage.drawingFile(1), 90)).isEqualTo(PngExport.png(ProbePage.drawingFile(1), 90));
    }

    /** Bold text must come out in the bold face, not merely in some face. */
    @Test
    void bold_text_is_darker() throws Exception {
        String plain = "<text x='2' y='12' style='font-size:8px'>supply open</text>";
        BufferedImage thin = read(PngExport.png(Figures.file(60, 20, plain), 100));
        BufferedImage bold =
                read(PngExport.png(Figures.file(60, 20, plain.replace("8px", "8px;font-weight:bold")), 100));
        assertThat(ink(bold)).isGreaterThan(1.3 * ink(thin));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<use href='#a'/>",
                "<path d='M 0 0 L ten 10'/>",
                "<rect width='10' height='-5'/>",
                "<rect width='10' height='5' fill='rgba(0,0,0,0.5)'/>",
                "<image xlink:href='file:///etc/hostname' width='9' height='9'/>",
                "<rect width='10' height='5' fill='url(#nowhere)'/>",
                "<g>"
            })
    void a_drawing_with_a_fault_ends_the_run(String inside) {
        assertThatThrownBy(() -> PngExport.png(Figures.file(20, 20, inside), 72))
                .isInstanceOf(ExportException.class);
    }

    @Test
    void refuses_document_types_and_odd_resolutions() {
        String file = ProbePage.drawingFile(0);
        assertThatThrownBy(() -> PngExport.png("<!DOCTYPE svg [<!ENTITY a 'b'>]>" + file, 72))
                .isInstanceOf(ExportException.class);
        assertThatIllegalArgumentException().isThrownBy(() -> PngExport.png(file, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> PngExport.png(file, 100_000));
    }

    private static BufferedImage read(byte[] png) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(png));
    }

    private static int count(BufferedImage picture, int rgb) {
        int found = 0;
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                found += (picture.getRGB(x, y) & 0xffffff) == rgb ? 1 : 0;
            }
        }
        return found;
    }

    private static double ink(BufferedImage picture) {
        double ink = 0;
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                ink += 255 - (picture.getRGB(x, y) & 255);
            }
        }
        return ink;
    }
}
