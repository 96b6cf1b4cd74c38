package leadwright.render.diagram;

import java.util.LinkedHashMap;
import java.util.Map;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.house.House;
import leadwright.catalog.house.LabelCode;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;

/** Hookups that are harder to draw: more wires, nested bundles, links, names from hostile files. */
final class Crowded {
    private Crowded() {}

    static Map<String, Plan> all() {
        Map<String, Plan> all = new LinkedHashMap<>();
        all.put("full", full());
        all.put("nested", nested());
        all.put("linked", linked());
        all.put("array", array());
        all.put("single", single());
        all.put("american", american());
        all.put("hostile", hostile());
        return all;
    }

    private static final String MONITOR = """
            leadwright: device/1
            name: Brindlewick ward monitor, full fitting
            supply: {connection: detachable-cord, inlet: iec-60320-c14, cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 0.6 A}
            protection: class-1
            battery: backs-up
            applied-parts:
              - {id: cuff, name: Cuff pressure, type: BF, connections: [{id: cuff, terminal: skin-surface}]}
              - {id: spo2, name: Pulse oximetry, type: BF, connections: [{id: sensor, terminal: skin-surface}]}
              - {id: ecg, name: ECG, type: CF, defibrillation-proof: true, set: ecg-10, terminal: snap-socket}
              - {id: temp, name: Temperature, type: CF, connections: [{id: t1, terminal: skin-surface}, {id: t2, terminal: skin-surface}]}
              - {id: ibp, name: Invasive pressure, type: CF, connections: [{id: p1, terminal: liquid-column}, {id: p2, terminal: liquid-column}, {id: p3, terminal: liquid-column}, {id: p4, terminal: liquid-column}]}
              - {id: co, name: Cardiac output, type: CF, connections: [{id: bath, terminal: liquid-column}, {id: tip, terminal: skin-surface}]}
            ports: [{id: lan, name: Network}]
            touch-points:
              - {id: pole-clamp, name: Pole clamp, earthed: yes}
              - {id: bezel-screw, name: Bezel screw, earthed: no}
            panel: [cuff, spo2, ecg, temp, ibp, co]
            """;

    private static final String BENCH =
            Sketch.sample("k1-marrowgate-bench").replaceAll("(id: spread,.*stock: )\\d+", "$14");

    /** Twenty connections of six applied parts on six jacks, then fewer. */
    static Plan full() {
        return new Sketch(Sketch.device(MONITOR), Sketch.kit(BENCH))
                .hookup()
                .join(1, "cuff.cuff", "wrap")
                .join(2, "spo2.sensor", "wrap")
                .joinAll(3, "ecg", "snap-pin", "spread/1")
                .joinAll(4, "temp", "wrap", "spread/2")
                .joinAll(5, "ibp", "line-pin", "spread/3")
                .join(6, "co.bath", "line-pin", "spread/4")
                .join(6, "co.tip", "wrap", "spread/4")
                .earth("part", "pole-clamp", "earth-jack", "lead-earth/1", "jaw/1")
                .clip("pole-clamp")
                .touch("bezel-screw")
                .read(QuantityKind.EQUIPMENT_LEAKAGE, "cuff", "spo2", "ecg", "temp", "ibp", "co")
                .read(QuantityKind.TOTAL_PATIENT_LEAKAGE, "ecg", "temp", "ibp", "co")
                .read(QuantityKind.TOTAL_PATIENT_LEAKAGE, "cuff", "spo2")
                .done()
                .hookup()
                .join(1, "ibp.p1", "line-pin/1")
                .join(2, "ibp.p2", "line-pin/2")
                .join(3, "ibp.p3", "line-pin/3")
                .join(4, "ibp.p4", "line-pin/4")
                .join(5, "housing.bezel-screw", "jaw/2", "lead-short")
                .join(6, "port.lan", "jaw/3", "lead-short")
                .read(QuantityKind.PATIENT_LEAKAGE, "ibp.p1")
                .read(QuantityKind.PATIENT_LEAKAGE, "ibp.p2")
                .done()
                .plan();
    }

    /** Type BF between the CF parts: its bundle must leave another one, as one trunk. */
    static Plan nested() {
        return new Sketch(Sketch.device(Sketch.sample("brindlewick-ward-monitor")), Sketch.kit(BENCH))
                .hookup()
                .joinAll(2, "ecg", "snap-pin", "spread/1")
                .joinAll(2, "ibp", "line-pin", "spread/3", "spread/1")
                .join(2, "temp.probe", "wrap", "spread/3", "spread/1")
                .join(1, "spo2.sensor", "wrap", "spread/2")
                .join(1, "cuff.cuff", "wrap", "spread/2")
                .read(QuantityKind.TOTAL_PATIENT_LEAKAGE, "ecg", "ibp", "temp")
                .read(QuantityKind.TOTAL_PATIENT_LEAKAGE, "spo2", "cuff")
                .done()
                .plan();
    }

    /** One bundle on two jacks. */
    static Plan linked() {
        return new Sketch(Sketch.device(Sketch.sample("brindlewick-ward-monitor")), Sketch.kit(BENCH))
                .hookup()
                .joinAll(2, "ecg", "snap-pin", "spread/1")
                .link(2, 3, "lead-short/1")
                .join(1, "spo2.sensor", "wrap")
                .join(5, "temp.probe", "wrap", "lead-short/2")
                .join(5, "cuff.cuff", "wrap", "lead-short/2")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "ecg")
                .done()
                .plan();
    }

    private static String electrodes(int count) {
        StringBuilder yaml = new StringBuilder("""
                leadwright: device/1
                name: Larkspur electrode array
                supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 0.3 A}
                protection: class-2
                applied-parts:
                  - id: head
                    name: Electrode array
                    type: BF
                    connections:
                """);
        for (int i = 1; i <= count; i++) {
            yaml.append("      - {id: e").append(i).append(", terminal: tp15-socket}\n");
        }
        return yaml.append("touch-points: [{id: case, name: Case, earthed: no}]\npanel: [head]\n")
                .toString();
    }

    private static String combs() {
        return Sketch.sample("k1-marrowgate-bench")
                .replaceAll("count: 6", "count: 16")
                .replaceAll("(id: comb,.*stock: )\\d+", "$140")
                .replaceAll("(id: spread,.*stock: )\\d+", "$18");
    }

    /** So many wires, eight to a comb and four combs to a jack. */
    static Plan array(int wires) {
        Sketch sketch = new Sketch(Sketch.device(electrodes(wires)), Sketch.kit(combs()));
        return combed(sketch.hookup(), wires)
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "head")
                .done()
                .plan();
    }

    private static Sketch.Wiring combed(Sketch.Wiring wiring, int wires) {
        for (int i = 0; i < wires; i++) {
            wiring.join(i / 32 + 1, "head.e" + (i + 1), "comb/" + (i / 8 + 1), "spread/" + (i / 32 + 1));
        }
        return wiring;
    }

    /** 256 wires on 32 combs, four to a jack; then a quarter of them alone. */
    static Plan array() {
        Sketch sketch = new Sketch(Sketch.device(electrodes(256)), Sketch.kit(combs()));
        combed(sketch.hookup(), 256)
                .join(9, "housing.case", "jaw", "lead-short")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "head")
                .done();
        return combed(sketch.hookup(), 64)
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "head.e1.")
                .done()
                .plan();
    }

    /** 64 wires with a jack or a place of their own in some hookup, so that no ribbon can stand for them. */
    static Plan single() {
        Sketch sketch = new Sketch(Sketch.device(electrodes(64)), Sketch.kit(combs()));
        for (int h = 0; h < 2; h++) {
            Sketch.Wiring wiring = sketch.hookup();
            for (int i = 0; i < 15; i++) {
                wiring.join(i + 1, "head.e" + (h * 15 + i + 1), "touch-proof-pin/" + (i + 1));
            }
            for (int i = 0; i < 64; i++) {
                if (i < h * 15 || i >= h * 15 + 15) {
                    wiring.join(16, "head.e" + (i + 1), "comb/" + (i / 8 + 1), "spread/1");
                }
            }
            wiring.read(QuantityKind.PATIENT_AUXILIARY, "head.e1.").done();
        }
        return sketch.plan();
    }

    /** The other colour code, the other word for earth. */
    static Plan american() {
        House d = House.defaults();
        House house = new House(
                d.rules(),
                d.methods(),
                d.insulation(),
                LabelCode.AHA,
                d.paper(),
                EarthWord.GROUND,
                d.aim(),
                d.replugUnderPower(),
                d.capacitanceShare(),
                d.capacitanceLimit(),
                d.floatJoined(),
                d.pastDue(),
                d.decision(),
                d.times(),
                d.tighter(),
                d.extraTests(),
                d.joinStricter(),
                d.signs(),
                d.confirmed(),
                java.util.Optional.of("Marrowgate"));
        return new Sketch(Sketch.device(Sketch.sample("oddlebar-rescue-set")), Sketch.kit(BENCH))
                .house(house)
                .hookup()
                .joinAll(1, "ecg", "snap-pin", "spread/1")
                .earth("part", "dock-rail", "earth-jack", "lead-earth/1", "jaw/2")
                .clip("dock-rail")
                .read(QuantityKind.EARTH_LEAKAGE, "ecg")
                .done()
                .plan();
    }

    /** Every name as bad as a file can make it. */
    static Plan hostile() {
        String longName = "W".repeat(500);
        String device = MONITOR.replace(
                        "Brindlewick ward monitor, full fitting",
                        "\"<script>alert('x')</script> ]]> &amp; \\u202Eevil\\u202C\"")
                .replace("name: Cuff pressure", "name: \"" + longName + "\"")
                .replace("name: Pulse oximetry", "name: \"\\U0001F489 \\U0001F489 \\u0635\\u0636 \\u05D0\\u05D1\"")
                .replace("name: Cardiac output", "name: \"" + "a word and ".repeat(40) + "\"")
                .replace("name: Pole clamp", "name: \"" + longName + "\"")
                .replace("name: Bezel screw", "name: \"]]><svg onload=x>\"")
                .replace(
                        "name: Network",
                        "name: \"\\u6F22\\u5B57\\u6F22\\u5B57\\u6F22\\u5B57\\u6F22\\u5B57\\u6F22\\u5B57\\u6F22\\u5B57\\u6F22\\u5B57\\u6F22\\u5B57\"");
        String kit = BENCH.replace("name: Marrowgate bench tester", "name: \"" + longName + "\"")
                .replace("id: snap-pin", "id: " + "snap".repeat(16));
        return new Sketch(Sketch.device(device), Sketch.kit(kit))
                .hookup()
                .join(1, "cuff.cuff", "wrap")
                .join(2, "spo2.sensor", "wrap")
                .joinAll(3, "ecg", "snap".repeat(16), "spread/1")
                .join(5, "housing.bezel-screw", "jaw/2", "lead-short")
                .join(6, "port.lan", "jaw/3", "lead-short")
                .earth("part", "pole-clamp", "earth-jack", "lead-earth/1", "jaw/1")
                .clip("pole-clamp", "pole-clamp", "pole-clamp")
                .touch("bezel-screw", "lan", "bezel-screw")
                .read(QuantityKind.EQUIPMENT_LEAKAGE, "cuff", "spo2", "ecg")
                .done()
                .plan();
    }
}
