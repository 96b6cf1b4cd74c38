package leadwright.planner.oblige;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Outcome;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import org.junit.jupiter.api.Test;

/** What is said of readings that are not taken, and of what a reading is taken against. */
class TrueReasonsTest {
    private static final String CORD = "supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral,"
            + " voltage: 230 V, frequency: 50 Hz, current: 0.3 A}\n";

    private static Device device(String protection, String lines) {
        return Bench.deviceFrom("leadwright: device/1\nname: Larkrise lamp\n" + CORD + "protection: " + protection
                + "\nbattery: none\nmains-switch: both-poles\nstart-up: 5 s\nshut-down: 2 s\n" + lines);
    }

    private static List<Obligation> of(Obligations due, QuantityKind quantity) {
        return due.wanted().stream().filter(each -> each.quantity() == quantity).toList();
    }

    private static NotApplicable notDone(Obligations due, String test) {
        return due.notApplicable().stream()
                .filter(each -> each.test().equals(test))
                .findFirst()
                .orElseThrow(() -> new AssertionError("nothing of " + test + " in " + due.notApplicable()));
    }

    @Test
    void between_unearthed_parts_sockets_count_as_parts() {
        Device device = device("class-2", """
                touch-points: [{id: screw, name: Screw, earthed: no, surface: metal}]
                ports: [{id: lan, name: Network}, {id: usb, name: Data}]
                """);
        List<Obligation> between =
                of(Bench.due(device, Bench.marrowgate(), Bench.THIRD), QuantityKind.TOUCH_CURRENT_BETWEEN);
        assertThat(between)
                .extracting(Obligation::of)
                .containsOnly(List.of("screw", "lan"), List.of("screw", "usb"), List.of("lan", "usb"));
        assertThat(between).hasSize(3 * 4);
        Obligations one =
                Bench.due(device("class-2", "ports: [{id: lan, name: Network}]\n"), Bench.marrowgate(), Bench.THIRD);
        assertThat(of(one, QuantityKind.TOUCH_CURRENT_BETWEEN)).isEmpty();
        assertThat(notDone(one, "touch-current-between").because()).startsWith("fewer than two accessible parts");
    }

    @Test
    void sockets_that_the_equipment_leakage_leaves_out_are_named() {
        Obligations due = Bench.due(Bench.device("brindlewick-ward-monitor"), Bench.marrowgate(), Bench.RECURRENT);
        assertThat(notDone(due, "equipment-leakage of sockets").because())
                .contains("Network", "a shell that a person can touch is to be stated as a touch point");
    }

    @Test
    void a_device_of_which_nothing_is_asked_is_refused_with_the_reason() {
        Device device = device("class-2", "ports: [{id: lan, name: Network}]\n");
        Obligations due = Bench.due(device, Bench.marrowgate(), Bench.RECURRENT);
        assertThat(due.refusal().orElseThrow())
                .contains("no touch point is stated", "not joined with the accessible parts: Network")
                .doesNotContain("no accessible part");
        Outcome bonding = Planner.plan(new Request(
                Bench.device("brindlewick-ward-monitor"),
                Bench.marrowgate(),
                Bench.rules("bonding"),
                House.defaults(),
                Occasion.RECURRENT,
                java.util.Optional.empty()));
        assertThat(bonding)
                .isInstanceOfSatisfying(
                        Outcome.Refused.class,
                        refused -> assertThat(refused.reason())
                                .contains("the device runs from a plug: bonding is a matter of what is wired in"));
    }

    @Test
    void an_insulation_reading_says_what_it_is_taken_against() {
        String part = "applied-parts: [{id: mains-to-x, name: Probe, type: BF,"
                + " connections: [{id: tip, terminal: skin-surface}]}]\n";
        House always = Bench.house("insulation: always\n");
        Obligations earthed = Bench.due(
                device("class-1", part + "touch-points: [{id: knob, name: Knob, earthed: yes, surface: metal}]\n"),
                Bench.marrowgate(),
                Bench.RECURRENT,
                always);
        assertThat(of(earthed, QuantityKind.INSULATION_RESISTANCE))
                .extracting(each -> each.insulatedFrom().orElseThrow())
                .containsExactly("protective earth", "mains part", "protective earth");
        Obligations second = Bench.due(
                device("class-2", part + "touch-points: [{id: knob, name: Knob, earthed: no, surface: metal}]\n"),
                Bench.marrowgate(),
                Bench.RECURRENT,
                always);
        assertThat(of(second, QuantityKind.INSULATION_RESISTANCE))
                .extracting(each -> each.insulatedFrom().orElseThrow())
                .containsExactly("mains part", "mains part", "housing");
        assertThat(of(earthed, QuantityKind.EARTH_RESISTANCE))
                .allMatch(each -> each.insulatedFrom().isEmpty());
    }

    @Test
    void a_painted_part_of_which_nobody_knows_has_one_note_and_no_promised_look() {
        Obligations due = Bench.due(device("class-1", """
                        touch-points:
                          - {id: door, name: Door, earthed: unknown, surface: painted}
                          - {id: rail, name: Rail, earthed: unknown, surface: metal}
                          - {id: knob, name: Knob, earthed: yes, surface: metal}
                        """), Bench.marrowgate(), Bench.RECURRENT);
        assertThat(due.warnings())
                .filteredOn(text -> text.contains("Door"))
                .hasSize(1)
                .allMatch(text -> text.contains("no continuity look is planned: Door") && text.contains("find out"));
        assertThat(due.warnings())
                .filteredOn(text -> text.contains("Rail"))
                .hasSize(1)
                .allMatch(text -> text.contains("Rail: a continuity look is planned"));
        assertThat(of(due, QuantityKind.EARTH_RESISTANCE))
                .anyMatch(each -> each.place().equals(java.util.Optional.of("rail")));
        assertThat(notDone(due, "earth-resistance of door").because())
                .startsWith("nobody states whether it is earthed");
    }

    @Test
    void the_stud_is_not_read_and_the_list_says_why() {
        Obligations due = Bench.due(device("class-1", """
                        touch-points: [{id: knob, name: Knob, earthed: yes, surface: metal}]
                        earth-points: [{id: stud, name: Stud, terminal: din-42801-stud}]
                        """), Bench.marrowgate(), Bench.RECURRENT);
        assertThat(notDone(due, "earth-resistance of stud").because()).contains("no protective-earth path");
    }
}
