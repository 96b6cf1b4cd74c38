package leadwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

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
        OptionalInt without = solver.seconds(Grain.EVERY, true, false);
        assertThat(without).isPresent();
        assertThat(solver.seconds(Grain.EVERY, true, true)).isEqualTo(without);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void goingClassByClassBoundsEveryWayOfSharingOut(long seed) {
        Solver solver = LikeBenches.of(seed).solver();
        OptionalInt exact = solver.seconds(Grain.EVERY, true, true);
        OptionalInt lowest = solver.seconds(Grain.UNSETTLED, false, true);
        OptionalInt found = solver.seconds(Grain.UNSETTLED, true, true);
        assertThat(lowest.getAsInt()).isLessThanOrEqualTo(exact.getAsInt());
        assertThat(found.getAsInt()).isGreaterThanOrEqualTo(exact.getAsInt());
    }

    @Test
    void mostBenchesHaveTwins() {
        long with = seeds().filter(seed -> LikeBenches.of(seed).solver().twins() > 0)
                .count();
        assertThat(with).isGreaterThan(150);
    }
}
