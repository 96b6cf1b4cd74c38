package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;

/**
 * Phase 9: which demand comes first and which last in each visit.
 *
 * <p>Needs the visits' demands in order, and where a hookup begins anew. Gives an order of demands with as few selections as
 * {@link Ties} counted. Method: forward, the sets of demands that may be selected last; backward, one of each.
 */
final class Selections {

    /** A visit's demands; {@code anew} where nothing is selected before it because the hookup has just been made. */
    record Asked(BitSet demands, boolean anew) {}

    /** Demand that comes first without selecting, and the one that comes last. */
    record Ends(OptionalInt carried, OptionalInt last) {}

    private Selections() {}

    static List<Ends> of(List<Asked> visits) {
        List<BitSet> before = new ArrayList<>();
        BitSet current = new BitSet();
        for (Asked visit : visits) {
            if (visit.anew()) {
                current = new BitSet();
            }
            before.add(current);
            if (!visit.demands().isEmpty()) {
                current = Ties.last(meeting(current, visit.demands()), visit.demands());
            }
        }
        List<Ends> ends = new ArrayList<>();
        OptionalInt wanted = OptionalInt.empty();
        for (int i = visits.size() - 1; i >= 0; i--) {
            BitSet demands = visits.get(i).demands();
            if (demands.isEmpty()) {
                ends.add(new Ends(OptionalInt.empty(), OptionalInt.empty()));
            } else {
                BitSet meeting = meeting(before.get(i), demands);
                BitSet possible = Ties.last(meeting, demands);
                int last = wanted.isPresent() ? wanted.getAsInt() : possible.length() - 1;
                if (demands.cardinality() > 1) {
                    meeting.clear(last);
                }
                wanted = meeting.isEmpty() ? OptionalInt.empty() : OptionalInt.of(meeting.length() - 1);
                ends.add(new Ends(wanted, OptionalInt.of(last)));
            }
            if (visits.get(i).anew()) {
                wanted = OptionalInt.empty();
            }
        }
        Collections.reverse(ends);
        return ends;
    }

    private static BitSet meeting(BitSet one, BitSet other) {
        BitSet both = (BitSet) one.clone();
        both.and(other);
        return both;
    }
}
