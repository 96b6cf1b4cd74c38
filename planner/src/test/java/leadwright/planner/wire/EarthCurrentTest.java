package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.oblige.Obligations;
import leadwright.planner.oblige.Oblige;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import org.junit.jupiter.api.Test;

/** The test current that a rule set asks for, from the tester's list to the leads that carry it. */
class EarthCurrentTest {
    private static final String THIRD = "iec-60601-1-ed3";
    private static final Quantity HIGH = Quantity.of(Dimension.CURRENT, 25_000_000_000L);
    private static final Path K1 = Path.of("../samples/k1-marrowgate-bench.yaml");
    private static final Path K3 = Path.of("../samples/k3-fixed-plant-case.yaml");
    private static final Path FORMAT_KIT =
            Path.of("../catalog/src/test/resources/leadwright/catalog/read/format-kit.yaml");

    private record Case(Device device, Kit kit, Obligations due) {
        Wiring wiring() {
            return Wire.wire(
                    device, kit, House.defaults(), Connectors.builtIn(), due.wanted(), due.earthCurrent(), true);
        }

        List<Obligation> earth() {
            return due.wanted().stream()
                    .filter(each -> each.phase() == Obligation.Phase.EARTH)
                    .toList();
        }
    }

    @Test
    void the_monitor_gets_25_A_and_leads_that_carry_it() throws IOException {
        Case monitor = of("brindlewick-ward-monitor", K1, THIRD);
        assertThat(monitor.due().earthCurrent()).contains(HIGH);
        assertThat(monitor.due().shortfalls()).isEmpty();
        assertThat(monitor.earth())
                .isNotEmpty()
                .allSatisfy(each -> assertThat(each.note()).get().asString().contains("set 25 A on the tester"));
        // The earth leads alone: the leakage readings are wired elsewhere in the tests.
        Wiring wiring = Wire.wire(
                monitor.device(),
                monitor.kit(),
                House.defaults(),
                Connectors.builtIn(),
                monitor.earth(),
                monitor.due().earthCurrent(),
                true);
        assertThat(wiring.uncovered()).isEmpty();
        assertThat(wiring.hookups().get(0).earth()).isNotEmpty();
        assertThat(wiring.hookups().get(0).earth().toString())
                .contains("lead-earth")
                .doesNotContain("lead-short");
    }

    @Test
    void a_tester_with_10_A_cannot_do_what_asks_for_25_A() throws IOException {
        Case monitor = of("brindlewick-ward-monitor", FORMAT_KIT, THIRD);
        assertThat(monitor.earth()).isEmpty();
        assertThat(monitor.due().earthCurrent()).isEmpty();
        assertThat(monitor.due().shortfalls())
                .filteredOn(each -> each.about().equals("earth-test currents"))
                .singleElement()
                .satisfies(each -> assertThat(each.because()).contains("25 A", "has 200 mA, 10 A"));
    }

    @Test
    void long_leads_are_refused_at_25_A_from_6_V() throws IOException {
        Case table = of("slaterow-tilt-table", K3, THIRD);
        assertThat(table.due().earthCurrent()).contains(HIGH);
        Wiring wiring = table.wiring();
        assertThat(wiring.uncovered())
                .containsAll(table.earth().stream().map(Obligation::key).toList());
        assertThat(wiring.shortfalls())
                .anySatisfy(each -> assertThat(each.because()).contains("cannot drive 25 A", "V of 6 V"));
    }

    @Test
    void the_same_leads_do_for_200_mA() throws IOException {
        Case table = of("slaterow-tilt-table", K3, "iec-62353-2014");
        assertThat(table.due().earthCurrent()).isEqualTo(Optional.of(Quantity.microAmperes(200_000)));
        assertThat(table.wiring().uncovered()).isEmpty();
        assertThat(table.earth())
                .isNotEmpty()
                .allSatisfy(each -> assertThat(each.note()).get().asString().contains("set 200 mA on the tester"));
    }

    private static Case of(String sample, Path kitFile, String rules) throws IOException {
        Device device = DeviceReader.read(sample, Files.readAllBytes(Path.of("../samples/" + sample + ".yaml")))
                .orThrow();
        Kit kit = KitReader.read("kit", Files.readAllBytes(kitFile)).orThrow();
        Obligations due = Oblige.oblige(
                device, kit, RuleSets.builtIn().find(rules).orElseThrow(), House.defaults(), Occasion.RECURRENT);
        return new Case(device, kit, due);
    }
}
