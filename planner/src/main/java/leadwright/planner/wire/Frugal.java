package leadwright.planner.wire;

import java.util.Arrays;

/**
 * Phase 6d: fewer contacts, where only the number of places counts.
 *
 * <p>Needs: fan-outs and jacks given to cells so that all places are found. Gives: the same with fewer contacts, then fewer
 * fan-outs. Method: the fan-outs of a cell stand largest first, so that its chains take the shallowest places; a fan-out is
 * moved, exchanged or put back, a jack given or taken, as long as that helps. Cost: fan-outs² + fan-outs · cells a round; the
 * rounds are few. Proof: none that no other sharing has fewer; every step keeps the places.
 */
final class Frugal {
    private static final int MOST_ROUNDS = 60;
    private static final long IMPOSSIBLE = Long.MAX_VALUE / 64;
    /** One contact weighs more than all items together. */
    private static final long CONTACT = 10_000;

    private final int[] gains;
    private final int[] places;
    private final int[] owner;
    private final int[] jacks;
    private final long[] cost;
    private int free;

    /**
     * @param gains of the fan-outs in descending order
     * @param places that each cell needs
     * @param count jacks of the tester
     */
    Frugal(int[] gains, int[] places, Shelf.Shares shares, int count) {
        this.gains = gains;
        this.places = places;
        this.owner = shares.owner().clone();
        this.jacks = shares.jacks().clone();
        this.free = count - Arrays.stream(jacks).sum();
        this.cost = new long[places.length];
        for (int cell = 0; cell < places.length; cell++) {
            cost[cell] = cost(cell);
        }
    }

    Shelf.Shares shares() {
        boolean better = true;
        for (int round = 0; better && round < MOST_ROUNDS; round++) {
            better = giveJacks() | moveFans() | exchangeFans();
        }
        return new Shelf.Shares(owner, jacks);
    }

    /** Depth of the places taken, then fan-outs. */
    private long cost(int cell) {
        int level = jacks[cell];
        int open = jacks[cell];
        int need = places[cell];
        long sum = 0;
        int depth = 0;
        int fans = 0;
        int nextLevel = 0;
        // Breadth first: every end of a level takes a fan-out as long as there are some.
        for (int fan = 0; fan < gains.length; fan++) {
            if (owner[fan] != cell) {
                continue;
            }
            fans++;
            if (level == 0) {
                depth++;
                level = nextLevel;
                nextLevel = 0;
            }
            level--;
            nextLevel += gains[fan] + 1;
            open += gains[fan];
        }
        if (open < need) {
            return IMPOSSIBLE;
        }
        int here = Math.min(need, level);
        sum += (long) here * depth + (long) (need - here) * (depth + 1);
        return sum * CONTACT + fans;
    }

    private boolean giveJacks() {
        boolean better = false;
        while (free > 0) {
            int best = -1;
            long most = 0;
            for (int cell = 0; cell < jacks.length; cell++) {
                jacks[cell]++;
                long gain = jacks[cell] > places[cell] ? 0 : cost[cell] - cost(cell);
                jacks[cell]--;
                if (gain > most) {
                    most = gain;
                    best = cell;
                }
            }
            if (best < 0) {
                return better;
            }
            jacks[best]++;
            free--;
            cost[best] = cost(best);
            better = true;
        }
        return better;
    }

    private boolean moveFans() {
        boolean better = false;
        for (int fan = 0; fan < gains.length; fan++) {
            int from = owner[fan];
            for (int to = -1; to < places.length; to++) {
                if (to != owner[fan] && !twinBefore(fan)) {
                    int was = owner[fan];
                    owner[fan] = to;
                    if (settles(was, to)) {
                        better = true;
                    } else {
                        owner[fan] = was;
                    }
                }
            }
            better |= from != owner[fan];
        }
        return better;
    }

    /** Whether the fan-out before is as large and stands in the same cell, so that moving this one is no other move. */
    private boolean twinBefore(int fan) {
        return fan > 0 && gains[fan - 1] == gains[fan] && owner[fan - 1] == owner[fan];
    }

    private boolean exchangeFans() {
        boolean better = false;
        for (int one = 0; one < gains.length; one++) {
            for (int other = one + 1; other < gains.length; other++) {
                int a = owner[one];
                int b = owner[other];
                if (a == b || gains[one] == gains[other] || twinBefore(one) || twinBefore(other)) {
                    continue;
                }
                owner[one] = b;
                owner[other] = a;
                if (settles(a, b)) {
                    better = true;
                } else {
                    owner[one] = a;
                    owner[other] = b;
                }
            }
        }
        return better;
    }

    /** Keeps a change in two cells where it helps. */
    private boolean settles(int one, int other) {
        long before = of(cost, one) + of(cost, other);
        long first = one < 0 ? 0 : cost(one);
        long second = other < 0 ? 0 : cost(other);
        if (first >= IMPOSSIBLE || second >= IMPOSSIBLE || first + second >= before) {
            return false;
        }
        if (one >= 0) {
            cost[one] = first;
        }
        if (other >= 0) {
            cost[other] = second;
        }
        return true;
    }

    private static long of(long[] cost, int cell) {
        return cell < 0 ? 0 : cost[cell];
    }
}
