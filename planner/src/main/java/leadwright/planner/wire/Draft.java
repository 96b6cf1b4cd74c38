package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * A hookup as a set of requirements: the connections that they need present, cut into cells. Two connections are in one
 * cell when no requirement tells them apart; the wiring may join only such. Where the house lets nothing float joined, what
 * some requirement leaves floating is a cell of its own. Immutable.
 */
final class Draft {
    private final List<Requirement> members;
    private final int[] cell;
    private final int cells;
    private final int[] sizes;
    private final Duty duty;
    private final boolean earth;
    private final boolean floatApart;

    private Draft(List<Requirement> members, int[] cell, int cells, Duty duty, boolean earth, boolean floatApart) {
        this.members = members;
        this.cell = cell;
        this.cells = cells;
        this.sizes = new int[cells];
        for (int each : cell) {
            if (each >= 0) {
                sizes[each]++;
            }
        }
        this.duty = duty;
        this.earth = earth;
        this.floatApart = floatApart;
    }

    static Draft empty(Scene scene) {
        int[] absent = new int[scene.connections().size()];
        Arrays.fill(absent, -1);
        return new Draft(List.of(), absent, 0, Duty.ORDINARY, false, scene.floatApart());
    }

    /** This hookup with one requirement more; cells are numbered by their first connection. */
    Draft with(Requirement more) {
        List<Requirement> all = new ArrayList<>(members);
        all.add(more);
        int[] next = new int[cell.length];
        // By cell before and role, the cell now; the first row is of connections that are new.
        int[] numbers = new int[(cells + 1) * 4];
        int count = 0;
        boolean asked =
                floatApart && members.stream().anyMatch(each -> !each.all().isEmpty());
        for (int e = 0; e < cell.length; e++) {
            int was = cell[e];
            int role = more.role()[e];
            if (was < 0 && role == 0) {
                next[e] = -1;
            } else if (floatApart && floats(was, role, more, asked)) {
                next[e] = count++;
            } else {
                int key = (was + 1) * 4 + role;
                if (numbers[key] == 0) {
                    numbers[key] = ++count;
                }
                next[e] = numbers[key] - 1;
            }
        }
        return new Draft(List.copyOf(all), next, count, duty.and(more.duty()), earth || more.earth(), floatApart);
    }

    /** How many cells there are with one requirement more, at least; no more are counted than one too many. */
    int cellsWith(Requirement more, int most) {
        boolean[] seen = new boolean[(cells + 1) * 4];
        int count = 0;
        for (int e = 0; e < cell.length && count <= most; e++) {
            int key = (cell[e] + 1) * 4 + more.role()[e];
            if (key > 0 && !seen[key]) {
                seen[key] = true;
                count++;
            }
        }
        return count;
    }

    /** Whether a connection floats in the requirement that is added, or, new with it, in those before. */
    private static boolean floats(int was, int role, Requirement more, boolean asked) {
        return was < 0 ? asked : role == 0 && !more.all().isEmpty();
    }

    static Draft of(Scene scene, Iterable<Requirement> members) {
        Draft draft = empty(scene);
        for (Requirement each : members) {
            draft = draft.with(each);
        }
        return draft;
    }

    List<Requirement> members() {
        return members;
    }

    int cells() {
        return cells;
    }

    /** Number of the connection's cell, -1 where it need not be present. */
    int cellOf(int connection) {
        return cell[connection];
    }

    Duty duty() {
        return duty;
    }

    /** Whether it carries the earth lead. */
    boolean earth() {
        return earth;
    }

    BitSet connectionsOf(int wanted) {
        BitSet set = new BitSet();
        for (int e = 0; e < cell.length; e++) {
            if (cell[e] == wanted) {
                set.set(e);
            }
        }
        return set;
    }

    int present() {
        int count = 0;
        for (int each : cell) {
            count += each >= 0 ? 1 : 0;
        }
        return count;
    }

    /** The sets that the tester must tie, as bit masks of cells, each once; single cells need no tie and are left out. */
    List<Integer> ties() {
        SortedSet<Integer> ties = new TreeSet<>();
        for (Requirement member : members) {
            int[] masks = new int[4];
            for (int e = member.all().nextSetBit(0); e >= 0; e = member.all().nextSetBit(e + 1)) {
                masks[member.role()[e]] |= 1 << cell[e];
            }
            for (int role = Requirement.MEASURED; role <= Requirement.EARTHED; role++) {
                if (Integer.bitCount(masks[role]) > 1) {
                    ties.add(masks[role]);
                }
            }
        }
        return List.copyOf(ties);
    }

    /** Whether it may take the requirement as far as other requirements are concerned. */
    boolean suits(Scene scene, Requirement more) {
        boolean[] conflict = scene.conflict()[more.index()];
        for (Requirement member : members) {
            if (conflict[member.index()]) {
                return false;
            }
        }
        return true;
    }
}
