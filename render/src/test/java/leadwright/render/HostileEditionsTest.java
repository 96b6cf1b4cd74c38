package leadwright.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import leadwright.planner.foresee.Situation;
import leadwright.planner.rehearse.Practice;
import leadwright.planner.rehearse.Rehearsal;
import leadwright.render.diagram.Drawing;
import leadwright.render.edition.PracticeKey;
import leadwright.render.edition.PracticeSheet;
import leadwright.render.edition.StandingEdition;
import leadwright.render.edition.TrainingEdition;
import leadwright.render.export.DocxExport;
import leadwright.render.paper.Document;
import leadwright.render.sheet.DocumentPage;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Text that means to be more stays text in the training and the standing edition, the word processor's file included. */
class HostileEditionsTest {
    private static final Pattern FIELD =
            Pattern.compile("<w:instrText[^>]*>([^<]*)</w:instrText>|w:instr=\"([^\"]*)\"");

    @ParameterizedTest(name = "{0}")
    @MethodSource("leadwright.render.HostileTextTest#names")
    void editionsHaveItAsTextAlone(String name) throws Exception {
        String text = HostileTextTest.string(name);
        Optional<HostileTextTest.Written> found = HostileTextTest.written(text);
        if (found.isEmpty()) {
            return;
        }
        HostileTextTest.Written hostile = found.get();
        HostileTextTest.Written harmless =
                HostileTextTest.written(HostileTextTest.HARMLESS).orElseThrow();
        String seen = HostileStrings.seen(text);
        same(page(training(hostile, text)), page(training(harmless, HostileTextTest.HARMLESS)), seen);
        Document standing = standing(hostile, text);
        same(page(standing), page(standing(harmless, HostileTextTest.HARMLESS)), seen);
        docx(DocxExport.docx(standing, Optional.empty()), seen);
        List<Document> practice = practice(hostile);
        List<Document> plain = practice(harmless);
        for (int i = 0; i < practice.size(); i++) {
            same(page(practice.get(i)), page(plain.get(i)), seen);
        }
    }

    /** A practice sheet and its key. */
    private static List<Document> practice(HostileTextTest.Written written) {
        Practice practice =
                Rehearsal.of(written.plan(), Situation.ORDINARY).sheet(1).orElseThrow();
        return List.of(PracticeSheet.of(written.plan(), practice), PracticeKey.of(written.plan(), List.of(practice)));
    }

    private static Document training(HostileTextTest.Written written, String assumed) {
        return TrainingEdition.of(written.plan(), written.drawings(), List.of(assumed));
    }

    private static Document standing(HostileTextTest.Written written, String assumed) {
        List<Drawing> drawings = written.drawings();
        return StandingEdition.of(written.plan(), drawings, List.of(assumed), Optional.empty());
    }

    private static org.w3c.dom.Document page(Document document) throws Exception {
        return HostileTextTest.parsed(DocumentPage.xhtml(document));
    }

    private static void same(org.w3c.dom.Document page, org.w3c.dom.Document harmless, String seen) {
        TreeSet<String> shapes = HostileTextTest.withTitles(HostileTextTest.shapes(harmless));
        // What runs from right to left is kept apart from the text around it.
        shapes.add("bdi");
        assertThat(HostileTextTest.shapes(page)).isSubsetOf(shapes);
        assertThat(HostileTextTest.contents(page, "script")).isEmpty();
        assertThat(HostileTextTest.visible(page)).contains(seen);
    }

    private static void docx(byte[] file, String seen) throws Exception {
        Map<String, String> parts = parts(file);
        for (Map.Entry<String, String> part : parts.entrySet()) {
            assertThat(part.getKey()).doesNotContainIgnoringCase("vba").doesNotContainIgnoringCase("activex");
            org.w3c.dom.Document parsed = HostileTextTest.parsed(part.getValue());
            assertThat(parsed.getDoctype()).isNull();
            assertThat(part.getValue())
                    .doesNotContain("TargetMode=\"External\"")
                    .doesNotContain("<w:altChunk")
                    .doesNotContain("<w:object");
            FIELD.matcher(part.getValue())
                    .results()
                    .map(field -> (field.group(1) == null ? field.group(2) : field.group(1)).strip())
                    .forEach(field -> assertThat(field).isIn("PAGE", "NUMPAGES"));
        }
        assertThat(HostileTextTest.visible(HostileTextTest.parsed(parts.get("word/document.xml"))))
                .contains(seen);
    }

    private static Map<String, String> parts(byte[] file) throws IOException {
        Map<String, String> parts = new TreeMap<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().endsWith(".xml") || entry.getName().endsWith(".rels")) {
                    parts.put(entry.getName(), new String(zip.readAllBytes(), StandardCharsets.UTF_8));
                }
            }
        }
        return parts;
    }
}
