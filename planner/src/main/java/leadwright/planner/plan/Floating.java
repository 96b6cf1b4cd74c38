package leadwright.planner.plan;

import java.util.List;
import java.util.Optional;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Connections that a reading leaves floating while the wiring joins them. A reading that asks nothing of the wiring (mains
 * to earth, touch with the tester's own probe) asks for nothing to float.
 */
public final class Floating {

    /** How the remark about them begins, in the note of a reading. */
    public static final String REMARK = "joined while they float: ";

    private Floating() {}

    /** Bundles of the hookup that float as a whole during the reading and hold more than one connection. */
    public static List<Bundle> joined(Obligation what, Optional<Hookup> hookup) {
        if (what.phase() == Phase.CHECK
                || what.phase() == Phase.EARTH
                || what.demand().isNothing()) {
            return List.of();
        }
        return hookup.map(Hookup::bundles).orElse(List.of()).stream()
                .filter(bundle -> floats(bundle, what))
                .toList();
    }

    private static boolean floats(Bundle bundle, Obligation what) {
        return bundle.connections().size() > 1
                && bundle.connections().stream()
                        .noneMatch(name -> what.demand().all().contains(name));
    }
}
