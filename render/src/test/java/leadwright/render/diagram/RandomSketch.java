package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;

/** Devices and hookups drawn by lot: bundles anywhere, fan-outs in fan-outs, two or three hookups. */
final class RandomSketch {
    private RandomSketch() {}

    static Plan plan(long seed) {
        return plan(seed, 5, 6, true);
    }

    /** @param nested whether a fan-out may stand inside another */
    static Plan plan(long seed, int mostParts, int mostPins, boolean nested) {
        Random random = new Random(seed);
        Device device = Sketch.device(device(random, mostParts, mostPins));
        Sketch sketch = new Sketch(device, Sketch.kit(kit(2 + random.nextInt(7))));
        int hookups = 1 + random.nextInt(3);
        for (int h = 0; h < hookups; h++) {
            hookup(random, sketch, device, nested);
        }
        return sketch.plan();
    }

    private static void hookup(Random random, Sketch sketch, Device device, boolean mayNest) {
        List<List<String>> bundles = new ArrayList<>();
        int jacks = 2 + random.nextInt(3);
        for (int i = 0; i < jacks; i++) {
            bundles.add(new ArrayList<>());
        }
        // Neighbours often share a bundle, as they do in earnest.
        int at = random.nextInt(jacks);
        for (Connection each : device.connections()) {
            at = random.nextInt(3) == 0 ? random.nextInt(jacks) : at;
            if (random.nextInt(6) > 0) {
                bundles.get(at).add(each.name());
            }
        }
        Sketch.Wiring wiring = sketch.hookup();
        int spread = 1;
        for (int jack = 1; jack <= jacks && jack <= sketch.jacks(); jack++) {
            List<String> bundle = bundles.get(jack - 1);
            String outer = "spread/" + spread++;
            String inner = "spread/" + spread++;
            boolean nested = mayNest && bundle.size() > 3 && random.nextBoolean();
            for (String each : bundle) {
                String item = random.nextBoolean() ? "wrap" : "snap-pin";
                if (bundle.size() == 1) {
                    wiring.join(jack, each, item);
                } else if (nested && random.nextInt(3) == 0) {
                    wiring.join(jack, each, item, inner, outer);
                } else {
                    wiring.join(jack, each, item, outer);
                }
            }
        }
        wiring.read(QuantityKind.APPLIED_PART_LEAKAGE, "p0", "p1").done();
    }

    private static String device(Random random, int mostParts, int mostPins) {
        StringBuilder yaml = new StringBuilder("""
                leadwright: device/1
                name: Device drawn by lot
                supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 0.3 A}
                protection: class-2
                applied-parts:
                """);
        int parts = 1 + random.nextInt(mostParts);
        List<String> panel = new ArrayList<>();
        for (int p = 0; p < parts; p++) {
            panel.add("p" + p);
            yaml.append("  - {id: p")
                    .append(p)
                    .append(", name: Part ")
                    .append("long ".repeat(random.nextInt(4)))
                    .append(p)
                    .append(", type: ")
                    .append(random.nextBoolean() ? "BF" : "CF")
                    .append(", connections: [");
            int pins = 1 + random.nextInt(mostPins);
            for (int i = 0; i < pins; i++) {
                yaml.append(i > 0 ? ", " : "").append("{id: w").append(i).append(", terminal: skin-surface}");
            }
            yaml.append("]}\n");
        }
        return yaml.append("touch-points: [{id: case, name: Case, earthed: no}]\npanel: [")
                .append(String.join(", ", panel))
                .append("]\n")
                .toString();
    }

    private static String kit(int jacks) {
        return Sketch.sample("k1-marrowgate-bench")
                .replaceAll("count: 6", "count: " + jacks)
                .replaceAll("(id: spread,.*stock: )\\d+", "$120");
    }
}
