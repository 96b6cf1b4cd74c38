package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Samples, outlines, the default kit and the formats' examples are read without a problem. */
class ShippedFilesTest {

    static List<Path> files() {
        return TestFiles.all();
    }

    @Test
    void listsThemAll() {
        assertThat(files()).hasSizeGreaterThanOrEqualTo(28);
    }

    @ParameterizedTest
    @MethodSource("files")
    void isRead(Path path) {
        String text = TestFiles.text(path);
        Outcome<?> outcome = TestFiles.read(
                TestFiles.kind(text), path.getFileName().toString(), text.getBytes(StandardCharsets.UTF_8));
        assertThat(outcome.problems()).extracting(Problem::text).isEmpty();
        assertThat(outcome.found()).isPresent();
    }
}
