package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SrgbProfileTest {

    /** The Java library's own sRGB is the judge: the same colour in the neutral space that profiles share. */
    @ParameterizedTest
    @ValueSource(
            ints = {0x000000, 0xffffff, 0xff0000, 0x00ff00, 0x0000ff, 0x808080, 0x00614a, 0x0b4f9e, 0x8a3b00, 0x123456})
    void means_ordinary_screen_colours(int rgb) {
        ICC_ColorSpace own = new ICC_ColorSpace(ICC_Profile.getInstance(SrgbProfile.bytes()));
        float[] colour = {(rgb >> 16) / 255f, (rgb >> 8 & 255) / 255f, (rgb & 255) / 255f};
        float[] expected = ColorSpace.getInstance(ColorSpace.CS_sRGB).toCIEXYZ(colour);
        float[] actual = own.toCIEXYZ(colour);
        for (int i = 0; i < 3; i++) {
            assertThat(actual[i]).isCloseTo(expected[i], within(0.002f));
        }
    }
}
