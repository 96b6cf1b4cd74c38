package leadwright.planner.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.LongStream;
import leadwright.planner.order.WardBenches;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Figures of docs/planning.md; run by its name alone. Time is printed, never asserted. */
class OrderFigures {

    @Test
    void time() throws RunnerException {
        String only = OrderBenchmark.class.getName() + ".order";
        assertThat(new Runner(new OptionsBuilder().include(only).build()).run()).hasSize(1);
    }

    @Test
    void proven() {
        long proven = LongStream.rangeClosed(1, OrderBenchmark.BENCHES)
                .filter(seed -> WardBenches.ordering(seed).get().proof().optimal())
                .count();
        System.out.println(proven + " of " + OrderBenchmark.BENCHES + " proven");
        assertThat(proven).isPositive();
    }
}
