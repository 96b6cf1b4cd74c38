package leadwright.planner.oblige;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import leadwright.catalog.device.Device;
import leadwright.catalog.rules.QuantityKind;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** The largest device that is planned for. */
class LargeDeviceTest {

    @Test
    void a_part_of_256_wires_is_worked_out_in_seconds() {
        StringBuilder wires = new StringBuilder();
        for (int i = 1; i <= 256; i++) {
            wires.append("      - {id: w").append(i).append(", terminal: tp15-socket}\n");
        }
        Device device = Bench.deviceFrom("""
                leadwright: device/1
                name: Large recorder
                supply: {connection: fixed-cord, cord-plug: bs-1363, system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 1 A}
                protection: class-1
                battery: none
                mains-switch: both-poles
                start-up: 5 s
                tolerates-power-cut: yes
                applied-parts:
                  - id: head
                    name: Head box
                    type: CF
                    connections:
                """ + wires + """
                touch-points:
                  - {id: frame, name: Frame, earthed: yes}
                """);
        Obligations due = Assertions.assertTimeoutPreemptively(
                Duration.ofSeconds(20), () -> Bench.due(device, Bench.marrowgate(), Bench.THIRD));
        // 256 wires, six states, two components; 256 x 4 with mains on.
        assertThat(due.wanted().stream()
                        .filter(each -> each.quantity() == QuantityKind.PATIENT_LEAKAGE)
                        .count())
                .isEqualTo(3072);
        assertThat(due.wanted().stream()
                        .filter(each -> each.quantity() == QuantityKind.MAINS_ON_APPLIED_PART)
                        .count())
                .isEqualTo(1024);
    }
}
