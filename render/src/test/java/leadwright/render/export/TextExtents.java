package leadwright.render.export;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.batik.anim.dom.SAXSVGDocumentFactory;
import org.apache.batik.bridge.BridgeContext;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.bridge.GVTBuilder;
import org.apache.batik.bridge.UserAgentAdapter;
import org.apache.batik.gvt.GraphicsNode;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;

/** Where the ink of a drawing's texts is, as Batik sets them in the shipped faces. */
public final class TextExtents {

    private TextExtents() {}

    /** The ink of every text, in the units of the drawing's view box, in document order; an empty text has an empty one. */
    public static List<Rectangle2D> of(String svg) {
        Quiet.install();
        UserAgentAdapter agent = new UserAgentAdapter() {
            @Override
            public FontFamilyResolver getFontFamilyResolver() {
                return PngFonts.RESOLVER;
            }
        };
        Document document;
        try {
            document = new SAXSVGDocumentFactory(null).createDocument("drawing:/", new StringReader(svg));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        BridgeContext context = new BridgeContext(agent);
        // Only then does it keep which node was made of which element.
        context.setDynamicState(BridgeContext.INTERACTIVE);
        try {
            GraphicsNode root = new GVTBuilder().build(context, document);
            List<Rectangle2D> all = new ArrayList<>();
            NodeList texts = document.getElementsByTagNameNS("http://www.w3.org/2000/svg", "text");
            for (int i = 0; i < texts.getLength(); i++) {
                GraphicsNode node = context.getGraphicsNode(texts.item(i));
                Rectangle2D ink = node == null ? null : node.getGeometryBounds();
                all.add(ink == null ? new Rectangle2D.Double() : ink);
            }
            if (root.getBounds() == null) {
                throw new IllegalStateException("an empty drawing");
            }
            return all;
        } finally {
            context.dispose();
        }
    }
}
