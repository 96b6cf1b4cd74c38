package leadwright.planner.wire;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Numbers of pieces, kind by kind. */
final class Counts {
    private Counts() {}

    /** Kinds of which there are some, in their order. */
    static Set<Integer> kinds(int[] counts) {
        Set<Integer> kinds = new TreeSet<>();
        for (int kind = 0; kind < counts.length; kind++) {
            if (counts[kind] > 0) {
                kinds.add(kind);
            }
        }
        return kinds;
    }

    /** The same as a key. */
    static List<Integer> list(int[] counts) {
        return Arrays.stream(counts).boxed().toList();
    }

    static int sum(int[] counts) {
        return Arrays.stream(counts).sum();
    }
}
