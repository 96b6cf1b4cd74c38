package leadwright.planner.foresee;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.ElectricalKey;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.SamplePlans;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.api.Test;

/** What a device file states, and what is assumed where it does not. */
class ForeseeTest {
    private static final String RECURRENT = "iec-62353-2014";
    private static final String WARD = "brindlewick-ward-monitor.yaml";
    private static final String STATED = "electrical: {line-earth: 2.2 nF, neutral-earth: 2.2 nF}";
    private static final Kit KIT = SamplePlans.kit("k1-marrowgate-bench.yaml");
    private static final Plan WITH = plan(SamplePlans.device(WARD));
    private static final Plan WITHOUT = plan(SamplePlans.deviceWith(WARD, STATED, "electrical: {}"));

    private static Plan plan(Device device) {
        return SamplePlans.plan(device, KIT, RECURRENT, House.defaults()).plan();
    }

    private static Map<String, Foreseen> foreseen(Plan plan) {
        return Foresee.of(plan, Situation.ORDINARY);
    }

    private static Map<String, Foreseen> byKey(Plan plan) {
        Map<String, Foreseen> foreseen = foreseen(plan);
        Map<String, Foreseen> byKey = new LinkedHashMap<>();
        for (Reading reading : plan.readings()) {
            Optional.ofNullable(foreseen.get(reading.id()))
                    .ifPresent(each -> byKey.put(reading.obligation().key(), each));
        }
        return byKey;
    }

    private static boolean byMainsFilter(Reading reading) {
        return reading.obligation().quantity() == QuantityKind.EQUIPMENT_LEAKAGE;
    }

    @Test
    void without_electrical_values_every_band_is_assumed() {
        for (Plan plan : List.of(WITHOUT, plan(SamplePlans.device("dovecote-infant-warmer.yaml")))) {
            assertThat(foreseen(plan)).isNotEmpty();
            assertThat(foreseen(plan).values())
                    .allMatch(
                            each -> each.basis() == Basis.ASSUMED && each.firm().isEmpty());
        }
    }

    /**
     * A capacitor of 2.2 nF to the chassis at 230 V 50 Hz: 159 µA, calc, and a little by way of the parts. What the parts may
     * bring is assumed, so that the band is; how little it may be at least rests on the file alone.
     */
    @Test
    void the_filter_rules_the_equipment_leakage() {
        Map<String, Foreseen> foreseen = foreseen(WITH);
        assertThat(WITH.readings().stream().filter(ForeseeTest::byMainsFilter))
                .isNotEmpty()
                .allSatisfy(reading -> {
                    Foreseen each = foreseen.get(reading.id());
                    assertThat(each.value().orElseThrow().inSi()).isBetween(159e-6, 170e-6);
                    assertThat(each.low().inSi()).isGreaterThan(100e-6);
                    assertThat(each.high().orElseThrow().inSi()).isLessThan(300e-6);
                    assertThat(each.firm().orElseThrow().low().inSi()).isBetween(90e-6, 130e-6);
                });
    }

    @Test
    void stated_values_make_bands_narrower_and_none_wider() {
        Map<String, Foreseen> with = byKey(WITH);
        Map<String, Foreseen> without = byKey(WITHOUT);
        assertThat(with.keySet()).isEqualTo(without.keySet());
        int narrower = 0;
        for (Map.Entry<String, Foreseen> each : with.entrySet()) {
            Foreseen other = without.get(each.getKey());
            if (each.getValue().high().isEmpty()) {
                continue;
            }
            double width = width(each.getValue());
            // Three figures are written.
            assertThat(width).as(each.getKey()).isLessThanOrEqualTo(1.02 * width(other));
            narrower += width < 0.9 * width(other) ? 1 : 0;
        }
        assertThat(narrower).isPositive();
    }

    private static double width(Foreseen foreseen) {
        return foreseen.high().orElseThrow().inSi() - foreseen.low().inSi();
    }

    /** Foresight is data beside a plan: the readings, their limits and their order are as without it. */
    @Test
    void it_changes_nothing_that_is_judged() {
        assertThat(WITH.readings()).isEqualTo(WITHOUT.readings());
        assertThat(Foreseen.class.getRecordComponents())
                .noneMatch(each ->
                        each.getName().contains("verdict") || each.getName().contains("limit"));
        for (Foreseen each : foreseen(WITH).values()) {
            each.value().ifPresent(value -> assertThat(each.holds(value)).isTrue());
            each.high().ifPresent(high -> assertThat(each.low().atMost(high)).isTrue());
        }
    }

    /** Every key of the section, with values of a good device. */
    @Test
    void a_file_with_all_keys_rules_what_the_filter_rules() {
        Map<String, Quantity> all = new TreeMap<>();
        for (ElectricalKey key : ElectricalKey.values()) {
            Quantity value = key == ElectricalKey.EARTH_PATH ? Quantity.milliOhms(30) : farads(key);
            all.put(key.word(), value);
        }
        Device device = SamplePlans.device(WARD);
        Plan plan = plan(HookupCircuits.with(device, device.supply(), all));
        Map<String, Foreseen> foreseen = foreseen(plan);
        assertThat(plan.readings().stream().filter(ForeseeTest::byMainsFilter))
                .isNotEmpty()
                .allMatch(reading -> foreseen.get(reading.id()).basis() == Basis.DEVICE_FILE);
    }

    private static Quantity farads(ElectricalKey key) {
        boolean filter = key == ElectricalKey.LINE_EARTH || key == ElectricalKey.NEUTRAL_EARTH;
        return new Quantity(
                Dimension.CAPACITANCE, Math.round((filter ? 2.2e-9 : 20e-12) / Dimension.CAPACITANCE.toSi()));
    }

    /** A supply known to a percent, and warm leads. */
    @Test
    void what_is_known_of_the_day_narrows_and_shifts() {
        Map<String, Foreseen> ordinary = foreseen(WITH);
        Map<String, Foreseen> low = Foresee.of(WITH, new Situation(30, Optional.of(207.0)));
        Reading filter = WITH.readings().stream()
                .filter(ForeseeTest::byMainsFilter)
                .findFirst()
                .orElseThrow();
        double share = low.get(filter.id()).value().orElseThrow().inSi()
                / ordinary.get(filter.id()).value().orElseThrow().inSi();
        assertThat(share).isBetween(0.89, 0.91);
        assertThat(width(low.get(filter.id()))).isLessThan(width(ordinary.get(filter.id())));
    }
}
