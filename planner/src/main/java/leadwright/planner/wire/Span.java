package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Phase 7e: sets of connections as vectors of zeros and ones, added without carry.
 *
 * <p>Needs: sets. Gives: whether a further one is independent of those before, that is, no sum of them. Method: elimination
 * over the field of two elements. Cost: (sets)² · connections / 64. Proof of its use: every set that a hookup ties is a sum of
 * the hookup's bundles, so of sets none of which is a sum of the others a hookup of k bundles ties at most k.
 */
final class Span {
    private final List<BitSet> rows = new ArrayList<>();
    private final List<Integer> leads = new ArrayList<>();
    /** By row, the marks of the sets that it is a sum of. */
    private final List<BitSet> marks = new ArrayList<>();

    /** Adds the set where it is independent; returns whether it was. */
    boolean add(BitSet set) {
        return add(set, -1);
    }

    /** @param mark what {@link #summands} calls the set; negative for none */
    boolean add(BitSet set, int mark) {
        BitSet rest = (BitSet) set.clone();
        BitSet sum = new BitSet();
        reduce(rest, sum);
        if (rest.isEmpty()) {
            return false;
        }
        if (mark >= 0) {
            sum.flip(mark);
        }
        rows.add(rest);
        leads.add(rest.nextSetBit(0));
        marks.add(sum);
        return true;
    }

    private void reduce(BitSet rest, BitSet sum) {
        for (int row = 0; row < rows.size(); row++) {
            if (rest.get(leads.get(row))) {
                rest.xor(rows.get(row));
                sum.xor(marks.get(row));
            }
        }
    }

    /** Marks of the sets that add up to this one, which is a sum of those added. */
    BitSet summands(BitSet set) {
        BitSet sum = new BitSet();
        reduce((BitSet) set.clone(), sum);
        return sum;
    }

    /** Adds one set of the requirement that is independent, the measured one if it can be; returns whether one was. */
    boolean add(Requirement requirement, int mark) {
        for (int role = Requirement.MEASURED; role <= Requirement.EARTHED; role++) {
            BitSet set = requirement.with(role);
            if (!set.isEmpty() && add(set, mark)) {
                return true;
            }
        }
        return false;
    }

    int rank() {
        return rows.size();
    }
}
