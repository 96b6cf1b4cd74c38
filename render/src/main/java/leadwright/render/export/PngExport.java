package leadwright.render.export;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import org.apache.batik.bridge.FontFamilyResolver;
import org.apache.batik.bridge.UserAgent;
import org.apache.batik.transcoder.ErrorHandler;
import org.apache.batik.transcoder.SVGAbstractTranscoder;
import org.apache.batik.transcoder.TranscoderException;
import org.apache.batik.transcoder.TranscoderInput;
import org.apache.batik.transcoder.TranscoderOutput;
import org.apache.batik.transcoder.image.ImageTranscoder;

/**
 * Turns a drawing into a picture: Batik loads the SVG, which also proves it valid, and paints it on white in the shipped
 * faces. The picture says its resolution, so that it prints in the drawing's own size.
 */
public final class PngExport {

    private static final double MM_PER_INCH = 25.4;

    private PngExport() {}

    /**
     * The picture of a drawing.
     *
     * @param svg a whole SVG file with its size in millimetres
     * @param dpi dots an inch, 36 to 1200
     * @return the bytes of a PNG file
     * @throws ExportException when Batik finds anything wrong with the drawing
     */
    public static byte[] png(String svg, int dpi) {
        if (dpi < 36 || dpi > 1200) {
            throw new IllegalArgumentException("A resolution of " + dpi + " dpi is outside 36 to 1200");
        }
        if (svg.contains("<!DOCTYPE")) {
            throw new ExportException("A drawing needs no document type, and one could refer to something outside");
        }
        Quiet.install();
        Transcoder transcoder = new Transcoder((int) Math.round(1000 * dpi / MM_PER_INCH));
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_PIXEL_UNIT_TO_MILLIMETER, (float) (MM_PER_INCH / dpi));
        transcoder.addTranscodingHint(ImageTranscoder.KEY_BACKGROUND_COLOR, Color.WHITE);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_EXECUTE_ONLOAD, false);
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOWED_SCRIPT_TYPES, "");
        transcoder.addTranscodingHint(SVGAbstractTranscoder.KEY_ALLOW_EXTERNAL_RESOURCES, false);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
        try {
            transcoder.transcode(new TranscoderInput(new StringReader(svg)), new TranscoderOutput(bytes));
        } catch (TranscoderException | RuntimeException e) {
            throw new ExportException("A drawing could not be painted: " + e.getMessage(), e);
        }
        return bytes.toByteArray();
    }

    /** Batik's own would use the machine's fonts and go on after an error; and line art needs no transparency. */
    private static final class Transcoder extends ImageTranscoder {

        private final int dotsPerMetre;

        Transcoder(int dotsPerMetre) {
            this.dotsPerMetre = dotsPerMetre;
            setErrorHandler(new Strict());
        }

        @Override
        public BufferedImage createImage(int width, int height) {
            return new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
        }

        @Override
        public void writeImage(BufferedImage image, TranscoderOutput output) throws TranscoderException {
            try {
                output.getOutputStream().write(PngFile.bytes(image, dotsPerMetre));
            } catch (IOException e) {
                throw new TranscoderException(e);
            }
        }

        @Override
        protected UserAgent createUserAgent() {
            return new SVGAbstractTranscoderUserAgent() {
                @Override
                public FontFamilyResolver getFontFamilyResolver() {
                    return PngFonts.RESOLVER;
                }

                @Override
                public void displayError(Exception e) {
                    throw new ExportException("A drawing is not valid: " + e.getMessage(), e);
                }

                @Override
                public void displayMessage(String message) {
                    // Remarks on progress.
                }
            };
        }
    }

    private static final class Strict implements ErrorHandler {
        @Override
        public void error(TranscoderException e) throws TranscoderException {
            throw e;
        }

        @Override
        public void fatalError(TranscoderException e) throws TranscoderException {
            throw e;
        }

        @Override
        public void warning(TranscoderException e) throws TranscoderException {
            throw e;
        }
    }
}
