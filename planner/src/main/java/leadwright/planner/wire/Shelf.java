package leadwright.planner.wire;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;

/**
 * Phase 6b: which fan-out goes to which cell, where only the number of places counts.
 *
 * <p>Needs: gains of the fan-outs (branches less one), the places that each cell needs, the jacks. Gives: the gains and jacks
 * of each cell, or that there is no way. Method: each cell has a jack; fan-outs are given away, largest first, to cells that
 * lack places, each number of lacking places once; what is still lacking at the end must be no more than the free jacks. First
 * the best fit alone, which nearly always does; then every way, cut when all gains that are left, each counted for no more
 * than the largest lack, cannot save it; what failed once is not tried again. Cost: exponential at worst, with a budget.
 * Proof: a covering of needs by gains (from memory: bin covering, Assmann and others 1984); exhaustive up to cells that lack
 * the same.
 */
final class Shelf {
    private static final int MOST_STATES = 60_000;

    private final int[] gains;
    private final int[] places;
    private final int free;
    private final int[] lack;
    private final int[] owner;
    private final Set<String> dead = new HashSet<>();
    private int states;
    private boolean found;

    /**
     * Who has what.
     *
     * @param owner by fan-out in descending order of gain, the cell that it goes to, -1 where it stays in the drawer
     * @param jacks by cell
     */
    record Shares(int[] owner, int[] jacks) {}

    /**
     * @param gains in descending order
     * @param places by cell, one at least
     */
    Shelf(int[] gains, int[] places, int jacks) {
        this.gains = gains;
        this.places = places;
        this.free = jacks - places.length;
        this.lack = Arrays.stream(places).map(each -> each - 1).toArray();
        this.owner = new int[gains.length];
        Arrays.fill(owner, -1);
        if (free >= 0) {
            found = bestFit() || give(0);
        }
    }

    boolean unknown() {
        return !found && states > MOST_STATES;
    }

    Optional<Shares> shares() {
        if (!found) {
            return Optional.empty();
        }
        int[] jacks = new int[places.length];
        for (int cell = 0; cell < jacks.length; cell++) {
            jacks[cell] = 1 + Math.max(0, lack[cell]);
        }
        return Optional.of(new Shares(owner.clone(), jacks));
    }

    private int lacking() {
        int sum = 0;
        for (int each : lack) {
            sum += Math.max(0, each);
        }
        return sum;
    }

    /** Largest fan-out to the cell that lacks most, unless a smaller one fills it. */
    private boolean bestFit() {
        int[] before = lack.clone();
        for (int fan = 0; fan < gains.length && lacking() > free; fan++) {
            int cell = most();
            boolean smallerWillDo = false;
            for (int other = fan + 1; other < gains.length && !smallerWillDo; other++) {
                smallerWillDo = lack[cell] <= gains[other] && gains[other] < gains[fan] && gains.length - other > 1;
            }
            if (smallerWillDo && spare(fan + 1)) {
                continue;
            }
            owner[fan] = cell;
            lack[cell] -= gains[fan];
        }
        if (lacking() <= free) {
            return true;
        }
        System.arraycopy(before, 0, lack, 0, lack.length);
        Arrays.fill(owner, -1);
        return false;
    }

    /** Whether the fan-outs from here on would do by their sum. */
    private boolean spare(int from) {
        int sum = 0;
        for (int fan = from; fan < gains.length; fan++) {
            sum += gains[fan];
        }
        return sum >= 2 * (lacking() - free);
    }

    private int most() {
        int cell = 0;
        for (int each = 1; each < lack.length; each++) {
            if (lack[each] > lack[cell]) {
                cell = each;
            }
        }
        return cell;
    }

    private boolean give(int fan) {
        int lacking = lacking();
        if (lacking <= free) {
            return true;
        }
        if (fan == gains.length || ++states > MOST_STATES || lacking - useful(fan) > free) {
            return false;
        }
        int[] sorted =
                Arrays.stream(lack).map(each -> Math.max(0, each)).sorted().toArray();
        String state = fan + Arrays.toString(sorted);
        if (!dead.add(state)) {
            return false;
        }
        Set<Integer> tried = new HashSet<>();
        // Exact or nearly exact cells first: least waste.
        for (int round = 0; round < lack.length; round++) {
            int cell = next(fan, tried);
            if (cell < 0) {
                break;
            }
            tried.add(lack[cell]);
            owner[fan] = cell;
            lack[cell] -= gains[fan];
            if (give(fan + 1)) {
                return true;
            }
            lack[cell] += gains[fan];
            owner[fan] = -1;
        }
        return give(fan + 1);
    }

    /** The cell of an untried lack that wastes least of this fan-out, the largest lack of those that waste none. */
    private int next(int fan, Set<Integer> tried) {
        int best = -1;
        for (int cell = 0; cell < lack.length; cell++) {
            if (lack[cell] > 0 && !tried.contains(lack[cell]) && (best < 0 || better(fan, cell, best))) {
                best = cell;
            }
        }
        return best;
    }

    private boolean better(int fan, int cell, int best) {
        int waste = Math.max(0, gains[fan] - lack[cell]);
        int least = Math.max(0, gains[fan] - lack[best]);
        return waste < least || waste == least && lack[cell] > lack[best];
    }

    /** Most that the fan-outs from here on can cover. */
    private int useful(int from) {
        int largest = Math.max(0, lack[most()]);
        int sum = 0;
        for (int fan = from; fan < gains.length; fan++) {
            sum += Math.min(gains[fan], largest);
        }
        return sum;
    }
}
