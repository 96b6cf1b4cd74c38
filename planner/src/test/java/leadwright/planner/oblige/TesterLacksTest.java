package leadwright.planner.oblige;

import static leadwright.planner.oblige.Bench.RECURRENT;
import static leadwright.planner.oblige.Bench.THIRD;
import static leadwright.planner.oblige.Bench.get;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.rules.EarthedParts;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.TestRow;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import leadwright.planner.plan.Shortfall;
import org.junit.jupiter.api.Test;

/** What a tester lacks: what is not measured, and why, and what would do. */
class TesterLacksTest {
    private static final Device MONITOR = Bench.device("brindlewick-ward-monitor");

    private static Shortfall only(Obligations due) {
        assertThat(due.shortfalls()).hasSize(1);
        return due.shortfalls().get(0);
    }

    /** What keeps every earth reading away, before what follows from it. */
    private static Shortfall ofEarth(Obligations due) {
        assertThat(due.shortfalls()).hasSize(2);
        assertThat(due.shortfalls().get(1).about()).isEqualTo("protective earth");
        return due.shortfalls().get(0);
    }

    private static long count(Obligations due, QuantityKind quantity) {
        return due.wanted().stream().filter(each -> each.quantity() == quantity).count();
    }

    @Test
    void another_measuring_network_serves_no_leakage_reading() {
        Kit kit = Bench.marrowgateWith("networks: [iec-60601]", "networks: [iec-60990]");
        Obligations due = Bench.due(MONITOR, kit, RECURRENT);
        Shortfall missing = only(due);
        assertThat(missing.about()).isEqualTo("measuring network");
        assertThat(missing.because()).contains("equipment-leakage (2 readings)", "applied-part-leakage (24 readings)");
        assertThat(missing.connections()).contains("ecg.R", "housing.bezel-screw");
        assertThat(missing.additions()).containsExactly("a tester with the iec-60601 network");
        assertThat(count(due, QuantityKind.EARTH_RESISTANCE)).isEqualTo(2);
        assertThat(due.wanted()).noneMatch(each -> each.network().isPresent());
    }

    @Test
    void without_direct_components_only_those_are_missing() {
        Obligations due = Bench.due(MONITOR, Bench.marrowgateWith("components: [ac, dc]", "components: [ac]"), THIRD);
        assertThat(only(due).about()).isEqualTo("tester component dc");
        assertThat(only(due).because())
                .contains("patient-leakage d.c. (90 readings)", "total-patient-leakage d.c. (12 readings)");
        assertThat(due.wanted())
                .noneMatch(each -> each.component().filter(Component.DC::equals).isPresent());
        assertThat(count(due, QuantityKind.PATIENT_LEAKAGE)).isEqualTo(90);
    }

    @Test
    void without_a_source_no_mains_on_a_part() {
        Kit kit = Bench.marrowgateWith(
                "mains-on-applied-part: {voltage: 230 V, short-circuit: 3.5 mA, reading: corrected}",
                "mains-on-applied-part: false");
        Obligations due = Bench.due(MONITOR, kit, THIRD);
        assertThat(only(due).about()).isEqualTo("mains-on-applied-part");
        assertThat(only(due).because())
                .contains(
                        "mains-on-applied-part (60 readings)",
                        "total-mains-on-applied-part (8 readings)",
                        "mains-on-unearthed-metal (12 readings)");
        assertThat(due.wanted()).noneMatch(each -> each.sourcePolarity().isPresent());
    }

    @Test
    void a_source_below_the_mains_serves_only_if_its_readings_are_corrected() {
        String source = "mains-on-applied-part: {voltage: 230 V, short-circuit: 3.5 mA, reading: corrected}";
        Kit raw = Bench.marrowgateWith(source, source.replace("230", "120").replace("corrected", "raw"));
        assertThat(only(Bench.due(MONITOR, raw, THIRD)).because())
                .contains("120 V is below the device's mains voltage");
        Kit corrected = Bench.marrowgateWith(source, source.replace("230", "120"));
        Obligations due = Bench.due(MONITOR, corrected, THIRD);
        assertThat(due.shortfalls()).isEmpty();
        assertThat(due.warnings()).anyMatch(text -> text.contains("check that its readings are corrected to 230 V"));
    }

    @Test
    void an_earth_test_with_one_lead_does_not_serve_inlet_and_cord() {
        Kit kit = Bench.marrowgateWith(
                "sockets: [earth-jack, outlet-earth, second-jack]", "sockets: [earth-jack, outlet-earth]");
        Obligations due = Bench.due(MONITOR, kit, THIRD);
        assertThat(ofEarth(due).about()).isEqualTo("earth-test sockets");
        assertThat(ofEarth(due).because()).contains("need two", "earth-resistance (3 readings)");
        assertThat(Bench.due(MONITOR, kit, RECURRENT).shortfalls()).isEmpty();
    }

    @Test
    void without_the_outlets_earth_the_cord_is_taken_out() {
        Kit kit = Bench.marrowgateWith(
                "sockets: [earth-jack, outlet-earth, second-jack]", "sockets: [earth-jack, second-jack]");
        Obligations due = Bench.due(MONITOR, kit, RECURRENT);
        assertThat(due.shortfalls()).isEmpty();
        Obligation inlet = get(due, "earth-resistance/pole-clamp/off");
        assertThat(inlet.earthSubject()).contains(Obligation.EarthSubject.INLET_TO_PART);
        assertThat(inlet.limit().orElseThrow().value().text()).isEqualTo("200 mohm");
        assertThat(get(due, "earth-resistance/cord/off")
                        .limit()
                        .orElseThrow()
                        .value()
                        .text())
                .isEqualTo("100 mohm");
        Device fixed = Bench.device("dovecote-infant-warmer");
        assertThat(ofEarth(Bench.due(fixed, kit, RECURRENT)).because()).contains("earth of its outlet");
    }

    @Test
    void the_probe_takes_a_jack_where_it_touches_through_one() {
        Kit kit = Bench.marrowgateWith("touch-through: own", "touch-through: jack");
        Obligation touched = get(Bench.due(MONITOR, kit, THIRD), "touch-current/housing.bezel-screw/normal/ac");
        assertThat(touched.demand()).isEqualTo(Demand.of(List.of("touch-probe")));
        assertThat(touched.place()).contains("bezel-screw");
    }

    @Test
    void through_an_earth_lead_that_may_stay_on_touch_current_asks_nothing_of_the_jacks() {
        Kit kit = Bench.marrowgateWith("touch-through: own", "touch-through: earth-lead");
        Obligation touched = get(Bench.due(MONITOR, kit, THIRD), "touch-current/housing.bezel-screw/normal/ac");
        assertThat(touched.demand()).isEqualTo(Demand.NOTHING);
        assertThat(touched.place()).contains("bezel-screw");
    }

    @Test
    void nothing_is_touched_through_an_earth_lead_that_has_to_come_off() {
        Kit kit = Bench.marrowgateWith(
                "earth-jack: {socket: lab-4mm-socket-recessed, at-rest: open}\n  touch-through: own",
                "earth-jack: {socket: lab-4mm-socket-recessed}\n  touch-through: earth-lead");
        Obligations due = Bench.due(MONITOR, kit, THIRD);
        assertThat(due.shortfalls()).extracting(Shortfall::about).containsExactly("earth jack at rest");
        assertThat(Bench.keys(due)).noneMatch(key -> key.startsWith("touch-current/housing.bezel-screw"));
    }

    @Test
    void an_earth_lead_that_has_to_come_off_is_proven_off() {
        String proof = "proof/earth-lead-off/off";
        assertThat(Bench.keys(Bench.due(MONITOR, Bench.marrowgate(), RECURRENT)))
                .doesNotContain(proof);
        Kit unstated = Bench.marrowgateWith(
                "earth-jack: {socket: lab-4mm-socket-recessed, at-rest: open}",
                "earth-jack: {socket: lab-4mm-socket-recessed}");
        assertThat(get(Bench.due(MONITOR, unstated, RECURRENT), proof).note())
                .hasValueSatisfying(note -> assertThat(note).contains("expected: no reading"));
    }

    @Test
    void without_a_place_for_the_probe_bare_metal_is_not_touched() {
        Kit kit = Bench.marrowgateWith("  touch-through: own\n", "");
        Obligations due = Bench.due(Bench.device("oddlebar-rescue-set"), kit, THIRD);
        assertThat(due.shortfalls()).extracting(Shortfall::about).containsExactly("touch probe");
        assertThat(Bench.keys(due)).contains("touch-current/housing.shell/normal/ac");
        assertThat(Bench.keys(due)).noneMatch(key -> key.startsWith("touch-current/housing.handle-insert"));
    }

    @Test
    void the_known_resistor_is_read_at_start_and_end_and_says_what_to_expect() {
        Obligations due = Bench.due(MONITOR, Bench.marrowgate(), RECURRENT);
        assertThat(Bench.keys(due))
                .contains("tester-check/known-resistor/start/off/ac", "tester-check/known-resistor/end/off/ac");
        assertThat(get(due, "tester-check/known-resistor/start/off/ac").note())
                .hasValueSatisfying(note -> assertThat(note).contains("about 100 uA", "230 V"));
        Kit none = Bench.marrowgateWith(
                "checks:\n  - {id: known-resistor, value: 2.3 Mohm, tolerance: 5 %, voltage: 300 V}\n", "checks: []\n");
        assertThat(Bench.due(MONITOR, none, RECURRENT).warnings()).anyMatch(text -> text.contains("no known resistor"));
        Kit weak = Bench.marrowgateWith("tolerance: 5 %, voltage: 300 V", "tolerance: 5 %, voltage: 150 V");
        Obligations without = Bench.due(MONITOR, weak, RECURRENT);
        assertThat(count(without, QuantityKind.TESTER_CHECK)).isZero();
        assertThat(without.warnings()).anyMatch(text -> text.contains("not rated for 230 V"));
    }

    @Test
    void a_resistor_of_milliohms_checks_the_earth_test() {
        Obligations due = Bench.due(Bench.device("slaterow-tilt-table"), Bench.kit("k3-fixed-plant-case"), RECURRENT);
        Obligation check = get(due, "tester-check/known-resistor/start/off");
        assertThat(check.note()).contains("expected: 100 mohm within 1 %");
        assertThat(check.component()).isEmpty();
    }

    @Test
    void too_little_test_current_is_missing() {
        Kit kit = Bench.marrowgateWith("currents: [200 mA, 25 A]", "currents: [200 mA, 10 A]");
        Obligations due = Bench.due(MONITOR, kit, THIRD);
        assertThat(ofEarth(due).about()).isEqualTo("earth-test currents");
        assertThat(ofEarth(due).because()).contains("at least 25 A", "has 200 mA, 10 A");
        assertThat(count(due, QuantityKind.EARTH_RESISTANCE)).isZero();
        assertThat(Bench.due(MONITOR, kit, RECURRENT).shortfalls()).isEmpty();
    }

    @Test
    void a_quantity_that_the_rule_set_asks_for_and_nobody_plans_is_missing() {
        RuleSet known = Bench.rules(RECURRENT);
        TestRow first = known.tests().get(0);
        TestRow ports = new TestRow(
                QuantityKind.MAINS_ON_PORT,
                first.scope(),
                List.of(),
                List.of(),
                true,
                false,
                false,
                EarthedParts.NEVER,
                first.basis());
        RuleSet more = known.with(List.of(ports), List.of());
        Obligations due = Oblige.oblige(MONITOR, Bench.marrowgate(), more, House.defaults(), Occasion.RECURRENT);
        assertThat(only(due).because()).isEqualTo("mains-on-port is asked for and not planned by this program");
    }

    /** The other way about: laboratory limits are for the other network, and its rule set is not for applied parts. */
    @Test
    void a_tester_with_the_medical_network_takes_no_current_reading_by_the_laboratory_rule_set() {
        Obligations due = Bench.due(MONITOR, Bench.marrowgate(), "iec-61010-1");
        assertThat(only(due).about()).isEqualTo("measuring network");
        assertThat(only(due).additions()).containsExactly("a tester with the iec-60990 network");
        assertThat(count(due, QuantityKind.TOUCH_CURRENT)).isZero();
        assertThat(due.warnings()).anyMatch(text -> text.contains("is for equipment without any"));
        Kit both = Bench.marrowgateWith("networks: [iec-60601]", "networks: [iec-60601, iec-60990]");
        Obligations taken = Bench.due(MONITOR, both, "iec-61010-1");
        assertThat(taken.shortfalls()).isEmpty();
        assertThat(count(taken, QuantityKind.TOUCH_CURRENT)).isPositive();
    }
}
