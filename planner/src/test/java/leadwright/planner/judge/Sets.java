package leadwright.planner.judge;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.read.ReadingsReader;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.text.Outcome;

/** The hand-made plan, sets of readings and earlier record. */
final class Sets {

    static final Judge.Options HOUSE = new Judge.Options(Optional.empty(), Optional.empty(), Optional.empty());
    static final Judge.Options GUARD_BAND =
            new Judge.Options(Optional.of(DecisionRule.GUARD_BAND), Optional.empty(), Optional.empty());

    private Sets() {}

    static byte[] bytes(String name) {
        try (InputStream in = Sets.class.getResourceAsStream(name)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static PlannedTest plan() {
        return PlanFile.read("plan.json", bytes("plan.json")).orThrow();
    }

    /** The plan with one piece of its text replaced wherever it stands. */
    static Outcome<PlannedTest> planWith(String piece, String instead) {
        String text = new String(bytes("plan.json"), StandardCharsets.UTF_8);
        if (!text.contains(piece)) {
            throw new AssertionError("the plan does not contain: " + piece);
        }
        return PlanFile.read("plan.json", text.replace(piece, instead).getBytes(StandardCharsets.UTF_8));
    }

    static Outcome<Readings> readings(String name) {
        return ReadingsReader.read(name, bytes("readings/" + name));
    }

    static Previous previous() {
        return Previous.read("previous.json", bytes("previous.json")).orThrow();
    }

    static TestRecord judged(PlannedTest plan, String name, Judge.Options options) {
        return Judge.judge(plan, readings(name).orThrow(), options).orThrow();
    }

    static Judged reading(TestRecord record, String id) {
        return record.judged().stream()
                .filter(each -> each.planned().id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
