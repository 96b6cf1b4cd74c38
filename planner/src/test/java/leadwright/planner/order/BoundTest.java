package leadwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.BitSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import leadwright.planner.plan.Obligation.Phase;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The bound is a bound: nowhere along an order that was found does it ask for more than that order still takes. */
class BoundTest {

    static Stream<Bench> benches() {
        return Stream.concat(
                LongStream.rangeClosed(1, 60).mapToObj(WardBenches::of),
                LongStream.rangeClosed(2001, 2200).mapToObj(SmallBenches::of));
    }

    @ParameterizedTest
    @MethodSource("benches")
    void asksForNoMoreThanIsLeft(Bench bench) {
        Solver.Answer answer = bench.solver().solve();
        Problem problem = answer.problem();
        Bound bound = new Bound(problem);
        Ties ties = new Ties(problem.demands().size());
        BitSet done = new BitSet();
        int tie = Ties.NONE;
        boolean selected = false;
        int seconds = 0;
        int site = -1;
        for (Route.Leg leg : answer.route().legs()) {
            if (leg.plugged()) {
                seconds += site < 0
                        ? problem.opening()[problem.hookupOf(leg.site())]
                        : problem.replugs().between(site, leg.site()).seconds();
                tie = Ties.NONE;
                selected = false;
            }
            site = leg.site();
            seconds += leg.move().map(Move::seconds).orElse(0);
            if (!leg.visit().isEmpty()) {
                BitSet taken = new BitSet();
                BitSet demands = new BitSet();
                leg.visit().forEach(unit -> {
                    taken.set(unit.index());
                    demands.or(unit.demands());
                });
                Phase phase = leg.visit().get(0).phase();
                Ties.After after = ties.visit(tie, demands, problem.blocks().get(problem.hookupOf(site)));
                seconds += problem.visit(taken, phase, demands, after.carried());
                tie = after.tie();
                selected |= !demands.isEmpty();
                done.or(taken);
                if (phase == Phase.MAINS_ON_PART) {
                    done.set(problem.units().size() + problem.hookupOf(site));
                }
            }
            assertThat(bound.rest(site, leg.pose(), selected, done))
                    .as("left of %d s after %s", answer.route().seconds() - seconds, leg)
                    .isLessThanOrEqualTo(answer.route().seconds() - seconds);
        }
        assertThat(seconds).isEqualTo(answer.route().seconds());
    }
}
