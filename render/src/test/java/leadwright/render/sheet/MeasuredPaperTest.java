package leadwright.render.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import leadwright.catalog.house.House;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.plan.Occasion;
import leadwright.render.diagram.Diagrams;
import leadwright.render.export.PdfExport;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What can be measured of the pages of real plans: letters never lie on each other and never leave the paper. */
class MeasuredPaperTest {
    private static final float MM = 72 / 25.4f;

    /** A letter's box in points, y downwards. */
    private record Ink(String letter, float left, float top, float right, float bottom) {
        boolean liesOn(Ink other) {
            float across = Math.min(right, other.right) - Math.max(left, other.left);
            float down = Math.min(bottom, other.bottom) - Math.max(top, other.top);
            return across > 0.6 && down > 0.6;
        }
    }

    @ParameterizedTest(name = "{0} on {1} by {2}, {3}")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-62353-2014, a4",
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014, letter",
        "slaterow-tilt-table, k3-fixed-plant-case, iec-62353-2014, letter",
        "wickling-rhythm-card, k3-fixed-plant-case, iec-62353-2014, a4",
        "dovecote-infant-warmer, k1-marrowgate-bench, iec-60601-1-ed3, letter",
        "mossback-bed, k1-marrowgate-bench, iec-60601-1-ed3, letter",
    })
    void lettersNeitherOverlapNorLeaveThePaperAndNoPageIsEmpty(String device, String kit, String rules, String paper)
            throws IOException {
        Plan plan = plan(device, kit, rules, paper);
        String sheet = BenchSheet.xhtml(plan, Diagrams.draw(plan), List.of());
        byte[] pdf = PdfExport.pdf(sheet, Optional.empty());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDPage page = document.getPage(i - 1);
                List<Ink> letters = letters(document, i);
                assertThat(lastLine(document, i)).as("last line of page " + i).satisfies(line -> {
                    assertThat(line).doesNotContain("Corrected");
                    assertThat(headings(sheet)).doesNotContain(line);
                });
                assertThat(letters).as("page " + i).hasSizeGreaterThan(200);
                float width = page.getMediaBox().getWidth();
                float height = page.getMediaBox().getHeight();
                for (int a = 0; a < letters.size(); a++) {
                    Ink one = letters.get(a);
                    assertThat(one.left >= 5 * MM
                                    && one.right <= width - 5 * MM
                                    && one.top >= 4 * MM
                                    && one.bottom <= height - 4 * MM)
                            .as("page %d, within what a printer reaches: %s", i, one)
                            .isTrue();
                    for (int b = 0; b < a; b++) {
                        assertThat(one.liesOn(letters.get(b)))
                                .as("page %d: %s on %s", i, one, letters.get(b))
                                .isFalse();
                    }
                }
            }
        }
    }

    private static List<String> headings(String sheet) {
        return Pattern.compile("<tr class=\"heading\">.*?<b>(.*?)</b>", Pattern.DOTALL)
                .matcher(sheet)
                .results()
                .map(found -> found.group(1))
                .toList();
    }

    /** The line above the foot; empty where the page has no foot. */
    private static String lastLine(PDDocument document, int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        List<String> lines =
                stripper.getText(document).lines().map(String::strip).toList();
        for (int i = 1; i < lines.size(); i++) {
            if (lines.get(i).startsWith("Qualified persons only")) {
                return lines.get(i - 1);
            }
        }
        return "";
    }

    private static List<Ink> letters(PDDocument document, int page) throws IOException {
        List<Ink> letters = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition text) {
                if (!text.getUnicode().isBlank()) {
                    letters.add(new Ink(
                            text.getUnicode(),
                            text.getX(),
                            text.getY() - text.getHeight(),
                            text.getX() + text.getWidth(),
                            text.getY()));
                }
            }
        };
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        stripper.getText(document);
        return letters;
    }

    private static Plan plan(String device, String kit, String rules, String paper) throws IOException {
        House house = HouseReader.read(
                        "house", ("leadwright: house/1\npaper: " + paper + "\n").getBytes(StandardCharsets.UTF_8))
                .orThrow();
        Outcome outcome = Planner.plan(new Request(
                DeviceReader.read(device, sample(device)).orThrow(),
                KitReader.read(kit, sample(kit)).orThrow(),
                RuleSets.builtIn().find(rules).orElseThrow(),
                house,
                Occasion.RECURRENT,
                Optional.empty()));
        assertThat(outcome).isInstanceOf(Outcome.Planned.class);
        return ((Outcome.Planned) outcome).plan();
    }

    private static byte[] sample(String name) throws IOException {
        return Files.readAllBytes(Path.of("../samples", name + ".yaml"));
    }
}
