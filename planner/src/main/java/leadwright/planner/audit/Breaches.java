package leadwright.planner.audit;

import java.util.ArrayList;
import java.util.List;

/** Collects what a replay finds. */
final class Breaches {
    private final List<Breach> found = new ArrayList<>();

    void add(Invariant invariant, String where, String what) {
        found.add(new Breach(invariant, where, what));
    }

    void check(boolean holds, Invariant invariant, String where, String what) {
        if (!holds) {
            add(invariant, where, what);
        }
    }

    List<Breach> found() {
        return List.copyOf(found);
    }
}
