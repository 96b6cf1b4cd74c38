package leadwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every ordering, on small benches drawn from seeds. */
class OrderPropertiesTest {

    static LongStream seeds() {
        return LongStream.rangeClosed(10_001, 10_400);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void everyStepIsAllowedWhereItStands(long seed) {
        Bench bench = SmallBenches.of(seed);
        Replay.check(bench.device(), bench.underPower, bench.order(), bench.wanted);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theSameInputGivesTheSameSteps(long seed) {
        assertThat(SmallBenches.of(seed).order())
                .isEqualTo(SmallBenches.of(seed).order());
    }
}
