package leadwright.planner.order;

import java.util.Arrays;

/**
 * Which partial orders of a {@link Sketch} need no looking at, because another one is at least as well off.
 *
 * <p>Let two partial orders stand at one site and pose, the second having taken all that the first has, and no more hookups
 * being ended in it. Whatever follows the first may follow the second, what it has taken already left out: an ordinary visit
 * that falls away saves its settling, which pays for the selection that the next visit may then have to make; a visit of
 * another phase that falls away may cost the next one a selection, which is counted. What last selected may differ: that is a
 * selection too. Two things only could make a visit welcome beyond what it takes, and are ruled out: a hookup on the way must
 * not shorten a re-plugging, and a fault on the way must not shorten a change of pose, as when a device that bears a power
 * cut is switched off faster through an open supply. Where the first is so, nothing is compared; where the second is so,
 * units in that fault which one hookup alone may take must be the same; for the others it is come to without a visit.
 */
final class Dominance {
    /** Partial orders with which one is compared. */
    private static final int MOST = 400;

    private final Problem problem;
    private final int words;
    private final boolean sound;
    private final long[] same;
    private final long[] unsettled;
    private final long[] ended;
    private final long[][] kept;
    private final int[][] costs;
    private final int[] sizes;

    Dominance(Problem problem, int words, int units) {
        this.problem = problem;
        this.words = words;
        BenchTimes times = problem.scene().times();
        this.sound = times.settling() >= 2 * times.select() && direct();
        this.same = new long[words];
        this.unsettled = new long[words];
        this.ended = new long[words];
        Excursions excursions = new Excursions(problem.poses());
        for (Unit unit : problem.units()) {
            if (!unit.ordinary()) {
                unsettled[unit.index() >> 6] |= 1L << unit.index();
            }
            if (unit.bound() && excursions.shortens(unit.stand())) {
                same[unit.index() >> 6] |= 1L << unit.index();
            }
        }
        for (int bit = units; bit < 64 * words; bit++) {
            ended[bit >> 6] |= 1L << bit;
        }
        int slots = 2 * problem.hookups() * problem.poses().all().size();
        this.kept = new long[slots][];
        this.costs = new int[slots][];
        this.sizes = new int[slots];
    }

    /** Whether going over another hookup never pays, and a visit that falls away pays for two selections. */
    boolean sound() {
        return sound;
    }

    /** Whether going over another hookup never takes less than going straight, nor may be done where that may not. */
    private boolean direct() {
        int n = problem.hookups();
        for (int from = 0; from < 2 * n; from++) {
            for (int over = 0; over < n; over++) {
                for (int to = 0; to < n; to++) {
                    if (over == from % n || to == over || to == from % n) {
                        continue;
                    }
                    Replugs.Replug one = problem.replugs().between(from, over);
                    Replugs.Replug two = problem.replugs().between(over, to);
                    Replugs.Replug straight = problem.replugs().between(from, to);
                    boolean worse = straight.seconds() > one.seconds() + two.seconds()
                            || straight.therapy() && !one.therapy() && !two.therapy()
                            || one.underPower() && two.underPower() && !straight.underPower();
                    if (worse) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** Whether a settled partial order is at least as well off. */
    boolean rules(int site, int pose, int last, long[] done, int cost) {
        int slot = site * problem.poses().all().size() + pose;
        if (!sound || sizes[slot] == 0) {
            return false;
        }
        int select = problem.scene().times().select();
        long[] mine = kept[slot];
        for (int i = sizes[slot] - 1; i >= Math.max(0, sizes[slot] - MOST); i--) {
            int than = costs[slot][2 * i];
            if (than > cost) {
                continue;
            }
            int margin = costs[slot][2 * i + 1] == last ? 0 : select;
            boolean more = true;
            for (int w = 0; w < words && more; w++) {
                long there = mine[i * words + w];
                long units = ~ended[w];
                more = (done[w] & ~there & units) == 0 && (there & ~done[w] & (ended[w] | same[w])) == 0;
                margin += select * Long.bitCount(there & ~done[w] & unsettled[w]);
            }
            if (more && than + margin <= cost) {
                return true;
            }
        }
        return false;
    }

    /** Keeps a partial order for later ones to be compared with, unless it is itself ruled out. */
    boolean settle(int site, int pose, int last, long[] done, int cost) {
        if (!sound) {
            return false;
        }
        int slot = site * problem.poses().all().size() + pose;
        if (rules(site, pose, last, done, cost)) {
            return true;
        }
        if (kept[slot] == null) {
            kept[slot] = new long[8 * words];
            costs[slot] = new int[16];
        } else if (kept[slot].length == sizes[slot] * words) {
            kept[slot] = Arrays.copyOf(kept[slot], 2 * kept[slot].length);
            costs[slot] = Arrays.copyOf(costs[slot], 2 * costs[slot].length);
        }
        int i = sizes[slot]++;
        System.arraycopy(done, 0, kept[slot], i * words, words);
        costs[slot][2 * i] = cost;
        costs[slot][2 * i + 1] = last;
        return false;
    }
}
