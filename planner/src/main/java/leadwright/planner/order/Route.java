package leadwright.planner.order;

import java.util.List;
import java.util.Optional;

/**
 * What the search found.
 *
 * @param seconds beyond {@link Problem#base}
 */
record Route(List<Leg> legs, int seconds) {
    Route {
        legs = List.copyOf(legs);
    }

    /** The sites in the order in which it comes to them. */
    List<Integer> sites() {
        return legs.stream().filter(Leg::plugged).map(Leg::site).toList();
    }

    /**
     * One stretch of it.
     *
     * @param site where it takes place
     * @param plugged whether it begins with setting up or coming to this site
     * @param move change of pose, before the visit
     * @param visit units that are then taken
     * @param pose index of the pose at its end
     */
    record Leg(int site, boolean plugged, Optional<Move> move, List<Unit> visit, int pose) {
        Leg {
            visit = List.copyOf(visit);
        }
    }
}
