package leadwright.render.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.KitReader;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.Request;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import leadwright.render.diagram.Diagrams;
import org.junit.jupiter.api.Test;

/** A plan that reads the tester's checks alone offers no pass of what was read. */
class NothingMeasuredTest {
    private static final String DEVICE = """
            leadwright: device/1
            name: Quillfeather cabinet
            supply: {connection: permanent, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 12 A}
            protection: class-1
            mains-switch: both-poles
            tolerates-power-cut: no
            applied-parts:
              - {id: probe, name: Probe, type: BF, connections: [{id: shaft, terminal: skin-surface}]}
            touch-points:
              - {id: rail, name: Far rail, earthed: yes, surface: metal, distance: 9 m}
              - {id: door, name: Cabinet door, earthed: unknown, surface: painted, distance: 2 m}
            """;

    @Test
    void aSheetOfChecksAloneSaysThatNothingIsMeasured() throws IOException {
        byte[] trolley = Files.readAllBytes(Path.of("..", "samples", "k2-round-trolley.yaml"));
        Kit kit = KitReader.read("kit", trolley).orThrow();
        Outcome outcome = Planner.plan(new Request(
                DeviceReader.read("device", DEVICE.getBytes(StandardCharsets.UTF_8))
                        .orThrow(),
                kit,
                RuleSets.builtIn().find("iec-62353-2014").orElseThrow(),
                House.defaults(),
                Occasion.RECURRENT,
                Optional.empty()));
        Plan plan = ((Outcome.Planned) outcome).plan();
        assertThat(plan.readings())
                .isNotEmpty()
                .allSatisfy(each -> assertThat(each.obligation().phase()).isEqualTo(Obligation.Phase.CHECK));
        assertThat(BenchSheet.xhtml(plan, Diagrams.draw(plan), List.of()))
                .contains("none, nothing is measured on the device with this kit")
                .doesNotContain("what was read passes");
    }
}
