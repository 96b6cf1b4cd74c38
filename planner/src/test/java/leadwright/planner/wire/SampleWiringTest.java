package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.oblige.Obligations;
import leadwright.planner.oblige.Oblige;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Occasion;
import org.junit.jupiter.api.Test;

class SampleWiringTest {

    /** Seven bundles (six functions, the bezel screw) on six jacks: one hookup is not enough, two are. */
    @Test
    void ward_monitor_by_62353_takes_two_hookups_on_six_jacks() throws IOException {
        Wiring wiring = wire("brindlewick-ward-monitor", "k1-marrowgate-bench", "iec-62353-2014");
        assertThat(wiring.proof().answer()).isEqualTo(2);
        assertThat(wiring.proof().optimal()).isTrue();
        assertThat(wiring.hookups()).hasSize(2);
        assertThat(wiring.uncovered()).isEmpty();
    }

    /** All leads joined: which jack is whose makes no difference to the reading, so none crosses another. */
    @Test
    void jacks_that_are_always_tied_together_follow_the_panel() throws IOException {
        Wiring wiring = wire("brindlewick-ward-monitor", "k1-marrowgate-bench", "nfpa-99-2012");
        assertThat(wiring.hookups()).hasSize(1);
        assertThat(wiring.hookups().get(0).chains().stream().map(Chain::jack).toList())
                .isSorted();
    }

    private static Wiring wire(String device, String kit, String rules) throws IOException {
        Device dut = DeviceReader.read(device, bytes(device)).orThrow();
        Kit bench = KitReader.read(kit, bytes(kit)).orThrow();
        Obligations due = Oblige.oblige(
                dut, bench, RuleSets.builtIn().find(rules).orElseThrow(), House.defaults(), Occasion.RECURRENT);
        return Wire.wire(dut, bench, House.defaults(), Connectors.builtIn(), due.wanted());
    }

    private static byte[] bytes(String name) throws IOException {
        return Files.readAllBytes(Path.of("../samples/" + name + ".yaml"));
    }
}
