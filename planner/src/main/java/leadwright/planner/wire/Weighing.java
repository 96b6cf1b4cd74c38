package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Phase 8a: weights that make the counting bound as strong as weights can.
 *
 * <p>Needs: kinds of requirement (twins of one another), how many of each, and the heaviest set for given weights. Gives:
 * whole-number weights by kind. Method: the dual of the fractional cover, max Σ n·w with every set found so far at most 1, by
 * the simplex method in floating point; the heaviest set for these weights is added until none is above 1. Cost: in the
 * rounds, bounded. Proof: none needed here: any weights give a bound, and {@link Bounds} takes it in whole numbers.
 */
final class Weighing {
    private static final double TINY = 1e-9;

    private Weighing() {}

    /**
     * Weights w ≥ 0 with max Σ counts·w and, for every pattern, Σ pattern·w ≤ 1.
     *
     * @param patterns members of each kind in a set that fits one hookup; every kind is in one
     */
    static double[] solve(int[] counts, List<int[]> patterns) {
        int variables = counts.length;
        int rows = patterns.size();
        double[][] table = new double[rows + 1][variables + rows + 1];
        int[] basis = new int[rows];
        for (int r = 0; r < rows; r++) {
            for (int v = 0; v < variables; v++) {
                table[r][v] = patterns.get(r)[v];
            }
            table[r][variables + r] = 1;
            table[r][variables + rows] = 1;
            basis[r] = variables + r;
        }
        for (int v = 0; v < variables; v++) {
            table[rows][v] = -counts[v];
        }
        while (true) {
            int column = entering(table[rows]);
            int row = column < 0 ? -1 : leaving(table, basis, column);
            if (row < 0) {
                break;
            }
            pivot(table, row, column);
            basis[row] = column;
        }
        double[] weights = new double[variables];
        for (int r = 0; r < rows; r++) {
            if (basis[r] < variables) {
                weights[basis[r]] = Math.max(0, table[r][variables + rows]);
            }
        }
        return weights;
    }

    /** The first column that gains: with the least basis number among ties this never cycles (Bland's rule). */
    private static int entering(double[] objective) {
        for (int column = 0; column < objective.length - 1; column++) {
            if (objective[column] < -TINY) {
                return column;
            }
        }
        return -1;
    }

    private static int leaving(double[][] table, int[] basis, int column) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        int last = table[0].length - 1;
        for (int r = 0; r < basis.length; r++) {
            if (table[r][column] > TINY) {
                double ratio = table[r][last] / table[r][column];
                if (ratio < least - TINY || ratio < least + TINY && best >= 0 && basis[r] < basis[best]) {
                    least = Math.min(ratio, least);
                    best = r;
                }
            }
        }
        return best;
    }

    private static void pivot(double[][] table, int row, int column) {
        double by = table[row][column];
        for (int c = 0; c < table[row].length; c++) {
            table[row][c] /= by;
        }
        for (int r = 0; r < table.length; r++) {
            double factor = table[r][column];
            if (r != row && Math.abs(factor) > 0) {
                for (int c = 0; c < table[r].length; c++) {
                    table[r][c] -= factor * table[row][c];
                }
            }
        }
    }

    /** Weights as whole numbers of a thousandth of the heaviest set, rounded to the nearest. */
    static long[] whole(double[] weights, int scale) {
        return Arrays.stream(weights).mapToLong(w -> Math.round(w * scale)).toArray();
    }

    /** One pattern for each kind: as many as fit of that kind alone is enough to begin with. */
    static List<int[]> start(int kinds) {
        List<int[]> patterns = new ArrayList<>();
        for (int kind = 0; kind < kinds; kind++) {
            int[] pattern = new int[kinds];
            pattern[kind] = 1;
            patterns.add(pattern);
        }
        return patterns;
    }
}
