package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.SamplePlans.Sample;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A class I device whose earth cannot be read: by kit, by reach, by paint. */
class EarthUnreadTest {
    private static final String K1 = "k1-marrowgate-bench.yaml";
    private static final String TYPE_TEST = "iec-60601-1-ed3";
    private static final String PAINTED = "{id: clamp, name: Pole clamp, earthed: yes, surface: painted}";
    private static final String FAR = "{id: clamp, name: Pole clamp, earthed: yes, surface: metal, distance: 30 m}";
    private static final String UNKNOWN = "{id: clamp, name: Pole clamp, earthed: unknown, surface: painted}";
    private static final String NONE = "{id: clamp, name: Pole clamp, earthed: no, surface: metal}";

    private static Device device(String point, String supply) {
        String text = "leadwright: device/1\nname: Pindlehart driver\nsupply: {" + supply
                + ", cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 0.3 A}\n"
                + """
                protection: class-1
                battery: none
                mains-switch: one-pole
                start-up: 12 s
                shut-down: 4 s
                tolerates-power-cut: yes
                applied-parts: [{id: line, name: Line, type: CF, connections: [{id: tip, terminal: liquid-column}]}]
                touch-points:
                  - {id: knob, name: Bare knob, earthed: no, surface: metal, distance: 0.2 m}
                """
                + "  - " + point + "\n";
        return DeviceReader.read("device", text.getBytes(java.nio.charset.StandardCharsets.UTF_8))
                .orThrow();
    }

    private static Device detachable(String point) {
        return device(point, "connection: detachable-cord, inlet: iec-60320-c14");
    }

    private static Device fixed(String point) {
        return device(point, "connection: fixed-cord");
    }

    private static Kit withoutEarthTest() {
        return SamplePlans.kitWith(
                K1,
                Map.of(
                        "  earth-test: {currents: [200 mA, 25 A], source: ac, open-circuit: 6 V, wiring: two-wire,"
                                + " null-up-to: 2 ohm, sockets: [earth-jack, outlet-earth, second-jack]}\n",
                        "",
                        "    earth: {reading: 2 %, floor: 10 mohm}\n",
                        ""));
    }

    private static void isKeptFromFaults(Plan plan) {
        assertThat(plan.partial()).isTrue();
        assertThat(plan.readings())
                .extracting(Reading::obligation)
                .noneMatch(what -> what.state().fault() != Fault.NONE || what.phase() == Phase.MAINS_ON_PART)
                .anyMatch(what -> what.quantity() == QuantityKind.PATIENT_LEAKAGE
                        || what.quantity() == QuantityKind.EQUIPMENT_LEAKAGE
                        || what.quantity() == QuantityKind.TOUCH_CURRENT);
        assertThat(plan.shortfalls())
                .anyMatch(each -> each.because()
                        .startsWith("no earth resistance can be read: whether the earth is sound is not known"));
        assertThat(plan.warnings().get(0))
                .contains("Nothing is powered before the earth was read with another tester the same day");
    }

    private static Plan plan(Device device, Kit kit, String rules) {
        return SamplePlans.plan(device, kit, rules, House.defaults()).plan();
    }

    @ParameterizedTest
    @ValueSource(strings = {TYPE_TEST, "iec-62353-2014", "nfpa-99-2012", "iec-60601-1-ed2"})
    void a_kit_without_an_earth_test_opens_nothing(String rules) {
        Plan plan = plan(SamplePlans.device("brindlewick-ward-monitor.yaml"), withoutEarthTest(), rules);
        assertThat(plan.readings())
                .extracting(each -> each.obligation().phase())
                .doesNotContain(Phase.EARTH);
        isKeptFromFaults(plan);
    }

    @Test
    void what_is_withheld_is_counted() {
        Plan plan = plan(SamplePlans.device("brindlewick-ward-monitor.yaml"), withoutEarthTest(), TYPE_TEST);
        assertThat(plan.shortfalls())
                .anyMatch(each -> each.about().equals("protective earth")
                        && each.because().contains("patient-leakage with earth open (")
                        && each.because().contains("mains-on-applied-part (60 readings)"));
    }

    @Test
    void leads_that_do_not_reach_open_nothing() {
        Plan plan = plan(fixed(FAR), SamplePlans.kit(K1), TYPE_TEST);
        assertThat(plan.shortfalls()).anyMatch(each -> each.because().contains("earth-resistance (1 reading)"));
        isKeptFromFaults(plan);
    }

    @Test
    void a_painted_part_leaves_the_cord_that_comes_off_and_opens_nothing() {
        Plan plan = plan(detachable(PAINTED), SamplePlans.kit(K1), TYPE_TEST);
        assertThat(plan.readings())
                .extracting(Reading::obligation)
                .filteredOn(what -> what.quantity() == QuantityKind.EARTH_RESISTANCE)
                .extracting(what -> what.earthSubject().orElseThrow())
                .containsExactly(Obligation.EarthSubject.CORD);
        isKeptFromFaults(plan);
        assertThat(plan(detachable(PAINTED), SamplePlans.kit(K1), "iec-62353-2014")
                        .readings())
                .anyMatch(each ->
                        each.obligation().earthSubject().equals(java.util.Optional.of(Obligation.EarthSubject.CORD)));
    }

    @Test
    void a_painted_part_on_a_fixed_cord_leaves_nothing_of_the_earth() {
        isKeptFromFaults(plan(fixed(PAINTED), SamplePlans.kit(K1), TYPE_TEST));
        isKeptFromFaults(plan(fixed(UNKNOWN), SamplePlans.kit(K1), TYPE_TEST));
    }

    @Test
    void no_earthed_metal_at_all_is_no_failure() {
        Sample sample = SamplePlans.plan(fixed(NONE), SamplePlans.kit(K1), TYPE_TEST, House.defaults());
        assertThat(sample.plan().partial()).isFalse();
        assertThat(sample.plan().notApplicable())
                .anyMatch(each -> each.because().contains("not possible from outside"));
        assertThat(sample.plan().readings())
                .anyMatch(each -> each.obligation().state().fault() == Fault.EARTH_OPEN);
    }
}
