package leadwright.render.cli;

/** Text for a terminal: words from files may not move its cursor, colour it, or turn the direction of a line. */
final class Terminal {

    private Terminal() {}

    /** The text with every control and direction character replaced; line feeds stay. */
    static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        text.codePoints().map(c -> isPlain(c) ? c : 0xfffd).forEach(plain::appendCodePoint);
        return plain.toString();
    }

    private static boolean isPlain(int c) {
        boolean turning = c >= 0x202a && c <= 0x202e || c >= 0x2066 && c <= 0x2069;
        return c == '\n' || !Character.isISOControl(c) && !turning;
    }
}
