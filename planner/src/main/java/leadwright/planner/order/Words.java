package leadwright.planner.order;

import java.util.BitSet;

/** Sets of small numbers as words of bits, all of one length. */
final class Words {
    private Words() {}

    static long[] of(BitSet set, int words) {
        long[] all = new long[words];
        long[] given = set.toLongArray();
        System.arraycopy(given, 0, all, 0, given.length);
        return all;
    }

    static void set(long[] words, int bit) {
        words[bit >> 6] |= 1L << bit;
    }

    static boolean has(long[] words, int bit) {
        return (words[bit >> 6] >> bit & 1) == 1;
    }

    static boolean holds(long[] all, long[] part) {
        for (int w = 0; w < part.length; w++) {
            if ((part[w] & ~all[w]) != 0) {
                return false;
            }
        }
        return true;
    }
}
