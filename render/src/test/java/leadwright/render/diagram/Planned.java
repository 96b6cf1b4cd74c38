package leadwright.render.diagram;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.house.House;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.plan.Occasion;

/** Samples as the planner wires them. */
final class Planned {
    private Planned() {}

    static Map<String, Plan> all() {
        Map<String, Plan> all = new LinkedHashMap<>();
        for (String[] sample : new String[][] {
            {"brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-62353-2014"},
            {"oddlebar-rescue-set", "k1-marrowgate-bench", "iec-62353-2014"},
            {"noctuary-sleep-recorder", "k1-marrowgate-bench", "iec-62353-2014"},
            {"slaterow-tilt-table", "k3-fixed-plant-case", "iec-62353-2014"},
            {"wickling-rhythm-card", "k2-round-trolley", "iec-60601-1-ed3"},
            {"dovecote-infant-warmer", "k1-marrowgate-bench", "iec-60601-1-ed3"},
            {"noctuary-sleep-recorder", "k1-marrowgate-bench", "iec-60601-1-ed3"},
            {"oddlebar-rescue-set", "k1-marrowgate-bench", "iec-60601-1-ed3"},
            {"wickling-on-charger", "k1-marrowgate-bench", "iec-60601-1-ed3"},
        }) {
            all.put("planned: " + sample[0] + ", " + sample[2], plan(sample[0], sample[1], sample[2]));
        }
        return all;
    }

    static Plan plan(String device, String kit, String rules) {
        return of(Sketch.sample(device), kit, rules);
    }

    /** @param device the text of a device file */
    static Plan of(String device, String kit, String rules) {
        Outcome outcome = Planner.plan(new Request(
                Sketch.device(device),
                Sketch.kit(Sketch.sample(kit)),
                RuleSets.builtIn().find(rules).orElseThrow(),
                House.defaults(),
                Occasion.RECURRENT,
                Optional.empty()));
        if (outcome instanceof Outcome.Planned planned) {
            return planned.plan();
        }
        throw new AssertionError(String.valueOf(outcome));
    }
}
