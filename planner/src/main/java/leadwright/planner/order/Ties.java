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
 * <p>In the optimistic form a tie stands for the blocks that may have selected last, and a selection counts as saved
 * wherever one of them may share a demand with this block, even where this visit selects nothing: then how readings are
 * shared out among hookups makes no difference, and the sum is a lower bound for every way of sharing them out.
 */
final class Ties {
    /** Nothing is selected. */
    static final int NONE = 0;

    private final boolean exact;
    private final List<BitSet> sets = new ArrayList<>();
    private final Map<BitSet, Integer> index = new HashMap<>();

    /** After a visit. */
    record After(int tie, boolean carried) {}

    Ties(boolean exact) {
        this.exact = exact;
        intern(new BitSet());
    }

    private int intern(BitSet set) {
        return index.computeIfAbsent(set, key -> {
            sets.add(key);
            return sets.size() - 1;
        });
    }

    /**
     * @param demands what the visit selects
     * @param surely whether it selects something however readings are shared out
     */
    After visit(int tie, BitSet demands, Problem.Block block, boolean surely) {
        BitSet before = sets.get(tie);
        if (!exact) {
            if (block.demands().isEmpty()) {
                return new After(tie, false);
            }
            BitSet after = surely ? new BitSet() : (BitSet) before.clone();
            after.set(block.index());
            return new After(intern(after), before.intersects(block.links()));
        }
        if (demands.isEmpty()) {
            return new After(tie, false);
        }
        BitSet meeting = (BitSet) before.clone();
        meeting.and(demands);
        return new After(intern(last(meeting, demands)), !meeting.isEmpty());
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
