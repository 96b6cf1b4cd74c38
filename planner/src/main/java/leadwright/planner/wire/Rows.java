package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import leadwright.planner.plan.Hookup;

/**
 * Phase 12e: the order of hookups in which least is re-plugged.
 *
 * <p>Needs: hookups, seconds of plugging. Gives: the hookups in that order. Method: up to {@value #MOST_EXACT} hookups by the
 * set of those that came before and the last one; more by putting each, the dearest to set up first, where it costs least.
 * Cost: 2^hookups · hookups², or hookups³. Proof: of the first, that what is still to pay depends on set and last alone; of
 * the second none.
 */
final class Rows {
    static final int MOST_EXACT = 9;

    private Rows() {}

    static List<Hookup> best(List<Hookup> hookups, Weights weights) {
        if (hookups.size() < 2 || weights.walks(hookups)) {
            return hookups;
        }
        return hookups.size() <= MOST_EXACT ? exact(hookups, weights) : inserted(hookups, weights);
    }

    private static List<Hookup> exact(List<Hookup> hookups, Weights weights) {
        int n = hookups.size();
        long[][] least = new long[1 << n][n];
        int[][] before = new int[1 << n][n];
        for (long[] each : least) {
            Arrays.fill(each, Long.MAX_VALUE);
        }
        for (int h = 0; h < n; h++) {
            least[1 << h][h] = weights.replugging().first(hookups.get(h));
        }
        for (int set = 1; set < 1 << n; set++) {
            for (int last = 0; last < n; last++) {
                if (least[set][last] == Long.MAX_VALUE) {
                    continue;
                }
                for (int next = 0; next < n; next++) {
                    if ((set >> next & 1) == 0) {
                        long sum =
                                least[set][last] + weights.replugging().between(hookups.get(last), hookups.get(next));
                        if (sum < least[set | 1 << next][next]) {
                            least[set | 1 << next][next] = sum;
                            before[set | 1 << next][next] = last;
                        }
                    }
                }
            }
        }
        int set = (1 << n) - 1;
        int last = 0;
        for (int h = 1; h < n; h++) {
            last = least[set][h] < least[set][last] ? h : last;
        }
        List<Hookup> row = new ArrayList<>();
        while (set != 0) {
            row.add(0, hookups.get(last));
            int previous = before[set][last];
            set &= ~(1 << last);
            last = previous;
        }
        return row;
    }

    private static List<Hookup> inserted(List<Hookup> hookups, Weights weights) {
        List<Hookup> waiting = new ArrayList<>(hookups);
        waiting.sort((one, other) -> Integer.compare(
                weights.replugging().atLeast(other), weights.replugging().atLeast(one)));
        List<Hookup> row = new ArrayList<>();
        for (Hookup each : waiting) {
            long least = Long.MAX_VALUE;
            int chosen = 0;
            for (int at = 0; at <= row.size(); at++) {
                long more = at == 0
                        ? weights.replugging().first(each)
                        : weights.replugging().between(row.get(at - 1), each);
                if (at < row.size()) {
                    Hookup after = row.get(at);
                    more += weights.replugging().between(each, after);
                    more -= at == 0
                            ? weights.replugging().first(after)
                            : weights.replugging().between(row.get(at - 1), after);
                }
                if (more < least) {
                    least = more;
                    chosen = at;
                }
            }
            row.add(chosen, each);
        }
        return row;
    }
}
