package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Each broken input gives exactly the problems that it marks, each at its place, saying what it should. */
class BrokenFilesTest {

    static List<BrokenFile> files() {
        return Stream.of(BrokenDevices.all(), BrokenKits.all(), BrokenHouses.all(), BrokenReadings.all())
                .flatMap(List::stream)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("files")
    void isRefused(BrokenFile broken) {
        List<Problem> problems = TestFiles.read(broken.kind(), broken.text()).problems();
        assertThat(problems)
                .extracting(each -> each.line() + ":" + each.column())
                .as("%s", problems)
                .isEqualTo(broken.places());
        for (int i = 0; i < problems.size(); i++) {
            assertThat(problems.get(i).message()).contains(broken.fragments().get(i));
        }
    }

    @Test
    void areMany() {
        assertThat(files()).hasSizeGreaterThan(150);
    }
}
