package leadwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The planner's time against a search that knows no classes, no bounds and no short cuts. */
class OrderExhaustiveTest {

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 600);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void takesNoLongerThanTheBestOfAllOrders(long seed) {
        Ordering ordering = SmallBenches.of(seed).order();
        int least = new Exhaustive(SmallBenches.of(seed)).least();
        assertThat(ordering.time().total()).as("total of seed %d", seed).isEqualTo(least);
        assertThat(ordering.proof().answer()).isEqualTo(least);
        assertThat(ordering.proof().lowerBound()).isEqualTo(least);
    }
}
