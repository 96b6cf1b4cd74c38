package leadwright.planner.oblige;

import static org.assertj.core.api.Assertions.assertThat;

import leadwright.catalog.kit.Kit;
import org.junit.jupiter.api.Test;

/** Whether a device may be plugged in at all: system, voltage, plug, ratings. */
class OutletFitTest {
    private static final String OUTLET =
            "    - {socket: bs-1363, system: line-neutral, voltage: 230 V, current: 13 A}\n";

    private static OutletFit fit(String supply, Kit kit) {
        return OutletFit.of(DeviceFacts.of(Bench.deviceFrom("""
                leadwright: device/1
                name: Plugged device
                supply: {connection: fixed-cord, %s}
                protection: class-1
                battery: none
                start-up: 5 s
                applied-parts: []
                touch-points:
                  - {id: frame, name: Frame, earthed: yes}
                """.formatted(supply))), kit);
    }

    private static Kit outlet(String line, String items) {
        String text = Bench.sample("k1-marrowgate-bench").replace(OUTLET, line).replace("items:\n", "items:\n" + items);
        return Bench.kitFrom(text);
    }

    private static String uk(String voltage, String current) {
        return "cord-plug: bs-1363, system: line-neutral, voltage: " + voltage + ", frequency: 50 Hz, current: "
                + current;
    }

    @Test
    void rated_voltages_hold_within_a_tenth() {
        assertThat(fit(uk("230 V", "2 A"), Bench.marrowgate()).refusal()).isEmpty();
        assertThat(fit(uk("240 V", "2 A"), Bench.marrowgate()).refusal()).isEmpty();
        assertThat(fit(uk("100-240 V", "2 A"), Bench.marrowgate()).refusal()).isEmpty();
        assertThat(fit(uk("210 V", "2 A"), Bench.marrowgate()).refusal()).isEmpty();
        assertThat(fit(uk("209 V", "2 A"), Bench.marrowgate()).refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("too high"));
        assertThat(fit(uk("260 V", "2 A"), Bench.marrowgate()).refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("would not run as made", "0.88"));
        assertThat(fit(uk("120 V", "2 A"), Bench.marrowgate()).refusal()).isPresent();
    }

    @Test
    void the_current_holds_from_plug_to_wall() {
        assertThat(fit(uk("230 V", "13 A"), Bench.marrowgate()).refusal()).isEmpty();
        assertThat(fit(uk("230 V", "13.1 A"), Bench.marrowgate()).refusal())
                .hasValueSatisfying(
                        text -> assertThat(text).contains("13.1 A, more than the 13 A from outlet to wall"));
        Kit weakInlet =
                Bench.marrowgateWith("inlet: {plug: bs-1363, current: 13 A}", "inlet: {plug: bs-1363, current: 10 A}");
        assertThat(fit(uk("230 V", "12 A"), weakInlet).refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("more than the 10 A"));
    }

    @Test
    void a_plug_enters_its_own_and_a_larger_socket_only() {
        String small = "cord-plug: nema-5-15, system: line-neutral, voltage: 120 V, frequency: 60 Hz, current: 3 A";
        String large = small.replace("5-15", "5-20");
        Kit twenty = outlet("    - {socket: nema-5-20, system: line-neutral, voltage: 120 V, current: 20 A}\n", "");
        Kit fifteen = outlet("    - {socket: nema-5-15, system: line-neutral, voltage: 120 V, current: 15 A}\n", "");
        assertThat(fit(small, fifteen).refusal()).isEmpty();
        assertThat(fit(small, twenty).refusal()).isEmpty();
        assertThat(fit(large, twenty).refusal()).isEmpty();
        assertThat(fit(large, fifteen).refusal())
                .hasValueSatisfying(text -> assertThat(text)
                        .contains("the plug nema-5-20 does not enter it", "the kit has no adapter for it"));
    }

    @Test
    void an_adapter_carries_80_percent_of_the_smallest_part() {
        String adapter =
                "  - {id: to-uk, kind: adapter, ends: [cee-7-7, bs-1363], current: 10 A, voltage: 250 V, stock: 1}\n";
        Kit kit = outlet(OUTLET, adapter);
        String plug = "cord-plug: cee-7-7, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: ";
        OutletFit eight = fit(plug + "8 A", kit);
        assertThat(eight.refusal()).isEmpty();
        assertThat(eight.adapter())
                .hasValueSatisfying(item -> assertThat(item.id()).isEqualTo("to-uk"));
        assertThat(eight.warnings()).anyMatch(text -> text.contains("either way round"));
        assertThat(fit(plug + "8.1 A", kit).refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("would carry 8.1 A, over 80 % of 10 A"));
        assertThat(fit(plug + "1 A", Bench.marrowgate()).refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("no adapter for it"));
        Kit unrated = outlet(OUTLET, adapter.replace("voltage: 250 V, ", ""));
        assertThat(fit(plug + "1 A", unrated).refusal())
                .hasValueSatisfying(text -> assertThat(text).contains("states no current or no voltage"));
    }

    @Test
    void the_first_outlet_that_fits_is_taken() {
        Kit both =
                outlet("    - {socket: nema-5-15, system: line-neutral, voltage: 120 V, current: 15 A}\n" + OUTLET, "");
        assertThat(fit(uk("230 V", "2 A"), both).outlet())
                .hasValueSatisfying(outlet -> assertThat(outlet.socket()).isEqualTo("bs-1363"));
    }

    @Test
    void what_the_label_does_not_say_is_warned_of() {
        OutletFit fit = fit("system: line-neutral, voltage: 230 V, frequency: 50 Hz", Bench.marrowgate());
        assertThat(fit.refusal()).isEmpty();
        assertThat(fit.warnings())
                .anyMatch(text -> text.contains("does not state the plug"))
                .anyMatch(text -> text.contains("does not state the rated current"));
    }
}
