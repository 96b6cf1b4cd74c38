package leadwright.render.export;

import java.io.IOException;
import java.io.InputStream;
import org.apache.poi.xwpf.usermodel.XWPFAbstractNum;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFNumbering;
import org.apache.xmlbeans.XmlException;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTAbstractNum;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTNumbering;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.NumberingDocument;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.StylesDocument;

/** The styles and lists of a word-processor file: kept as XML beside this class, as such a file has them inside. */
final class DocxLook {

    private DocxLook() {}

    static void dress(XWPFDocument file) throws IOException {
        try (InputStream styles = open("docx-styles.xml");
                InputStream lists = open("docx-numbering.xml")) {
            file.createStyles().setStyles(StylesDocument.Factory.parse(styles).getStyles());
            CTNumbering numbering = NumberingDocument.Factory.parse(lists).getNumbering();
            XWPFNumbering own = file.createNumbering();
            for (CTAbstractNum list : numbering.getAbstractNumArray()) {
                own.addAbstractNum(new XWPFAbstractNum(list));
            }
        } catch (XmlException e) {
            throw new IllegalStateException("The program's own styles cannot be read", e);
        }
    }

    private static InputStream open(String name) {
        InputStream in = DocxLook.class.getResourceAsStream(name);
        if (in == null) {
            throw new IllegalStateException("The program is incomplete: it lacks " + name);
        }
        return in;
    }
}
