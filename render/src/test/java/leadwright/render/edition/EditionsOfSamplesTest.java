package leadwright.render.edition;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import leadwright.catalog.rules.Limit;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.render.DocumentLines;
import leadwright.render.SamplePlans;
import leadwright.render.diagram.Diagrams;
import leadwright.render.diagram.Drawing;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What holds for the editions of every real plan: each step its reason, each reading its explanation, each limit its source. */
class EditionsOfSamplesTest {

    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-62353-2014",
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-60601-1-ed3",
        "brindlewick-ward-monitor, k1-marrowgate-bench, nfpa-99-2012",
        "dovecote-infant-warmer, k1-marrowgate-bench, iec-60601-1-ed2",
        "mossback-bed, k1-marrowgate-bench, iec-60601-1-ed3",
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014",
        "oddlebar-rescue-set, k1-marrowgate-bench, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, bonding",
        "wickling-rhythm-card, k1-marrowgate-bench, iec-60601-1-ed3",
        "wickling-rhythm-card, k1-marrowgate-bench, us-leads-older",
    })
    void nothingIsLeftUnexplained(String device, String kit, String rules) {
        Plan plan = SamplePlans.of(device, kit, rules);
        Vocabulary words = Vocabulary.of(plan);
        Document training = TrainingEdition.of(plan, List.of(), List.of());
        Document standing = StandingEdition.of(plan, List.of(), List.of(), Optional.empty());

        everyStepHasItsReason(plan, training, words);
        everyReadingIsExplained(plan, training);
        everyHookupHasItsWiring(plan, training);
        everyHookupHasItsWiring(plan, standing);
        everyLimitHasItsSource(plan, training);
        everyLimitHasItsSource(plan, standing);
        everyObligationStands(plan, standing, words);
        assertThat(training.mark()).isEqualTo("TRAINING: not a record");
        noEmptyCellsButThoseToSign(training, "Assessment of the trainee");
        noEmptyCellsButThoseToSign(standing, "Approval");
        List<Questions.Question> questions = Questions.of(plan, words);
        assertThat(questions).hasSizeGreaterThan(3).allSatisfy(each -> {
            assertThat(each.asks()).endsWith("?");
            assertThat(each.answer()).isNotBlank();
        });
    }

    /** A row that sends to a drawing sends to one that shows the numbers. */
    @ParameterizedTest(name = "{0} by {1}")
    @CsvSource({
        "brindlewick-ward-monitor, iec-62353-2014",
        "brindlewick-ward-monitor, iec-60601-1-ed3",
        "noctuary-sleep-recorder, iec-62353-2014",
    })
    void theNumbersStandOnTheDrawingThatARowSendsTo(String device, String rules) {
        Plan plan = SamplePlans.of(device, "k1-marrowgate-bench", rules);
        Map<String, String> drawn =
                Diagrams.draw(plan).stream().collect(Collectors.toMap(Drawing::hookup, Drawing::svg, String::concat));
        int sent = 0;
        for (StepRows.Row row : StepRows.of(plan, Vocabulary.of(plan))) {
            Matcher hookup = Pattern.compile("on the drawing of hookup (H\\d+)").matcher(row.text());
            if (hookup.find()) {
                sent++;
                for (int number = row.first(); number <= row.last(); number++) {
                    assertThat(shows(drawn.get(hookup.group(1)), number))
                            .as(hookup.group() + ", step " + number)
                            .isTrue();
                }
            }
        }
        assertThat(sent).isPositive();
    }

    /** Whether a drawing bears a number, by itself or in the run of numbers at a ribbon of wires. */
    private static boolean shows(String svg, int number) {
        return Pattern.compile("(?<=[>\\s])(\\d+)(?:\u2013(\\d+))?(?=[<,])")
                .matcher(svg.replaceAll("(?s)<(title|desc)>.*?</\\1>", ""))
                .results()
                .anyMatch(found -> Integer.parseInt(found.group(1)) <= number
                        && number <= Integer.parseInt(found.group(2) == null ? found.group(1) : found.group(2)));
    }

    private static void everyStepHasItsReason(Plan plan, Document training, Vocabulary words) {
        List<StepRows.Row> rows = StepRows.of(plan, words);
        int next = 1;
        for (StepRows.Row row : rows) {
            assertThat(row.first()).as("no step is left out").isEqualTo(next);
            assertThat(row.because()).as(row.text()).isNotBlank();
            next = row.last() + 1;
        }
        assertThat(next - 1).isEqualTo(plan.steps().size());
        Block.Grid table = grid(training, "No.", "What is done", "Why it is here");
        assertThat(table.rows()).hasSameSizeAs(rows);
        for (int i = 0; i < rows.size(); i++) {
            List<Words> cells = table.rows().get(i);
            assertThat(cells.get(2).text()).isEqualTo(rows.get(i).because());
        }
        for (Step step : plan.steps()) {
            String clause = step.reading()
                    .flatMap(id -> plan.readings().stream()
                            .filter(each -> each.id().equals(id))
                            .findFirst())
                    .map(each -> each.obligation().clause())
                    .orElse("");
            StepRows.Row row = rows.stream()
                    .filter(each -> each.first() <= step.number() && step.number() <= each.last())
                    .findFirst()
                    .orElseThrow();
            assertThat(row.because()).as("the clause that asks for it").contains(clause);
            step.caution().ifPresent(caution -> assertThat(row.caution()).isPresent());
        }
    }

    private static void everyReadingIsExplained(Plan plan, Document training) {
        Map<ReadingKind, List<Reading>> kinds = ReadingKind.of(plan);
        List<String> explained = new ArrayList<>();
        List<String> lines = DocumentLines.of(training);
        kinds.forEach((kind, readings) -> {
            Explanation explanation = ReadingKind.explain(readings.get(0).obligation(), plan);
            for (Reading each : readings) {
                assertThat(ReadingKind.explain(each.obligation(), plan))
                        .as("one explanation for all of a kind: %s", each.id())
                        .isEqualTo(explanation);
                explained.add(each.id());
            }
            assertThat(lines).anyMatch(line -> line.equals("A mistake: " + explanation.slips()));
            assertThat(lines).anyMatch(line -> line.equals("How to find it: " + explanation.exposed()));
            // What foretells a value would need a source or a sum: there is none here.
            assertThat(explanation.healthy() + explanation.slips()).doesNotContainPattern("\\d+ ?(µA|uA|mA|Ω|mΩ|V|%)");
        });
        assertThat(explained)
                .containsExactlyInAnyOrderElementsOf(
                        plan.readings().stream().map(Reading::id).toList());
        String tables = grids(training, "What is joined to what").stream()
                .flatMap(grid -> grid.rows().stream())
                .map(row -> row.get(0).text())
                .collect(Collectors.joining(", "));
        assertThat(tables.split(", ")).containsExactlyInAnyOrderElementsOf(explained);
    }

    private static void everyHookupHasItsWiring(Plan plan, Document document) {
        List<Block.Grid> wirings = grids(document, "Through");
        assertThat(wirings).hasSize((int) plan.hookups().stream()
                .filter(each -> !each.chains().isEmpty() || !each.earth().isEmpty())
                .count());
        int wires = wirings.stream()
                .flatMap(grid -> grid.rows().stream())
                .map(row -> row.get(3).text())
                .filter(count -> !count.equals("–"))
                .mapToInt(Integer::parseInt)
                .sum();
        assertThat(wires)
                .isEqualTo(plan.hookups().stream()
                        .map(Hookup::chains)
                        .mapToInt(List::size)
                        .sum());
    }

    private static void everyLimitHasItsSource(Plan plan, Document document) {
        List<String> ids = plan.readings().stream()
                .flatMap(reading -> reading.obligation().limit().stream())
                .map(Limit::id)
                .distinct()
                .toList();
        if (ids.isEmpty()) {
            assertThat(grids(document, "Rests on")).isEmpty();
            return;
        }
        Block.Grid table = grids(document, "Rests on").get(0);
        assertThat(table.rows())
                .hasSameSizeAs(ids)
                .allSatisfy(row -> row.forEach(cell -> assertThat(cell.text()).isNotBlank()));
        for (int i = 0; i < ids.size(); i++) {
            assertThat(table.rows().get(i).get(1).text()).contains("(" + ids.get(i) + ")");
        }
    }

    private static void everyObligationStands(Plan plan, Document standing, Vocabulary words) {
        String due = grids(standing, "Asked for by").get(0).rows().stream()
                .map(row -> row.get(0).text())
                .collect(Collectors.joining(", "));
        assertThat(due.split(", "))
                .containsExactlyInAnyOrderElementsOf(
                        plan.readings().stream().map(Reading::id).toList());
        List<String> lines = DocumentLines.of(standing);
        for (NotApplicable each : plan.notApplicable()) {
            assertThat(lines)
                    .anyMatch(line -> line.startsWith(each.test().replace('-', ' ') + " | ")
                            && line.contains(words.prose(each.because())));
        }
        assertThat(lines)
                .anyMatch(line -> line.contains(words.prose(plan.hookupsProof().argument())));
        assertThat(lines)
                .anyMatch(line -> line.contains(words.prose(plan.timeProof().argument())));
        assertThat(lines).anyMatch(line -> line.contains(plan.fingerprint()));
    }

    /** A cell without a word would look like a place for a reading. */
    private static void noEmptyCellsButThoseToSign(Document document, String signed) {
        String section = "";
        for (Block block : document.blocks()) {
            if (block instanceof Block.Heading heading && heading.level() == 1) {
                section = heading.text();
            }
            if (block instanceof Block.Grid grid) {
                boolean blanks = grid.rows().stream()
                        .flatMap(List::stream)
                        .anyMatch(cell -> cell.text().isBlank());
                assertThat(blanks).as(section).isEqualTo(section.equals(signed));
                assertThat(grid.tall()).as(section).isEqualTo(section.equals(signed));
            }
        }
    }

    private static Block.Grid grid(Document document, String... head) {
        return grids(document, head[head.length - 1]).stream()
                .filter(grid -> grid.head().equals(List.of(head)))
                .findFirst()
                .orElseThrow();
    }

    private static List<Block.Grid> grids(Document document, String column) {
        return document.blocks().stream()
                .filter(Block.Grid.class::isInstance)
                .map(Block.Grid.class::cast)
                .filter(grid -> grid.head().contains(column))
                .toList();
    }
}
