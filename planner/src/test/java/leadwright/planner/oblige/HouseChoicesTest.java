package leadwright.planner.oblige;

import static leadwright.planner.oblige.Bench.RECURRENT;
import static leadwright.planner.oblige.Bench.THIRD;
import static leadwright.planner.oblige.Bench.get;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import org.junit.jupiter.api.Test;

/** Methods, insulation, extra tests and stricter joining, as house and device decide. */
class HouseChoicesTest {
    private static final Device MONITOR = Bench.device("brindlewick-ward-monitor");

    private static List<Obligation> of(Obligations due, QuantityKind quantity) {
        return due.wanted().stream().filter(each -> each.quantity() == quantity).toList();
    }

    private static Kit methods(String words) {
        return Bench.marrowgateWith("methods: [direct, alternative]", "methods: [" + words + "]");
    }

    private static Device monitorWith(String piece, String instead) {
        return Bench.deviceFrom(Bench.sample("brindlewick-ward-monitor").replace(piece, instead));
    }

    // ---- methods

    @Test
    void the_alternative_method_is_read_unplugged_once() {
        House house = Bench.house("methods: [alternative, direct]\n");
        Obligations due = Bench.due(MONITOR, Bench.marrowgate(), RECURRENT, house);
        List<Obligation> equipment = of(due, QuantityKind.EQUIPMENT_LEAKAGE);
        assertThat(equipment).hasSize(1);
        assertThat(equipment.get(0).state()).isEqualTo(MainsState.OFF);
        assertThat(equipment.get(0).mode()).isEqualTo("off");
        assertThat(equipment.get(0).method()).contains(Method.ALTERNATIVE);
        assertThat(equipment.get(0).limit().orElseThrow().value().text()).isEqualTo("1 mA");
        // F-type parts float: only the housing, and type B parts, are joined to the earth.
        assertThat(equipment.get(0).demand()).isEqualTo(Demand.of(List.of("housing.bezel-screw")));
        List<Obligation> parts = of(due, QuantityKind.APPLIED_PART_LEAKAGE);
        assertThat(parts).hasSize(6).allMatch(each -> each.phase() == Obligation.Phase.MAINS_ON_PART);
        assertThat(get(due, "applied-part-leakage/ecg/off/source-normal/ac")
                        .limit()
                        .orElseThrow()
                        .value()
                        .text())
                .isEqualTo("100 uA");
    }

    @Test
    void an_electronic_switch_excludes_the_alternative_method() {
        Device electronic = monitorWith("mains-switch: both-poles", "mains-switch: electronic");
        House house = Bench.house("methods: [alternative, direct]\n");
        Obligations due = Bench.due(electronic, Bench.marrowgate(), RECURRENT, house);
        assertThat(of(due, QuantityKind.EQUIPMENT_LEAKAGE))
                .hasSize(2)
                .allMatch(each -> each.method().equals(Optional.of(Method.DIRECT)));
        Obligations none = Bench.due(electronic, methods("alternative"), RECURRENT);
        assertThat(of(none, QuantityKind.EQUIPMENT_LEAKAGE)).isEmpty();
        assertThat(of(none, QuantityKind.APPLIED_PART_LEAKAGE)).isEmpty();
        assertThat(none.shortfalls())
                .hasSize(2)
                .allMatch(each ->
                        each.about().equals("leakage method") && each.because().contains("electronic"));
    }

    @Test
    void the_differential_method_is_not_for_applied_parts_nor_for_100_microamperes() {
        House house = Bench.house("methods: [differential, direct]\n");
        Obligations classI = Bench.due(MONITOR, methods("differential, direct"), RECURRENT, house);
        assertThat(of(classI, QuantityKind.EQUIPMENT_LEAKAGE))
                .hasSize(2)
                .allMatch(each -> each.method().equals(Optional.of(Method.DIFFERENTIAL))
                        && each.limit().orElseThrow().id().equals("iec-62353-equipment-differential-class-1"));
        assertThat(of(classI, QuantityKind.APPLIED_PART_LEAKAGE))
                .hasSize(24)
                .allMatch(each -> each.method().equals(Optional.of(Method.DIRECT)));
        Obligations classII =
                Bench.due(Bench.device("mossback-bed"), methods("differential, direct"), RECURRENT, house);
        assertThat(of(classII, QuantityKind.EQUIPMENT_LEAKAGE))
                .allMatch(each -> each.method().equals(Optional.of(Method.DIRECT)));
        assertThat(classII.warnings()).anyMatch(text -> text.contains("too insensitive"));
    }

    @Test
    void a_method_that_the_house_does_not_list_is_not_taken() {
        House house = Bench.house("methods: [alternative]\n");
        Obligations due = Bench.due(MONITOR, methods("direct"), RECURRENT, house);
        assertThat(of(due, QuantityKind.EQUIPMENT_LEAKAGE)).isEmpty();
        assertThat(due.shortfalls().get(0).because())
                .contains(
                        "the tester does not have the alternative method", "the house does not list the direct method");
    }

    // ---- insulation

    private static Obligations insulation(Device device, String policy, Occasion occasion) {
        return Oblige.oblige(
                device,
                Bench.marrowgate(),
                Bench.rules(RECURRENT),
                Bench.house("insulation: " + policy + "\n"),
                occasion);
    }

    @Test
    void insulation_follows_policy_and_occasion() {
        for (Occasion occasion : Occasion.values()) {
            boolean repair = occasion == Occasion.AFTER_REPAIR;
            assertThat(of(insulation(MONITOR, "never", occasion), QuantityKind.INSULATION_RESISTANCE))
                    .isEmpty();
            assertThat(of(insulation(MONITOR, "always", occasion), QuantityKind.INSULATION_RESISTANCE))
                    .hasSize(13);
            assertThat(of(insulation(MONITOR, "after-repair", occasion), QuantityKind.INSULATION_RESISTANCE))
                    .hasSize(repair ? 13 : 0);
        }
        assertThat(insulation(MONITOR, "never", Occasion.AFTER_REPAIR).notApplicable())
                .anyMatch(row -> row.test().equals("insulation-resistance")
                        && row.because().contains("house rules"));
    }

    /** Class I: mains to earth, and for six functions mains to part and part to earth. */
    @Test
    void insulation_of_class_one_is_read_against_the_earth() {
        Obligations due = insulation(MONITOR, "always", Occasion.RECURRENT);
        Obligation mains = get(due, "insulation-resistance/mains-to-earth/off");
        assertThat(mains.demand()).isEqualTo(Demand.NOTHING);
        assertThat(mains.limit().orElseThrow().value().text()).isEqualTo("2 Mohm");
        Obligation part = get(due, "insulation-resistance/mains-to-spo2/off");
        assertThat(part.demand()).isEqualTo(Demand.of(List.of("spo2.sensor")));
        assertThat(part.limit().orElseThrow().value().text()).isEqualTo("70 Mohm");
        assertThat(get(due, "insulation-resistance/spo2-to-housing/off").demand())
                .isEqualTo(Demand.of(List.of("spo2.sensor")));
        assertThat(mains.network()).isEmpty();
    }

    @Test
    void insulation_of_class_two_is_read_against_unearthed_metal() {
        Obligations due = insulation(Bench.device("mossback-bed"), "always", Occasion.RECURRENT);
        Obligation housing = get(due, "insulation-resistance/mains-to-housing/off");
        assertThat(housing.demand()).isEqualTo(Demand.of(List.of("housing.head-frame", "housing.foot-frame")));
        assertThat(housing.limit().orElseThrow().value().text()).isEqualTo("7 Mohm");
        assertThat(of(due, QuantityKind.INSULATION_RESISTANCE)).hasSize(1);
    }

    @Test
    void insulation_is_not_read_where_the_switch_is_electronic_or_the_maker_forbids_it() {
        Device electronic = monitorWith("mains-switch: both-poles", "mains-switch: electronic");
        Obligations due = insulation(electronic, "always", Occasion.RECURRENT);
        assertThat(of(due, QuantityKind.INSULATION_RESISTANCE)).isEmpty();
        assertThat(due.notApplicable()).anyMatch(row -> row.because().contains("electronic"));
        Obligations forbidden = insulation(Bench.device("dovecote-infant-warmer"), "always", Occasion.AFTER_REPAIR);
        assertThat(of(forbidden, QuantityKind.INSULATION_RESISTANCE)).isEmpty();
        assertThat(forbidden.notApplicable())
                .filteredOn(row -> row.test().equals("insulation-resistance"))
                .extracting(NotApplicable::because)
                .singleElement()
                .asString()
                .contains("surge arresters to earth");
    }

    @Test
    void a_tester_without_500_volts_falls_short() {
        Obligations due = Bench.due(
                MONITOR,
                Bench.marrowgateWith("insulation: [500 V]", "insulation: []"),
                RECURRENT,
                Bench.house("insulation: always\n"));
        assertThat(due.shortfalls()).anyMatch(each -> each.because().contains("insulation-resistance (13 readings)"));
    }

    // ---- extra tests, joining, what is forbidden

    @Test
    void an_extra_test_is_read_without_fault_and_with_the_limit_of_the_devices_own_edition() {
        House house = Bench.house("extra-tests: [{quantity: touch-current, because: patients sit beside it}]\n");
        Obligations due = Bench.due(MONITOR, Bench.marrowgate(), RECURRENT, house);
        List<Obligation> touched = of(due, QuantityKind.TOUCH_CURRENT);
        assertThat(touched)
                .extracting(Obligation::key)
                .containsExactly(
                        "touch-current/housing.bezel-screw/normal/ac",
                        "touch-current/housing.bezel-screw/reversed/ac",
                        "touch-current/port.lan/normal/ac",
                        "touch-current/port.lan/reversed/ac",
                        "touch-current/port.ecg-out/normal/ac",
                        "touch-current/port.ecg-out/reversed/ac");
        assertThat(touched)
                .allMatch(each -> each.limit().orElseThrow().id().equals("iec-60601-1-ed3-touch-normal")
                        && each.clause().equals("house: patients sit beside it"));
        assertThat(due.warnings()).contains("house rules: also reads touch-current: patients sit beside it");
        Device unstated =
                Bench.deviceFrom(Bench.sample("brindlewick-ward-monitor").replace("built-to: iec-60601-1-ed3\n", ""));
        assertThat(of(Bench.due(unstated, Bench.marrowgate(), RECURRENT, house), QuantityKind.TOUCH_CURRENT))
                .isNotEmpty()
                .allMatch(
                        each -> each.limit().isEmpty() && each.note().orElse("").contains(Limits.NONE));
        assertThat(due.notApplicable()).noneMatch(row -> row.test().equals("touch-current"));
    }

    @Test
    void an_extra_test_of_insulation_overrides_the_policy() {
        House house =
                Bench.house("insulation: never\nextra-tests: [{quantity: insulation-resistance, because: wet room}]\n");
        assertThat(of(Bench.due(MONITOR, Bench.marrowgate(), RECURRENT, house), QuantityKind.INSULATION_RESISTANCE))
                .hasSize(13);
    }

    @Test
    void an_extra_test_that_is_not_planned_is_said_to_be_missing() {
        House house = Bench.house("extra-tests: [{quantity: lead-to-lead, because: habit}]\n");
        assertThat(Bench.due(MONITOR, Bench.marrowgate(), RECURRENT, house).shortfalls())
                .anyMatch(each -> each.about().equals("house rules, extra test lead-to-lead"));
    }

    @Test
    void a_house_joins_stricter_than_the_rule_set() {
        House house = Bench.house("join-stricter: [{type: CF, each: connection, because: as in the type test}]\n");
        Obligations due = Bench.due(MONITOR, Bench.marrowgate(), RECURRENT, house);
        // The ten wires tied, as the rule set asks: their sum may be above what each shows alone. Each of the ten too;
        // two domes, a probe, sensor and cuff are one connection each; four readings of all of them.
        assertThat(of(due, QuantityKind.APPLIED_PART_LEAKAGE)).hasSize(64);
        assertThat(get(due, "applied-part-leakage/ecg/normal/source-normal/ac").demand())
                .isEqualTo(Demand.of(MONITOR.part("ecg").orElseThrow().connections().stream()
                        .map(connection -> connection.name())
                        .toList()));
        assertThat(get(due, "applied-part-leakage/ecg.N/normal/source-normal/ac")
                        .demand())
                .isEqualTo(Demand.of(List.of("ecg.N")));
    }

    @Test
    void what_the_maker_forbids_is_not_read_and_is_listed_with_the_reason() {
        Device device =
                monitorWith("forbids: []", "forbids: [{test: patient-auxiliary, because: the amplifier saturates}]");
        Obligations due = Bench.due(device, Bench.marrowgate(), THIRD);
        assertThat(of(due, QuantityKind.PATIENT_AUXILIARY)).isEmpty();
        assertThat(due.notApplicable())
                .contains(new NotApplicable(
                        "patient-auxiliary", "ruled out for this device: the amplifier saturates", "8.7.4.8"));
    }

    @Test
    void no_accessible_earthed_metal_is_no_failure() {
        Device device = Bench.deviceFrom("""
                leadwright: device/1
                name: Plastic class I device
                supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 1 A}
                protection: class-1
                battery: none
                start-up: 45 s
                applied-parts:
                  - {id: p, name: Part, type: BF, connections: [{id: a, terminal: skin-surface}]}
                touch-points:
                  - {id: shell, name: Shell, earthed: no, surface: insulating}
                """);
        Obligations due = Bench.due(device, Bench.marrowgate(), RECURRENT);
        assertThat(due.notApplicable())
                .anyMatch(row -> row.test().equals("earth-resistance")
                        && row.because().contains("not possible from outside; see the device's instructions"));
        // Nothing earthed can be the way back, so the shell is wrapped and tied to earth.
        assertThat(get(due, "applied-part-leakage/p/normal/source-normal/ac")
                        .demand()
                        .earthed())
                .containsExactly("housing.shell");
        assertThat(due.warnings()).anyMatch(text -> text.contains("45 s") && text.contains("counts as no"));
    }
}
