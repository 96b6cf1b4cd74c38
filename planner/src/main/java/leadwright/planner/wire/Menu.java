package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;

/**
 * Every option worth having for a cluster.
 *
 * @param complete whether the search for options ended within its budget
 */
record Menu(List<Option> options, boolean complete) {
    Menu {
        options = List.copyOf(options);
    }

    /** Adds an option unless another is as good in every respect, and drops those that it beats. */
    static void add(List<Option> options, Option next, boolean priced, boolean capacitance) {
        for (Option other : options) {
            if (other.beats(next, priced, capacitance)) {
                return;
            }
        }
        options.removeIf(other -> next.beats(other, priced, capacitance));
        options.add(next);
    }

    static List<Option> fresh() {
        return new ArrayList<>();
    }
}
