package leadwright.render.export;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import leadwright.render.paper.Document;
import leadwright.render.paper.Words;
import org.apache.poi.wp.usermodel.HeaderFooterType;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTPageMar;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTPageSz;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTSectPr;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTSimpleField;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.STPageOrientation;

/** The pages of a word-processor file: upright for text, lying for drawings, all with the same head and foot. */
final class DocxPages {

    /** Twentieths of a point in a millimetre. */
    private static final double TWIPS_PER_MM = 1440 / 25.4;

    private static final int LEFT_MM = 22;
    private static final int RIGHT_MM = 16;
    private static final int UPRIGHT_EDGE_MM = 20;
    private static final int LYING_EDGE_MM = 12;

    private final XWPFDocument file;
    private final int shortMm;
    private final int longMm;
    private final List<CTSectPr> uprights = new ArrayList<>();
    private final List<CTSectPr> lyings = new ArrayList<>();
    private final CTSectPr last;
    private boolean lying;
    private boolean begun;

    DocxPages(XWPFDocument file, Document document) {
        this.file = file;
        this.shortMm = document.letter() ? 216 : 210;
        this.longMm = document.letter() ? 279 : 297;
        this.last = file.getDocument().getBody().isSetSectPr()
                ? file.getDocument().getBody().getSectPr()
                : file.getDocument().getBody().addNewSectPr();
        String mark = document.mark().isEmpty() ? "" : "    " + document.mark();
        XWPFParagraph head = file.createHeader(HeaderFooterType.DEFAULT).createParagraph();
        head.setStyle("Header");
        DocxBlocks.write(head, Words.of(document.head()).bold(mark));
        XWPFParagraph foot = file.createFooter(HeaderFooterType.DEFAULT).createParagraph();
        foot.setStyle("Footer");
        DocxBlocks.write(foot, Words.of(document.foot() + "    ").bold("page "));
        field(foot, "PAGE");
        DocxBlocks.write(foot, Words.strong(" of "));
        field(foot, "NUMPAGES");
    }

    /** A number that the word processor fills in. */
    private static void field(XWPFParagraph paragraph, String what) {
        CTSimpleField field = paragraph.getCTP().addNewFldSimple();
        field.setInstr(what);
        field.addNewR().addNewT().setStringValue("1");
    }

    /** What follows stands on upright pages. */
    void upright() {
        turn(false);
    }

    /** What follows stands on lying pages. */
    void lying() {
        turn(true);
    }

    private void turn(boolean toLying) {
        if (begun && lying != toLying) {
            CTSectPr ended = file.createParagraph().getCTP().addNewPPr().addNewSectPr();
            (lying ? lyings : uprights).add(ended);
        }
        begun = true;
        lying = toLying;
    }

    /** Gives every stretch of pages its size, head and foot, once all is there. */
    void close() {
        uprights.forEach(section -> lay((CTSectPr) section.set(last.copy()), false));
        lyings.forEach(section -> lay((CTSectPr) section.set(last.copy()), true));
        lay(last, lying);
    }

    private void lay(CTSectPr section, boolean onItsSide) {
        CTPageSz size = section.isSetPgSz() ? section.getPgSz() : section.addNewPgSz();
        size.setW(twips(onItsSide ? longMm : shortMm));
        size.setH(twips(onItsSide ? shortMm : longMm));
        size.setOrient(onItsSide ? STPageOrientation.LANDSCAPE : STPageOrientation.PORTRAIT);
        CTPageMar margin = section.isSetPgMar() ? section.getPgMar() : section.addNewPgMar();
        BigInteger edge = twips(onItsSide ? LYING_EDGE_MM : UPRIGHT_EDGE_MM);
        margin.setTop(edge);
        margin.setBottom(edge);
        margin.setLeft(twips(LEFT_MM));
        margin.setRight(twips(RIGHT_MM));
        margin.setHeader(twips(8));
        margin.setFooter(twips(8));
        margin.setGutter(BigInteger.ZERO);
    }

    private static BigInteger twips(int mm) {
        return BigInteger.valueOf(Math.round(mm * TWIPS_PER_MM));
    }

    /** Width of the text on an upright page, in twentieths of a point. */
    int textWidth() {
        return twips(shortMm - LEFT_MM - RIGHT_MM).intValueExact();
    }

    /** Width of the text on an upright page, in millimetres. */
    double figureWidth() {
        return shortMm - LEFT_MM - RIGHT_MM;
    }

    /** Room for a drawing on a lying page, in millimetres. */
    double pictureWidth() {
        return longMm - LEFT_MM - RIGHT_MM;
    }

    double pictureHeight() {
        return shortMm - 2 * LYING_EDGE_MM - 16;
    }
}
