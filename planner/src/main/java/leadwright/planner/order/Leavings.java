package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a visit may leave for a later one, which is then welcome for the way through its fault: any set of the classes that
 * other hookups may take too. A class may be left in part, so that a visit may complete nothing. Classes that the same
 * hookups take and the same units wait for are left together.
 *
 * @param groups the units of each group
 */
record Leavings(List<long[]> groups) {

    static Leavings of(BitSet free, Problem problem, int words) {
        Map<List<Object>, BitSet> alike = new LinkedHashMap<>();
        for (int u = free.nextSetBit(0); u >= 0; u = free.nextSetBit(u + 1)) {
            int unit = u;
            BitSet awaiting = new BitSet();
            problem.units().stream()
                    .filter(other -> other.before().get(unit))
                    .forEach(other -> awaiting.set(other.index()));
            alike.computeIfAbsent(List.of(problem.units().get(u).hookups(), awaiting), key -> new BitSet())
                    .set(u);
        }
        return new Leavings(
                alike.values().stream().map(set -> Words.of(set, words)).toList());
    }

    /**
     * What may be taken, but for everything.
     *
     * @param least what is taken in any case
     * @param all that could be taken
     */
    List<long[]> sets(long[] least, long[] all) {
        int ready = 0;
        for (int g = 0; g < groups.size(); g++) {
            ready |= Words.meets(groups.get(g), all, least) ? 1 << g : 0;
        }
        List<long[]> sets = new ArrayList<>();
        for (int left = ready; left != 0; left = left - 1 & ready) {
            long[] some = all.clone();
            for (int g = 0; g < groups.size(); g++) {
                for (int w = 0; w < some.length && (left >> g & 1) == 1; w++) {
                    some[w] &= ~groups.get(g)[w] | least[w];
                }
            }
            sets.add(some);
        }
        return sets;
    }
}
