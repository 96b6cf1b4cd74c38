package leadwright.render.export;

import com.openhtmltopdf.css.sheet.FontFaceRule;
import com.openhtmltopdf.css.style.CssContext;
import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.extend.SVGDrawer;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfBoxOutputDevice;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.render.RenderingContext;
import java.awt.Rectangle;
import java.awt.geom.AffineTransform;
import java.io.File;
import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Puts the drawings of a page into the PDF, each as a form of its own that the page shows in its place. The page's
 * layout asks it for their sizes first.
 */
final class PdfFigures implements SVGDrawer {

    private final PDDocument document;
    private final PdfFonts fonts;

    PdfFigures(PDDocument document, PdfFonts fonts) {
        this.document = document;
        this.fonts = fonts;
    }

    @Override
    public SVGImage buildSVGImage(
            Element svg, Box box, CssContext css, double cssWidth, double cssHeight, double dotsPerPixel) {
        return new Figure(svg, cssWidth, cssHeight, dotsPerPixel);
    }

    /** Where a drawing stands in its own units. */
    private record ViewBox(double x, double y, double width, double height) {
        static ViewBox of(Element svg) {
            String[] numbers = svg.getAttribute("viewBox").trim().split("[\\s,]+");
            if (numbers.length != 4) {
                throw new ExportException("A drawing on the page has no viewBox");
            }
            ViewBox box = new ViewBox(
                    SvgStyle.length(numbers[0]),
                    SvgStyle.length(numbers[1]),
                    SvgStyle.length(numbers[2]),
                    SvgStyle.length(numbers[3]));
            if (box.width <= 0 || box.height <= 0) {
                throw new ExportException("A drawing on the page has an empty viewBox");
            }
            return box;
        }
    }

    private final class Figure implements SVGImage {
        private final Element svg;
        private final ViewBox viewBox;
        private final double width;
        private final double height;

        /** Sizes in dots; a negative one is open and follows from the other, or from the drawing itself. */
        Figure(Element svg, double cssWidth, double cssHeight, double dotsPerPixel) {
            this.svg = svg;
            this.viewBox = ViewBox.of(svg);
            double ratio = viewBox.width / viewBox.height;
            if (cssWidth >= 0 || cssHeight >= 0) {
                width = cssWidth >= 0 ? cssWidth : cssHeight * ratio;
                height = cssHeight >= 0 ? cssHeight : cssWidth / ratio;
            } else {
                width = dotsPerPixel * own("width", viewBox.width);
                height = dotsPerPixel * own("height", viewBox.height);
            }
        }

        private double own(String attribute, double otherwise) {
            return svg.hasAttribute(attribute) ? SvgShapes.number(svg, attribute) : otherwise;
        }

        @Override
        public int getIntrinsicWidth() {
            return (int) Math.round(width);
        }

        @Override
        public int getIntrinsicHeight() {
            return (int) Math.round(height);
        }

        @Override
        public void drawSVG(OutputDevice device, RenderingContext context, double x, double y) {
            PdfBoxOutputDevice pdf = (PdfBoxOutputDevice) device;
            float w = getIntrinsicWidth() / pdf.getDotsPerPoint();
            float h = getIntrinsicHeight() / pdf.getDotsPerPoint();
            try {
                PDAppearanceStream form = paint(context.getCss().getCSSForAllDescendants(svg), w, h);
                Rectangle place = new Rectangle(
                        (int) Math.round(x), (int) Math.round(y), getIntrinsicWidth(), getIntrinsicHeight());
                pdf.drawPdfAsImage(form, place, getIntrinsicWidth(), getIntrinsicHeight());
            } catch (IOException e) {
                throw new ExportException("A drawing could not be put into the PDF", e);
            }
        }

        private PDAppearanceStream paint(String pageStyle, float w, float h) throws IOException {
            PDAppearanceStream form = new PDAppearanceStream(document);
            form.setResources(new PDResources());
            form.setBBox(new PDRectangle(w, h));
            // Fitted whole and centred, as SVG does unless told otherwise; PDF counts upwards from the bottom.
            double scale = Math.min(w / viewBox.width, h / viewBox.height);
            AffineTransform toForm = AffineTransform.getTranslateInstance(
                    (w - scale * viewBox.width) / 2, h - (h - scale * viewBox.height) / 2);
            toForm.scale(scale, -scale);
            toForm.translate(-viewBox.x, -viewBox.y);
            StringBuilder ownStyle = new StringBuilder();
            collectStyle(svg, ownStyle);
            SvgRules rules = new SvgRules(pageStyle, ownStyle.toString());
            try (PDPageContentStream out = new PDPageContentStream(document, form)) {
                new SvgPainter(out, rules, fonts).paint(svg, toForm);
            }
            return form;
        }
    }

    private static void collectStyle(Element element, StringBuilder style) {
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element) {
                Element child = (Element) node;
                if (SvgRules.localName(child).equals("style")) {
                    style.append(child.getTextContent()).append('\n');
                } else {
                    collectStyle(child, style);
                }
            }
        }
    }

    @Override
    public void importFontFaceRules(List<FontFaceRule> faces, SharedContext shared) {
        // Drawings are set in the shipped faces, whatever the page declares.
    }

    @Override
    public void addFontFile(File file, String family, Integer weight, FontStyle style) {
        throw new ExportException("Drawings are set in the shipped faces only");
    }

    @Override
    public void close() {
        // The document and the fonts belong to the export.
    }
}
