package leadwright.planner.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import leadwright.planner.order.Ordering;
import leadwright.planner.order.WardBenches;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Time of one order on {@link WardBenches}: every call takes the next of the benches, so that the spread is theirs. */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 10)
@Measurement(iterations = 3, time = 10)
@Fork(value = 1, jvmArgs = "-Xmx256m")
public class OrderBenchmark {
    static final int BENCHES = 100;

    private final List<Supplier<Ordering>> benches = new ArrayList<>();
    private int next;

    @Setup
    public void draw() {
        for (long seed = 1; seed <= BENCHES; seed++) {
            benches.add(WardBenches.ordering(seed));
        }
    }

    @Benchmark
    public Ordering order() {
        next = (next + 1) % benches.size();
        return benches.get(next).get();
    }
}
