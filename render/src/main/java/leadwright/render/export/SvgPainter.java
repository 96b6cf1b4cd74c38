package leadwright.render.export;

import java.awt.BasicStroke;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.apache.batik.parser.AWTTransformProducer;
import org.apache.batik.parser.ParseException;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.util.Matrix;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Paints one drawing into a PDF content stream: shapes as paths, text as text in the shipped faces, so that it can be
 * searched and read aloud. It knows the part of SVG 1.1 that this program writes and refuses the rest by name.
 */
final class SvgPainter {

    /** Nothing to paint, or painted only where something refers to it. */
    private static final Set<String> SILENT = Set.of("title", "desc", "metadata", "style", "defs", "symbol");

    private static final Set<String> SHAPES =
            Set.of("rect", "line", "polyline", "polygon", "circle", "ellipse", "path");

    private final PDPageContentStream out;
    private final SvgRules rules;
    private final PdfFonts fonts;
    private final Map<String, Element> byId = new HashMap<>();
    private final Map<Float, PDExtendedGraphicsState> fillAlphas = new LinkedHashMap<>();
    private final Map<Float, PDExtendedGraphicsState> strokeAlphas = new LinkedHashMap<>();
    private int useDepth;

    // What the content stream is set to, so that it is told only of changes. At first nothing is known: a form begins
    // with whatever the page around it has set.
    private int fillNow = -1;
    private int strokeNow = -1;
    private float fillAlphaNow = -1;
    private float strokeAlphaNow = -1;
    private Optional<BasicStroke> penNow = Optional.empty();

    SvgPainter(PDPageContentStream out, SvgRules rules, PdfFonts fonts) {
        this.out = out;
        this.rules = rules;
        this.fonts = fonts;
    }

    /**
     * Paints all that is inside a drawing.
     *
     * @param svg the outermost element
     * @param toPage from the drawing's units to the content stream's
     */
    void paint(Element svg, AffineTransform toPage) throws IOException {
        index(svg);
        SvgStyle style = SvgStyle.initial().inside(svg, rules);
        paintChildren(svg, style, toPage);
    }

    private void index(Element element) {
        if (element.hasAttribute("id")) {
            byId.putIfAbsent(element.getAttribute("id"), element);
        }
        for (Node node = element.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element) {
                index((Element) node);
            }
        }
    }

    private void paintChildren(Element parent, SvgStyle style, AffineTransform at) throws IOException {
        for (Node node = parent.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element) {
                paintElement((Element) node, style, at);
            }
        }
    }

    private void paintElement(Element element, SvgStyle around, AffineTransform outer) throws IOException {
        String name = SvgRules.localName(element);
        if (SILENT.contains(name)) {
            return;
        }
        SvgStyle style = around.inside(element, rules);
        if (!style.shown()) {
            return;
        }
        AffineTransform at = transformed(element, outer);
        if (SHAPES.contains(name)) {
            paintShape(SvgShapes.shape(element, name), style, at);
        } else if (name.equals("text")) {
            new SvgText(element, style, rules).runs().forEach(run -> paintText(run, at));
        } else if (name.equals("g") || name.equals("a")) {
            paintChildren(element, style, at);
        } else if (name.equals("use")) {
            paintUse(element, style, at);
        } else {
            throw new ExportException("The drawing has an element that the PDF cannot show: " + name);
        }
    }

    private static AffineTransform transformed(Element element, AffineTransform outer) {
        String own = element.getAttribute("transform");
        if (own.isEmpty()) {
            return outer;
        }
        try {
            AffineTransform at = new AffineTransform(outer);
            at.concatenate(AWTTransformProducer.createAffineTransform(own));
            return at;
        } catch (ParseException e) {
            throw new ExportException("The drawing has a transform of an unknown kind: " + own, e);
        }
    }

    private void paintUse(Element use, SvgStyle style, AffineTransform at) throws IOException {
        String link = use.getAttributeNS("http://www.w3.org/1999/xlink", "href");
        if (link.isEmpty()) {
            link = use.getAttribute("xlink:href");
        }
        Element target = link.startsWith("#") ? byId.get(link.substring(1)) : null;
        if (target == null || SvgRules.localName(target).equals("symbol") || useDepth > 8) {
            throw new ExportException("The drawing refers to a part that it does not have: " + link);
        }
        AffineTransform moved = new AffineTransform(at);
        moved.translate(SvgShapes.number(use, "x"), SvgShapes.number(use, "y"));
        useDepth++;
        paintElement(target, style, moved);
        useDepth--;
    }

    private void paintShape(Shape shape, SvgStyle style, AffineTransform at) throws IOException {
        if (!style.visible()) {
            return;
        }
        OptionalInt fill = style.fill();
        // A path without area has no inside; PDF would show it as a hairline all the same.
        if (fill.isPresent() && !shape.getBounds2D().isEmpty()) {
            setFill(fill.getAsInt(), style.fillOpacity());
            PathIterator path = shape.getPathIterator(at);
            if (trace(path)) {
                if (style.evenOdd()) {
                    out.fillEvenOdd();
                } else {
                    out.fill();
                }
            }
        }
        OptionalInt stroke = style.stroke();
        if (stroke.isPresent()) {
            setStroke(stroke.getAsInt(), style.strokeOpacity());
            setPen(style.pen(scale(at)));
            if (trace(shape.getPathIterator(at))) {
                out.stroke();
            }
        }
    }

    /** How much a transform enlarges; one that enlarges unevenly would need a pen that PDF has not. */
    private static double scale(AffineTransform at) {
        double across = Math.hypot(at.getScaleX(), at.getShearY());
        double down = Math.hypot(at.getShearX(), at.getScaleY());
        if (Math.abs(across - down) > 1e-6 * across) {
            throw new ExportException("The drawing stretches a line or a text unevenly, which the PDF cannot show");
        }
        return across;
    }

    private void paintText(SvgText.Run run, AffineTransform at) {
        SvgStyle style = run.style();
        OptionalInt fill = style.fill();
        if (fill.isEmpty() || !style.visible() || run.text().isBlank()) {
            return;
        }
        if (style.stroke().isPresent()) {
            throw new ExportException("The drawing strokes a text, which the PDF cannot show: " + run.text());
        }
        double scale = scale(at);
        AffineTransform place = new AffineTransform(at);
        place.translate(run.x(), run.y());
        place.scale(1 / scale, -1 / scale);
        try {
            setFill(fill.getAsInt(), style.fillOpacity());
            out.beginText();
            out.setFont(fonts.face(style.bold()), (float) (style.fontSize() * scale));
            out.setTextMatrix(new Matrix(place));
            out.showText(Fonts.printable(run.text()));
            out.endText();
        } catch (IOException e) {
            throw new ExportException("The text could not be set: " + run.text(), e);
        }
    }

    /** Writes a path; false when there is nothing to it. */
    private boolean trace(PathIterator path) throws IOException {
        float[] c = new float[6];
        float x = 0;
        float y = 0;
        boolean any = false;
        for (; !path.isDone(); path.next()) {
            switch (path.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> {
                    out.moveTo(c[0], c[1]);
                    x = c[0];
                    y = c[1];
                }
                case PathIterator.SEG_LINETO -> {
                    out.lineTo(c[0], c[1]);
                    x = c[0];
                    y = c[1];
                    any = true;
                }
                case PathIterator.SEG_QUADTO -> {
                    // The same curve with two control points, each two thirds of the way to the one given.
                    out.curveTo(
                            x + (c[0] - x) * 2 / 3,
                            y + (c[1] - y) * 2 / 3,
                            c[2] + (c[0] - c[2]) * 2 / 3,
                            c[3] + (c[1] - c[3]) * 2 / 3,
                            c[2],
                            c[3]);
                    x = c[2];
                    y = c[3];
                    any = true;
                }
                case PathIterator.SEG_CUBICTO -> {
                    out.curveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
                    x = c[4];
                    y = c[5];
                    any = true;
                }
                default -> out.closePath();
            }
        }
        return any;
    }

    private void setFill(int rgb, float alpha) throws IOException {
        if (rgb != fillNow) {
            out.setNonStrokingColor((rgb >> 16) / 255f, (rgb >> 8 & 255) / 255f, (rgb & 255) / 255f);
            fillNow = rgb;
        }
        if (alpha != fillAlphaNow) {
            PDExtendedGraphicsState state = fillAlphas.computeIfAbsent(alpha, a -> {
                PDExtendedGraphicsState made = new PDExtendedGraphicsState();
                made.setNonStrokingAlphaConstant(a);
                return made;
            });
            out.setGraphicsStateParameters(state);
            fillAlphaNow = alpha;
        }
    }

    private void setStroke(int rgb, float alpha) throws IOException {
        if (rgb != strokeNow) {
            out.setStrokingColor((rgb >> 16) / 255f, (rgb >> 8 & 255) / 255f, (rgb & 255) / 255f);
            strokeNow = rgb;
        }
        if (alpha != strokeAlphaNow) {
            PDExtendedGraphicsState state = strokeAlphas.computeIfAbsent(alpha, a -> {
                PDExtendedGraphicsState made = new PDExtendedGraphicsState();
                made.setStrokingAlphaConstant(a);
                return made;
            });
            out.setGraphicsStateParameters(state);
            strokeAlphaNow = alpha;
        }
    }

    private void setPen(BasicStroke pen) throws IOException {
        boolean first = penNow.isEmpty();
        BasicStroke now = penNow.orElse(pen);
        if (first || pen.getLineWidth() != now.getLineWidth()) {
            out.setLineWidth(pen.getLineWidth());
        }
        if (first || pen.getEndCap() != now.getEndCap()) {
            // The numbers of Java and PDF agree: butt 0, round 1, square 2.
            out.setLineCapStyle(pen.getEndCap());
        }
        if (first || pen.getLineJoin() != now.getLineJoin()) {
            // Likewise: mitre 0, round 1, bevel 2.
            out.setLineJoinStyle(pen.getLineJoin());
        }
        if (first || pen.getMiterLimit() != now.getMiterLimit()) {
            out.setMiterLimit(pen.getMiterLimit());
        }
        if (first || !Arrays.equals(dashes(pen), dashes(now)) || pen.getDashPhase() != now.getDashPhase()) {
            out.setLineDashPattern(dashes(pen), pen.getDashPhase());
        }
        penNow = Optional.of(pen);
    }

    private static float[] dashes(BasicStroke pen) {
        return pen.getDashArray() == null ? new float[0] : pen.getDashArray();
    }
}
