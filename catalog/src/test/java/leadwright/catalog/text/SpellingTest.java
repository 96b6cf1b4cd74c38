package leadwright.catalog.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpellingTest {

    @ParameterizedTest
    @CsvSource({"kitten, sitting, 3", "'', abc, 3", "abc, abc, 0", "voltaeg, voltage, 1", "flaw, lawn, 2", "ca, ac, 1"})
    void editsAreCounted(String left, String right, int edits) {
        assertThat(Spelling.edits(left, right)).isEqualTo(edits);
        assertThat(Spelling.edits(right, left)).isEqualTo(edits);
    }

    @Test
    void nearestIsTheOneWithFewestEdits() {
        List<String> words = List.of("class-1", "class-2", "internally-powered");
        assertThat(Spelling.nearest("Class 2", words)).contains("class-2");
        assertThat(Spelling.nearest("internaly_powered", words)).contains("internally-powered");
        assertThat(Spelling.nearest("mains", words)).isEmpty();
        assertThat(Spelling.nearest("x".repeat(100_000), words)).isEmpty();
    }

    @Test
    void oneLetterIsNoHint() {
        assertThat(Spelling.nearest("x", List.of("y"))).isEmpty();
    }

    @Test
    void shownOnOneLineAndShort() {
        assertThat(Spelling.show("a\nb\u202E\u0007")).isEqualTo("'aU+000AbU+202EU+0007'");
        assertThat(Spelling.show("n".repeat(500))).isEqualTo("'" + "n".repeat(60) + "…'");
    }
}
