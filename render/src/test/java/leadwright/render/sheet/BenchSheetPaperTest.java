package leadwright.render.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.house.Paper;
import leadwright.planner.Plan;
import leadwright.render.diagram.Drawing;
import leadwright.render.export.PdfExport;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;

/** The sheet as it comes out on paper. */
class BenchSheetPaperTest {

    private static final Drawing DRAWING = new Drawing(
            "H1",
            1,
            1,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 249 190\"><title>Hookup H1</title>"
                    + "<rect x=\"1\" y=\"1\" width=\"247\" height=\"188\" fill=\"none\" stroke=\"black\"/></svg>");

    @Test
    void twelveReadingsAndTwelveWiresAreOnePortraitPage() throws IOException {
        List<String> pages = pages(new SmallPlan());
        assertThat(pages).hasSize(3);
        assertThat(pages.get(0)).contains("R01", "R12", "12 of 12", "Tested by", "page 1 of 3");
        assertThat(pages.get(2)).contains("Limits not yet confirmed");
    }

    @Test
    void drawingsAreLandscapeSheetsAfterTheForm() throws IOException {
        try (PDDocument document = document(new SmallPlan())) {
            assertThat(size(document.getPage(0))).isEqualTo("210 x 297");
            assertThat(size(document.getPage(1))).isEqualTo("297 x 210");
            assertThat(size(document.getPage(2))).isEqualTo("210 x 297");
        }
        try (PDDocument document = document(new SmallPlan().on(Paper.LETTER))) {
            assertThat(size(document.getPage(0))).isEqualTo("216 x 279");
        }
    }

    @Test
    void aLongPlanContinuesWithItsHeadAndTheStateOnEveryPage() throws IOException {
        List<String> pages = pages(new SmallPlan().rounds(50).partial());
        assertThat(pages.size()).isGreaterThan(10);
        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i)).contains("page " + (i + 1) + " of " + pages.size());
            assertThat(pages.get(i)).as("page " + (i + 1)).contains("PARTIAL");
        }
        List<String> readings =
                pages.stream().filter(page -> page.contains("Patient leakage")).toList();
        for (String page : readings.subList(1, readings.size() - 1)) {
            assertThat(page).contains("Brindlewick ward monitor, plan 1a2b3c4d, continued");
            // The first row of readings on a page stands under its state.
            assertThat(page.indexOf("NORMAL, no fault") + page.indexOf("REVERSED, no fault"))
                    .isGreaterThan(-2);
            int state = Math.min(at(page, "NORMAL, no fault"), at(page, "REVERSED, no fault"));
            assertThat(state).isLessThan(page.indexOf("Patient leakage"));
        }
    }

    @Test
    void aTrainingCopySaysSoOnEveryPage() throws IOException {
        for (String page : pages(new SmallPlan().training())) {
            assertThat(page).contains("TRAINING: not a record");
        }
    }

    @Test
    void noTextIsBelowTenPoint() throws IOException {
        List<Float> sizes = new ArrayList<>();
        try (PDDocument document = document(new SmallPlan())) {
            PDFTextStripper stripper = new PDFTextStripper() {
                @Override
                protected void processTextPosition(TextPosition text) {
                    sizes.add(text.getFontSizeInPt());
                }
            };
            stripper.getText(document);
        }
        assertThat(sizes).isNotEmpty().allSatisfy(size -> assertThat(size).isGreaterThanOrEqualTo(9.9f));
    }

    private static int at(String page, String words) {
        int at = page.indexOf(words);
        return at < 0 ? Integer.MAX_VALUE : at;
    }

    private static PDDocument document(SmallPlan plan) throws IOException {
        Plan made = plan.plan();
        return Loader.loadPDF(PdfExport.pdf(BenchSheet.xhtml(made, List.of(DRAWING), List.of()), Optional.empty()));
    }

    private static List<String> pages(SmallPlan plan) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = document(plan)) {
            for (int i = 1; i <= document.getNumberOfPages(); i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                pages.add(Normalizer.normalize(stripper.getText(document), Normalizer.Form.NFKC));
            }
        }
        return pages;
    }

    private static String size(PDPage page) {
        PDRectangle box = page.getMediaBox();
        return Math.round(box.getWidth() / 72 * 25.4) + " x " + Math.round(box.getHeight() / 72 * 25.4);
    }
}
