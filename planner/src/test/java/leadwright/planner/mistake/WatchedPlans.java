package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.SamplePlans;
import leadwright.planner.plan.Occasion;

/** Every plan that there is of a sample device with a sample kit under a rule set. */
final class WatchedPlans {
    static final String WARD = "brindlewick-ward-monitor";

    private static final List<String> DEVICES = List.of(
            WARD,
            "dovecote-infant-warmer",
            "fenlark-probe-alone",
            "fenlark-scanner",
            "kettlemoor-bench-steriliser",
            "mossback-bed",
            "noctuary-sleep-recorder",
            "oddlebar-rescue-set",
            "pennywhistle-pump",
            "pennywhistle-warmer",
            "slaterow-tilt-table",
            "wickling-on-charger",
            "wickling-rhythm-card");
    private static final List<String> KITS = List.of("k1-marrowgate-bench", "k2-round-trolley", "k3-fixed-plant-case");

    private WatchedPlans() {}

    /** A plan with what it is called in a message. */
    record Named(String name, Plan plan) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static final class Made {
        private static final List<Named> ALL = make();
    }

    /** Made once. */
    static List<Named> all() {
        return Made.ALL;
    }

    static Plan ward(String rules) {
        return all().stream()
                .filter(each -> each.name().equals(WARD + ", k1-marrowgate-bench, " + rules))
                .findFirst()
                .orElseThrow()
                .plan();
    }

    private static List<Named> make() {
        List<Named> all = new ArrayList<>();
        for (String deviceFile : DEVICES) {
            Device device = SamplePlans.device(deviceFile + ".yaml");
            for (String kitFile : KITS) {
                Kit kit = SamplePlans.kit(kitFile + ".yaml");
                for (String rules : RuleSets.builtIn().ids()) {
                    Outcome outcome = Planner.plan(new Request(
                            device,
                            kit,
                            RuleSets.builtIn().find(rules).orElseThrow(),
                            House.defaults(),
                            Occasion.RECURRENT,
                            Optional.empty()));
                    if (outcome instanceof Outcome.Planned planned) {
                        all.add(new Named(deviceFile + ", " + kitFile + ", " + rules, planned.plan()));
                    }
                }
            }
        }
        return List.copyOf(all);
    }
}
