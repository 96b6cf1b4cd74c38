package leadwright.planner.wire;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Phase 7b: interchangeable connections. Two connections are twins when exchanging them everywhere leaves the
 * requirements, the kit's view of them and what must stay apart as they were.
 *
 * <p>Needs: scene, requirements. Gives: classes of twins, and for a requirement the one that an exchange makes of it.
 * Method: exchange and look up. Cost: connections × classes × requirements. Proof: being exchangeable is transitive, so one
 * member stands for its class.
 */
final class Twins {
    private final Map<Key, Requirement> known = new HashMap<>();
    private final List<List<Integer>> classes = new ArrayList<>();

    private record Key(ByteBuffer roles, Duty duty, boolean earth, long capacitance) {}

    Twins(Scene scene, List<Requirement> requirements) {
        this(scene, requirements, Therapy.apart(scene));
    }

    /** @param apart by connection, what never shares a hookup with it */
    Twins(Scene scene, List<Requirement> requirements, BitSet[] apart) {
        for (Requirement each : requirements) {
            known.put(key(each, each.role()), each);
        }
        int connections = scene.connections().size();
        for (int e = 0; e < connections; e++) {
            int member = e;
            int found = -1;
            for (int c = 0; c < classes.size() && found < 0; c++) {
                int first = classes.get(c).get(0);
                if (scene.leaves().get(first).equals(scene.leaves().get(e))
                        && alike(apart, first, e)
                        && requirements.stream().allMatch(r -> twin(r, first, member) != null)) {
                    found = c;
                }
            }
            if (found < 0) {
                found = classes.size();
                classes.add(new ArrayList<>());
            }
            classes.get(found).add(e);
        }
    }

    private static boolean alike(BitSet[] apart, int one, int other) {
        BitSet a = (BitSet) apart[one].clone();
        BitSet b = (BitSet) apart[other].clone();
        for (BitSet set : List.of(a, b)) {
            set.clear(one);
            set.clear(other);
        }
        return a.equals(b);
    }

    /** What the requirement becomes when the two connections are exchanged, null where that is none of the requirements. */
    Requirement twin(Requirement requirement, int one, int other) {
        byte[] role = requirement.role();
        if (role[one] == role[other]) {
            return requirement;
        }
        byte[] exchanged = role.clone();
        exchanged[one] = role[other];
        exchanged[other] = role[one];
        return known.get(key(requirement, exchanged));
    }

    /** All requirements that an exchange of twins within one cell of the draft (or outside it) makes of this one. */
    List<Requirement> equivalents(Requirement requirement, Draft draft) {
        List<Requirement> all = new ArrayList<>();
        for (List<Integer> members : classes) {
            if (uniform(requirement, members)) {
                continue;
            }
            List<List<Integer>> byRole = new ArrayList<>();
            for (int role = 0; role <= Requirement.EARTHED; role++) {
                byRole.add(new ArrayList<>());
            }
            members.forEach(member -> byRole.get(requirement.role()[member]).add(member));
            for (int low = 0; low < byRole.size(); low++) {
                for (int high = low + 1; high < byRole.size(); high++) {
                    for (int one : byRole.get(low)) {
                        for (int other : byRole.get(high)) {
                            if (draft.cellOf(one) == draft.cellOf(other)) {
                                all.add(twin(requirement, one, other));
                            }
                        }
                    }
                }
            }
        }
        return all;
    }

    /** Classes of twins, members in panel order. */
    List<List<Integer>> classes() {
        return classes;
    }

    /** The one member of the class that the requirement tells from the others; -1 where it tells none or several. */
    int singledOut(Requirement requirement, List<Integer> members) {
        int[] count = new int[4];
        for (int e : members) {
            count[requirement.role()[e]]++;
        }
        for (int e : members) {
            int role = requirement.role()[e];
            boolean others = count[role] == 1
                    && java.util.stream.IntStream.of(count).filter(n -> n > 0).count() == 2;
            // Of two members either could be meant: the one in the earlier set is.
            if (others && (members.size() > 2 || rank(role) == lowest(count))) {
                return e;
            }
        }
        return -1;
    }

    private static int rank(int role) {
        return role == 0 ? 4 : role;
    }

    private static int lowest(int[] count) {
        for (int rank = 1; rank <= 4; rank++) {
            if (count[rank % 4] > 0) {
                return rank;
            }
        }
        return 0;
    }

    /** Whether the requirement treats all members alike. */
    static boolean uniform(Requirement requirement, List<Integer> members) {
        int first = requirement.role()[members.get(0)];
        for (int member : members) {
            if (requirement.role()[member] != first) {
                return false;
            }
        }
        return true;
    }

    private static Key key(Requirement each, byte[] role) {
        return new Key(
                ByteBuffer.wrap(role),
                each.duty(),
                each.earth(),
                each.capacitance().orElse(-1));
    }
}
