package leadwright.render.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import leadwright.catalog.house.Paper;
import leadwright.render.edition.SmallEditions;
import leadwright.render.export.PdfExport;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.paper.Words;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Documents on the page: text stays text, every page of a training edition says that it is one. */
class DocumentPageTest {

    @Test
    void textIsDataWhateverItSays() throws Exception {
        String hostile = "\"); } </style><script>alert(1)</script> & ${x} \u0001\u202e \\a ]]> <!-- \u05d0\u05d1";
        for (Document document : List.of(
                SmallEditions.training(new SmallPlan().named(hostile).plan()),
                SmallEditions.standing(new SmallPlan().named(hostile).plan()))) {
            String page = DocumentPage.xhtml(document);
            String title = parsed(page).getElementsByTagName("h1").item(0).getTextContent();
            assertThat(title).isEqualTo(hostile.replace('\u0001', '\ufffd').replace('\u202e', '\ufffd'));
            assertThat(page).doesNotContain("<script", "\u202e", "\u0001").containsOnlyOnce("</style>");
        }
    }

    @Test
    void whatRunsFromRightToLeftIsKeptApart() throws Exception {
        String page = DocumentPage.xhtml(
                SmallEditions.standing(new SmallPlan().named("\u05d0\u05d1 12").plan()));
        assertThat(page).containsPattern("<bdi>(<b>)?\u05d0\u05d1 12");
        assertThat(DocumentPage.xhtml(SmallEditions.standing(new SmallPlan().plan())))
                .doesNotContain("<bdi>");
    }

    @Test
    void everyPageOfTheTrainingEditionSaysSo() throws Exception {
        for (Paper paper : Paper.values()) {
            Document training = SmallEditions.training(new SmallPlan().on(paper).plan());
            try (PDDocument pdf = Loader.loadPDF(PdfExport.pdf(DocumentPage.xhtml(training), Optional.empty()))) {
                assertThat(pdf.getNumberOfPages()).isGreaterThan(3);
                for (int number = 1; number <= pdf.getNumberOfPages(); number++) {
                    PDFTextStripper stripper = new PDFTextStripper();
                    stripper.setStartPage(number);
                    stripper.setEndPage(number);
                    String text = stripper.getText(pdf);
                    assertThat(text).as("page %d", number).contains("TRAINING: not a record");
                    assertThat(text).as("page %d", number).contains("page " + number + " of " + pdf.getNumberOfPages());
                }
            }
        }
    }

    @Test
    void aNameOfFiveHundredLettersStaysOnThePage() throws Exception {
        String name = "W".repeat(500);
        Document standing = SmallEditions.standing(new SmallPlan().named(name).plan());
        try (PDDocument pdf = Loader.loadPDF(PdfExport.pdf(DocumentPage.xhtml(standing), Optional.empty()))) {
            Rightmost rightmost = new Rightmost();
            rightmost.getText(pdf);
            assertThat(rightmost.share).as("share of the width of its page").isLessThan(0.96f);
            assertThat(rightmost.letters).isGreaterThanOrEqualTo(500);
        }
    }

    /** How far to the right any letter of the name stands. */
    private static final class Rightmost extends PDFTextStripper {
        private float share;
        private int letters;

        @Override
        protected void processTextPosition(org.apache.pdfbox.text.TextPosition at) {
            if ("W".equals(at.getUnicode())) {
                letters++;
                share = Math.max(share, (at.getXDirAdj() + at.getWidthDirAdj()) / at.getPageWidth());
            }
            super.processTextPosition(at);
        }
    }

    @Test
    void theDepartmentsWordForEarthIsUsedThroughout() {
        for (Document document : List.of(
                SmallEditions.training(new SmallPlan().grounded().plan()),
                SmallEditions.standing(new SmallPlan().grounded().plan()))) {
            String body = DocumentPage.xhtml(document).replaceAll("(?s)<style.*?</style>", "");
            // Ids and the glossary's own line about the two words apart.
            assertThat(body.replaceAll("[a-z0-9/-]*-earth-?[a-z0-9/-]*|earth, ground", ""))
                    .doesNotContainPattern("\\b(the|of|by|to) earth\\b");
        }
    }

    @Test
    void aTableWhoseRowsDifferFromItsHeadIsNone() {
        org.assertj.core.api.Assertions.assertThatThrownBy(() ->
                        new Block.Grid(List.of("a", "b"), List.of(50, 50), List.of(List.of(Words.of("x"))), false))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static org.w3c.dom.Document parsed(String page) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(page.getBytes(StandardCharsets.UTF_8)));
    }
}
