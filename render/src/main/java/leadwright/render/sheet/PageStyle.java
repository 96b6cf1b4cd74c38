package leadwright.render.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import leadwright.catalog.house.Paper;

/** The look of the pages: the style resource with paper size and the words of the margins set in. */
final class PageStyle {

    private PageStyle() {}

    /**
     * @param head what pages after the first repeat at their top
     * @param foot the line of cautions
     * @param mark what every page says at its top; empty for none
     */
    static String of(Paper paper, String head, String foot, String mark) {
        return of("bench.css", paper, head, foot, mark);
    }

    /** As above, with another style resource. */
    static String of(String resource, Paper paper, String head, String foot, String mark) {
        return resource(resource)
                .replace("PAPER", paper == Paper.A4 ? "A4" : "Letter")
                .replace("\"HEAD\"", string(head))
                .replace("\"FOOT\"", string(foot))
                .replace("\"MARK\"", string(mark));
    }

    /** A CSS string that holds any text: all but plain letters, digits and spaces is written as its number, ended by a space. */
    static String string(String text) {
        StringBuilder css = new StringBuilder("\"");
        Xhtml.legal(text).codePoints().forEach(c -> {
            if (c == ' ' || c >= '0' && c <= '9' || c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z') {
                css.appendCodePoint(c);
            } else if (c >= 0x20) {
                css.append('\\').append(String.format("%x ", c));
            }
        });
        return css.append('"').toString();
    }

    static String resource(String name) {
        try (InputStream in = PageStyle.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("The program is incomplete: it lacks " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
