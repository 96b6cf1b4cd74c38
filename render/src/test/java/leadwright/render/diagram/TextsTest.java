package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TextsTest {

    @Test
    void nothing_invisible_is_left() {
        assertThat(Texts.clean("\u202Eevil\u202C")).isEqualTo("evil");
        assertThat(Texts.clean("a\u0000b\nc\td\u200B\uFEFF")).isEqualTo("a b c d");
        assertThat(Texts.clean("\uD83D lone surrogate \uDC89")).isEqualTo("lone surrogate");
        assertThat(Texts.clean("\uFFFE\uFFFF")).isEmpty();
        assertThat(Texts.clean("caf\u00e9 \u6F22\u5B57 \uD83D\uDC89")).isEqualTo("caf\u00e9 \u6F22\u5B57 \uD83D\uDC89");
    }

    @Test
    void a_long_text_is_cut_to_its_room_and_says_so() {
        String cut = Texts.fit("W".repeat(500), 20, Type.KIT);
        assertThat(cut).endsWith("\u2026").startsWith("WWW");
        assertThat(Texts.width(cut, Type.KIT)).isLessThanOrEqualTo(20);
        assertThat(Texts.fit("short", 20, Type.KIT)).isEqualTo("short");
        assertThat(Texts.fit("anything", 0.1, Type.KIT)).isEqualTo("\u2026");
    }

    @Test
    void a_surrogate_pair_is_never_parted() {
        String cut = Texts.fit("\uD83D\uDC89".repeat(50), 20, Type.KIT);
        assertThat(cut.codePoints().filter(c -> Character.getType(c) == Character.SURROGATE))
                .isEmpty();
    }

    @Test
    void lines_break_between_words_and_no_line_is_too_wide() {
        List<String> lines = Texts.wrap("External pads, also for pacing and for monitoring", 30, Type.GROUP, 3);
        assertThat(String.join(" ", lines)).startsWith("External pads, also");
        assertThat(lines).hasSizeLessThanOrEqualTo(3).allMatch(line -> Texts.width(line, Type.GROUP) <= 30);
        assertThat(Texts.wrap("x".repeat(300), 30, Type.GROUP, 3))
                .hasSize(3)
                .allMatch(line -> Texts.width(line, Type.GROUP) <= 30);
        assertThat(Texts.wrap("", 30, Type.GROUP, 3)).isEmpty();
    }

    @Test
    void type_is_squeezed_before_text_is_cut() {
        double full = Texts.width("lead-short", Type.KIT);
        assertThat(Texts.squeezed("lead-short", full, Type.KIT)).isEqualTo(Type.KIT);
        assertThat(Texts.squeezed("lead-short", full * 0.9, Type.KIT).pt()).isEqualTo(9);
        assertThat(Texts.squeezed("lead-short", full * 0.5, Type.KIT)).isEqualTo(Type.KIT);
    }
}
