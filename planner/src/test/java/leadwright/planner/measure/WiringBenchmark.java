package leadwright.planner.measure;

import java.util.List;
import java.util.concurrent.TimeUnit;
import leadwright.planner.wire.Rig;
import leadwright.planner.wire.Wiring;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Time of one wiring on {@link Families}, family by family: every call takes the next instance of up to so many connections.
 * {@link WiringFigures} times each instance once instead.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 2, time = 10)
@Measurement(iterations = 3, time = 10)
@Fork(value = 1, jvmArgs = "-Xmx256m")
public class WiringBenchmark {
    @Param({"JOINED", "ALONE", "AGAINST_REST", "REALISTIC", "CROSSING"})
    public Instance.Family family;

    @Param("64")
    public int connections;

    private List<Instance> instances = List.of();
    private int next;

    @Setup
    public void draw() {
        instances = Families.all().stream()
                .filter(each -> each.family() == family && each.kinds().size() <= connections)
                .toList();
    }

    @Benchmark
    public Wiring wiring() {
        next = (next + 1) % instances.size();
        Instance instance = instances.get(next);
        return Rig.wire(instance.device(), instance.kit(), instance.obligations());
    }
}
