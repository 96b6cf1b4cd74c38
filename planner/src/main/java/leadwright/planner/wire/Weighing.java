package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Phase 8a: weights that make the counting bound as strong as weights can.
 *
 * <p>Needs: kinds of requirement (twins of one another), how many of each, and sets that fit one hookup as they are found.
 * Gives: weights by kind, and how much of each set the fractional cover takes. Method: the fractional cover, min Σ x with
 * Σ x·(members of a kind) ≥ (how many there are), by the revised simplex method with its inverse kept; the weights are its
 * dual. A set of weight above 1 enters, as in column generation (from memory: Gilmore and Gomory 1961). Cost: kinds² a
 * change. Proof: none needed here: any weights give a bound, and {@link Bounds} takes it in whole numbers.
 */
final class Weighing {
    private static final double TINY = 1e-9;
    private static final double NUDGE = 1e-5;
    /** Numbers touched by changes. */
    private static final long MOST_WORK = 1_500_000_000L;

    private final int[] counts;
    private final List<int[]> patterns = new ArrayList<>();
    private final Set<java.nio.IntBuffer> known = new HashSet<>();
    /** By pattern, the kinds that it has members of. */
    private final List<int[]> present = new ArrayList<>();

    private final double[][] inverse;
    private final double[] taken;
    /** What stands in each row: a pattern's number, or the kind of a surplus as −1 − kind. */
    private final int[] basis;

    private int changes;
    private long scanned;

    /** @param counts how many of each kind; to begin with each is on its own */
    Weighing(int[] counts) {
        this.counts = counts;
        int kinds = counts.length;
        this.inverse = new double[kinds][kinds];
        this.taken = new double[kinds];
        this.basis = new int[kinds];
        for (int kind = 0; kind < kinds; kind++) {
            int[] alone = new int[kinds];
            alone[kind] = 1;
            add(alone);
            inverse[kind][kind] = 1;
            // A little more of each, all different: without it many changes would change nothing.
            taken[kind] = counts[kind] + NUDGE * ((kind * 0.6180339887) % 1);
            basis[kind] = kind;
        }
    }

    /** Adds a set that fits one hookup; returns whether it is new. */
    boolean add(int[] pattern) {
        if (!known.add(java.nio.IntBuffer.wrap(pattern))) {
            return false;
        }
        patterns.add(pattern);
        present.add(IntStream.range(0, pattern.length)
                .filter(kind -> pattern[kind] != 0)
                .toArray());
        return true;
    }

    /** Changes the cover until no set known weighs more than 1 and no weight is negative. */
    void settle() {
        while (settled()) {
            double[] weights = duals();
            int entering = Integer.MIN_VALUE;
            double most = TINY;
            for (int p = 0; p < patterns.size(); p++) {
                double excess = -1;
                int[] pattern = patterns.get(p);
                scanned += present.get(p).length;
                for (int kind : present.get(p)) {
                    excess += pattern[kind] * weights[kind];
                }
                if (excess > most) {
                    most = excess;
                    entering = p;
                }
            }
            for (int kind = 0; kind < weights.length; kind++) {
                if (-weights[kind] > most) {
                    most = -weights[kind];
                    entering = -1 - kind;
                }
            }
            if (entering == Integer.MIN_VALUE || !enter(entering)) {
                return;
            }
            changes++;
        }
    }

    private boolean enter(int column) {
        int kinds = counts.length;
        double[] direction = new double[kinds];
        for (int row = 0; row < kinds; row++) {
            if (column < 0) {
                direction[row] = -inverse[row][-1 - column];
            } else {
                int[] pattern = patterns.get(column);
                for (int kind : present.get(column)) {
                    direction[row] += inverse[row][kind] * pattern[kind];
                }
            }
        }
        int leaving = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int row = 0; row < kinds; row++) {
            if (direction[row] > TINY) {
                double ratio = taken[row] / direction[row];
                boolean first = leaving >= 0 && ratio < least + TINY && basis[row] < basis[leaving];
                if (ratio < least - TINY || first) {
                    least = Math.min(ratio, least);
                    leaving = row;
                }
            }
        }
        if (leaving < 0) {
            return false;
        }
        double by = direction[leaving];
        for (int kind = 0; kind < kinds; kind++) {
            inverse[leaving][kind] /= by;
        }
        taken[leaving] /= by;
        for (int row = 0; row < kinds; row++) {
            double factor = direction[row];
            if (row != leaving && factor != 0) {
                for (int kind = 0; kind < kinds; kind++) {
                    inverse[row][kind] -= factor * inverse[leaving][kind];
                }
                taken[row] = Math.max(0, taken[row] - factor * taken[leaving]);
            }
        }
        basis[leaving] = column;
        return true;
    }

    private double[] duals() {
        double[] weights = new double[counts.length];
        for (int row = 0; row < basis.length; row++) {
            if (basis[row] >= 0) {
                for (int kind = 0; kind < weights.length; kind++) {
                    weights[kind] += inverse[row][kind];
                }
            }
        }
        return weights;
    }

    /** Weights w ≥ 0 with no set known above 1, as far as {@link #settle} came. */
    double[] weights() {
        return Arrays.stream(duals()).map(weight -> Math.max(0, weight)).toArray();
    }

    /** What the fractional cover takes in all, a thousandth more at most: no weights that hold for every set weigh more. */
    double value() {
        double sum = 0;
        for (int row = 0; row < basis.length; row++) {
            sum += basis[row] >= 0 ? taken[row] : 0;
        }
        return sum;
    }

    /** Whether the cover is the best of the sets known. */
    boolean settled() {
        return (long) changes * counts.length * counts.length + scanned < MOST_WORK;
    }

    /** Sets of which the cover takes something, most first. */
    List<int[]> used() {
        return IntStream.range(0, basis.length)
                .filter(row -> basis[row] >= 0 && taken[row] > TINY)
                .boxed()
                .sorted(java.util.Comparator.comparingDouble((Integer row) -> -taken[row]))
                .map(row -> patterns.get(basis[row]))
                .toList();
    }

    /** How much of each of {@link #used} the cover takes. */
    List<Double> shares() {
        return IntStream.range(0, basis.length)
                .filter(row -> basis[row] >= 0 && taken[row] > TINY)
                .mapToObj(row -> taken[row])
                .sorted(java.util.Comparator.reverseOrder())
                .toList();
    }

    /** Weights as whole numbers of so many parts of the heaviest set, rounded to the nearest. */
    static long[] whole(double[] weights, int scale) {
        return Arrays.stream(weights).mapToLong(w -> Math.round(w * scale)).toArray();
    }
}
