package leadwright.planner.order;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Floating;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/** Connections that a reading leaves floating while the wiring joins them: allowed, and noted on the reading. */
final class FloatingJoined {
    private FloatingJoined() {}

    /** The reading with its note, where something floats joined in its hookup. */
    static Reading noted(String id, Obligation what, Optional<Hookup> hookup) {
        Optional<String> hookupId = hookup.map(Hookup::id);
        List<Bundle> joined = Floating.joined(what, hookup);
        if (joined.isEmpty()) {
            return new Reading(id, what, hookupId);
        }
        String note =
                Floating.REMARK + joined.stream().map(FloatingJoined::bundle).collect(Collectors.joining(", "));
        return new Reading(
                id, what.noting(what.note().map(before -> before + "; " + note).orElse(note)), hookupId);
    }

    private static String bundle(Bundle bundle) {
        String jacks = bundle.jacks().stream().map(String::valueOf).collect(Collectors.joining("+"));
        return bundle.connections().size() + " connections on jack " + jacks;
    }
}
