package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What may be selected last, and what that saves.
 *
 * <p>A visit that selects the demands T may do so in any order. If the demand selected before it is in T, that one goes
 * first and needs no selecting. Which demand was selected last is left open as long as it makes no difference: a tie
 * stands for the set of demands that may have been last at the same cost. Coming with the set I to a visit of T, one
 * selection is saved if I and T meet; the visit may then end with x in T exactly if T is {x} or some other member of I is
 * in T. Not using a saving never pays: the freedom that it leaves is worth no more than the selection it costs.
 *
 * <p>Where a block may leave readings to other hookups class by class, it is not known what a visit of it selects. A tie then
 * holds a mark of the block instead, and a selection counts as saved wherever block and demands may meet, even where this
 * visit selects nothing: then how readings are shared out among hookups makes no difference, and the sum is a lower bound
 * for every way of sharing them out.
 */
final class Ties {
    /** Nothing is selected. */
    static final int NONE = 0;

    private final List<BitSet> sets = new ArrayList<>();
    private final Map<BitSet, Integer> index = new HashMap<>();

    /** After a visit. */
    record After(int tie, boolean carried) {}

    private final int marks;

    /** @param demands how many there are; marks of blocks are numbered after them */
    Ties(int demands) {
        this.marks = demands;
        intern(new BitSet());
    }

    /** Number of a set of demands that may have been selected last; whoever gives it leaves the set alone. */
    int intern(BitSet set) {
        return index.computeIfAbsent(set, key -> {
            sets.add(key);
            return sets.size() - 1;
        });
    }

    BitSet set(int tie) {
        return sets.get(tie);
    }

    /**
     * @param demands what the visit selects
     * @param blocks blocks of its hookup
     */
    After visit(int tie, BitSet demands, List<Problem.Block> blocks) {
        if (demands.isEmpty()) {
            return new After(tie, false);
        }
        BitSet before = sets.get(tie);
        BitSet meeting = before.get(0, marks);
        meeting.and(demands);
        boolean marked = false;
        for (int m = before.nextSetBit(marks); m >= 0; m = before.nextSetBit(m + 1)) {
            marked |= blocks.get(m - marks).demands().intersects(demands);
        }
        BitSet last = marked ? (BitSet) demands.clone() : last(meeting, demands);
        return new After(intern(last), marked || !meeting.isEmpty());
    }

    /**
     * A visit of which it is not known what it selects.
     *
     * @param surely whether it selects something however readings are shared out
     */
    After vague(int tie, Problem.Block block, boolean surely) {
        if (block.demands().isEmpty()) {
            return new After(tie, false);
        }
        BitSet before = sets.get(tie);
        boolean carried = before.get(0, marks).intersects(block.demands());
        for (int m = before.nextSetBit(marks); m >= 0; m = before.nextSetBit(m + 1)) {
            carried |= block.links().get(m - marks);
        }
        BitSet after = surely ? new BitSet() : (BitSet) before.clone();
        after.set(marks + block.index());
        return new After(intern(after), carried);
    }

    /** Demands of T that may be selected last when these of them may come first unselected. */
    static BitSet last(BitSet meeting, BitSet demands) {
        BitSet last = (BitSet) demands.clone();
        if (meeting.cardinality() == 1 && demands.cardinality() > 1) {
            last.andNot(meeting);
        }
        return last;
    }
}
