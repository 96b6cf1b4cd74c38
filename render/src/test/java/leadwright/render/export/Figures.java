package leadwright.render.export;

import java.util.Locale;

/** Small drawings and pages for the tests of the export. */
final class Figures {

    private Figures() {}

    /** A drawing file of a size in millimetres around some elements; its units are millimetres. */
    static String file(double width, double height, String inside) {
        return String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\""
                        + " width=\"%1$smm\" height=\"%2$smm\" viewBox=\"0 0 %1$s %2$s\">\n<title>figure</title>\n%3$s\n</svg>",
                width,
                height,
                inside);
    }

    /** A page that is all drawing: one sheet of the drawing's size, no margins. */
    static String page(double width, double height, String inside) {
        String style = String.format(
                Locale.ROOT,
                "@page { size: %smm %smm; margin: 0 } body { margin: 0; font: 10pt 'DejaVu Sans' }",
                width,
                height);
        return page(style, file(width, height, inside).replace("<svg ", "<svg style=\"display:block\" "));
    }

    static String page(String style, String body) {
        return "<html xmlns=\"http://www.w3.org/1999/xhtml\" lang=\"en-GB\"><head><title>a page</title>"
                + "<meta name=\"description\" content=\"a page for a test\"/><style>" + style + "</style></head><body>"
                + body
                + "</body></html>";
    }
}
