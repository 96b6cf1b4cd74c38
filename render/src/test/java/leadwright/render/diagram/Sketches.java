package leadwright.render.diagram;

import java.util.LinkedHashMap;
import java.util.Map;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;

/** The hookups that every drawing test looks at. */
final class Sketches {
    private Sketches() {}

    static Map<String, Plan> all() {
        Map<String, Plan> all = new LinkedHashMap<>();
        all.put("ward", ward());
        all.put("rescue", rescue());
        all.put("sleep", sleep());
        all.put("table", table());
        all.put("card", card());
        all.put("lone", lone());
        all.putAll(Crowded.all());
        return all;
    }

    /** Every applied part on a jack of its own; then each wire of the ECG alone against the rest. */
    static Plan ward() {
        return new Sketch(
                        Sketch.device(Sketch.sample("brindlewick-ward-monitor")),
                        Sketch.kit(Sketch.sample("k1-marrowgate-bench")))
                .hookup()
                .joinAll(1, "ecg", "snap-pin", "spread/1")
                .join(2, "spo2.sensor", "wrap")
                .join(3, "cuff.cuff", "wrap")
                .join(4, "ibp.p1.dome-1", "line-pin", "spread/2")
                .join(4, "ibp.p2.dome-2", "line-pin", "spread/2")
                .join(5, "temp.probe", "wrap")
                .join(6, "housing.bezel-screw", "jaw/1", "lead-short")
                .earth("part", "pole-clamp", "earth-jack", "lead-earth/1", "jaw/2")
                .clip("pole-clamp", "back-plate")
                .touch("bezel-screw")
                .read(QuantityKind.EQUIPMENT_LEAKAGE, "ecg", "spo2", "cuff", "ibp", "temp", "housing")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "ecg")
                .read(QuantityKind.TOTAL_PATIENT_LEAKAGE, "ecg", "ibp", "temp")
                .done()
                .hookup()
                .joinAll(1, "ecg", "snap-pin", "spread/1")
                .join(2, "spo2.sensor", "wrap")
                .join(3, "cuff.cuff", "wrap")
                .join(4, "ibp.p1.dome-1", "line-pin/1")
                .join(5, "ibp.p2.dome-2", "line-pin/2")
                .touch("bezel-screw", "pole-clamp", "back-plate")
                .read(QuantityKind.PATIENT_LEAKAGE, "ibp.p1")
                .read(QuantityKind.PATIENT_LEAKAGE, "ibp.p2")
                .done()
                .plan();
    }

    /** Therapy outputs in hookups of their own. */
    static Plan rescue() {
        return new Sketch(
                        Sketch.device(Sketch.sample("oddlebar-rescue-set")),
                        Sketch.kit(Sketch.sample("k1-marrowgate-bench")))
                .hookup()
                .joinAll(1, "ecg", "snap-pin", "spread/1")
                .join(2, "spo2.sensor", "wrap")
                .join(3, "housing.handle-insert", "jaw/1", "lead-short")
                .join(4, "housing.shell", "wrap")
                .earth("part", "dock-rail", "earth-jack", "lead-earth/1", "jaw/2")
                .clip("dock-rail")
                .read(QuantityKind.EQUIPMENT_LEAKAGE, "ecg", "spo2", "housing")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "ecg")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "spo2")
                .done()
                .hookup()
                .join(1, "pads.apex", "wrap/1", "spread/1")
                .join(1, "pads.sternum", "wrap/2", "spread/1")
                .join(3, "housing.handle-insert", "jaw/1", "lead-short")
                .join(4, "housing.shell", "wrap/4")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "pads")
                .done()
                .hookup()
                .join(1, "spoons.left", "wrap/1", "spread/1")
                .join(1, "spoons.right", "wrap/2", "spread/1")
                .join(3, "housing.handle-insert", "jaw/1", "lead-short")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "spoons")
                .done()
                .plan();
    }

    /** Sixty-four wires on eight combs, gathered on one jack each or cascaded. */
    static Plan sleep() {
        String kit = Sketch.sample("k1-marrowgate-bench").replaceAll("(id: comb,.*stock: )\\d+", "$18");
        Sketch sketch = new Sketch(Sketch.device(Sketch.sample("noctuary-sleep-recorder")), Sketch.kit(kit));
        Sketch.Wiring wiring = sketch.hookup();
        int n = 0;
        for (var each : Sketch.device(Sketch.sample("noctuary-sleep-recorder")).patientConnections()) {
            wiring.join(1, each.name(), "comb/" + (n++ / 8 + 1), "spread/1");
        }
        return wiring.join(2, "housing.case", "wrap")
                .join(3, "housing.belt-hook", "jaw", "lead-short")
                .join(4, "port.laptop", "jaw", "lead-short")
                .read(QuantityKind.EQUIPMENT_LEAKAGE, "head-box", "housing", "port")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "head-box")
                .done()
                .plan();
    }

    /** No patient lead at all: the earth lead goes from place to place. */
    static Plan table() {
        return new Sketch(
                        Sketch.device(Sketch.sample("slaterow-tilt-table")),
                        Sketch.kit(Sketch.sample("k3-fixed-plant-case")))
                .hookup()
                .earth("part", "base-frame", "earth-jack", "reel/1", "jaw/1")
                .earth("reference", "reference-earth", "second-jack", "lead-near/1", "jaw/2")
                .clip(
                        "base-frame",
                        "column-foot",
                        "pivot-left",
                        "pivot-right",
                        "top-rail-left",
                        "top-rail-right",
                        "foot-hinge",
                        "drive-cabinet",
                        "cabinet-door",
                        "cable-duct",
                        "cable-duct-end",
                        "screen-arm",
                        "foot-switch-plate",
                        "control-desk",
                        "desk-rail",
                        "drip-hook")
                .done()
                .hookup()
                .join(1, "touch-probe", "needle", "lead-near/1")
                .join(2, "housing.drip-hook", "jaw/1", "reel/1")
                .touch("base-frame", "drip-hook", "control-desk")
                .done()
                .plan();
    }

    /** Internally powered, three wires. */
    static Plan card() {
        return new Sketch(
                        Sketch.device(Sketch.sample("wickling-rhythm-card")),
                        Sketch.kit(Sketch.sample("k2-round-trolley")))
                .hookup()
                .join(1, "ecg.R", "snap-peg", "gather/1")
                .join(1, "ecg.L", "snap-peg", "gather/1")
                .join(1, "ecg.F", "snap-peg", "gather/1")
                .join(2, "housing.case", "foil-strip")
                .join(4, "touch-probe", "pointer", "lead-bare")
                .touch("case")
                .read(QuantityKind.APPLIED_PART_LEAKAGE, "ecg", "housing")
                .done()
                .plan();
    }

    /** Lone wires against the rest of their part and all others: places must be exchanged. */
    static Plan lone() {
        Sketch sketch = new Sketch(
                Sketch.device(Sketch.sample("brindlewick-ward-monitor")),
                Sketch.kit(Sketch.sample("k1-marrowgate-bench")));
        String[][] alone = {{"R", "L", "F", "N", "C1"}, {"C2", "C3", "C4", "C5", "C6"}};
        for (String[] five : alone) {
            Sketch.Wiring wiring = sketch.hookup();
            for (int jack = 1; jack <= 5; jack++) {
                wiring.join(jack, "ecg." + five[jack - 1], "snap-pin/" + jack);
            }
            wiring.joinAll(6, "ecg", "snap-pin", "spread/1")
                    .join(6, "spo2.sensor", "wrap", "spread/1")
                    .join(6, "cuff.cuff", "wrap", "spread/1")
                    .joinAll(6, "ibp", "line-pin", "spread/1")
                    .join(6, "temp.probe", "wrap", "spread/1");
            for (String each : five) {
                wiring.read(QuantityKind.PATIENT_AUXILIARY, "ecg." + each);
            }
            wiring.done();
        }
        return sketch.plan();
    }
}
