package leadwright.planner.order;

import java.util.Arrays;
import java.util.BitSet;

/** Open nodes by whole seconds; of equal seconds the one put in last comes out first, so that a path is followed down. */
final class Agenda {
    private int[][] buckets = new int[1024][];
    private int[] sizes = new int[1024];
    private final BitSet filled = new BitSet();

    void put(int seconds, int node) {
        if (seconds >= buckets.length) {
            int length = Math.max(seconds + 1, buckets.length * 2);
            buckets = Arrays.copyOf(buckets, length);
            sizes = Arrays.copyOf(sizes, length);
        }
        if (buckets[seconds] == null) {
            buckets[seconds] = new int[8];
        } else if (sizes[seconds] == buckets[seconds].length) {
            buckets[seconds] = Arrays.copyOf(buckets[seconds], 2 * sizes[seconds]);
        }
        buckets[seconds][sizes[seconds]++] = node;
        filled.set(seconds);
    }

    boolean isEmpty() {
        return filled.isEmpty();
    }

    /** Seconds of the next node. */
    int least() {
        return filled.nextSetBit(0);
    }

    int take() {
        int seconds = least();
        int node = buckets[seconds][--sizes[seconds]];
        if (sizes[seconds] == 0) {
            filled.clear(seconds);
            buckets[seconds] = null;
        }
        return node;
    }
}
