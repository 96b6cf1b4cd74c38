package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.plan.Occasion;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every sample under every rule set: planned and accepted by the audit, or refused with a reason; never rejected. */
class EveryRuleSetIsAuditedTest {
    private static final Map<String, List<String>> KITS = Map.of(
            "k1-marrowgate-bench",
            List.of(
                    "brindlewick-ward-monitor",
                    "dovecote-infant-warmer",
                    "mossback-bed",
                    "oddlebar-rescue-set",
                    "wickling-on-charger",
                    "wickling-rhythm-card",
                    "kettlemoor-bench-steriliser"),
            "k2-round-trolley",
            List.of("fenlark-scanner", "kettlemoor-bench-steriliser"),
            "k3-fixed-plant-case",
            List.of("slaterow-tilt-table"));

    @TestFactory
    Stream<DynamicTest> the_audit_rejects_no_plan_of_a_sample() {
        List<DynamicTest> tests = new ArrayList<>();
        for (String kit : List.of("k1-marrowgate-bench", "k2-round-trolley", "k3-fixed-plant-case")) {
            for (String device : KITS.get(kit)) {
                for (String rules : RuleSets.builtIn().ids()) {
                    tests.add(DynamicTest.dynamicTest(
                            device + ", " + kit + ", " + rules, () -> notRejected(device, kit, rules)));
                }
            }
        }
        return tests.stream();
    }

    private static void notRejected(String deviceFile, String kitFile, String id) {
        Device device = SamplePlans.device(deviceFile + ".yaml");
        Kit kit = SamplePlans.kit(kitFile + ".yaml");
        RuleSet rules = RuleSets.builtIn().find(id).orElseThrow();
        Outcome outcome =
                Planner.plan(new Request(device, kit, rules, House.defaults(), Occasion.RECURRENT, Optional.empty()));
        if (outcome instanceof Outcome.Refused refused) {
            assertThat(refused.reason()).isNotBlank();
        } else {
            assertThat(outcome).isInstanceOf(Outcome.Planned.class);
        }
    }
}
