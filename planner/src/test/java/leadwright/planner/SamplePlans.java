package leadwright.planner;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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
        return plan(device(deviceFile), kit(kitFile), rulesId, House.defaults());
    }

    public static Sample plan(Device device, Kit kit, String rulesId, House house) {
        RuleSet rules = RuleSets.builtIn().find(rulesId).orElseThrow();
        Outcome outcome = Planner.plan(new Request(device, kit, rules, house, Occasion.RECURRENT, Optional.empty()));
        if (outcome instanceof Outcome.Planned planned) {
            return new Sample(planned.plan(), rules, connectors(device, kit));
        }
        throw new AssertionError(device.name() + " with " + kit.name() + " under " + rulesId + ": " + outcome);
    }

    public static Device device(String file) {
        return DeviceReader.read(file, bytes(file)).orThrow();
    }

    /** A sample device with one piece of its text replaced. */
    public static Device deviceWith(String file, String piece, String instead) {
        String text = new String(bytes(file), StandardCharsets.UTF_8);
        if (!text.contains(piece)) {
            throw new AssertionError(file + " does not contain: " + piece);
        }
        return DeviceReader.read(file, text.replace(piece, instead).getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    public static Kit kit(String file) {
        return KitReader.read(file, bytes(file)).orThrow();
    }

    /** A sample kit with one piece of its text replaced. */
    public static Kit kitWith(String file, String piece, String instead) {
        return kitWith(file, Map.of(piece, instead));
    }

    /** A sample kit with pieces of its text replaced. */
    public static Kit kitWith(String file, Map<String, String> pieces) {
        String text = new String(bytes(file), StandardCharsets.UTF_8);
        for (Map.Entry<String, String> piece : pieces.entrySet()) {
            if (!text.contains(piece.getKey())) {
                throw new AssertionError(file + " does not contain: " + piece.getKey());
            }
            text = text.replace(piece.getKey(), piece.getValue());
        }
        return KitReader.read(file, text.getBytes(StandardCharsets.UTF_8)).orThrow();
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
