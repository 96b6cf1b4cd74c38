package leadwright.render.diagram;

import java.util.List;
import leadwright.catalog.device.PartType;

/**
 * Marks of IEC 60417 and ISO 7000, drawn here from their description in words; no artwork is copied.
 *
 * <p>Each is drawn on a grid 24 high, in black lines on nothing.
 */
public final class Marks {

    private Marks() {}

    /** A mark with its number, what it means, and its strokes. */
    public enum Mark {
        PROTECTIVE_EARTH("IEC 60417-5019", "protective earth", 24, List.of(circle(12, 12, 10.8)), earth()),
        CLASS_II("IEC 60417-5172", "class II", 24, List.of(square(2, 20), square(7, 10)), ""),
        EQUIPOTENTIAL("IEC 60417-5021", "equipotentiality", 24, List.of("M12 2V8", "M3 8H21L12 22Z"), ""),
        TYPE_B("IEC 60417-5840", "type B applied part", 24, List.of(limbs(1.25)), head(1.25)),
        TYPE_BF("IEC 60417-5333", "type BF applied part", 24, List.of(square(1.5, 21), limbs(1)), head(1)),
        TYPE_CF("IEC 60417-5335", "type CF applied part", 24, List.of(square(1.5, 21)), heart()),
        TYPE_B_DEFIBRILLATION_PROOF(
                "IEC 60417-5841",
                "defibrillation-proof type B applied part",
                36,
                List.of(limbs(1.25), paddles()),
                head(1.25)),
        TYPE_BF_DEFIBRILLATION_PROOF(
                "IEC 60417-5334",
                "defibrillation-proof type BF applied part",
                36,
                List.of(square(1.5, 21), limbs(1), paddles()),
                head(1)),
        TYPE_CF_DEFIBRILLATION_PROOF(
                "IEC 60417-5336",
                "defibrillation-proof type CF applied part",
                36,
                List.of(square(1.5, 21), paddles()),
                heart()),
        CAUTION("ISO 7000-0434", "caution", 24, List.of("M12 2.5L22.5 21.5H1.5Z", "M12 9V15"), circle(12, 18.2, 0.9));

        private final String number;
        private final String meaning;
        private final double width;
        private final List<String> strokes;
        private final String solid;

        Mark(String number, String meaning, double width, List<String> strokes, String solid) {
            this.number = number;
            this.meaning = meaning;
            this.width = width;
            this.strokes = List.copyOf(strokes);
            this.solid = solid;
        }

        /** Number of the symbol in its standard. */
        public String number() {
            return number;
        }

        public String meaning() {
            return meaning;
        }

        /** Width over height: 1, or 1.5 with paddles. */
        public double ratio() {
            return width / 24;
        }
    }

    /** The mark of an applied part. */
    public static Mark of(PartType type, boolean defibrillationProof) {
        return switch (type) {
            case B -> defibrillationProof ? Mark.TYPE_B_DEFIBRILLATION_PROOF : Mark.TYPE_B;
            case BF -> defibrillationProof ? Mark.TYPE_BF_DEFIBRILLATION_PROOF : Mark.TYPE_BF;
            case CF -> defibrillationProof ? Mark.TYPE_CF_DEFIBRILLATION_PROOF : Mark.TYPE_CF;
        };
    }

    /**
     * A mark as an SVG element of its own, to be set into a page.
     *
     * @param height in millimetres
     */
    public static String svg(Mark mark, double height) {
        StringBuilder out = new StringBuilder();
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\" class=\"mark\" width=\"")
                .append(Svg.number(height * mark.ratio()))
                .append("mm\" height=\"")
                .append(Svg.number(height))
                .append("mm\" viewBox=\"")
                .append(Svg.number(12 - mark.width / 2))
                .append(" 0 ")
                .append(Svg.number(mark.width))
                .append(" 24\"><title>")
                .append(title(mark))
                .append("</title>");
        for (String stroke : mark.strokes) {
            out.append("<path d=\"")
                    .append(stroke)
                    .append("\" fill=\"none\" stroke=\"")
                    .append(Ink.BLACK)
                    .append("\" stroke-width=\"1.5\" stroke-linecap=\"round\" stroke-linejoin=\"round\"/>");
        }
        if (!mark.solid.isEmpty()) {
            out.append("<path d=\"").append(mark.solid).append("\" fill=\"").append(Ink.BLACK);
            out.append(mark == Mark.PROTECTIVE_EARTH ? "\" stroke=\"none\"/>" : "\"/>");
        }
        return out.append("</svg>").toString();
    }

    /** Draws a mark with its left end at x and its middle at y. */
    static void draw(Svg svg, Mark mark, double x, double y, double height) {
        double scale = height / 24;
        double left = x - (12 - mark.width / 2) * scale;
        svg.open(
                "g",
                "class",
                "mark",
                "transform",
                "translate(" + Svg.number(left) + " " + Svg.number(y - height / 2) + ") scale("
                        + Math.round(scale * 1e4) / 1e4 + ")");
        svg.line("title", title(mark));
        for (String stroke : mark.strokes) {
            svg.leaf(
                    "path",
                    "d",
                    stroke,
                    "fill",
                    "none",
                    "stroke",
                    Ink.BLACK,
                    "stroke-width",
                    1.5,
                    "stroke-linecap",
                    "round",
                    "stroke-linejoin",
                    "round");
        }
        if (!mark.solid.isEmpty()) {
            svg.leaf("path", "d", mark.solid);
        }
        svg.close();
    }

    private static String title(Mark mark) {
        return mark.meaning + " (" + mark.number + ")";
    }

    private static String square(double from, double side) {
        return "M" + from + " " + from + "h" + side + "v" + side + "h-" + side + "z";
    }

    private static String circle(double x, double y, double r) {
        return "M" + (x - r) + " " + y + "a" + r + " " + r + " 0 1 0 " + 2 * r + " 0a" + r + " " + r + " 0 1 0 -"
                + 2 * r + " 0z";
    }

    /** The earth sign inside its circle; its strokes do not touch the circle. Bars as solid shapes. */
    private static String earth() {
        return "M11.2 4.4h1.6v7.2h-1.6zM6 11.6h12v1.6h-12zM8 14.9h8v1.6h-8zM10 18.2h4v1.6h-4z";
    }

    /** Body, arms a little away from it, legs apart: a standing person seen from the front, round the middle (12, 12). */
    private static String limbs(double k) {
        return "M" + at(k, 0, -2.8) + "L" + at(k, 0, 2.4) + "M" + at(k, -4.4, 1.6) + "L" + at(k, 0, -2.6) + "L"
                + at(k, 4.4, 1.6) + "M" + at(k, -3.2, 8.2) + "L" + at(k, 0, 2.4) + "L" + at(k, 3.2, 8.2);
    }

    private static String head(double k) {
        double r = Math.round(190 * k) / 100.0;
        return circle(12, Math.round((12 - 5.9 * k) * 100) / 100.0, r);
    }

    private static String at(double k, double x, double y) {
        return Svg.number(12 + k * x) + " " + Svg.number(12 + k * y);
    }

    private static String heart() {
        return "M12 19.2C5.2 14.4 4.6 11.2 4.8 9.2C5.1 5.4 10.3 4.4 12 8.2C13.7 4.4 18.9 5.4 19.2 9.2C19.4 11.2 18.8 14.4"
                + " 12 19.2Z";
    }

    /** A plate on either side with a short stub outwards. */
    private static String paddles() {
        return "M-5 12H-2M-2 6V18M29 12H26M26 6V18";
    }
}
