package leadwright.render;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.UnaryOperator;
import leadwright.catalog.read.ReadingsReader;
import leadwright.planner.judge.Judge;
import leadwright.planner.judge.PlanFile;
import leadwright.planner.judge.Previous;
import leadwright.planner.judge.TestRecord;

/** Records of the judge's hand-made plan and sets of readings, for tests of what is written of them. */
public final class Records {

    /** Where the sets are. */
    public static final Path SETS =
            Path.of("..", "planner", "src", "test", "resources", "leadwright", "planner", "judge");

    private Records() {}

    public static TestRecord of(String set) {
        return of(set, UnaryOperator.identity(), UnaryOperator.identity());
    }

    /** With the text of plan and readings changed first. */
    public static TestRecord of(String set, UnaryOperator<String> plan, UnaryOperator<String> readings) {
        Previous previous = Previous.read("previous", bytes("previous.json", UnaryOperator.identity()))
                .orThrow();
        return Judge.judge(
                        PlanFile.read("plan", bytes("plan.json", plan)).orThrow(),
                        ReadingsReader.read(set, bytes("readings/" + set, readings))
                                .orThrow(),
                        new Judge.Options(Optional.empty(), Optional.empty(), Optional.of(previous)))
                .orThrow();
    }

    private static byte[] bytes(String name, UnaryOperator<String> change) {
        try {
            return change.apply(Files.readString(SETS.resolve(name))).getBytes(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
