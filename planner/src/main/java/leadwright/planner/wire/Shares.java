package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;

/** All ways to share a number of like things among some takers. */
final class Shares {
    private Shares() {}

    static List<int[]> of(int things, int takers) {
        List<int[]> all = new ArrayList<>();
        share(things, 0, new int[takers], all);
        return all;
    }

    private static void share(int left, int taker, int[] shares, List<int[]> all) {
        if (taker == shares.length - 1) {
            shares[taker] = left;
            all.add(shares.clone());
            return;
        }
        for (int count = left; count >= 0; count--) {
            shares[taker] = count;
            share(left - count, taker + 1, shares, all);
        }
    }
}
