package leadwright.planner.order;

import java.util.Arrays;

/** Answers that are kept by a number of 64 bits, in flat arrays: a table of boxed numbers takes several times as long. */
final class Answers {
    /** No answer is kept; none may be this number. */
    static final int NONE = Integer.MIN_VALUE;

    private long[] keys = new long[1024];
    private int[] values = new int[1024];
    private int size;

    Answers() {
        Arrays.fill(values, NONE);
    }

    int size() {
        return size;
    }

    int get(long key) {
        return values[slot(key)];
    }

    void put(long key, int value) {
        int slot = slot(key);
        size += values[slot] == NONE ? 1 : 0;
        keys[slot] = key;
        values[slot] = value;
        if (2 * size > keys.length) {
            grow();
        }
    }

    private int slot(long key) {
        int mask = keys.length - 1;
        long mixed = key * 0x9E3779B97F4A7C15L;
        int slot = (int) (mixed >>> 32) & mask;
        while (values[slot] != NONE && keys[slot] != key) {
            slot = slot + 1 & mask;
        }
        return slot;
    }

    private void grow() {
        long[] oldKeys = keys;
        int[] oldValues = values;
        keys = new long[2 * oldKeys.length];
        values = new int[2 * oldValues.length];
        Arrays.fill(values, NONE);
        for (int i = 0; i < oldKeys.length; i++) {
            if (oldValues[i] != NONE) {
                int slot = slot(oldKeys[i]);
                keys[slot] = oldKeys[i];
                values[slot] = oldValues[i];
            }
        }
    }
}
