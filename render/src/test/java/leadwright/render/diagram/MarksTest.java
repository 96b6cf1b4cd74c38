package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import javax.imageio.ImageIO;
import leadwright.catalog.device.PartType;
import leadwright.render.export.PngExport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MarksTest {

    @ParameterizedTest
    @EnumSource
    void each_is_a_drawing_of_its_own_that_says_what_it_means(Marks.Mark mark) throws Exception {
        String svg = Marks.svg(mark, 24);
        Measured drawing = new Measured(svg);
        assertThat(drawing.all("title").get(0).getTextContent()).contains(mark.meaning(), mark.number());
        BufferedImage picture = picture(svg);
        assertThat((double) picture.getWidth() / picture.getHeight())
                .isBetween(mark.ratio() - 0.02, mark.ratio() + 0.02);
        assertThat(dark(picture, 0, 1)).isBetween(0.03, 0.5);
    }

    /** No two can be taken for each other: the pictures differ in at least two of a hundred points. */
    @Test
    void all_look_different() throws Exception {
        Marks.Mark[] marks = Marks.Mark.values();
        for (int i = 0; i < marks.length; i++) {
            for (int j = 0; j < i; j++) {
                BufferedImage a = picture(Marks.svg(marks[i], 24));
                BufferedImage b = picture(Marks.svg(marks[j], 24));
                if (a.getWidth() == b.getWidth()) {
                    int differ = 0;
                    for (int x = 0; x < a.getWidth(); x++) {
                        for (int y = 0; y < a.getHeight(); y++) {
                            differ += (a.getRGB(x, y) & 255) < 128 != (b.getRGB(x, y) & 255) < 128 ? 1 : 0;
                        }
                    }
                    assertThat((double) differ / (a.getWidth() * a.getHeight()))
                            .as(marks[i] + " and " + marks[j])
                            .isGreaterThan(0.02);
                }
            }
        }
    }

    /** Only a mark with paddles has ink at its sides. */
    @ParameterizedTest
    @EnumSource(PartType.class)
    void paddles_stand_at_both_sides(PartType type) throws Exception {
        BufferedImage with = picture(Marks.svg(Marks.of(type, true), 24));
        assertThat(dark(with, 0, 0.12)).isGreaterThan(0.02);
        assertThat(dark(with, 0.88, 1)).isGreaterThan(0.02);
        assertThat(Marks.of(type, true).ratio())
                .isGreaterThan(Marks.of(type, false).ratio());
    }

    /** The sign of protective earth stands free in its circle. */
    @Test
    void the_earth_sign_does_not_touch_its_circle() throws Exception {
        BufferedImage picture = picture(Marks.svg(Marks.Mark.PROTECTIVE_EARTH, 24));
        double centre = picture.getWidth() / 2.0;
        for (int x = 0; x < picture.getWidth(); x++) {
            for (int y = 0; y < picture.getHeight(); y++) {
                double radius = Math.hypot(x + 0.5 - centre, y + 0.5 - centre) / picture.getWidth() * 24;
                if (radius > 8.7 && radius < 9.7) {
                    assertThat(picture.getRGB(x, y) & 255).as("at %d, %d", x, y).isGreaterThan(128);
                }
            }
        }
    }

    private static BufferedImage picture(String svg) throws Exception {
        return ImageIO.read(new ByteArrayInputStream(PngExport.png(svg, 100)));
    }

    private static double dark(BufferedImage picture, double from, double to) {
        int dark = 0;
        int all = 0;
        for (int x = (int) (picture.getWidth() * from); x < picture.getWidth() * to; x++) {
            for (int y = 0; y < picture.getHeight(); y++) {
                all++;
                dark += (picture.getRGB(x, y) & 255) < 128 ? 1 : 0;
            }
        }
        return (double) dark / all;
    }
}
