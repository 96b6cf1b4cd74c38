package leadwright.planner.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;

/**
 * Connections that a reading leaves floating while the wiring joins them: allowed, and noted on the reading. A reading that
 * asks nothing of the wiring (mains to earth, touch with the tester's own probe) asks for nothing to float, and has no such
 * note.
 */
final class FloatingJoined {
    private FloatingJoined() {}

    /** The reading with its note, where something floats joined in its hookup. */
    static Reading noted(String id, Obligation what, Optional<Hookup> hookup) {
        Optional<String> hookupId = hookup.map(Hookup::id);
        List<Bundle> joined = new ArrayList<>();
        if (what.phase() != Phase.CHECK
                && what.phase() != Phase.EARTH
                && !what.demand().isNothing()) {
            hookup.ifPresent(each -> each.bundles().stream()
                    .filter(bundle -> floats(bundle, what))
                    .forEach(joined::add));
        }
        if (joined.isEmpty()) {
            return new Reading(id, what, hookupId);
        }
        String note = "joined while they float: "
                + joined.stream().map(FloatingJoined::bundle).collect(Collectors.joining(", "));
        return new Reading(
                id, what.noting(what.note().map(before -> before + "; " + note).orElse(note)), hookupId);
    }

    private static boolean floats(Bundle bundle, Obligation what) {
        return bundle.connections().size() > 1
                && bundle.connections().stream()
                        .noneMatch(name -> what.demand().all().contains(name));
    }

    private static String bundle(Bundle bundle) {
        String jacks = bundle.jacks().stream().map(String::valueOf).collect(Collectors.joining("+"));
        return bundle.connections().size() + " connections on jack " + jacks;
    }
}
