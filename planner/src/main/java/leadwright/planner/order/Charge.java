package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * What a route that a {@link Sketch} found takes in full: its selections followed one by one, as {@link Ties} counts them.
 */
final class Charge {
    private Charge() {}

    /** Empty where it comes to a fault in which it completes nothing: that is a bound, not a route. */
    static Optional<Route> charged(Route route, Problem problem) {
        Ties ties = new Ties(problem.demands().size());
        int tie = Ties.NONE;
        int seconds = 0;
        int site = -1;
        List<Route.Leg> legs = new ArrayList<>();
        for (Route.Leg leg : route.legs()) {
            if (leg.plugged()) {
                seconds += site < 0
                        ? problem.opening()[problem.hookupOf(leg.site())]
                        : problem.replugs().between(site, leg.site()).seconds();
                site = leg.site();
                tie = Ties.NONE;
            }
            if (leg.visit().isEmpty() && problem.poses().get(leg.pose()).fault()) {
                return Optional.empty();
            }
            seconds += leg.move().map(Move::seconds).orElse(0);
            if (!leg.visit().isEmpty()) {
                BitSet taken = new BitSet();
                BitSet demands = new BitSet();
                for (Unit unit : leg.visit()) {
                    taken.set(unit.index());
                    demands.or(unit.demands());
                }
                Ties.After after = ties.visit(tie, demands, problem.blocks().get(problem.hookupOf(leg.site())));
                seconds += problem.visit(taken, leg.visit().get(0).phase(), demands, after.carried());
                tie = after.tie();
            }
            legs.add(leg);
        }
        return Optional.of(new Route(legs, seconds));
    }
}
