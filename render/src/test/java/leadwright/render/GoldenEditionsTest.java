package leadwright.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Situation;
import leadwright.planner.rehearse.Practice;
import leadwright.planner.rehearse.Rehearsal;
import leadwright.render.diagram.Diagrams;
import leadwright.render.edition.PracticeKey;
import leadwright.render.edition.PracticeSheet;
import leadwright.render.edition.StandingEdition;
import leadwright.render.edition.TrainingEdition;
import leadwright.render.paper.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the training and the standing edition of samples and a practice sheet with its key say, line by line and without their look, as it is kept beside this
 * test. After a wanted change run the tests with {@code -Dleadwright.golden=refresh} and look at what changed.
 */
class GoldenEditionsTest {
    private static final Path GOLDEN = Path.of("src", "test", "resources", "golden-edition");
    private static final boolean REFRESH = "refresh".equals(System.getProperty("leadwright.golden"));

    @ParameterizedTest
    @ValueSource(strings = {"brindlewick-ward-monitor", "oddlebar-rescue-set"})
    void sameAsKept(String device) throws IOException {
        Plan plan = SamplePlans.of(device, "k1-marrowgate-bench", "iec-62353-2014");
        same(device + "-training.txt", TrainingEdition.of(plan, Diagrams.draw(plan), List.of()));
        same(device + "-standing.txt", StandingEdition.of(plan, Diagrams.draw(plan), List.of(), Optional.empty()));
    }

    @Test
    void aPracticeSheetAndItsKeyAreAsKept() throws IOException {
        Plan plan = SamplePlans.of("brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-62353-2014");
        Rehearsal rehearsal = Rehearsal.of(plan, Situation.ORDINARY);
        Practice one = rehearsal.sheet(17).orElseThrow();
        Practice other = rehearsal.sheet(18).orElseThrow();
        same("brindlewick-ward-monitor-practice-17.txt", PracticeSheet.of(plan, one));
        same("brindlewick-ward-monitor-practice-key.txt", PracticeKey.of(plan, List.of(one, other)));
    }

    private static void same(String name, Document document) throws IOException {
        List<String> lines = DocumentLines.of(document).stream()
                .map(line -> line.replace('\u00a0', ' '))
                .toList();
        Path kept = GOLDEN.resolve(name);
        if (REFRESH) {
            Files.createDirectories(GOLDEN);
            Files.writeString(kept, String.join("\n", lines) + "\n");
        }
        assertThat(lines)
                .as("refresh with -Dleadwright.golden=refresh")
                .containsExactlyElementsOf(Files.readAllLines(kept));
    }
}
