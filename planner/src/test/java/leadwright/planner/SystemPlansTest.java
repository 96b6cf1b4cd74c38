package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.SystemInfo;
import leadwright.catalog.house.House;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.SystemReader;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pump trolley of the samples as a whole on one plug: four class II pumps and a class I warmer. */
class SystemPlansTest {
    private static final Device TROLLEY = trolley();

    private static Device trolley() {
        return SystemReader.read(
                        "trolley", bytes("pennywhistle-trolley.yaml"), name -> DeviceReader.read(name, bytes(name)))
                .orThrow()
                .whole();
    }

    private static byte[] bytes(String name) {
        try {
            return Files.readAllBytes(Path.of("..", "samples", name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Plan plan(String rules) {
        return SamplePlans.plan(TROLLEY, SamplePlans.kit("k1-marrowgate-bench.yaml"), rules, House.defaults())
                .plan();
    }

    private static List<Obligation> of(Plan plan, QuantityKind quantity) {
        return plan.readings().stream()
                .map(Reading::obligation)
                .filter(each -> each.quantity() == quantity)
                .toList();
    }

    private static void limit(Obligation reading, String id, String value) {
        assertThat(reading.limit().orElseThrow().id()).isEqualTo(id);
        assertThat(reading.limit().orElseThrow().value().text()).isEqualTo(value);
    }

    @Test
    void the_earth_path_through_the_outlet_has_its_own_limit() {
        List<Obligation> earth = of(plan("iec-62353-2014"), QuantityKind.EARTH_RESISTANCE);
        // Of five devices one has an earthed part.
        assertThat(earth).singleElement().satisfies(each -> limit(each, "iec-62353-earth-system", "500 mohm"));
        assertThat(earth.get(0).place()).contains("warmer-plate");
    }

    @Test
    void touch_current_is_read_between_members_whatever_the_rule_set() {
        SystemInfo system = TROLLEY.system().orElseThrow();
        // Four clamps and a handle: ten pairs, each of two members, in both polarities.
        for (String rules : List.of("iec-62353-2014", "iec-60601-1-ed2")) {
            List<Obligation> between = of(plan(rules), QuantityKind.TOUCH_CURRENT_BETWEEN);
            assertThat(between).as(rules).hasSize(20).allSatisfy(each -> {
                assertThat(system.memberOf(each.of().get(0)))
                        .isNotEqualTo(system.memberOf(each.of().get(1)));
                assertThat(each.clause()).isEqualTo("bench practice: members of a system");
            });
        }
    }

    @Test
    void the_type_test_limits_touch_and_earth_currents_of_the_whole() {
        Plan plan = plan("iec-60601-1-ed3");
        for (Obligation touch : of(plan, QuantityKind.TOUCH_CURRENT)) {
            switch (touch.state().fault()) {
                case NONE -> limit(touch, "iec-60601-1-ed3-system-touch-normal", "100 uA");
                case EARTH_OPEN -> limit(touch, "iec-60601-1-ed3-system-touch-fault", "500 uA");
                case SUPPLY_OPEN -> limit(touch, "iec-60601-1-ed3-touch-fault", "500 uA");
            }
        }
        // In the plug's earth conductor 5 mA, whatever is open; a device alone may carry 10 mA with its supply open.
        assertThat(of(plan, QuantityKind.EARTH_LEAKAGE))
                .hasSize(4)
                .allSatisfy(each -> limit(each, "iec-60601-1-ed3-system-earth-leakage", "5 mA"));
        assertThat(of(plan, QuantityKind.EARTH_RESISTANCE))
                .allSatisfy(each -> assertThat(each.limit()).isEmpty());
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"iec-62353-2014", "nfpa-99-2012", "us-leads-older", "iec-61010-1", "bonding"})
    void every_plan_of_the_whole_passes_the_audit_and_says_what_a_system_is(String rules) {
        Plan plan = plan(rules);
        assertThat(plan.warnings())
                .anyMatch(text -> text.contains("test each member alone as well") && text.contains("add up"))
                .anyMatch(text -> text.contains("separating transformer"));
    }
}
