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
                    "noctuary-sleep-recorder",
                    "fenlark-probe-alone",
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

    /** The two samples that no sample kit takes, on a bench with an outlet made for them; the second with both networks. */
    @TestFactory
    Stream<DynamicTest> nor_one_on_a_bench_with_an_outlet_of_its_own() {
        Kit scanner = bench("nema-5-20", "line-neutral", "120 V");
        Kit steriliser = bench("nema-6-20", "split-phase", "240 V");
        return RuleSets.builtIn().ids().stream()
                .flatMap(rules -> Stream.of(
                        DynamicTest.dynamicTest("scanner, " + rules, () -> planned("fenlark-scanner", scanner, rules)),
                        DynamicTest.dynamicTest(
                                "steriliser, " + rules,
                                () -> planned("kettlemoor-bench-steriliser", steriliser, rules))));
    }

    private static Kit bench(String plug, String system, String voltage) {
        return SamplePlans.kitWith(
                "k1-marrowgate-bench.yaml",
                Map.of(
                        "inlet: {plug: bs-1363, current: 13 A}",
                        "inlet: {plug: " + plug + ", current: 20 A}",
                        "{socket: bs-1363, system: line-neutral, voltage: 230 V, current: 13 A}",
                        "{socket: " + plug + ", system: " + system + ", voltage: " + voltage + ", current: 20 A}",
                        "networks: [iec-60601]",
                        "networks: [iec-60601, iec-60990]"));
    }

    private static void planned(String deviceFile, Kit kit, String id) {
        RuleSet rules = RuleSets.builtIn().find(id).orElseThrow();
        Outcome outcome = Planner.plan(new Request(
                SamplePlans.device(deviceFile + ".yaml"),
                kit,
                rules,
                House.defaults(),
                Occasion.RECURRENT,
                Optional.empty()));
        if (id.equals("bonding")) {
            assertThat(outcome)
                    .isInstanceOfSatisfying(
                            Outcome.Refused.class,
                            refused -> assertThat(refused.reason())
                                    .contains("asks for no reading of", "bonding is a matter of what is wired in"));
        } else {
            assertThat(outcome).isInstanceOf(Outcome.Planned.class);
        }
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
