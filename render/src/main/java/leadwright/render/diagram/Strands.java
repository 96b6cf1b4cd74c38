package leadwright.render.diagram;

/**
 * Lines in their order, those that lie together, go to one end and may all still leap, or may all not, as one strand. Packed, a
 * character for each, since a search holds very many.
 */
final class Strands {
    /** Most ends and most lines of a strand that can be told. */
    static final int ENDS = 256;

    static final int LINES = 127;

    private Strands() {}

    /** @param leapt whether the lines have changed their height */
    static char strand(int end, int lines, boolean leapt) {
        return (char) (end << 8 | lines << 1 | (leapt ? 1 : 0));
    }

    static int end(char strand) {
        return strand >> 8;
    }

    static int lines(char strand) {
        return strand >> 1 & LINES;
    }

    static boolean leapt(char strand) {
        return (strand & 1) == 1;
    }

    /** Neighbours that are alike made one. */
    static String merged(CharSequence strands) {
        StringBuilder merged = new StringBuilder(strands.length());
        for (int i = 0; i < strands.length(); i++) {
            char each = strands.charAt(i);
            int last = merged.length() - 1;
            if (last >= 0 && end(merged.charAt(last)) == end(each) && leapt(merged.charAt(last)) == leapt(each)) {
                merged.setCharAt(last, strand(end(each), lines(merged.charAt(last)) + lines(each), leapt(each)));
            } else {
                merged.append(each);
            }
        }
        return merged.toString();
    }
}
