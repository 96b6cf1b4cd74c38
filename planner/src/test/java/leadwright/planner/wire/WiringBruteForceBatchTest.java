package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.LongFunction;
import java.util.function.LongPredicate;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import leadwright.catalog.house.House;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Many more small cases against every way to plug them together, a hundred and a few at a time: of each batch a hundred at
 * least are small enough and proven. With {@code -Dleadwright.campaign=N} there are N times as many batches.
 */
class WiringBruteForceBatchTest {
    private static final int BATCHES = 7 * Integer.getInteger("leadwright.campaign", 1);
    private static final int DRAWN = 105;
    /**
     * Here one reading fits only where a lead from a second jack closes the bare back of a stackable plug while mains is on the
     * part. That is not planned: the reading is listed as not measured, which is the safe side.
     */
    private static final Set<Long> BACK_CLOSED_BY_A_LEAD = Set.of(12_043L);

    private static final String TOO_LARGE = "too large";
    private static final String UNPROVEN = "not proven";

    static Stream<Long> batches() {
        return IntStream.range(0, BATCHES).mapToObj(batch -> 10_000L + 1_000L * batch);
    }

    @ParameterizedTest(name = "seeds from {0}")
    @MethodSource("batches")
    void as_few_hookups_as_by_trying_everything(long first) {
        agreed(first, SmallCase::draw, seed -> seed % 4 == 0);
    }

    @ParameterizedTest(name = "seeds from {0}, in a row")
    @MethodSource("batches")
    void as_few_in_a_row_whose_bundles_may_stand_on_several_jacks(long first) {
        agreed(first, SmallCase::drawRow, seed -> seed % 2 == 0);
    }

    private static void agreed(long first, LongFunction<SmallCase> draw, LongPredicate stricter) {
        List<Optional<String>> found = LongStream.range(first, first + DRAWN)
                .filter(seed -> !BACK_CLOSED_BY_A_LEAD.contains(seed))
                .parallel()
                .mapToObj(seed -> compared(draw.apply(seed), stricter.test(seed)))
                .toList();
        assertThat(found.stream()
                        .flatMap(Optional::stream)
                        .filter(each -> !each.equals(TOO_LARGE) && !each.equals(UNPROVEN))
                        .toList())
                .as("cases that disagree")
                .isEmpty();
        assertThat(found)
                .as("small enough and proven")
                .filteredOn(Optional::isEmpty)
                .hasSizeGreaterThanOrEqualTo(100);
    }

    /** Empty where both agree; a number that is not called proven only has to be honest. */
    private static Optional<String> compared(SmallCase small, boolean stricter) {
        House house = stricter ? Rig.nothingFloatsJoined() : House.defaults();
        Wiring wiring = Rig.wire(small.device(), small.kit(), house, small.obligations());
        try {
            if (!wiring.proof().optimal()) {
                int fewest = new BruteForce(small, stricter).fewest(new TreeSet<>());
                assertThat(wiring.proof().lowerBound()).isLessThanOrEqualTo(fewest);
                assertThat(wiring.proof().answer()).isGreaterThanOrEqualTo(fewest);
                return Optional.of(UNPROVEN);
            }
            WiringBruteForceTest.compare(small, house);
            return Optional.empty();
        } catch (BruteForce.TooLarge e) {
            return Optional.of(TOO_LARGE);
        } catch (AssertionError e) {
            return Optional.of(small + (stricter ? ", nothing floats joined: " : ": ") + e.getMessage());
        }
    }
}
