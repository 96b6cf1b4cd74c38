package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TimeZone;
import java.util.concurrent.CompletableFuture;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.cos.COSObject;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDFontFactory;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PdfExportTest {

    private static final Optional<LocalDate> UNDATED = Optional.empty();

    @Test
    void text_of_the_page_and_of_its_drawings_can_be_searched() throws Exception {
        String text = text(PdfExport.pdf(ProbePage.xhtml(ProbePage.Paper.A4), UNDATED));
        assertThat(text)
                .contains("Bench sheet", "supply open: STILL LIVE", "≤ 500 µA", "sheet 1 of 3", "sheet 3 of 3")
                .contains("H2 of 2: Brindlewick ward monitor, patient connections", "jack 5: 4.7 kΩ ± 5 %")
                .contains("µ Ω ≤ ≥ → ✓ ✗ ⚠");
    }

    @Test
    void words_with_f_and_i_are_found_as_they_were_written() throws Exception {
        String text = text(PdfExport.pdf(Figures.page("", "<p>first field: find the fluid fitting, off</p>"), UNDATED));
        assertThat(text).contains("first field: find the fluid fitting, off");
    }

    @ParameterizedTest
    @EnumSource(ProbePage.Paper.class)
    void portrait_and_landscape_pages_stand_in_one_file(ProbePage.Paper paper) throws Exception {
        try (PDDocument document = Loader.loadPDF(PdfExport.pdf(ProbePage.xhtml(paper), UNDATED))) {
            assertThat(document.getNumberOfPages()).isEqualTo(3);
            assertSize(document.getPage(0), paper.widthPt, paper.heightPt);
            assertSize(document.getPage(1), paper.heightPt, paper.widthPt);
            assertSize(document.getPage(2), paper.heightPt, paper.widthPt);
        }
    }

    @Test
    void every_font_is_embedded_in_part() throws Exception {
        try (PDDocument document = Loader.loadPDF(PdfExport.pdf(ProbePage.xhtml(ProbePage.Paper.A4), UNDATED))) {
            List<PDFont> fonts = fonts(document);
            assertThat(fonts).hasSize(2);
            for (PDFont font : fonts) {
                assertThat(font.isEmbedded()).as(font.getName()).isTrue();
                assertThat(font.getName()).matches("[A-Z]{6}\\+DejaVuSans(-Bold)?");
            }
        }
    }

    @Test
    void a_file_of_three_sheets_stays_small() {
        assertThat(PdfExport.pdf(ProbePage.xhtml(ProbePage.Paper.A4), UNDATED)).hasSizeLessThan(150_000);
    }

    @Test
    void the_clock_the_time_zone_and_the_language_change_no_byte() throws Exception {
        String page = ProbePage.xhtml(ProbePage.Paper.LETTER);
        Optional<LocalDate> date = Optional.of(LocalDate.of(2026, 11, 25));
        TimeZone zone = TimeZone.getDefault();
        Locale locale = Locale.getDefault();
        byte[] here = PdfExport.pdf(page, date);
        long second = Instant.now().getEpochSecond();
        while (Instant.now().getEpochSecond() == second) {
            Thread.sleep(20);
        }
        assertThat(PdfExport.pdf(page, date)).isEqualTo(here);
        try {
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
            for (String language : List.of("ar-EG-u-nu-arab", "tr-TR", "de-DE")) {
                Locale.setDefault(Locale.forLanguageTag(language));
                assertThat(PdfExport.pdf(page, date)).as(language).isEqualTo(here);
            }
        } finally {
            TimeZone.setDefault(zone);
            Locale.setDefault(locale);
        }
    }

    @Test
    void several_at_once_do_not_disturb_each_other() {
        String page = ProbePage.xhtml(ProbePage.Paper.A4);
        byte[] alone = PdfExport.pdf(page, UNDATED);
        PdfExport.warmUp();
        assertThat(PdfExport.pdf(page, UNDATED)).isEqualTo(alone);
        List<CompletableFuture<byte[]>> runs = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            runs.add(CompletableFuture.supplyAsync(() -> PdfExport.pdf(page, UNDATED)));
        }
        for (CompletableFuture<byte[]> run : runs) {
            assertThat(run.join()).isEqualTo(alone);
        }
    }

    @Test
    void a_date_is_written_alike_everywhere_and_never_made_up() throws Exception {
        byte[] dated = PdfExport.pdf(Figures.page("", "<p>x</p>"), Optional.of(LocalDate.of(2026, 2, 3)));
        try (PDDocument document = Loader.loadPDF(dated)) {
            assertThat(document.getDocumentInformation().getCreationDate().toInstant())
                    .isEqualTo(Instant.parse("2026-02-03T00:00:00Z"));
            assertThat(document.getDocumentInformation().getModificationDate().toInstant())
                    .isEqualTo(Instant.parse("2026-02-03T00:00:00Z"));
            assertThat(xmp(document))
                    .contains("<xmp:CreateDate>2026-02-03T00:00:00Z<", "<xmp:ModifyDate>2026-02-03T00:00:00Z<");
        }
        try (PDDocument document = Loader.loadPDF(PdfExport.pdf(Figures.page("", "<p>x</p>"), UNDATED))) {
            assertThat(document.getDocumentInformation().getCreationDate()).isNull();
            assertThat(document.getDocumentInformation().getModificationDate()).isNull();
            assertThat(xmp(document)).doesNotContain("Date>");
        }
    }

    @Test
    void drawings_are_figures_with_their_titles_as_alternative_text() throws Exception {
        try (PDDocument document = Loader.loadPDF(PdfExport.pdf(ProbePage.xhtml(ProbePage.Paper.A4), UNDATED))) {
            List<String> alternatives = new ArrayList<>();
            collect(document.getDocumentCatalog().getStructureTreeRoot().getCOSObject(), alternatives);
            assertThat(alternatives).containsExactly("Connection diagram 1", "Connection diagram 2");
            assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("en-GB");
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Bench sheet: Brindlewick ward monitor");
        }
    }

    @Test
    void a_character_without_a_sign_is_shown_as_missing() throws Exception {
        byte[] pdf = PdfExport.pdf(
                Figures.page(
                        "svg { width: 60mm }", "<p>a漢b</p>" + Figures.file(60, 20, "<text x='1' y='9'>c漢d</text>")),
                UNDATED);
        assertThat(text(pdf)).contains("a\uFFFDb", "c\uFFFDd");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<image xlink:href='x.png' width='9' height='9'/>",
                "<foreignObject/>",
                "<rect width='9' height='9' style='opacity:0.5'/>",
                "<rect width='9' height='9' fill='url(#p)'/>",
                "<rect width='9' height='9' fill='hsl(0,0%,0%)'/>",
                "<rect width='9em' height='9'/>",
                "<path d='M 0 0 L ten 10'/>",
                "<g transform='turn(9)'><rect width='9' height='9'/></g>",
                "<g transform='scale(2,3)'><line x2='9' stroke='black'/></g>",
                "<line x2='9' stroke='black' marker-end='url(#arrow)'/>",
                "<text dominant-baseline='middle'>x</text>",
                "<text rotate='9'>x</text>",
                "<text stroke='white'>x</text>",
                "<use xlink:href='#nowhere'/>",
                "<style>rect:hover { fill: red }</style>",
            })
    void a_drawing_that_cannot_be_shown_ends_the_run(String inside) {
        String page = Figures.page("", Figures.file(20, 20, inside));
        assertThatThrownBy(() -> PdfExport.pdf(page, UNDATED))
                .isInstanceOf(ExportException.class)
                .hasMessageContaining("drawing");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "<p>not closed | typeset",
                "<p><img src='https://example.invalid/a.png' alt='a'/></p> | outside itself",
                "<p><img src='file:///etc/hostname' alt='a'/></p> | outside itself",
                "<div style='background-image: url(a.png)'>x</div> | outside itself",
                "<p style='font-family: Garamond'>x</p> | typeset",
                "<svg xmlns='http://www.w3.org/2000/svg' width='9' height='9'><title>t</title></svg> | viewBox",
                "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 9 9'><path d=''/></svg> | title in every drawing",
            })
    void a_page_not_fit_for_print_ends_the_run(String body, String message) {
        assertThatThrownBy(() -> PdfExport.pdf(Figures.page("", body), UNDATED))
                .isInstanceOf(ExportException.class)
                .hasMessageContaining(message);
    }

    @ParameterizedTest
    @CsvSource({"lang=\"en-GB\", a language", "<title>a page</title>, a title", "name=\"description\", a description"})
    void a_page_must_say_what_it_is(String missing, String message) {
        String page = Figures.page("", "<p>x</p>").replace(missing, "");
        assertThatThrownBy(() -> PdfExport.pdf(page, UNDATED))
                .isInstanceOf(ExportException.class)
                .hasMessageContaining(message);
    }

    /** Rules for browsers alone do not stop the printing. */
    @Test
    void unknown_style_rules_are_let_pass() throws Exception {
        String style = "p { print-color-adjust: exact; display: flex; colour: red } @media screen { p { color: red } }";
        assertThat(text(PdfExport.pdf(Figures.page(style, "<p>shown</p>"), UNDATED)))
                .contains("shown");
    }

    private static void assertSize(PDPage page, int width, int height) {
        assertThat(page.getMediaBox().getWidth()).isCloseTo(width, within(1f));
        assertThat(page.getMediaBox().getHeight()).isCloseTo(height, within(1f));
        assertThat(page.getRotation()).isZero();
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }

    private static String xmp(PDDocument document) throws IOException {
        return new String(
                document.getDocumentCatalog().getMetadata().exportXMPMetadata().readAllBytes(), StandardCharsets.UTF_8);
    }

    /** All fonts of the file, wherever they are referred to. */
    private static List<PDFont> fonts(PDDocument document) throws IOException {
        List<PDFont> fonts = new ArrayList<>();
        for (COSObject object : document.getDocument().getObjectsByType(COSName.FONT)) {
            COSDictionary font = (COSDictionary) object.getObject();
            // A composite font has its parts as fonts too; those are not counted again.
            if (COSName.TYPE0.equals(font.getCOSName(COSName.SUBTYPE))) {
                fonts.add(PDFontFactory.createFont(font));
            }
        }
        return fonts;
    }

    /** The alternative texts below a structure element, in reading order. */
    private static void collect(COSBase node, List<String> alternatives) {
        if (node instanceof COSObject object) {
            collect(object.getObject(), alternatives);
        } else if (node instanceof COSArray array) {
            array.forEach(each -> collect(each, alternatives));
        } else if (node instanceof COSDictionary element) {
            if (element.containsKey(COSName.ALT)) {
                alternatives.add(element.getString(COSName.ALT));
            }
            collect(element.getItem(COSName.K), alternatives);
        }
    }
}
