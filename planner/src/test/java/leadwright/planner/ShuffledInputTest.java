package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.plan.Occasion;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** In whatever order files list things, the plan is the same, fingerprint included. */
class ShuffledInputTest {
    private static final String RECURRENT = "iec-62353-2014";
    private static final List<String> KITS = List.of("k1-marrowgate-bench", "k2-round-trolley", "k3-fixed-plant-case");
    private static final List<String> DEVICES = List.of(
            "brindlewick-ward-monitor",
            "dovecote-infant-warmer",
            "fenlark-probe-alone",
            "fenlark-scanner",
            "kettlemoor-bench-steriliser",
            "mossback-bed",
            "noctuary-sleep-recorder",
            "oddlebar-rescue-set",
            "slaterow-tilt-table",
            "wickling-on-charger",
            "wickling-rhythm-card");

    private static final House LISTS =
            HouseReader.read("house", """
                    leadwright: house/1
                    tighter:
                      - {limit: iec-62353-earth-plug-to-part, at-most: 200 mohm, because: own practice}
                      - {limit: iec-62353-equipment-direct-class-1, at-most: 300 uA, because: own practice}
                    join-stricter:
                      - {type: CF, each: connection, because: own practice}
                      - {type: BF, each: function, because: own practice}
                    """.getBytes(StandardCharsets.UTF_8)).orThrow();

    @TestFactory
    Stream<DynamicTest> every_sample_with_every_kit_is_planned_the_same() {
        List<DynamicTest> tests = new ArrayList<>();
        for (String kit : KITS) {
            for (String device : DEVICES) {
                tests.add(DynamicTest.dynamicTest(
                        device + ", " + kit,
                        () -> same(
                                SamplePlans.device(device + ".yaml"),
                                SamplePlans.kit(kit + ".yaml"),
                                RECURRENT,
                                House.defaults(),
                                device.hashCode())));
            }
        }
        return tests.stream();
    }

    @TestFactory
    Stream<DynamicTest> random_cases_of_seeds_70000_to_70099_are_planned_the_same() {
        return IntStream.range(0, 100)
                .mapToObj(i -> i % 2 == 0 ? RandomCases.any(70_000 + i) : RandomCases.withAmpleKit(70_000 + i))
                .map(each -> DynamicTest.dynamicTest(
                        each.toString(), () -> same(each.device(), each.kit(), RECURRENT, each.house(), each.seed())));
    }

    @TestFactory
    Stream<DynamicTest> small_random_cases_under_other_rule_sets_are_planned_the_same() {
        return IntStream.range(0, 40)
                .mapToObj(i -> RandomCases.any(71_000 + i))
                .filter(each -> each.device().patientConnections().size() <= 3)
                .flatMap(each -> Stream.of("iec-60601-1-ed3", "nfpa-99-2012")
                        .map(rules -> DynamicTest.dynamicTest(
                                each + ", " + rules,
                                () -> same(each.device(), each.kit(), rules, each.house(), each.seed()))));
    }

    @Test
    void lists_of_a_house_are_of_no_order() {
        same(
                SamplePlans.device("brindlewick-ward-monitor.yaml"),
                SamplePlans.kit("k1-marrowgate-bench.yaml"),
                RECURRENT,
                LISTS,
                3);
    }

    @Test
    void the_shuffle_shuffles_and_the_panel_counts() {
        Device device = SamplePlans.device("brindlewick-ward-monitor.yaml");
        Request request = request(device, SamplePlans.kit("k1-marrowgate-bench.yaml"), RECURRENT, LISTS);
        Request shuffled = Shuffled.request(request, 3);
        assertThat(shuffled.device().appliedParts()).isNotEqualTo(device.appliedParts());
        assertThat(shuffled.kit().items())
                .isNotEqualTo(request.kit().items())
                .containsExactlyInAnyOrderElementsOf(request.kit().items());
        assertThat(shuffled.device().panel()).isEqualTo(device.panel());
        Device turned = SamplePlans.deviceWith(
                "brindlewick-ward-monitor.yaml",
                "panel: [ecg, spo2, cuff, ibp, temp]",
                "panel: [temp, ibp, cuff, spo2, ecg]");
        assertThat(fingerprint(request)).isNotEqualTo(fingerprint(request(turned, request.kit(), RECURRENT, LISTS)));
    }

    private static Request request(Device device, Kit kit, String rules, House house) {
        return new Request(
                device, kit, RuleSets.builtIn().find(rules).orElseThrow(), house, Occasion.RECURRENT, Optional.empty());
    }

    private static String fingerprint(Request request) {
        return Canonical.fingerprint(
                request.device(), request.kit(), request.rules(), request.house(), request.occasion());
    }

    private static void same(Device device, Kit kit, String rules, House house, long seed) {
        Request request = request(device, kit, rules, house);
        Request shuffled = Shuffled.request(request, seed);
        assertThat(fingerprint(shuffled)).isEqualTo(fingerprint(request));
        assertThat(Planner.plan(shuffled)).isEqualTo(Planner.plan(request));
    }
}
