package leadwright.planner.wire;

import java.util.BitSet;
import java.util.List;
import java.util.OptionalLong;
import leadwright.planner.plan.Demand;

/**
 * One distinct thing that some hookup must offer: a demand with the duty of its readings, or the earth lead.
 *
 * @param index position in {@link Scene#requirements()}
 * @param role by connection number: 0 in none of the sets, 1 measured, 2 against, 3 earthed
 * @param all numbers of the connections that must be present
 * @param capacitance most that the chains of the measured connections may have, in femtofarads, where the house makes
 *     it a hard limit
 * @param keys obligations that it stands for
 */
record Requirement(
        int index,
        Demand demand,
        Duty duty,
        boolean earth,
        byte[] role,
        BitSet all,
        OptionalLong capacitance,
        List<String> keys) {

    static final int MEASURED = 1;
    static final int AGAINST = 2;
    static final int EARTHED = 3;

    /** Numbers of the connections with this role. */
    BitSet with(int wanted) {
        BitSet set = new BitSet();
        for (int e = all.nextSetBit(0); e >= 0; e = all.nextSetBit(e + 1)) {
            if (role[e] == wanted) {
                set.set(e);
            }
        }
        return set;
    }

    /** In words, short: {@code ecg.R against 14 others}. */
    String describe() {
        if (all.isEmpty()) {
            return earth ? "the earth lead" : "nothing plugged in";
        }
        return some(demand.measured(), "connections tied")
                + (demand.against().isEmpty() ? "" : " against " + some(demand.against(), "others"))
                + (demand.earthed().isEmpty() ? "" : " with " + some(demand.earthed(), "others") + " earthed")
                + (duty.insulation() ? " at the insulation voltage" : duty.mains() ? " with mains on it" : "");
    }

    private static String some(java.util.SortedSet<String> names, String many) {
        return names.size() == 1 ? names.first() : names.size() + " " + many;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Requirement that && that.index == index;
    }

    @Override
    public int hashCode() {
        return index;
    }
}
