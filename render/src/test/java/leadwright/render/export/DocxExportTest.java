package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TimeZone;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import leadwright.render.DocumentLines;
import leadwright.render.edition.SmallEditions;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;
import leadwright.render.sheet.SmallPlan;
import org.apache.poi.xwpf.usermodel.IBodyElement;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFTable;
import org.junit.jupiter.api.Test;

/** The word-processor file, opened again by the library: it says what the document says, and each thing as what it is. */
class DocxExportTest {

    private static final Optional<LocalDate> DAY = Optional.of(LocalDate.of(2027, 1, 10));

    @Test
    void saysWhatTheDocumentSaysInItsOrder() throws IOException {
        Document document = SmallEditions.standing(new SmallPlan().plan());
        try (XWPFDocument file = open(DocxExport.docx(document, DAY))) {
            assertThat(lines(file)).containsExactlyElementsOf(DocumentLines.of(document));
        }
    }

    @Test
    void headingsAreHeadingsAndTablesRepeatTheirHeads() throws IOException {
        Document document = SmallEditions.standing(new SmallPlan().plan());
        try (XWPFDocument file = open(DocxExport.docx(document, DAY))) {
            List<String> headings = file.getParagraphs().stream()
                    .filter(each -> String.valueOf(each.getStyle()).startsWith("Heading"))
                    .map(XWPFParagraph::getText)
                    .toList();
            assertThat(headings)
                    .containsExactlyElementsOf(document.blocks().stream()
                            .filter(Block.Heading.class::isInstance)
                            .map(block -> ((Block.Heading) block).whole())
                            .toList());
            for (String style : List.of("Title", "Subtitle", "Heading1", "Heading2", "Heading3", "Ruled", "Boxed")) {
                assertThat(file.getStyles().getStyle(style)).as(style).isNotNull();
            }
            assertThat(file.getTables()).isNotEmpty().allSatisfy(table -> {
                assertThat(table.getRow(0).isRepeatHeader()).isTrue();
                assertThat(table.getRows().stream().filter(row -> row.isRepeatHeader()))
                        .hasSize(1);
                assertThat(table.getRows()).allMatch(row -> row.isCantSplitRow());
            });
        }
    }

    @Test
    void drawingsArePicturesWithAText() throws IOException {
        try (XWPFDocument file = open(DocxExport.docx(SmallEditions.standing(new SmallPlan().plan()), DAY))) {
            assertThat(file.getAllPictures()).hasSize(1);
            assertThat(file.getAllPictures().get(0).getFileName()).endsWith(".png");
            String body = part(file);
            assertThat(body).contains("descr=\"Drawing of hookup H1");
            assertThat(body).contains("w:orient=\"landscape\"");
        }
    }

    @Test
    void sameDocumentSameBytesWhateverTheMachine() throws Exception {
        Document document = SmallEditions.standing(new SmallPlan().plan());
        byte[] here = DocxExport.docx(document, DAY);
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
            // Times in a parcel are kept to two seconds.
            Thread.sleep(2_100);
            assertThat(DocxExport.docx(document, DAY)).isEqualTo(here);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
    }

    @Test
    void saysOfItselfOnlyWhatTheDocumentSays() throws IOException {
        Document document = SmallEditions.standing(new SmallPlan().plan());
        String dated = parts(DocxExport.docx(document, DAY)).get("docProps/core.xml");
        assertThat(dated)
                .contains("<dc:title>" + document.kind() + ": " + document.title())
                .contains("2027-01-10T00:00:00Z");
        assertThat(parts(DocxExport.docx(document, Optional.empty())).get("docProps/core.xml"))
                .doesNotContain("dcterms:created");
    }

    @Test
    void textIsDataWhateverItSays() throws IOException {
        String hostile = "</w:t><script>x</script> & \u0001 \u202e \u05d0\u05d1 ${x} =1+1 " + "W".repeat(500);
        Document document =
                SmallEditions.standing(new SmallPlan().named(hostile).plan());
        byte[] bytes = DocxExport.docx(document, DAY);
        try (XWPFDocument file = open(bytes)) {
            List<String> lines = lines(file).stream()
                    .map(line -> line.replace("\u2068", "").replace("\u2069", ""))
                    .toList();
            assertThat(lines).containsExactlyElementsOf(DocumentLines.of(document));
            assertThat(lines.get(0))
                    .isEqualTo(hostile.replace('\u0001', '\ufffd').replace('\u202e', '\ufffd'));
        }
        assertThat(parts(bytes).get("word/document.xml"))
                .contains("\u2068")
                .doesNotContain("\u202e", "\u0001", "<script");
    }

    @Test
    void numberedListsBeginAnew() throws IOException {
        List<Words> two = List.of(Words.of("a"), Words.of("b"));
        Document document =
                document(new DocumentBuilder().numbered(two).numbered(two).items(two));
        try (XWPFDocument file = open(DocxExport.docx(document, DAY))) {
            List<String> lists = file.getParagraphs().stream()
                    .filter(each -> each.getNumID() != null)
                    .map(each -> each.getNumID().toString())
                    .toList();
            assertThat(lists.get(0)).isEqualTo(lists.get(1)).isNotEqualTo(lists.get(2));
            assertThat(file.getParagraphs().stream()
                            .filter(each -> each.getNumID() != null)
                            .map(XWPFParagraph::getNumFmt))
                    .containsExactly("decimal", "decimal", "decimal", "decimal", "bullet", "bullet");
        }
    }

    @Test
    void aDrawingThatIsNoneEndsTheExport() {
        Document document =
                document(new DocumentBuilder().picture("<svg xmlns='http://www.w3.org/2000/svg'><nonsense", "x"));
        assertThatThrownBy(() -> DocxExport.docx(document, DAY)).isInstanceOf(ExportException.class);
    }

    /** The text of the file as lines, tables row by row; what stands between tables says nothing. */
    static List<String> lines(XWPFDocument file) {
        List<String> lines = new ArrayList<>();
        for (IBodyElement element : file.getBodyElements()) {
            if (element instanceof XWPFTable table) {
                table.getRows()
                        .forEach(row -> lines.add(String.join(
                                " | ",
                                row.getTableCells().stream()
                                        .map(cell -> cell.getText())
                                        .toList())));
            } else if (element instanceof XWPFParagraph paragraph) {
                if (!paragraph.getCTP().xmlText().contains("descr=")) {
                    lines.add(paragraph.getText());
                } else {
                    lines.add("[" + alt(paragraph) + "]");
                }
            }
        }
        lines.removeIf(String::isEmpty);
        return lines;
    }

    private static String alt(XWPFParagraph paragraph) {
        return paragraph
                .getRuns()
                .get(0)
                .getCTR()
                .getDrawingArray(0)
                .getInlineArray(0)
                .getDocPr()
                .getDescr();
    }

    private static XWPFDocument open(byte[] bytes) throws IOException {
        return new XWPFDocument(new ByteArrayInputStream(bytes));
    }

    private static String part(XWPFDocument file) throws IOException {
        return new String(file.getPackagePart().getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    }

    private static Map<String, String> parts(byte[] bytes) throws IOException {
        Map<String, String> parts = new LinkedHashMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(bytes))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                parts.put(entry.getName(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return parts;
    }

    private static Document document(DocumentBuilder built) {
        return new Document("t", "k", "a", false, "h", "f", "", built.blocks());
    }
}
