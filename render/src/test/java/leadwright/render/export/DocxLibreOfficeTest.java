package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.render.DocumentLines;
import leadwright.render.SamplePlans;
import leadwright.render.edition.StandingEdition;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.sheet.DocumentPage;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Another word processor opens the file and finds in it what the page and the PDF say. */
class DocxLibreOfficeTest {

    private static final String PROGRAM = "soffice";

    @TempDir
    private Path folder;

    @BeforeAll
    static void present() {
        boolean found = Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
                .anyMatch(place -> Files.isExecutable(Path.of(place, PROGRAM)));
        assumeTrue(found, "LibreOffice (soffice) is not installed: nobody else opened the word-processor file");
    }

    @Test
    void readsTheSameContent() throws Exception {
        Document document = StandingEdition.of(
                SamplePlans.of("brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-62353-2014"),
                List.of(),
                List.of(),
                Optional.empty());
        Path file = Files.write(folder.resolve("standing.docx"), DocxExport.docx(document, Optional.empty()));

        convert(file, "txt:Text (encoded):UTF8");
        String said = DocumentLines.of(document).stream().collect(Collectors.joining());
        assertThat(letters(Files.readString(folder.resolve("standing.txt")))).isEqualTo(letters(said));
        assertThat(letters(text(DocumentPage.xhtml(document)))).isEqualTo(letters(said));

        convert(file, "pdf");
        String printed = letters(pdf(Files.readAllBytes(folder.resolve("standing.pdf"))));
        String ours = letters(pdf(PdfExport.pdf(DocumentPage.xhtml(document), Optional.empty())));
        for (Block block : document.blocks()) {
            if (block instanceof Block.Heading heading) {
                assertThat(printed).contains(letters(heading.whole()));
                assertThat(ours).contains(letters(heading.whole()));
            }
        }
    }

    private void convert(Path file, String to) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        PROGRAM,
                        "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                        "--headless",
                        "--convert-to",
                        to,
                        "--outdir",
                        folder.toString(),
                        file.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile())
                .start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).as("ends in time").isTrue();
        assertThat(process.exitValue())
                .as(Files.readString(folder.resolve("said.txt")))
                .isZero();
    }

    private static String pdf(byte[] bytes) throws IOException {
        try (PDDocument document = Loader.loadPDF(bytes)) {
            return new PDFTextStripper().getText(document);
        }
    }

    /** The words of a page source, without its head. */
    private static String text(String xhtml) {
        return xhtml.substring(xhtml.indexOf("<body"))
                .replaceAll("<[^>]*>", "")
                .replace("&lt;", "<")
                .replace("&gt;", ">")
                .replace("&quot;", "\"")
                .replace("&amp;", "&");
    }

    /** Without spaces, bullets and bars between cells, which each program sets in its own way. */
    private static String letters(String text) {
        return java.text.Normalizer.normalize(text, java.text.Normalizer.Form.NFKC)
                .replaceAll("[\\s\\u00a0\\ufeff•|]", "");
    }
}
