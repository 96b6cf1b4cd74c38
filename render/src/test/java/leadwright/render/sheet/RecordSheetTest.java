package leadwright.render.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javax.xml.parsers.DocumentBuilderFactory;
import leadwright.catalog.house.Paper;
import leadwright.planner.judge.TestRecord;
import leadwright.render.Records;
import leadwright.render.export.PdfExport;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The page of a record. */
class RecordSheetTest {

    private static String page(String set) {
        return RecordSheet.xhtml(Records.of(set), Paper.A4);
    }

    @Test
    void saysWhoMeasuredWhatWithWhatAndTheVerdict() {
        String page = page("drift.yaml");
        assertThat(page)
                .contains("PASS, provisional")
                .contains("serial BW-0417; inventory A-17; with ECG trunk cable, finger sensor")
                .contains("2027-01-10 by R. Sedgemere")
                .contains("bench 2, number 0093")
                .contains("calibrated until 2027-08-31")
                .contains("IEC 62353, recurrent test and test after repair, edition 2014, direct method")
                .contains("231\u00a0V measured, 230\u00a0V nominal")
                .contains("62\u00a0mΩ at the start, 63\u00a0mΩ at the end; taken off by the tester")
                .contains("Simple acceptance")
                .contains("the record of 2026-01-12")
                .contains("up by 19\u00a0µA")
                .contains("Signature")
                .contains("Limits not yet confirmed")
                .contains("the house never asks for it");
        for (int i = 1; i <= 12; i++) {
            assertThat(page).contains(String.format(java.util.Locale.ROOT, "<td class=\"no\">R%02d</td>", i));
        }
    }

    /** What is signed stands on the page of the result, and every page says whose it is. */
    @Test
    void theSignatureStandsBelowTheResult() throws IOException {
        TestRecord record = Records.of("drift.yaml");
        byte[] pdf = PdfExport.pdf(RecordSheet.xhtml(record, Paper.LETTER), Optional.of(record.date()));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper first = new PDFTextStripper();
            first.setEndPage(1);
            assertThat(first.getText(document)).contains("PASS, provisional", "Technician, name", "Reviewed by, name");
            PDFTextStripper second = new PDFTextStripper();
            second.setStartPage(2);
            assertThat(second.getText(document)).contains("serial BW-0417, 2027-01-10, plan 1223204f");
        }
    }

    @Test
    void aFailureAndAVoidStandOut() {
        assertThat(page("fail-far.yaml"))
                .contains("<b>FAIL</b>")
                .contains("Not accepted: R09.")
                .contains("re-seated");
        assertThat(page("past-due.yaml"))
                .contains("<span class=\"word\">VOID</span>")
                .doesNotContain("PASS")
                .doesNotContain("Provisional:");
        assertThat(page("leads-in-the-value.yaml")).contains("taken off here, the smaller of the two");
        assertThat(page("leads-never-nulled.yaml")).contains("not nulled, or not written down");
        assertThat(page("stopped.yaml")).contains("NOT COMPLETE").contains("Not taken: called away.");
    }

    @Test
    void partialAndTrainingAreMarkedOnEveryPage() {
        UnaryOperator<String> same = UnaryOperator.identity();
        TestRecord partial = Records.of(
                "all-well.yaml",
                text -> text.replace("\"partial\": false", "\"partial\": true")
                        .replace(
                                "\"shortfalls\": []",
                                "\"shortfalls\": [{\"about\": \"comb\", \"connections\": [], \"because\": \"six places"
                                        + " short\", \"additions\": []}]"),
                same);
        assertThat(RecordSheet.xhtml(partial, Paper.A4))
                .contains("PARTIAL, not complete")
                .contains("not tested: comb: six places short")
                .contains("@top-right { content: \"PARTIAL\"")
                .doesNotContain("PASS");
        TestRecord training = Records.of(
                "all-well.yaml", text -> text.replace("\"training-copy\": false", "\"training-copy\": true"), same);
        assertThat(RecordSheet.xhtml(training, Paper.A4))
                .contains("TRAINING COPY: NOT A RECORD.")
                .contains("class=\"watermark\"")
                .doesNotContain("PASS");
    }

    @Test
    void wordsFromFilesStayWords() throws Exception {
        String hostile = "</td><script>x</script>&amp;]]>";
        TestRecord record = Records.of(
                "all-well.yaml",
                text -> text.replace("Pole clamp", hostile).replace("Marrowgate bench tester", "*/ } " + hostile),
                text -> text.replace("R. Sedgemere", hostile).replace("finger sensor", "\"' onload='x\""));
        String page = RecordSheet.xhtml(record, Paper.A4);
        assertThat(page).doesNotContain("<script>");
        DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(
                        page.replace("<!DOCTYPE html>", "").getBytes(StandardCharsets.UTF_8)));
    }

    /** Like members of a system have like names: their ids tell them apart. */
    @Test
    void namesThatSeveralShareCarryTheirId() {
        TestRecord record =
                Records.of("all-well.yaml", text -> text.replace("Back plate", "Pole clamp"), UnaryOperator.identity());
        assertThat(RecordSheet.xhtml(record, Paper.A4))
                .contains("plug earth to Pole clamp (pole-clamp)")
                .contains("plug earth to Pole clamp (back-plate)")
                .contains("Applied part leakage: ECG;");
    }

    @Test
    void theHousesWordForEarthIsUsed() {
        TestRecord record = Records.of(
                "all-well.yaml",
                text -> text.replace("\"words\": \"earth\"", "\"words\": \"ground\""),
                UnaryOperator.identity());
        assertThat(RecordSheet.xhtml(record, Paper.LETTER))
                .contains("Ground resistance: plug ground to Pole clamp")
                .contains("size: Letter");
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void isTypesetOnItsPaperWithNothingLost(Paper paper) throws IOException {
        TestRecord record = Records.of("drift.yaml");
        byte[] pdf = PdfExport.pdf(RecordSheet.xhtml(record, paper), Optional.of(record.date()));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            float width = document.getPage(0).getMediaBox().getWidth();
            assertThat(width)
                    .isCloseTo(paper == Paper.A4 ? 595.3f : 612f, org.assertj.core.api.Assertions.within(0.5f));
            String text = new PDFTextStripper().getText(document);
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            assertThat(text).contains("PASS, provisional", "R01", "R12", "page 2 of 2", "Signature");
        }
    }
}
