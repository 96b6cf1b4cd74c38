package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.SupplyConnection;
import org.junit.jupiter.api.Test;

class RandomCasesTest {

    @Test
    void the_same_seed_gives_the_same_case() {
        assertThat(RandomCases.any(7)).isEqualTo(RandomCases.any(7));
        assertThat(RandomCases.withAmpleKit(7)).isEqualTo(RandomCases.withAmpleKit(7));
    }

    @Test
    void seeds_1_to_200_reach_every_supply_and_part_type_and_stay_small() {
        Set<SupplyConnection> supplies = new HashSet<>();
        Set<PartType> types = new HashSet<>();
        Set<Device> devices = new HashSet<>();
        RandomCases.any(1, 200).map(RandomCases.Case::device).forEach(device -> {
            supplies.add(device.supply().connection());
            device.appliedParts().forEach(part -> types.add(part.type()));
            devices.add(device);
            List<String> names =
                    device.connections().stream().map(Connection::name).toList();
            assertThat(names).doesNotHaveDuplicates().hasSizeLessThanOrEqualTo(12);
            assertThat(device.patientConnections()).hasSizeLessThanOrEqualTo(7);
        });
        assertThat(supplies).containsExactlyInAnyOrder(SupplyConnection.values());
        assertThat(types).containsExactlyInAnyOrder(PartType.values());
        assertThat(devices).hasSizeGreaterThan(180);
    }
}
