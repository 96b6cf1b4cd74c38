package leadwright.planner.wire;

import java.util.List;
import java.util.stream.Stream;

/** Sums of capacitance of a draft, one for each of its requirements that has a hard limit, in femtofarads. */
final class Caps {
    private Caps() {}

    /** Requirements with a hard limit on the capacitance of what they measure. */
    static Stream<Requirement> capped(Draft draft) {
        return draft.members().stream().filter(member -> member.capacitance().isPresent());
    }

    static long[] plus(long[] sums, Option option, Draft draft, int cell) {
        if (sums.length == 0) {
            return sums;
        }
        long[] next = sums.clone();
        List<Requirement> members = capped(draft).toList();
        int first = draft.connectionsOf(cell).nextSetBit(0);
        for (int i = 0; i < next.length; i++) {
            if (members.get(i).role()[first] == Requirement.MEASURED) {
                next[i] += option.femtofarads();
            }
        }
        return next;
    }

    static boolean withinCapacitance(long[] sums, Draft draft) {
        if (sums.length == 0) {
            return true;
        }
        List<Requirement> members = capped(draft).toList();
        for (int i = 0; i < sums.length; i++) {
            if (sums[i] > members.get(i).capacitance().getAsLong()) {
                return false;
            }
        }
        return true;
    }
}
