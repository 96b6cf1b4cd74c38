package leadwright.render.export;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.util.Diagnostic;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.logging.Level;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Turns a page source into a PDF: the same well-formed XHTML that a browser shows, with its drawings as inline SVG.
 * The PDF is tagged (PDF/UA-1) and archivable (PDF/A-2u), its text and that of its drawings can be searched, its
 * fonts are embedded, and the same page gives the same bytes whatever the clock, time zone, language and machine.
 *
 * <p>What the page must have: {@code lang} on {@code <html>}, a {@code <title>}, a {@code <meta>} named
 * {@code description} or {@code subject}, text in {@link Fonts#FAMILY}, and in every drawing a {@code viewBox} and a
 * {@code <title>}. Page sizes, named landscape pages and page numbers come from the page's own {@code @page} rules.
 */
public final class PdfExport {

    /** One of each thing that pages are made of. */
    private static final String WARM_UP_PAGE = """
            <html xmlns="http://www.w3.org/1999/xhtml" lang="en"><head><title>x</title>
            <meta name="description" content="x"/><style>
            @page { size: A4; margin: 9mm; @bottom-right { content: counter(page) " " counter(pages); font: 9pt "DejaVu Sans" } }
            @page wide { size: A4 landscape }
            body { font: 10pt "DejaVu Sans"; margin: 0 } td { border: 0.5mm solid black }
            .tick { display: inline-block; width: 3mm; height: 3mm; border: 0.3mm solid black }
            .wide { page: wide; page-break-before: always } svg { display: block; width: 20mm }
            </style></head><body><h1>x</h1><p>x <b>x</b> <span class="tick"></span></p>
            <table><thead><tr><th>x</th></tr></thead><tbody><tr><td>x</td></tr></tbody></table><ul><li>x</li></ul>
            <div class="wide"><svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><title>x</title>
            <style>.a { fill: none; stroke: #000000 }</style><g class="a"><rect width="9" height="9"/><path d="M1 1H9"/>
            <text x="1" y="9" font-size="2">x</text></g></svg></div></body></html>
            """;

    private static final Object WARM_UP = new Object();
    private static boolean pageCame;

    private PdfExport() {}

    /**
     * The PDF of a page.
     *
     * @param xhtml the page source, well-formed
     * @param date the day the document is dated with, if it has one; it is written as midnight UTC
     * @return the file's bytes
     * @throws ExportException when the page is not fit for print: malformed, a figure or a font fails, an address
     *     outside the page is referred to, or what the list above asks for is missing
     */
    public static byte[] pdf(String xhtml, Optional<LocalDate> date) {
        synchronized (WARM_UP) {
            pageCame = true;
        }
        return typeset(xhtml, date);
    }

    private static byte[] typeset(String xhtml, Optional<LocalDate> date) {
        // Before the first class that would look for a place to log to.
        Quiet.install();
        List<Diagnostic> troubles = new ArrayList<>();
        try (PDDocument document = new PDDocument();
                PdfBoxRenderer renderer = builder(xhtml, document, troubles).buildPdfRenderer()) {
            renderer.createPDFWithoutClosing();
            refuse(troubles);
            PdfIdentity.set(document, xhtml, date);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 17);
            document.save(bytes);
            return bytes.toByteArray();
        } catch (ExportException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            throw new ExportException("The page could not be typeset: " + e.getMessage(), e);
        }
    }

    /**
     * Typesets a tiny page and throws it away, so that the typesetter is loaded and its code compiled when a real page
     * comes: meant for a thread of its own beside other work. A page that comes meanwhile waits for the end of it, as
     * both would load the same classes; once a page has come, this does nothing.
     */
    public static void warmUp() {
        synchronized (WARM_UP) {
            if (!pageCame) {
                typeset(WARM_UP_PAGE, Optional.empty());
            }
        }
    }

    private static PdfRendererBuilder builder(String xhtml, PDDocument document, List<Diagnostic> troubles) {
        PdfFonts fonts = new PdfFonts(document);
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePDDocument(document);
        builder.withHtmlContent(xhtml, null);
        builder.withProducer("Leadwright");
        builder.usePdfUaAccessibility(true);
        builder.usePdfAConformance(PdfAConformance.PDFA_2_U);
        builder.useSVGDrawer(new PdfFigures(document, fonts));
        builder.addDOMMutator(PdfExport::prepare);
        builder.useReplacementText(Character.toString(Fonts.SUBSTITUTE));
        builder.useUriResolver((base, uri) -> withinPage(uri));
        builder.withDiagnosticConsumer(diagnostic -> {
            if (diagnostic.getLevel().intValue() >= Level.WARNING.intValue()) {
                troubles.add(diagnostic);
            }
        });
        // The general names too: a page that ends its font list with one is right to do so.
        for (String family : List.of(Fonts.FAMILY, "sans-serif", "serif", "monospace")) {
            useFace(builder, fonts, family, false);
            useFace(builder, fonts, family, true);
        }
        return builder;
    }

    private static void useFace(PdfRendererBuilder builder, PdfFonts fonts, String family, boolean bold) {
        PDFontSupplier supplier = new PDFontSupplier(null) {
            @Override
            public PDFont supply() {
                try {
                    return fonts.face(bold);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
        };
        builder.useFont(supplier, family, bold ? 700 : 400, FontStyle.NORMAL, true);
    }

    private static String withinPage(String uri) {
        if (uri.startsWith("#") || uri.startsWith("data:")) {
            return uri;
        }
        throw new ExportException("The page refers to something outside itself: " + uri);
    }

    /** Checks what a tagged document needs and gives each drawing its title as the text for those who cannot see it. */
    private static void prepare(Document page) {
        Element html = page.getDocumentElement();
        require(!html.getAttribute("lang").isBlank(), "a language (lang)");
        NodeList titles = page.getElementsByTagName("title");
        require(titles.getLength() > 0 && !titles.item(0).getTextContent().isBlank(), "a title");
        NodeList metas = page.getElementsByTagName("meta");
        boolean described = false;
        for (int i = 0; i < metas.getLength(); i++) {
            Element meta = (Element) metas.item(i);
            if (meta.getAttribute("name").equals("description")) {
                // HTML's name for it; the PDF's is subject.
                meta.setAttribute("name", "subject");
            }
            described |= meta.getAttribute("name").equals("subject")
                    && !meta.getAttribute("content").isBlank();
        }
        require(described, "a description");
        NodeList drawings = page.getElementsByTagName("svg");
        for (int i = 0; i < drawings.getLength(); i++) {
            Element drawing = (Element) drawings.item(i);
            if (drawing.getAttribute("alt").isBlank()) {
                NodeList names = drawing.getElementsByTagName("title");
                require(names.getLength() > 0, "a title in every drawing");
                drawing.setAttribute("alt", names.item(0).getTextContent().strip());
            }
        }
    }

    private static void require(boolean given, String what) {
        if (!given) {
            throw new ExportException("The page lacks " + what + ", without which its PDF would not be accessible");
        }
    }

    /**
     * Ends the export when the typesetter has reported anything that changes the look: it would go on with an empty
     * box. Only what it says about style rules is let pass, as a page also carries rules that are for browsers alone.
     */
    private static void refuse(List<Diagnostic> troubles) {
        for (Diagnostic trouble : troubles) {
            if (!trouble.getLogMessageId().getEnum().name().startsWith("CSS_PARSE_")) {
                throw new ExportException("The page could not be typeset: " + trouble.getFormattedMessage());
            }
        }
    }
}
