package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import leadwright.catalog.house.Paper;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Situation;
import leadwright.planner.judge.TestRecord;
import leadwright.planner.rehearse.Practice;
import leadwright.planner.rehearse.Rehearsal;
import leadwright.render.Records;
import leadwright.render.SamplePlans;
import leadwright.render.edition.PracticeKey;
import leadwright.render.edition.PracticeSheet;
import leadwright.render.edition.SmallEditions;
import leadwright.render.paper.Document;
import leadwright.render.sheet.DocumentPage;
import leadwright.render.sheet.RecordSheet;
import leadwright.render.sheet.SmallPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** An independent validator judges whether the PDF is what it says it is: accessible (PDF/UA-1) and archivable (PDF/A-2u). */
class PdfConformanceTest {

    @ParameterizedTest
    @CsvSource({"PDFUA_1, A4", "PDFA_2_U, A4", "PDFUA_1, LETTER", "PDFA_2_U, LETTER"})
    void keeps_to_the_standard_it_claims(PDFAFlavour flavour, ProbePage.Paper paper) throws Exception {
        Optional<LocalDate> date = Optional.of(LocalDate.of(2026, 11, 25));
        assertThat(Conformance.complaints(PdfExport.pdf(ProbePage.xhtml(paper), date), flavour))
                .isEmpty();
        assertThat(Conformance.complaints(PdfExport.pdf(ProbePage.xhtml(paper), Optional.empty()), flavour))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "PDFUA_1, drift.yaml",
        "PDFA_2_U, drift.yaml",
        "PDFUA_1, earth-failed.yaml",
        "PDFA_2_U, earth-failed.yaml"
    })
    void the_record_of_a_test_does_too(PDFAFlavour flavour, String set) throws Exception {
        TestRecord record = Records.of(set);
        byte[] pdf = PdfExport.pdf(RecordSheet.xhtml(record, Paper.A4), Optional.of(record.date()));
        assertThat(Conformance.complaints(pdf, flavour)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"PDFUA_1, A4", "PDFA_2_U, A4", "PDFUA_1, LETTER", "PDFA_2_U, LETTER"})
    void the_training_and_the_standing_edition_do_too(PDFAFlavour flavour, Paper paper) throws Exception {
        for (SmallPlan plan :
                List.of(new SmallPlan().on(paper), new SmallPlan().on(paper).partial())) {
            for (Document document :
                    List.of(SmallEditions.training(plan.plan()), SmallEditions.standing(plan.plan()))) {
                byte[] pdf = PdfExport.pdf(DocumentPage.xhtml(document), Optional.empty());
                assertThat(Conformance.complaints(pdf, flavour))
                        .as(document.kind())
                        .isEmpty();
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"PDFUA_1", "PDFA_2_U"})
    void a_class_set_of_practice_sheets_does_too(PDFAFlavour flavour) throws Exception {
        Plan plan = SamplePlans.of("brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-62353-2014");
        Rehearsal rehearsal = Rehearsal.of(plan, Situation.ORDINARY);
        List<Practice> set = LongStream.of(17, 18)
                .mapToObj(seed -> rehearsal.sheet(seed).orElseThrow())
                .toList();
        for (Document document : List.of(
                PracticeSheet.of(plan, set.get(0)), PracticeSheet.of(plan, set.get(1)), PracticeKey.of(plan, set))) {
            byte[] pdf = PdfExport.pdf(DocumentPage.xhtml(document), Optional.empty());
            assertThat(Conformance.complaints(pdf, flavour)).as(document.kind()).isEmpty();
        }
    }

    @Test
    void translucent_paint_is_allowed_too() throws Exception {
        byte[] pdf = PdfExport.pdf(
                Figures.page(
                        60, 40, "<rect width='30' height='30' fill='red' fill-opacity='0.4'/><text y='9'>x</text>"),
                Optional.empty());
        assertThat(Conformance.complaints(pdf, PDFAFlavour.PDFA_2_U)).isEmpty();
        assertThat(Conformance.complaints(pdf, PDFAFlavour.PDFUA_1)).isEmpty();
    }

    /** The judge must be able to say no. */
    @Test
    void the_validator_notices_a_damaged_file() throws Exception {
        byte[] pdf = PdfExport.pdf(ProbePage.xhtml(ProbePage.Paper.A4), Optional.empty());
        String text = new String(pdf, java.nio.charset.StandardCharsets.ISO_8859_1);
        byte[] damaged =
                text.replace("<pdfaid:part>2", "<pdfaid:part>9").getBytes(java.nio.charset.StandardCharsets.ISO_8859_1);
        assertThat(Conformance.complaints(damaged, PDFAFlavour.PDFA_2_U)).isNotEmpty();
    }
}
