package leadwright.planner;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.ConnectorDefinition;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.plan.Occasion;

/** Plans of the samples, for tests. */
public final class SamplePlans {

    private static final Path SAMPLES = Path.of("..", "samples");

    private SamplePlans() {}

    /** A plan with what the audit needs to replay it. */
    public record Sample(Plan plan, RuleSet rules, Connectors connectors) {}

    public static Sample brindlewickTypeTest() {
        return plan("brindlewick-ward-monitor.yaml", "k1-marrowgate-bench.yaml", "iec-60601-1-ed3");
    }

    public static Sample oddlebar() {
        return plan("oddlebar-rescue-set.yaml", "k1-marrowgate-bench.yaml", "iec-62353-2014");
    }

    public static Sample plan(String deviceFile, String kitFile, String rulesId) {
        Device device = device(deviceFile);
        Kit kit = kit(kitFile);
        RuleSet rules = RuleSets.builtIn().find(rulesId).orElseThrow();
        Outcome outcome =
                Planner.plan(new Request(device, kit, rules, House.defaults(), Occasion.RECURRENT, Optional.empty()));
        if (outcome instanceof Outcome.Planned planned) {
            return new Sample(planned.plan(), rules, connectors(device, kit));
        }
        throw new AssertionError(deviceFile + " with " + kitFile + " under " + rulesId + ": " + outcome);
    }

    public static Device device(String file) {
        return DeviceReader.read(file, bytes(file)).orThrow();
    }

    public static Kit kit(String file) {
        return KitReader.read(file, bytes(file)).orThrow();
    }

    public static Connectors connectors(Device device, Kit kit) {
        List<ConnectorDefinition> definitions = new ArrayList<>(device.connectors());
        definitions.addAll(kit.connectors());
        return Connectors.builtIn().with(definitions);
    }

    private static byte[] bytes(String file) {
        try {
            return Files.readAllBytes(SAMPLES.resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
