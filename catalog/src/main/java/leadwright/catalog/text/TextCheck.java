package leadwright.catalog.text;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/** From bytes to text: size, encoding and characters, before any syntax. */
final class TextCheck {

    /** Far above any bench; below what would make reading slow. */
    static final int MOST_BYTES = 4 * 1024 * 1024;

    private TextCheck() {}

    /** The text, or empty and a problem. */
    static Optional<String> text(byte[] bytes, Findings findings) {
        return text(bytes, MOST_BYTES, findings);
    }

    /** As above, with another size that is the most. */
    static Optional<String> text(byte[] bytes, int most, Findings findings) {
        if (bytes.length > most) {
            findings.problem(
                    Place.START,
                    "the file has " + bytes.length + " bytes; at most " + most
                            + " are read. A device, a kit or a house takes a few thousand");
            return Optional.empty();
        }
        Optional<String> mark = byteOrderMark(bytes);
        if (mark.isPresent()) {
            findings.problem(
                    Place.START,
                    "the file begins with a byte-order mark (" + mark.get() + "); save it as UTF-8 without one");
            return Optional.empty();
        }
        return decode(bytes, findings).filter(text -> charactersAreReadable(text, findings));
    }

    private static Optional<String> byteOrderMark(byte[] bytes) {
        if (startsWith(bytes, 0xEF, 0xBB, 0xBF)) {
            return Optional.of("UTF-8");
        }
        if (startsWith(bytes, 0xFF, 0xFE)) {
            return Optional.of("UTF-16, little end first");
        }
        if (startsWith(bytes, 0xFE, 0xFF)) {
            return Optional.of("UTF-16, big end first");
        }
        return Optional.empty();
    }

    private static boolean startsWith(byte[] bytes, int... head) {
        if (bytes.length < head.length) {
            return false;
        }
        for (int i = 0; i < head.length; i++) {
            if ((bytes[i] & 0xFF) != head[i]) {
                return false;
            }
        }
        return true;
    }

    private static Optional<String> decode(byte[] bytes, Findings findings) {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length + 1);
        CoderResult result = decoder.decode(in, out, true);
        String text = out.flip().toString();
        if (result.isError()) {
            findings.problem(
                    placeAfter(text),
                    String.format(
                            Locale.ROOT,
                            "byte %02X is not UTF-8; save the file as UTF-8 (a degree, micro or ohm sign is often the cause)",
                            bytes[in.position()] & 0xFF));
            return Optional.empty();
        }
        return Optional.of(text);
    }

    /** The place of the character that would follow the text. */
    private static Place placeAfter(String text) {
        int lineStart = text.lastIndexOf('\n') + 1;
        int line = 1 + (int) text.chars().filter(character -> character == '\n').count();
        return new Place(line, 1 + text.codePointCount(lineStart, text.length()));
    }

    private static boolean charactersAreReadable(String text, Findings findings) {
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int point = text.codePointAt(i);
            if (!readable(point)) {
                findings.problem(
                        placeAfter(text.substring(0, i)),
                        "character " + Spelling.codePoint(point) + " is not text; take it out");
                return false;
            }
        }
        return true;
    }

    /** What XML 1.0 can carry, control characters of the upper range excepted: every document is written from it. */
    static boolean readable(int point) {
        return point == '\t'
                || point == '\n'
                || point == '\r'
                || (point >= 0x20 && point < 0x7F)
                || (point >= 0xA0 && point < 0xD800)
                || (point >= 0xE000 && point <= 0x10FFFF && (point & 0xFFFE) != 0xFFFE);
    }
}
