package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Phase 7a: requirements that any hookup serves which serves another one.
 *
 * <p>Needs: requirements. Gives: those that no other brings along. Method: pairs. Cost: quadratic. Proof: where each set of
 * the one is a union of sets of the other, it cuts no cell further; where the tester ties neighbours only, each set must be
 * one of the other's, which are tied already.
 */
final class Followers {
    private Followers() {}

    static List<Requirement> leaders(Scene scene, List<Requirement> requirements) {
        List<Requirement> leaders = new ArrayList<>();
        for (Requirement each : requirements) {
            boolean led = requirements.stream()
                    .anyMatch(other -> other != each
                            && follows(scene, each, other)
                            && (!follows(scene, other, each) || other.index() < each.index()));
            if (!led) {
                leaders.add(each);
            }
        }
        return leaders;
    }

    /** Whether every hookup that serves {@code leader} serves {@code each} too. */
    static boolean follows(Scene scene, Requirement each, Requirement leader) {
        if (each.earth() || leader.earth()) {
            return each.earth() && leader.earth();
        }
        if (!each.duty().within(leader.duty())
                || scene.conflict()[each.index()][leader.index()]
                || scene.conflict()[leader.index()][leader.index()]
                || each.all().isEmpty() && scene.earthsIdleJacks()
                || !floatsFollow(scene, each, leader)
                || !capacitanceFollows(each, leader)) {
            return false;
        }
        for (int role = 1; role <= 3; role++) {
            if (!isMadeOf(each.with(role), leader, scene.runs())) {
                return false;
            }
        }
        return true;
    }

    /** Where nothing may float joined, what the leader joins must not float in the other. */
    private static boolean floatsFollow(Scene scene, Requirement each, Requirement leader) {
        return !scene.floatApart() || each.all().isEmpty() || each.all().equals(leader.all());
    }

    private static boolean capacitanceFollows(Requirement each, Requirement leader) {
        if (each.capacitance().isEmpty()) {
            return true;
        }
        BitSet beyond = each.with(Requirement.MEASURED);
        beyond.andNot(leader.with(Requirement.MEASURED));
        return beyond.isEmpty()
                && leader.capacitance().isPresent()
                && leader.capacitance().getAsLong() <= each.capacitance().getAsLong();
    }

    private static boolean isMadeOf(BitSet set, Requirement leader, boolean one) {
        if (set.isEmpty()) {
            return true;
        }
        BitSet union = new BitSet();
        for (int role = 1; role <= 3; role++) {
            BitSet part = leader.with(role);
            BitSet outside = (BitSet) part.clone();
            outside.andNot(set);
            if (!part.isEmpty() && outside.isEmpty()) {
                if (one && part.equals(set)) {
                    return true;
                }
                union.or(part);
            }
        }
        return !one && union.equals(set);
    }
}
