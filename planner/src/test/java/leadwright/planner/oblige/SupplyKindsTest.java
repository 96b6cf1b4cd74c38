package leadwright.planner.oblige;

import static leadwright.planner.oblige.Bench.RECURRENT;
import static leadwright.planner.oblige.Bench.THIRD;
import static leadwright.planner.oblige.Bench.get;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Shortfall;
import org.junit.jupiter.api.Test;

/** Supplies other than line and neutral, and who is tested by which class. */
class SupplyKindsTest {
    private static final String OUTLET = "{socket: bs-1363, system: line-neutral, voltage: 230 V, current: 13 A}";

    private static Kit benchWithOutlet(String outlet) {
        String text = Bench.sample("k1-marrowgate-bench")
                .replace(OUTLET, outlet)
                .replace("inlet: {plug: bs-1363, current: 13 A}", "inlet: {plug: nema-6-20, current: 20 A}");
        return Bench.kitFrom(text);
    }

    private static Device device(String supply, String more) {
        return Bench.deviceFrom("""
                leadwright: device/1
                name: Device
                supply: {%s, frequency: 50 Hz, current: 1 A}
                battery: none
                mains-switch: both-poles
                start-up: 5 s
                tolerates-power-cut: yes
                applied-parts:
                  - {id: p, name: Part, type: BF, connections: [{id: a, terminal: skin-surface}]}
                touch-points:
                  - {id: knob, name: Knob, earthed: no}
                %s""".formatted(supply, more));
    }

    private static List<String> supplyReadings(Obligations due) {
        return due.wanted().stream()
                .filter(each -> each.quantity() == QuantityKind.SUPPLY_VOLTAGE)
                .map(Obligation::key)
                .toList();
    }

    @Test
    void both_legs_of_a_split_phase_supply_are_checked() {
        Kit kit = benchWithOutlet("{socket: nema-6-20, system: split-phase, voltage: 240 V, current: 20 A}");
        Obligations due = Bench.due(Bench.device("kettlemoor-bench-steriliser"), kit, THIRD);
        assertThat(due.refusal()).isEmpty();
        assertThat(supplyReadings(due))
                .containsExactly(
                        "supply-voltage/leg-1-to-earth/off",
                        "supply-voltage/leg-2-to-earth/off",
                        "supply-voltage/leg-to-leg/off");
        assertThat(due.warnings())
                .anyMatch(text -> text.contains("split-phase supply") && text.contains("one leg open rules"))
                .anyMatch(text -> text.contains("either way round"));
        assertThat(Bench.keys(due)).contains("earth-leakage/earth/reversed/supply-open/ac");
    }

    @Test
    void on_an_isolated_supply_no_leakage_is_read() {
        Kit kit = benchWithOutlet(OUTLET.replace("line-neutral", "isolated"));
        Device device = device(
                "connection: fixed-cord, cord-plug: bs-1363, system: isolated, voltage: 230 V",
                "protection: class-2\n");
        Obligations due = Bench.due(device, kit, RECURRENT);
        assertThat(due.shortfalls()).extracting(Shortfall::about).containsExactly("tester outlet");
        assertThat(due.wanted()).allMatch(each -> each.quantity() == QuantityKind.SUPPLY_VOLTAGE);
        assertThat(due.warnings()).anyMatch(text -> text.contains("isolated supply"));
    }

    @Test
    void three_phase_equipment_on_a_cord_is_planned_as_fixed_plant() {
        Device device = device(
                "connection: fixed-cord, cord-plug: iec-60309, system: three-phase, voltage: 400 V",
                "protection: class-1\n");
        Obligations due = Bench.due(device, Bench.kit("k3-fixed-plant-case"), RECURRENT);
        assertThat(due.refusal()).isEmpty();
        assertThat(due.warnings()).anyMatch(text -> text.contains("three-phase equipment is planned as fixed plant"));
        assertThat(get(due, "touch-current/housing.knob/installed-on/ac").state())
                .isEqualTo(MainsState.INSTALLED_ON);
        assertThat(due.wanted()).noneMatch(each -> each.state().powered());
    }

    @Test
    void an_external_adapter_is_judged_by_its_own_class() {
        String supply = "connection: external-adapter, cord-plug: bs-1363, system: line-neutral, voltage: 230 V";
        Device classI = device(supply, "protection: class-2\nadapter: {class: class-1, functional-earth: none}\n");
        assertThat(get(Bench.due(classI, Bench.marrowgate(), RECURRENT), "equipment-leakage/equipment/normal/ac")
                        .limit()
                        .orElseThrow()
                        .id())
                .isEqualTo("iec-62353-equipment-direct-class-1");
        Device internal = device(
                supply,
                "protection: internally-powered\nadapter: {class: class-2, functional-earth: none}\n"
                        .replace("battery: none", "battery: backs-up"));
        assertThat(get(Bench.due(internal, Bench.marrowgate(), RECURRENT), "equipment-leakage/equipment/normal/ac")
                        .limit()
                        .orElseThrow()
                        .id())
                .isEqualTo("iec-62353-equipment-direct-class-2");
    }

    @Test
    void a_functional_earth_terminal_is_out_of_the_testers_reach() {
        Device device = device(
                "connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V",
                "protection: class-2\nfunctional-earth: terminal\n");
        Obligations due = Bench.due(device, Bench.marrowgate(), THIRD);
        assertThat(due.shortfalls()).extracting(Shortfall::about).containsExactly("functional-earth terminal");
        assertThat(due.wanted()).noneMatch(each -> each.state().fault() == MainsState.Fault.EARTH_OPEN);
    }

    @Test
    void readings_with_the_supply_open_are_taken_once_where_the_device_goes_off() {
        Obligations due = Bench.due(Bench.device("mossback-bed"), Bench.marrowgate(), THIRD);
        assertThat(due.notApplicable()).anyMatch(row -> row.test().equals("supply open in each operating mode"));
        assertThat(get(due, "touch-current/housing.head-frame/normal/supply-open/ac")
                        .note())
                .hasValueSatisfying(note -> assertThat(note).contains("the device is off in this state"));
    }

    /** Its one reading: mains on the shaft in the bath, both ways round, back through the plate. */
    @Test
    void a_body_cavity_probe_alone_is_read_with_mains_on_it_and_never_switched_on() {
        Device probe = Bench.device("fenlark-probe-alone");
        for (String rules : List.of(RECURRENT, THIRD, "iec-60601-1-ed2")) {
            Obligations due = Bench.due(probe, Bench.marrowgate(), rules);
            List<Obligation> readings = due.wanted().stream()
                    .filter(each -> each.quantity() != QuantityKind.TESTER_CHECK)
                    .toList();
            assertThat(readings).as(rules).hasSize(2).allSatisfy(each -> {
                assertThat(each.demand().measured()).containsExactly("cavity-probe.shaft");
                assertThat(each.demand().earthed()).containsExactly("housing.plate");
                assertThat(each.state()).isEqualTo(MainsState.OFF);
                assertThat(each.mode()).isEqualTo("off");
                assertThat(each.limit().orElseThrow().value().text()).isEqualTo("5 mA");
            });
            assertThat(due.shortfalls()).isEmpty();
        }
        assertThat(Bench.due(probe, Bench.marrowgate(), THIRD).notApplicable())
                .anyMatch(row ->
                        row.test().equals("patient-leakage") && row.because().contains("no source of its own"));
        // On its host it is read in every state, as any other part.
        assertThat(Bench.due(
                                Bench.device("fenlark-scanner"),
                                benchWithOutlet(
                                        "{socket: nema-5-20, system: line-neutral, voltage: 120 V, current: 20 A}"),
                                THIRD)
                        .wanted())
                .filteredOn(each -> each.quantity() == QuantityKind.PATIENT_LEAKAGE
                        && each.demand().measured().contains("cavity-probe.shaft"))
                .hasSize(12);
    }

    /** NFPA 99 asks for normal polarity; a plug that goes in either way round, or may, is read both ways. */
    @Test
    void an_unpolarised_or_unstated_plug_is_read_both_ways_whatever_is_asked() {
        String supply = "connection: fixed-cord, %s system: line-neutral, voltage: 230 V";
        Kit kit = Bench.kitFrom(Bench.sample("k1-marrowgate-bench").replace("socket: bs-1363", "socket: cee-7-7"));
        Obligations either =
                Bench.due(device(supply.formatted("cord-plug: cee-7-7,"), "protection: class-1"), kit, "nfpa-99-2012");
        assertThat(either.refusal()).isEmpty();
        assertThat(polarities(either)).contains(MainsState.NORMAL, MainsState.REVERSED);
        Obligations unstated =
                Bench.due(device(supply.formatted(""), "protection: class-1"), Bench.marrowgate(), "nfpa-99-2012");
        assertThat(polarities(unstated)).contains(MainsState.REVERSED_EARTH_OPEN);
        Obligations polarised = Bench.due(
                device(supply.formatted("cord-plug: bs-1363,"), "protection: class-1"),
                Bench.marrowgate(),
                "nfpa-99-2012");
        assertThat(polarities(polarised)).containsOnly(MainsState.NORMAL, MainsState.NORMAL_EARTH_OPEN, MainsState.OFF);
    }

    private static List<MainsState> polarities(Obligations due) {
        return due.wanted().stream().map(Obligation::state).distinct().toList();
    }

    /** Switched off at its own switch is one more mode; a device without a switch has none. */
    @Test
    void power_off_is_read_where_there_is_a_switch() {
        String supply = "connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V";
        Device device = device(supply, "protection: class-1");
        List<String> modes = Bench.due(device, Bench.marrowgate(), "nfpa-99-2012").wanted().stream()
                .filter(each -> each.quantity() == QuantityKind.TOUCH_CURRENT)
                .map(Obligation::mode)
                .distinct()
                .toList();
        assertThat(modes).containsExactly("on", "switched-off");
        Device always = Bench.deviceFrom("""
                leadwright: device/1
                name: Device
                supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V}
                protection: class-1
                mains-switch: none
                start-up: 5 s
                touch-points:
                  - {id: knob, name: Knob, earthed: no}
                """);
        Obligations due = Bench.due(always, Bench.marrowgate(), "nfpa-99-2012");
        assertThat(due.wanted()).isNotEmpty().noneMatch(each -> each.mode().equals("switched-off"));
        assertThat(due.notApplicable())
                .anyMatch(row -> row.because().equals("the device has no switch of its own")
                        && row.clause().equals("10.3.5"));
    }
}
