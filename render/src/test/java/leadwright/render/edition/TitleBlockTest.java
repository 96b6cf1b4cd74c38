package leadwright.render.edition;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.render.SamplePlans;
import leadwright.render.diagram.Diagrams;
import leadwright.render.diagram.Drawing;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a drawing has no room for is said in full where it can be reached; the samples lose nothing. */
class TitleBlockTest {

    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-62353-2014",
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-60601-1-ed3",
        "dovecote-infant-warmer, k1-marrowgate-bench, iec-60601-1-ed2",
        "mossback-bed, k1-marrowgate-bench, iec-60601-1-ed3",
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014",
        "oddlebar-rescue-set, k1-marrowgate-bench, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, bonding",
        "wickling-rhythm-card, k1-marrowgate-bench, us-leads-older",
    })
    void noSampleIsCutBesideALongNameOfRules(String device, String kit, String rules) {
        Plan plan = SamplePlans.of(device, kit, rules);
        for (Drawing drawing : Diagrams.draw(plan)) {
            // The head of every paper has the rule set in full; of the drawing its alternative text.
            long cut = drawing.svg().chars().filter(c -> c == '\u2026').count();
            assertThat(cut).as(drawing.hookup()).isLessThanOrEqualTo(1);
            if (cut == 1) {
                assertThat(Editions.alt(drawing))
                        .contains("Shortened in it: " + plan.rules().name().split(",")[0]);
            }
        }
    }

    @Test
    void whatIsCutStandsInFullBeside() {
        String name =
                "Brindlewick ward monitor with the long name that a device file of a careful department may hold & more";
        String department =
                "Department of Clinical Measurement, Electrical Safety and Equipment Loans, House of the North <East>";
        String device = new String(SamplePlans.bytes("brindlewick-ward-monitor"), StandardCharsets.UTF_8)
                .replaceFirst("(?m)^name: .*$", "name: \"" + name + "\"");
        String house = "leadwright: house/1\ndepartment: \"" + department + "\"\n";
        Plan plan = SamplePlans.of(
                device.getBytes(StandardCharsets.UTF_8),
                "k1-marrowgate-bench",
                "iec-62353-2014",
                house.getBytes(StandardCharsets.UTF_8));
        List<Drawing> drawings = Diagrams.draw(plan);
        assertThat(drawings.get(0).svg()).contains("\u2026");
        Document standing = StandingEdition.of(plan, drawings, List.of(), Optional.empty());
        assertThat(standing.blocks().stream()
                        .filter(Block.Picture.class::isInstance)
                        .map(Block.Picture.class::cast))
                .hasSameSizeAs(drawings)
                .allSatisfy(each -> assertThat(each.alt()).contains(name).contains(department));
    }
}
