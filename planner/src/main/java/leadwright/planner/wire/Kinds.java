package leadwright.planner.wire;

import java.util.Arrays;

/**
 * Phase 7i: what can still be added to a hookup, by the cells that it leads to.
 *
 * <p>Needs: candidates with the cells that each leads to. Gives: the most that some of them can weigh together. Method:
 * those that lead to the same cells are one kind. Cost: linear in the kinds, and sorting them where many jacks are free. Proof:
 * with f jacks free, a cell ends in f + 1 parts at most, and every candidate of the set joins these parts to fewer. There are
 * S(f + 1, j + 1) ways to join them to j + 1, Stirling numbers of the second kind; parts of several cells can be joined in no
 * more ways. So no more kinds than that add j cells each.
 */
final class Kinds {
    private static final long[][] STIRLING = stirling(24);

    private final int[] kindOf;
    private final long[] signatures;
    private final int[] adds;
    private final long[] weights;
    private final long[] candidateWeights;
    private final int[] table;
    private final long[] top;
    private int kinds;

    Kinds(int most) {
        this.kindOf = new int[most];
        this.signatures = new long[most];
        this.adds = new int[most];
        this.weights = new long[most];
        this.candidateWeights = new long[most];
        this.table = new int[Integer.highestOneBit(Math.max(1, most)) * 4];
        this.top = new long[most];
    }

    private static long[][] stirling(int size) {
        long[][] numbers = new long[size + 1][size + 1];
        numbers[0][0] = 1;
        for (int n = 1; n <= size; n++) {
            for (int k = 1; k <= n; k++) {
                numbers[n][k] = k * numbers[n - 1][k] + numbers[n - 1][k - 1];
            }
        }
        return numbers;
    }

    void clear() {
        kinds = 0;
        Arrays.fill(table, 0);
    }

    /**
     * Adds a candidate.
     *
     * @param signature equal for equal cells; where it is equal for others too, they only seem to weigh more
     * @param more cells that it adds
     */
    void add(int candidate, long signature, int more, long weight) {
        int slot = (int) (signature ^ (signature >>> 32)) & (table.length - 1);
        while (table[slot] != 0 && (signatures[table[slot] - 1] != signature || adds[table[slot] - 1] != more)) {
            slot = (slot + 1) & (table.length - 1);
        }
        if (table[slot] == 0) {
            signatures[kinds] = signature;
            adds[kinds] = more;
            weights[kinds] = 0;
            table[slot] = ++kinds;
        }
        kindOf[candidate] = table[slot] - 1;
        candidateWeights[candidate] = weight;
        weights[table[slot] - 1] += weight;
    }

    void remove(int candidate) {
        weights[kindOf[candidate]] -= candidateWeights[candidate];
    }

    /** Most that this one weighs with others where one jack is free: what leads to the same cells, and what adds none. */
    long mostWith(int candidate) {
        int own = kindOf[candidate];
        if (adds[own] == 0) {
            return most(1);
        }
        long sum = weights[own];
        for (int kind = 0; kind < kinds; kind++) {
            sum += adds[kind] == 0 ? weights[kind] : 0;
        }
        return sum;
    }

    /** Most that some of those that are left can weigh with so many free jacks. */
    long most(int free) {
        long sum = 0;
        for (int more = 0; more <= free; more++) {
            int count = 0;
            for (int kind = 0; kind < kinds; kind++) {
                if (adds[kind] == more && weights[kind] > 0) {
                    top[count++] = weights[kind];
                }
            }
            long ways = more == 0 ? count : STIRLING[free + 1][more + 1];
            if (ways < count) {
                Arrays.sort(top, 0, count);
            }
            for (int i = 0; i < Math.min(ways, count); i++) {
                sum += top[count - 1 - i];
            }
        }
        return sum;
    }
}
