package leadwright.render.export;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;

/**
 * Advance widths of the characters that documents are made of, in units of both faces, taken from the fonts once and kept
 * as a table: reading the fonts themselves costs more than all drawing. A test holds the table against the fonts; a
 * character that is not in it is looked up there.
 */
final class Advances {

    /** Units to the type size in both faces. */
    static final int UNITS_PER_EM = 2048;

    /** First and last character of each run in the table: European letters, signs, arrows, mathematics, marks. */
    static final int[][] RUNS = {
        {0x20, 0x17F}, {0x370, 0x45F}, {0x2010, 0x2044}, {0x20A0, 0x22FF}, {0x2500, 0x27BF}, {0xFFFD, 0xFFFD}
    };

    static final String RESOURCE = "advances.bin";

    private Advances() {}

    /** Whether the table has the character, be it only to say that a face lacks it. */
    static boolean knows(int codePoint) {
        return place(codePoint) >= 0;
    }

    /** Width of a character that the table has, or of the sign that is printed for it. */
    static int of(int codePoint, boolean bold) {
        return Math.abs(entry(codePoint, bold));
    }

    /** Whether both faces have a character that the table has. */
    static boolean hasGlyph(int codePoint) {
        return entry(codePoint, false) >= 0 && entry(codePoint, true) >= 0;
    }

    /** Two numbers a character, upright and bold; below zero where the face lacks the character and a substitute stands. */
    private static int entry(int codePoint, boolean bold) {
        return Table.ENTRIES.getShort(4 * place(codePoint) + (bold ? 2 : 0));
    }

    private static int place(int codePoint) {
        int before = 0;
        for (int[] run : RUNS) {
            if (codePoint < run[0]) {
                return -1;
            }
            if (codePoint <= run[1]) {
                return before + codePoint - run[0];
            }
            before += run[1] - run[0] + 1;
        }
        return -1;
    }

    // Nested, so that it is read when it is first asked for and once only.
    private static final class Table {
        static final ByteBuffer ENTRIES = read();

        private static ByteBuffer read() {
            try (InputStream in = Advances.class.getResourceAsStream(RESOURCE)) {
                if (in == null) {
                    throw new IllegalStateException("The program is incomplete: it lacks " + RESOURCE);
                }
                return ByteBuffer.wrap(in.readAllBytes());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
