package leadwright.render.export;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/**
 * The two faces every document is set in: DejaVu Sans and DejaVu Sans Bold, read from the program itself and
 * never from the machine, so that text has the same width everywhere and every PDF can embed it.
 */
public final class Fonts {

    /** The family name, as CSS and SVG write it. */
    public static final String FAMILY = "DejaVu Sans";

    private static final String FOLDER = "/net/sf/jasperreports/fonts/dejavu/";

    private Fonts() {}

    /** The TrueType file of the upright face, about 0.7 MB; the array is the caller's own. */
    public static byte[] file(boolean bold) {
        String name = FOLDER + (bold ? "DejaVuSans-Bold.ttf" : "DejaVuSans.ttf");
        try (InputStream in = Fonts.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("The program is incomplete: it lacks " + name);
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
