package leadwright.render.export;

import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The two faces as fonts of one PDF document, embedded once each and only the signs used. */
final class PdfFonts {

    private final PDDocument document;
    private Optional<PDFont> regular = Optional.empty();
    private Optional<PDFont> bold = Optional.empty();

    PdfFonts(PDDocument document) {
        this.document = document;
    }

    /** The face, added to the document when it is first asked for. */
    PDFont face(boolean wantBold) throws IOException {
        Optional<PDFont> known = wantBold ? bold : regular;
        if (known.isPresent()) {
            return known.get();
        }
        PDFont made = PDType0Font.load(document, Fonts.face(wantBold).font(), true);
        if (wantBold) {
            bold = Optional.of(made);
        } else {
            regular = Optional.of(made);
        }
        return made;
    }
}
