package leadwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The planner's time against a search that knows no classes, no bounds and no short cuts. */
class OrderExhaustiveTest {

    /** The last ones are from a wider range: a way off through a fault, a class parted by its places or by what waits for it. */
    static LongStream seeds() {
        return LongStream.concat(LongStream.rangeClosed(1, 2000), LongStream.of(6537, 6545, 10355, 19721, 21380));
    }

    private static long benches(Predicate<Bench> which) {
        return seeds().filter(seed -> which.test(SmallBenches.of(seed))).count();
    }

    private static boolean wires(Bench bench, String part) {
        return bench.hookups.stream()
                .flatMap(hookup -> hookup.chains().stream())
                .anyMatch(chain -> chain.connection().startsWith(part));
    }

    private static boolean reads(Bench bench, Predicate<Obligation> which) {
        return bench.wanted.stream().anyMatch(which);
    }

    @Test
    void everyKindOfBenchIsAmongThem() {
        Map<String, Predicate<Bench>> kinds = new LinkedHashMap<>();
        kinds.put("re-plugged under power", bench -> bench.underPower);
        kinds.put("re-plugged in off only", bench -> !bench.underPower);
        kinds.put("with a battery", bench -> bench.battery != Battery.NONE);
        kinds.put("without a battery", bench -> bench.battery == Battery.NONE);
        kinds.put("bears no power cut", bench -> bench.toleratesCut.equals(Optional.of(false)));
        kinds.put("operating modes", bench -> reads(bench, each -> each.mode().equals("heating")));
        kinds.put("therapy output", bench -> wires(bench, "pace."));
        kinds.put("snap", bench -> wires(bench, "ecg."));
        kinds.put("touch-proof", bench -> wires(bench, "eeg."));
        kinds.put("foil", bench -> wires(bench, "cuff."));
        kinds.put("probe in a jack", bench -> wires(bench, Device.TOUCH_PROBE));
        kinds.put("three hookups", bench -> bench.hookups.size() == 3);
        kinds.put("earth lead parted before leakage", bench -> bench.earthRest == AtRest.EARTHED);
        kinds.put(
                "several hookups may take it",
                bench -> bench.takenIn.values().stream().anyMatch(in -> in.size() > 1));
        for (QuantityKind quantity : List.of(
                QuantityKind.MAINS_ON_APPLIED_PART,
                QuantityKind.INSULATION_RESISTANCE,
                QuantityKind.TOUCH_CURRENT,
                QuantityKind.EARTH_RESISTANCE)) {
            kinds.put(quantity.word(), bench -> reads(bench, each -> each.quantity() == quantity));
        }
        for (MainsState state : MainsState.values()) {
            if (state != MainsState.INSTALLED_ON && state != MainsState.ISOLATED) {
                kinds.put(state.word(), bench -> reads(bench, each -> each.state() == state));
            }
        }
        kinds.forEach((kind, which) -> assertThat(benches(which)).as(kind).isGreaterThan(25));
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
