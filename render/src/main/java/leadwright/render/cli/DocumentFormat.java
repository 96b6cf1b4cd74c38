package leadwright.render.cli;

import java.util.Locale;

/** What a plan can be written as. */
enum DocumentFormat {
    /** Each drawing. */
    SVG,
    /** Each drawing as a picture. */
    PNG,
    /** The bench sheet with its drawings, one file for the screen. */
    HTML,
    /** The bench sheet with its drawings, for paper. */
    PDF,
    /** The plan itself, plan/1. */
    JSON,
    /** The readings table. */
    CSV;

    /** As written on the command line. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
