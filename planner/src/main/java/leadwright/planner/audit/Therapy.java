package leadwright.planner.audit;

import java.util.HashSet;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Output;

/** Which connections belong to a therapy output. */
final class Therapy {
    private Therapy() {}

    /** Full names of all connections of all therapy outputs. */
    static Set<String> connections(Device device) {
        Set<String> names = new HashSet<>();
        device.outputs().forEach(output -> names.addAll(connections(device, output)));
        return names;
    }

    static Set<String> connections(Device device, Output output) {
        Set<String> names = new HashSet<>();
        device.part(output.appliedPart())
                .ifPresent(part -> part.connections().stream()
                        .filter(connection -> output.functions().isEmpty()
                                || output.functions().stream()
                                        .anyMatch(id -> connection.function().equals(part.id() + "." + id)))
                        .forEach(connection -> names.add(connection.name())));
        return names;
    }
}
