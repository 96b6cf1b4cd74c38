package leadwright.render.diagram;

import java.util.LinkedHashMap;
import java.util.Map;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;

/** Hookups at the ends of what can be: very many places, jacks or items in a row, and next to nothing. */
final class Extremes {
    private Extremes() {}

    static Map<String, Plan> all() {
        Map<String, Plan> all = new LinkedHashMap<>();
        all.put("ninety places", places());
        all.put("forty jacks", jacks());
        all.put("long chains", chains());
        all.put("nothing to join", bare());
        return all;
    }

    private static String device(String parts, String rest) {
        return """
                leadwright: device/1
                name: Device at the edge
                supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 0.3 A}
                protection: class-1
                """ + parts + rest;
    }

    private static String kit() {
        return Sketch.sample("k1-marrowgate-bench")
                .replaceAll("(id: snap-pin,.*stock: )\\d+", "$160")
                .replaceAll("(id: spread,.*stock: )\\d+", "$120");
    }

    /** The clip goes to ninety places. */
    static Plan places() {
        StringBuilder points = new StringBuilder("touch-points:\n");
        String[] ids = new String[90];
        for (int i = 0; i < ids.length; i++) {
            ids[i] = "place-" + (i + 1);
            points.append("  - {id: ")
                    .append(ids[i])
                    .append(", name: Place ")
                    .append(i + 1)
                    .append(", earthed: yes}\n");
        }
        return new Sketch(Sketch.device(device("", points.toString())), Sketch.kit(kit()))
                .hookup()
                .earth("part", "place-1", "earth-jack", "lead-earth/1", "jaw/1")
                .clip(ids)
                .done()
                .plan();
    }

    private static String part(int wires) {
        StringBuilder yaml =
                new StringBuilder("applied-parts:\n  - id: p\n    name: Part\n    type: CF\n    connections:\n");
        for (int i = 1; i <= wires; i++) {
            yaml.append("      - {id: w").append(i).append(", terminal: snap-socket}\n");
        }
        return yaml.toString();
    }

    /** Forty wires, each on a jack of its own, from the last to the first. */
    static Plan jacks() {
        Sketch.Wiring wiring = new Sketch(
                        Sketch.device(device(part(40), "")), Sketch.kit(kit().replace("count: 6", "count: 40")))
                .hookup();
        for (int i = 1; i <= 40; i++) {
            wiring.join(41 - i, "p.w" + i, "snap-pin");
        }
        return wiring.read(QuantityKind.PATIENT_LEAKAGE, "p.w1").done().plan();
    }

    /** Leads between the items, fan-outs three deep. */
    static Plan chains() {
        Sketch.Wiring wiring = new Sketch(Sketch.device(device(part(9), "")), Sketch.kit(kit())).hookup();
        for (int i = 1; i <= 9; i++) {
            if (i <= 3) {
                wiring.join(1, "p.w" + i, "snap-pin", "lead-short", "spread/1", "lead-earth/1", "spread/2", "spread/3");
            } else if (i <= 6) {
                wiring.join(1, "p.w" + i, "snap-pin", "spread/2", "spread/3");
            } else {
                wiring.join(2, "p.w" + i, "snap-pin", "lead-short", "spread/4", "lead-earth/2");
            }
        }
        return wiring.read(QuantityKind.PATIENT_LEAKAGE, "p").done().plan();
    }

    /** No applied part, no place, no lead: only the cord. */
    static Plan bare() {
        return new Sketch(Sketch.device(device("", "")), Sketch.kit(kit()))
                .hookup()
                .done()
                .plan();
    }
}
