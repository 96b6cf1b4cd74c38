package leadwright.render.export;

import java.util.Locale;

/**
 * A page source as heavy as a real one, for tests and timings of the export: a portrait form with twelve readings
 * and two landscape sheets, each with a drawing of some 300 elements. Invented content.
 */
final class ProbePage {

    /** A paper size by its CSS name. */
    enum Paper {
        A4("A4", 595, 842),
        LETTER("letter", 612, 792);

        final String css;
        final int widthPt;
        final int heightPt;

        Paper(String css, int widthPt, int heightPt) {
            this.css = css;
            this.widthPt = widthPt;
            this.heightPt = heightPt;
        }
    }

    private ProbePage() {}

    static String xhtml(Paper paper) {
        return xhtml(paper, drawing(0), drawing(1));
    }

    static String xhtml(Paper paper, String... drawings) {
        StringBuilder page = new StringBuilder(80_000);
        page.append("<!DOCTYPE html>\n<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en-GB\">\n<head>\n")
                .append("<meta charset=\"UTF-8\"/>\n<title>Bench sheet: Brindlewick ward monitor</title>\n")
                .append("<meta name=\"subject\" content=\"Connections, order and readings of one test\"/>\n")
                .append("<style>\n")
                .append("@page { size: ")
                .append(paper.css)
                .append("; margin: 12mm 12mm 14mm 20mm;\n")
                .append(
                        "  @bottom-right { content: 'sheet ' counter(page) ' of ' counter(pages); font: 9pt 'DejaVu Sans'; }\n")
                .append(
                        "  @bottom-left { content: 'defers to the device\\2019s instructions'; font: 9pt 'DejaVu Sans'; } }\n")
                .append("@page wide { size: ")
                .append(paper.css)
                .append(" landscape; margin: 10mm 10mm 10mm 20mm; }\n")
                .append(STYLE)
                .append("</style>\n</head>\n<body>\n")
                .append(form());
        for (int i = 0; i < drawings.length; i++) {
            page.append("<div class=\"sheet\">").append(drawings[i]).append("</div>\n");
        }
        return page.append("</body>\n</html>\n").toString();
    }

    private static final String STYLE = """
            body { margin: 0; font: 10pt 'DejaVu Sans'; }
            h1 { font-size: 14pt; margin: 0 0 2mm 0; }
            table { border-collapse: collapse; width: 100%; -fs-table-paginate: paginate; }
            th, td { border: 0.25mm solid #1a1a1a; padding: 0.6mm 1mm; text-align: left; vertical-align: middle; font-size: 10pt; }
            tr { page-break-inside: avoid; }
            .readings td { height: 6.5mm; }
            .stop { border: 0.7mm solid #1a1a1a; padding: 1.5mm; margin: 2mm 0; font-weight: bold; }
            .box { display: inline-block; width: 3mm; height: 3mm; border: 0.25mm solid #1a1a1a; }
            .grey { color: #6b6b6b; font-size: 8pt; }
            .sheet { page: wide; page-break-before: always; }
            .sheet svg { display: block; width: 249mm; height: 185mm; }
            """;

    private static String form() {
        StringBuilder form = new StringBuilder();
        form.append("<h1>Bench sheet</h1>\n<table>\n");
        String[][] head = {
            {"department", "Marrowgate", "rule set", "IEC 62353:2014, direct method"},
            {"device", "Brindlewick ward monitor", "asset ☐", "serial ☐"},
            {"place", "", "date", ""},
        };
        for (String[] row : head) {
            form.append("<tr>");
            for (String cell : row) {
                form.append("<td>").append(cell).append("</td>");
            }
            form.append("</tr>\n");
        }
        form.append(
                        "</table>\n<p><span class=\"box\"></span> decontaminated <span class=\"box\"></span> nobody connected ")
                .append("<span class=\"box\"></span> look passed <span class=\"box\"></span> data cables parted</p>\n")
                .append(
                        "<div class=\"stop\">Earth fails → stop, quarantine. Supply open is LIVE. Hands off, say it.</div>\n")
                .append("<table class=\"readings\">\n<thead><tr><th>no.</th><th>state</th><th>what touches what</th>")
                .append(
                        "<th>limit</th><th>foreseen</th><th>reading</th><th>ok</th><th>no</th></tr></thead>\n<tbody>\n");
        String[] states = {"no fault", "supply open: STILL LIVE", "earth open", "reversed, earth open"};
        for (int i = 0; i < 12; i++) {
            form.append("<tr><td>")
                    .append(i + 1)
                    .append("</td><td>")
                    .append(states[i % 4])
                    .append("</td><td>")
                    .append("jacks 1–")
                    .append(1 + i % 5)
                    .append(" → earth, bundle ")
                    .append((char) ('A' + i % 5))
                    .append("</td><td>≤ ")
                    .append(i == 0 ? "0.3 Ω" : i % 3 == 0 ? "50 µA" : "500 µA")
                    .append("</td><td class=\"grey\">")
                    .append(4 + 3 * i)
                    .append(" µA</td><td></td><td>☐</td><td>☐</td></tr>\n");
        }
        form.append(
                        "</tbody>\n</table>\n<ol>\n<li>re-seat and repeat once</li>\n<li>swap the lead</li>\n<li>remove part by part</li>\n")
                .append(
                        "<li>stop</li>\n</ol>\n<table><tr><td>result</td><td>pass ☐</td><td>pass with note ☐</td><td>fail ☐</td></tr>")
                .append("<tr><td>tested by</td><td></td><td>reviewed by</td><td></td></tr></table>\n");
        return form.toString();
    }

    /** A drawing of about 300 elements in millimetres on 249 by 185: boxes, wires with dashes, plates and labels. */
    static String drawing(int number) {
        StringBuilder svg = new StringBuilder(40_000);
        svg.append(
                        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 249 185\" role=\"img\" class=\"drawing\">\n<title>Connection diagram ")
                .append(number + 1)
                .append("</title>\n<style>\n")
                .append(DRAWING_STYLE)
                .append("</style>\n");
        text(svg, "title", 2, 8, "H" + (number + 1) + " of 2: Brindlewick ward monitor, patient connections");
        rect(svg, "box", 2, 14, 60, 152);
        rect(svg, "box", 187, 14, 60, 152);
        String[] kinds = {"patient", "trunk", "earth", "probe", "mains", "stays", "off"};
        for (int i = 0; i < 30; i++) {
            double y = 18 + 5.0 * i;
            String kind = kinds[i % kinds.length];
            svg.append("<g class=\"row\"><title>pin ")
                    .append(i + 1)
                    .append(" to jack ")
                    .append(1 + i / 6)
                    .append("</title>\n");
            text(svg, "pin", 5, y + 1.4, "R L F N C1 C2 SpO₂".split(" ")[i % 7] + " pin " + (i + 1));
            rect(svg, "swatch", 52, y - 1.5, 3, 3);
            svg.append(format("<circle class=\"dot\" cx=\"%.2f\" cy=\"%.2f\" r=\"0.75\"/>\n", 62.0, y));
            svg.append(format("<path class=\"wire %s\" d=\"M62 %.2f H%.2f V%.2f H187\"/>\n", kind, y, 90 + 2.0 * i, y));
            svg.append(format("<line class=\"hair\" x1=\"2\" y1=\"%.2f\" x2=\"62\" y2=\"%.2f\"/>\n", y + 2.5, y + 2.5));
            rect(svg, "plate", 66, y - 1.9, 6, 3.8);
            svg.append(format("<text class=\"move\" x=\"69\" y=\"%.2f\">%d</text>\n", y + 1.4, i + 1));
            text(svg, "jack", 190, y + 1.4, "jack " + (1 + i / 6) + ": 4.7 kΩ ± 5 %");
            svg.append("</g>\n");
        }
        rect(svg, "frame", 0, 0, 249, 185);
        text(svg, "foot", 2, 176, "Not to scale; order as on the panel. Take off 3, 4, 7. Put on 1–4. 23 stay.");
        text(
                svg,
                "foot",
                2,
                181,
                "Ambersluice Infirmary, connection diagram, sheet " + (number + 1) + " of 2, µ Ω ≤ ≥ → ✓ ✗ ⚠");
        return svg.append("</svg>").toString();
    }

    /** The same drawing as a file of its own. */
    static String drawingFile(int number) {
        return drawing(number).replaceFirst("<svg ", "<svg width=\"249mm\" height=\"185mm\" ");
    }

    private static final String DRAWING_STYLE = """
            text { font-family: 'DejaVu Sans'; font-size: 3.53px; fill: #1a1a1a; }
            .title { font-size: 4.94px; font-weight: bold; }
            .pin, .jack { font-size: 3.53px; }
            .jack, .move { font-weight: bold; }
            .move { text-anchor: middle; }
            .foot { font-size: 3.18px; }
            .box { fill: none; stroke: #1a1a1a; stroke-width: 0.35; }
            .frame { fill: none; stroke: #1a1a1a; stroke-width: 0.5; }
            .swatch { fill: #f0c000; stroke: #1a1a1a; stroke-width: 0.25; }
            .plate { fill: #ffffff; }
            .dot { fill: #1a1a1a; }
            .hair { stroke: #1a1a1a; stroke-width: 0.25; }
            .wire { fill: none; stroke: #1a1a1a; stroke-width: 0.35; }
            .trunk { stroke-width: 0.7; }
            .earth { stroke: #00614a; stroke-width: 0.7; stroke-dasharray: 5 1.2 0.8 1.2; }
            .probe { stroke: #0b4f9e; stroke-width: 0.7; stroke-dasharray: 2.4 1.2; }
            .mains { stroke: #8a3b00; stroke-width: 1; }
            .stays { stroke: #6b6b6b; stroke-width: 0.175; }
            .off { stroke: #6b6b6b; stroke-dasharray: 0.8 0.8; }
            """;

    private static void text(StringBuilder svg, String kind, double x, double y, String text) {
        svg.append(format("<text class=\"%s\" x=\"%.2f\" y=\"%.2f\">%s</text>\n", kind, x, y, text));
    }

    private static void rect(StringBuilder svg, String kind, double x, double y, double w, double h) {
        svg.append(format(
                "<rect class=\"%s\" x=\"%.2f\" y=\"%.2f\" width=\"%.2f\" height=\"%.2f\"/>\n", kind, x, y, w, h));
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
