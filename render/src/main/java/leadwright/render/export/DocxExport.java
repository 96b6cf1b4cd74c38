package leadwright.render.export;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Optional;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import org.apache.poi.xwpf.usermodel.XWPFDocument;

/**
 * Turns a document into a word-processor file (Office Open XML) that a department can go on editing: headings are headings,
 * tables repeat their heads, drawings are pictures with a text for those who cannot see them. The same document gives the
 * same bytes whatever the clock, time zone, language and machine.
 */
public final class DocxExport {

    static {
        // Named outright, the library's logging neither searches the class path nor speaks.
        System.setProperty("log4j.provider", "org.apache.logging.log4j.simple.internal.SimpleProvider");
        System.setProperty("org.apache.logging.log4j.simplelog.level", "OFF");
        System.setProperty("org.apache.logging.log4j.simplelog.StatusLogger.level", "OFF");
        System.setProperty("log4j2.StatusLogger.level", "OFF");
        System.setProperty("java.awt.headless", "true");
    }

    private DocxExport() {}

    /**
     * @param date the day the document is dated with, if it has one; it is written as midnight UTC
     * @return the file's bytes
     * @throws ExportException when a drawing cannot be turned into a picture, or the file cannot be built
     */
    public static byte[] docx(Document document, Optional<LocalDate> date) {
        try (XWPFDocument file = new XWPFDocument()) {
            DocxLook.dress(file);
            DocxBlocks blocks = new DocxBlocks(file, document);
            blocks.title();
            for (Block block : document.blocks()) {
                block.in(blocks);
            }
            blocks.close();
            ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
            file.write(bytes);
            return DocxParcel.sealed(bytes.toByteArray(), document, date);
        } catch (IOException e) {
            throw new ExportException("The word-processor file could not be built: " + e.getMessage(), e);
        }
    }
}
