package leadwright.render;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.plan.Occasion;

/** Real plans of the samples, for tests of what is made of them. */
public final class SamplePlans {

    private static final Path SAMPLES = Path.of("..", "samples");

    private SamplePlans() {}

    /** @throws AssertionError when the sample cannot be planned */
    public static Plan of(String device, String kit, String rules) {
        return of(bytes(device), kit, rules, bytes("ambersluice-house"));
    }

    /** The same with another device file, or in a department of other ways. */
    public static Plan of(byte[] device, String kit, String rules, byte[] house) {
        Outcome outcome = Planner.plan(new Request(
                DeviceReader.read("device", device).found().orElseThrow(),
                KitReader.read(kit, bytes(kit)).found().orElseThrow(),
                RuleSets.builtIn().find(rules).orElseThrow(),
                HouseReader.read("house", house).found().orElseThrow(),
                Occasion.RECURRENT,
                Optional.empty()));
        if (outcome instanceof Outcome.Planned planned) {
            return planned.plan();
        }
        throw new AssertionError("not planned: " + outcome);
    }

    /** The file of a sample. */
    public static byte[] bytes(String name) {
        try {
            return Files.readAllBytes(SAMPLES.resolve(name + ".yaml"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
