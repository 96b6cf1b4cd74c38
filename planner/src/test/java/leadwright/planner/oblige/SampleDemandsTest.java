package leadwright.planner.oblige;

import static leadwright.planner.oblige.Bench.RECURRENT;
import static leadwright.planner.oblige.Bench.THIRD;
import static leadwright.planner.oblige.Bench.get;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Shortfall;
import org.junit.jupiter.api.Test;

/** Chosen readings of the samples: what is joined, against what, at what limit. */
class SampleDemandsTest {

    private static final List<String> ECG_10 =
            List.of("ecg.R", "ecg.L", "ecg.F", "ecg.N", "ecg.C1", "ecg.C2", "ecg.C3", "ecg.C4", "ecg.C5", "ecg.C6");

    private static Obligations brindlewick(String rules) {
        return Bench.due(Bench.device("brindlewick-ward-monitor"), Bench.marrowgate(), rules);
    }

    private static Obligations oddlebar(String rules) {
        return Bench.due(Bench.device("oddlebar-rescue-set"), Bench.marrowgate(), rules);
    }

    private static void limit(Obligation reading, String id, String value) {
        assertThat(reading.limit()).hasValueSatisfying(limit -> {
            assertThat(limit.id()).isEqualTo(id);
            assertThat(limit.value().text()).isEqualTo(value);
        });
    }

    @Test
    void recurrent_test_joins_the_ten_wires_and_lets_the_rest_float() {
        Obligation ecg = get(brindlewick(RECURRENT), "applied-part-leakage/ecg/reversed/source-normal/ac");
        assertThat(ecg.demand()).isEqualTo(Demand.of(ECG_10));
        assertThat(ecg.of()).containsExactly("ecg");
        assertThat(ecg.clause()).isEqualTo("5.3.4.3");
        limit(ecg, "iec-62353-part-direct-cf", "50 uA");
        assertThat(ecg.limit().orElseThrow().unconfirmed()).isTrue();
    }

    @Test
    void equipment_leakage_takes_unearthed_housing_and_all_parts_but_no_ports() {
        Obligation equipment = get(brindlewick(RECURRENT), "equipment-leakage/equipment/normal/ac");
        assertThat(equipment.demand().measured())
                .hasSize(16)
                .containsAll(ECG_10)
                .contains(
                        "housing.bezel-screw",
                        "spo2.sensor",
                        "cuff.cuff",
                        "ibp.p1.dome-1",
                        "ibp.p2.dome-2",
                        "temp.probe");
        assertThat(equipment.demand().against()).isEmpty();
        assertThat(equipment.demand().earthed()).isEmpty();
        limit(equipment, "iec-62353-equipment-direct-class-1", "500 uA");
    }

    @Test
    void third_edition_puts_mains_on_one_wire_with_other_parts_metal_and_ports_earthed() {
        Obligation wire = get(brindlewick(THIRD), "mains-on-applied-part/ecg.R/normal/source-reversed/ac");
        assertThat(wire.demand())
                .isEqualTo(Demand.of(
                        List.of("ecg.R"),
                        List.of(),
                        List.of(
                                "spo2.sensor",
                                "cuff.cuff",
                                "ibp.p1.dome-1",
                                "ibp.p2.dome-2",
                                "temp.probe",
                                "housing.bezel-screw",
                                "port.lan",
                                "port.ecg-out")));
        limit(wire, "iec-60601-1-ed3-mains-on-part-cf", "50 uA");
        limit(
                get(brindlewick(THIRD), "mains-on-applied-part/cuff/normal/source-reversed/ac"),
                "iec-60601-1-ed3-mains-on-part-bf",
                "5 mA");
    }

    @Test
    void third_edition_reads_auxiliary_current_of_each_against_all_others_of_the_device() {
        Obligation auxiliary = get(brindlewick(THIRD), "patient-auxiliary/temp.probe/normal/supply-open/dc");
        assertThat(auxiliary.demand().measured()).containsExactly("temp.probe");
        assertThat(auxiliary.demand().against()).hasSize(14).doesNotContain("temp.probe");
        limit(auxiliary, "iec-60601-1-ed3-auxiliary-dc-fault", "50 uA");
    }

    @Test
    void third_edition_total_joins_the_parts_of_one_type() {
        Obligations due = brindlewick(THIRD);
        Obligation bf = get(due, "total-patient-leakage/total-BF/normal/ac");
        assertThat(bf.demand()).isEqualTo(Demand.of(List.of("spo2.sensor", "cuff.cuff")));
        limit(bf, "iec-60601-1-ed3-total-ac-b-bf-normal", "500 uA");
        assertThat(get(due, "total-patient-leakage/total-CF/normal/ac").demand().measured())
                .hasSize(13);
        Obligation mains = get(due, "total-mains-on-applied-part/total-CF/reversed/source-normal/ac");
        assertThat(mains.demand().earthed())
                .containsExactlyInAnyOrder(
                        "spo2.sensor", "cuff.cuff", "housing.bezel-screw", "port.lan", "port.ecg-out");
        limit(mains, "iec-60601-1-ed3-total-mains-on-part-cf", "100 uA");
    }

    @Test
    void third_edition_puts_mains_on_unearthed_metal_for_type_bf_only() {
        Obligations due = brindlewick(THIRD);
        Obligation metal = get(due, "mains-on-unearthed-metal/spo2/normal/source-normal/ac");
        assertThat(metal.demand())
                .isEqualTo(Demand.of(List.of("spo2.sensor"), List.of("housing.bezel-screw"), List.of()));
        limit(metal, "iec-60601-1-ed3-mains-on-metal", "500 uA");
        limit(
                get(due, "mains-on-unearthed-metal/total-BF/normal/source-normal/ac"),
                "iec-60601-1-ed3-total-mains-on-metal",
                "1 mA");
        assertThat(Bench.keys(due)).noneMatch(key -> key.startsWith("mains-on-unearthed-metal/ecg"));
    }

    @Test
    void cord_fitted_in_one_rule_set_and_out_in_the_other() {
        Obligation fitted = get(brindlewick(RECURRENT), "earth-resistance/pole-clamp/off");
        assertThat(fitted.earthSubject()).contains(Obligation.EarthSubject.PLUG_TO_PART);
        limit(fitted, "iec-62353-earth-plug-to-part", "300 mohm");
        Obligations due = brindlewick(THIRD);
        Obligation out = get(due, "earth-resistance/pole-clamp/off");
        assertThat(out.earthSubject()).contains(Obligation.EarthSubject.INLET_TO_PART);
        limit(out, "iec-60601-1-ed3-earth-inlet-to-part", "100 mohm");
        Obligation cord = get(due, "earth-resistance/cord/off");
        assertThat(cord.earthSubject()).contains(Obligation.EarthSubject.CORD);
        assertThat(cord.place()).contains("cord-earth");
        limit(cord, "iec-60601-1-ed3-earth-cord", "100 mohm");
    }

    @Test
    void touch_by_probe_in_its_own_socket_asks_nothing_of_the_wiring_and_plastic_is_wired() {
        Obligations due = oddlebar(THIRD);
        Obligation insert = get(due, "touch-current/housing.handle-insert/normal/ac");
        assertThat(insert.demand()).isEqualTo(Demand.NOTHING);
        assertThat(insert.place()).contains("handle-insert");
        Obligation shell = get(due, "touch-current/housing.shell/normal/ac");
        assertThat(shell.demand()).isEqualTo(Demand.of(List.of("housing.shell")));
        assertThat(shell.place()).isEmpty();
        Obligation between = get(due, "touch-current-between/housing.handle-insert-housing.shell/normal/earth-open/ac");
        assertThat(between.demand())
                .isEqualTo(Demand.of(List.of("housing.handle-insert"), List.of("housing.shell"), List.of()));
        limit(between, "iec-60601-1-ed3-touch-between-fault", "500 uA");
        assertThat(Bench.keys(due))
                .contains("touch-current/housing.dock-rail/normal/earth-open/ac")
                .doesNotContain("touch-current/housing.dock-rail/normal/ac");
    }

    @Test
    void therapy_outputs_are_split_off_and_the_joined_value_is_listed() {
        Obligations due = oddlebar(RECURRENT);
        assertThat(get(due, "equipment-leakage/equipment-pads/normal/ac").demand())
                .isEqualTo(Demand.of(List.of("pads.apex", "pads.sternum")));
        assertThat(get(due, "equipment-leakage/equipment/normal/ac").demand().measured())
                .doesNotContain("pads.apex", "spoons.left")
                .contains("ecg.R", "spo2.sensor", "housing.shell");
        assertThat(due.notApplicable())
                .extracting(NotApplicable::test)
                .contains("equipment-leakage of equipment joined with therapy output pads, spoons");
        assertThat(due.warnings()).anyMatch(text -> text.contains("therapy output spoons: make safe"));
    }

    @Test
    void therapy_outputs_are_never_tied_to_other_parts() {
        Obligations due = oddlebar(THIRD);
        assertThat(get(due, "patient-auxiliary/pads.apex/normal/ac").demand().against())
                .containsExactly("pads.sternum");
        assertThat(get(due, "patient-auxiliary/spo2.sensor/normal/ac").demand().against())
                .containsExactlyInAnyOrder("ecg.R", "ecg.L", "ecg.F", "ecg.N", "ecg.C");
        assertThat(get(due, "mains-on-applied-part/pads/normal/source-normal/ac")
                        .demand()
                        .earthed())
                .containsExactlyInAnyOrder("housing.handle-insert", "port.service", "port.sync");
    }

    @Test
    void internally_powered_card_has_foil_round_its_case_as_the_way_back() {
        Obligation ecg = get(
                Bench.due(Bench.device("wickling-rhythm-card"), Bench.marrowgate(), RECURRENT),
                "applied-part-leakage/ecg/off/source-normal/ac");
        assertThat(ecg.demand())
                .isEqualTo(Demand.of(List.of("ecg.R", "ecg.L", "ecg.F"), List.of(), List.of("housing.case")));
        assertThat(ecg.mode()).isEqualTo("on");
        limit(ecg, "iec-62353-part-direct-cf", "50 uA");
    }

    @Test
    void functional_earth_has_its_own_row_with_the_limit_of_its_own_edition_in_the_recurrent_test() {
        Obligations due = Bench.due(Bench.device("noctuary-sleep-recorder"), Bench.marrowgate(), RECURRENT);
        Obligation row = get(due, "functional-earth-leakage/functional-earth/normal/ac");
        limit(row, "iec-60601-1-ed3-functional-earth-normal", "5 mA");
        assertThat(row.note())
                .hasValueSatisfying(note -> assertThat(note)
                        .contains("limit of the edition that the device was built to: IEC 60601-1, third"));
        limit(
                get(due, "equipment-leakage/equipment/normal/earth-open/ac"),
                "iec-62353-equipment-direct-class-2",
                "100 uA");
        assertThat(due.notApplicable()).extracting(NotApplicable::test).contains("earth-resistance");
    }

    @Test
    void opening_a_functional_earth_is_no_fault_and_has_the_limit_without_fault() {
        Obligations due = Bench.due(Bench.device("noctuary-sleep-recorder"), Bench.marrowgate(), THIRD);
        limit(
                get(due, "touch-current/housing.belt-hook/normal/earth-open/ac"),
                "iec-60601-1-ed3-touch-normal",
                "100 uA");
        limit(
                get(due, "touch-current/housing.belt-hook/normal/supply-open/ac"),
                "iec-60601-1-ed3-touch-fault",
                "500 uA");
        limit(
                get(due, "functional-earth-leakage/functional-earth/reversed/supply-open/ac"),
                "iec-60601-1-ed3-functional-earth-fault",
                "10 mA");
    }

    @Test
    void fixed_plant_is_read_from_the_reference_earth_and_touched_while_it_runs() {
        Obligations due = Bench.due(Bench.device("slaterow-tilt-table"), Bench.kit("k3-fixed-plant-case"), RECURRENT);
        Obligation rail = get(due, "earth-resistance/desk-rail/isolated");
        assertThat(rail.earthSubject()).contains(Obligation.EarthSubject.REFERENCE_TO_PART);
        limit(rail, "iec-62353-earth-reference-to-part", "300 mohm");
        Obligation hook = get(due, "earth-resistance/drip-hook/isolated");
        assertThat(hook.limit()).isEmpty();
        assertThat(hook.note()).hasValueSatisfying(note -> assertThat(note).contains("continuity look"));
        Obligation touched = get(due, "touch-current/housing.drip-hook/installed-on/mode-tilting/ac");
        assertThat(touched.demand()).isEqualTo(Demand.of(List.of("touch-probe")));
        limit(touched, "iec-62353-touch-permanent", "100 uA");
        assertThat(due.notApplicable())
                .extracting(NotApplicable::test)
                .contains("earth-resistance of column", "earth-resistance of motor-cover", "equipment-leakage");
        assertThat(due.shortfalls()).isEmpty();
    }

    @Test
    void what_fixed_plant_would_need_an_outlet_for_is_said_to_be_missing() {
        Obligations due = Bench.due(Bench.device("slaterow-tilt-table"), Bench.kit("k3-fixed-plant-case"), THIRD);
        assertThat(due.shortfalls()).extracting(Shortfall::about).containsExactly("fixed plant");
        assertThat(due.shortfalls().get(0).because())
                .contains("patient-leakage (2 readings)", "patient-auxiliary d.c. (4 readings)");
        limit(get(due, "earth-resistance/desk-rail/isolated"), "iec-60601-1-ed3-earth-reference-to-part", "100 mohm");
    }

    @Test
    void type_b_joins_the_housing_and_is_never_put_on_mains() {
        Obligations due = Bench.due(Bench.device("dovecote-infant-warmer"), Bench.marrowgate(), RECURRENT);
        assertThat(get(due, "equipment-leakage/equipment/normal/mode-hot/ac").demand())
                .isEqualTo(Demand.of(List.of("housing.rail", "housing.tray", "skin-probe.probe")));
        assertThat(due.notApplicable())
                .extracting(NotApplicable::test)
                .contains("applied-part-leakage of type B parts", "insulation-resistance");
    }

    @Test
    void refusals_name_outlet_and_reason() {
        assertThat(Bench.due(Bench.device("fenlark-scanner"), Bench.kit("k2-round-trolley"), RECURRENT)
                        .refusal())
                .hasValueSatisfying(text -> assertThat(text)
                        .contains("nema-5-20 does not enter", "no adapter helps: 14 A is over 80 % of 15 A"));
        assertThat(Bench.due(Bench.device("brindlewick-ward-monitor"), Bench.kit("k2-round-trolley"), RECURRENT)
                        .refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("rated 230 V", "0.52", "split-phase"));
        assertThat(Bench.due(Bench.device("kettlemoor-bench-steriliser"), Bench.marrowgate(), RECURRENT)
                        .refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("split-phase supply"));
        assertThat(Bench.due(Bench.device("brindlewick-ward-monitor"), Bench.kit("k3-fixed-plant-case"), RECURRENT)
                        .refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("has no outlet"));
    }
}
