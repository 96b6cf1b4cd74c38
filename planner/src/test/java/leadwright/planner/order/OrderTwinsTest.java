package leadwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Short cuts of the search against the search without them, on benches with like electrodes. */
class OrderTwinsTest {

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 300);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void twinsChangeNothing(long seed) {
        Solver solver = LikeBenches.of(seed).solver();
        OptionalInt without = seconds(solver, Grain.EVERY, true, false);
        assertThat(without).isPresent();
        assertThat(seconds(solver, Grain.EVERY, true, true)).isEqualTo(without);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void goingClassByClassBoundsEveryWayOfSharingOut(long seed) {
        Solver solver = LikeBenches.of(seed).solver();
        OptionalInt exact = seconds(solver, Grain.EVERY, true, true);
        OptionalInt lowest = seconds(solver, Grain.UNSETTLED, false, true);
        OptionalInt found = seconds(solver, Grain.UNSETTLED, true, true);
        assertThat(lowest.getAsInt()).isLessThanOrEqualTo(exact.getAsInt());
        assertThat(found.getAsInt()).isGreaterThanOrEqualTo(exact.getAsInt());
    }

    @Test
    void mostBenchesHaveTwins() {
        long with = seeds().filter(
                        seed -> !families(LikeBenches.of(seed).solver()).isEmpty())
                .count();
        assertThat(with).isGreaterThan(150);
    }

    private static List<List<Twins.Twin>> families(Solver solver) {
        return new Twins(solver.problem(Grain.EVERY)).families();
    }

    /** Empty where the limit ends the search. */
    private static OptionalInt seconds(Solver solver, Grain grain, boolean exact, boolean twins) {
        Problem problem = solver.problem(grain);
        Lineup lineup = new Lineup(twins ? new Twins(problem).families() : List.of());
        Search.Outcome outcome =
                new Task(problem, grain, lineup, 1_000_000).search(exact).run();
        return outcome.route().isPresent() ? OptionalInt.of(problem.base() + outcome.least()) : OptionalInt.empty();
    }
}
