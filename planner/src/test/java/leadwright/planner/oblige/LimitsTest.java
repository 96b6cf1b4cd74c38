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
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.Mark;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.Test;

/** From the rule set's row to the limit of a reading: house, device, raw source. */
class LimitsTest {
    private static final String ECG = "applied-part-leakage/ecg/normal/source-normal/ac";
    private static final String SPO2 = "applied-part-leakage/spo2/normal/source-normal/ac";

    private static Device brindlewickWith(String limits) {
        return Bench.deviceFrom(
                Bench.sample("brindlewick-ward-monitor").replace("limits: []", "limits: [" + limits + "]"));
    }

    private static Obligations due(House house) {
        return Bench.due(Bench.device("brindlewick-ward-monitor"), Bench.marrowgate(), RECURRENT, house);
    }

    private static Obligations due(Device device) {
        return Bench.due(device, Bench.marrowgate(), RECURRENT);
    }

    /** As a program might build it; the reader of house files refuses a loosened limit where it stands. */
    private static House tighter(String limit, Optional<Quantity> atMost, Optional<Quantity> atLeast) {
        House plain = Bench.house("insulation: always\n");
        return new House(
                plain.rules(),
                plain.methods(),
                plain.insulation(),
                plain.labels(),
                plain.paper(),
                plain.words(),
                plain.aim(),
                plain.replugUnderPower(),
                plain.capacitanceShare(),
                plain.capacitanceLimit(),
                plain.floatJoined(),
                plain.pastDue(),
                plain.decision(),
                plain.times(),
                List.of(new House.Tighter(limit, atMost, atLeast, "ours")),
                plain.extraTests(),
                plain.joinStricter(),
                plain.signs(),
                plain.confirmed(),
                plain.department());
    }

    private static String value(Obligation reading) {
        return reading.limit().orElseThrow().value().text();
    }

    private static String note(Obligation reading) {
        return reading.note().orElse("");
    }

    @Test
    void a_house_tightens_a_limit_and_the_reading_says_so() {
        House house =
                Bench.house("tighter: [{limit: iec-62353-part-direct-cf, at-most: 40 uA, because: heart ward}]\n");
        Obligation ecg = get(due(house), ECG);
        assertThat(value(ecg)).isEqualTo("40 uA");
        assertThat(ecg.limit().orElseThrow().id()).isEqualTo("iec-62353-part-direct-cf");
        assertThat(note(ecg)).contains("tightened by the house from 50 uA: heart ward");
        assertThat(value(get(due(house), SPO2))).isEqualTo("5 mA");
    }

    @Test
    void a_house_that_loosens_a_limit_is_refused() {
        Obligations due =
                due(tighter("iec-62353-part-direct-cf", Optional.of(Quantity.microAmperes(60)), Optional.empty()));
        assertThat(due.refusal())
                .contains(
                        "house rules, tighter iec-62353-part-direct-cf: 60 uA is looser than 50 uA; a house may tighten"
                                + " a limit, never loosen one");
        assertThat(due.wanted()).isEmpty();
    }

    @Test
    void the_same_value_is_no_loosening() {
        Obligations due =
                due(Bench.house("tighter: [{limit: iec-62353-part-direct-cf, at-most: 50 uA, because: as it is}]\n"));
        assertThat(due.refusal()).isEmpty();
        assertThat(note(get(due, ECG))).doesNotContain("tightened");
    }

    @Test
    void a_floor_is_tightened_upwards_only() {
        String limit = "iec-62353-insulation-mains-to-earth";
        Quantity megohm = Quantity.of(Dimension.RESISTANCE, 1_000_000_000_000L);
        Obligations stricter = due(tighter(limit, Optional.empty(), Optional.of(megohm.times(5))));
        assertThat(value(get(stricter, "insulation-resistance/mains-to-earth/off")))
                .isEqualTo("5 Mohm");
        assertThat(due(tighter(limit, Optional.empty(), Optional.of(megohm))).refusal())
                .isPresent();
        assertThat(due(tighter(limit, Optional.of(megohm.times(5)), Optional.empty()))
                        .refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("the limit is at-least 2 Mohm; write at-least"));
        assertThat(due(tighter(limit, Optional.empty(), Optional.of(Quantity.microAmperes(5))))
                        .refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("cannot be compared"));
    }

    @Test
    void an_unknown_limit_is_warned_of() {
        Obligations due = due(tighter("iec-62353-part-cf", Optional.of(Quantity.microAmperes(40)), Optional.empty()));
        assertThat(due.warnings()).anyMatch(text -> text.contains("no rule set has a limit 'iec-62353-part-cf'"));
    }

    @Test
    void a_confirmation_counts_in_its_own_edition_only() {
        String confirmed =
                "confirmed: [{limit: iec-62353-part-direct-cf, edition: \"%s\", by: A. Tester, date: 2027-01-10}]\n";
        Limit right = get(due(Bench.house(String.format(confirmed, "2014"))), ECG)
                .limit()
                .orElseThrow();
        assertThat(right.confirmed()).isTrue();
        assertThat(right.unconfirmed()).isFalse();
        assertThat(right.mark()).isEqualTo(Mark.C);
        Obligations wrong = due(Bench.house(String.format(confirmed, "2007")));
        assertThat(get(wrong, ECG).limit().orElseThrow().unconfirmed()).isTrue();
        assertThat(wrong.warnings()).anyMatch(text -> text.contains("was confirmed in edition 2007"));
    }

    @Test
    void a_stricter_limit_of_the_device_counts_with_its_source() {
        Obligation ecg = get(
                due(brindlewickWith(
                        "{quantity: applied-part-leakage, of: ecg, at-most: 30 uA, source: service manual 7.2}")),
                ECG);
        assertThat(value(ecg)).isEqualTo("30 uA");
        assertThat(ecg.limit().orElseThrow().clause()).isEqualTo("service manual 7.2");
        assertThat(note(ecg)).contains("device's own instructions: service manual 7.2");
    }

    @Test
    void a_looser_limit_of_the_device_counts_for_the_subject_that_it_names() {
        Obligations due = due(brindlewickWith(
                "{quantity: applied-part-leakage, of: ecg, at-most: 80 uA, source: particular standard 201.8}"));
        assertThat(value(get(due, ECG))).isEqualTo("80 uA");
        assertThat(note(get(due, ECG))).contains("looser than 50 uA", "particular standard 201.8");
        assertThat(value(get(due, "applied-part-leakage/temp/normal/source-normal/ac")))
                .isEqualTo("50 uA");
    }

    @Test
    void a_looser_limit_that_names_no_subject_is_not_used() {
        Obligations due =
                due(brindlewickWith("{quantity: applied-part-leakage, at-most: 80 uA, source: service manual}"));
        assertThat(value(get(due, ECG))).isEqualTo("50 uA");
        assertThat(due.warnings()).anyMatch(text -> text.contains("names no subject: it is not used"));
    }

    @Test
    void a_limit_of_the_device_as_a_whole_names_its_subject() {
        Obligations due =
                due(brindlewickWith("{quantity: equipment-leakage, at-most: 900 uA, source: particular standard}"));
        assertThat(value(get(due, "equipment-leakage/equipment/normal/ac"))).isEqualTo("900 uA");
    }

    @Test
    void the_house_stays_above_a_looser_limit_of_the_device() {
        Obligations due = Bench.due(
                brindlewickWith("{quantity: applied-part-leakage, of: ecg, at-most: 80 uA, source: service manual}"),
                Bench.marrowgate(),
                RECURRENT,
                Bench.house("tighter: [{limit: iec-62353-part-direct-cf, at-most: 40 uA, because: ours}]\n"));
        assertThat(value(get(due, ECG))).isEqualTo("40 uA");
        assertThat(note(get(due, ECG))).contains("looser than the house's and not used");
    }

    /** 5 mA with 3.5 mA: 17.5 / 8.5 = 2.058823… mA. 50 uA: 175 / 3.55 = 49.2957… uA. Never rounded up. */
    @Test
    void a_raw_reading_is_judged_at_the_lowest_that_the_limit_can_read() {
        Kit raw = Bench.marrowgateWith("reading: corrected", "reading: raw");
        Obligations due = Bench.due(Bench.device("brindlewick-ward-monitor"), raw, RECURRENT);
        Limit bf = get(due, SPO2).limit().orElseThrow();
        assertThat(bf.value().amount()).isEqualTo(2_058_823L);
        assertThat(bf.mark()).isEqualTo(Mark.C);
        assertThat(get(due, ECG).limit().orElseThrow().value().amount()).isEqualTo(49_295L);
        assertThat(note(get(due, ECG))).contains("1/(1/50 uA + 1/3.5 mA)");
        assertThat(value(get(due, "equipment-leakage/equipment/normal/ac"))).isEqualTo("500 uA");
    }

    @Test
    void a_raw_limit_that_rests_on_public_texts_is_marked_as_calculated() {
        Kit raw = Bench.marrowgateWith("reading: corrected", "reading: raw");
        Obligations due = Bench.due(Bench.device("brindlewick-ward-monitor"), raw, THIRD);
        Limit limit = get(due, "mains-on-applied-part/ecg.R/normal/source-normal/ac")
                .limit()
                .orElseThrow();
        assertThat(limit.mark()).isEqualTo(Mark.D);
        assertThat(limit.value().amount()).isEqualTo(49_295L);
        assertThat(limit.id()).isEqualTo("iec-60601-1-ed3-mains-on-part-cf");
    }

    /** IEC 62353 has no touch limit for a device with a cord; the laboratory's is for another network and never used. */
    @Test
    void a_limit_of_the_devices_own_edition_is_for_the_same_network() {
        House house = Bench.house("extra-tests: [{quantity: touch-current, because: ours}]\n");
        String key = "touch-current/housing.bezel-screw/normal/ac";
        String monitor = Bench.sample("brindlewick-ward-monitor");
        for (String edition : List.of("iec-60601-1-ed3", "iec-60601-1-ed2", "iec-61010-1")) {
            Device device = Bench.deviceFrom(monitor.replace("built-to: iec-60601-1-ed3", "built-to: " + edition));
            Optional<Limit> limit = get(Bench.due(device, Bench.marrowgate(), RECURRENT, house), key)
                    .limit();
            switch (edition) {
                case "iec-60601-1-ed3" ->
                    assertThat(limit.orElseThrow().id()).isEqualTo("iec-60601-1-ed3-touch-normal");
                case "iec-60601-1-ed2" ->
                    assertThat(limit.orElseThrow().id()).isEqualTo("iec-60601-1-ed2-enclosure-normal");
                default -> assertThat(limit).isEmpty();
            }
        }
    }

    /** The type test does not refer to editions: its own limits hold, and the plan says that the edition may have others. */
    @Test
    void a_rule_set_that_does_not_refer_to_editions_keeps_its_own_limits() {
        Device old = Bench.deviceFrom(Bench.sample("brindlewick-ward-monitor")
                .replace("built-to: iec-60601-1-ed3", "built-to: iec-60601-1-ed2"));
        Obligations due = Bench.due(old, Bench.marrowgate(), THIRD);
        assertThat(value(get(due, "earth-leakage/earth/normal/ac"))).isEqualTo("5 mA");
        assertThat(due.warnings()).anyMatch(text -> text.contains("built to iec-60601-1-ed2"));
    }
}
