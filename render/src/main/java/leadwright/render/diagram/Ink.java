package leadwright.render.diagram;

/**
 * The few colours and line widths of every drawing, in millimetres. Dash and width carry the meaning; colour is a second
 * help only, so a black-and-white copy loses nothing.
 */
final class Ink {
    static final String BLACK = "#1a1a1a";
    static final String WHITE = "#ffffff";
    /** Lines that stay from the hookup before; 5.3 : 1 on white, too pale for text. */
    static final String GREY = "#6b6b6b";
    /** Text of second rank; 9.7 : 1 on white. */
    static final String QUIET = "#444444";

    static final double HAIRLINE = 0.25;
    static final double BOX = 0.35;
    static final double FRAME = 0.5;

    private Ink() {}

    /** Kinds of wire, each with a dash or width of its own. */
    enum Look {
        PATIENT("patient", BLACK, 0.35, ""),
        TRUNK("trunk", BLACK, 0.7, ""),
        EARTH("earth", "#00614a", 0.7, "5 1.2 0.8 1.2"),
        PROBE("probe", "#0b4f9e", 0.7, "2.4 1.2"),
        MAINS("mains", "#8a3b00", 1.0, "");

        final String word;
        final String colour;
        final double width;
        /** Dash pattern; empty for a solid line. */
        final String dash;

        Look(String word, String colour, double width, String dash) {
            this.word = word;
            this.colour = colour;
            this.width = width;
            this.dash = dash;
        }
    }

    /** A solid fill for a colour word of the electrode tables; white for a word that is not among them. */
    static String fill(String colour) {
        return switch (colour) {
            case "black" -> BLACK;
            case "blue" -> "#2f6fd0";
            case "brown" -> "#8a4a1c";
            case "green" -> "#2e9a46";
            case "grey" -> "#8c8c8c";
            case "orange" -> "#f08a24";
            case "red" -> "#d22f2f";
            case "violet" -> "#7a3fb0";
            case "yellow" -> "#f6d32d";
            default -> WHITE;
        };
    }
}
