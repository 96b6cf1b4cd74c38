package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.PartFunction;

/**
 * Which patient connections never share a hookup: a therapy output has a hookup of its own, unless the device file says
 * {@code may-share} with the reason. Housing, ports and the touch probe may be present beside it.
 */
final class Therapy {
    private Therapy() {}

    /** For each connection of the scene the numbers of those that it cannot be present with. */
    static BitSet[] apart(Scene scene) {
        List<Connection> connections = scene.connections();
        List<BitSet> outputs = new ArrayList<>();
        for (Output output : scene.device().outputs()) {
            if (output.mayShare().isEmpty()) {
                outputs.add(members(scene, output));
            }
        }
        BitSet[] apart = new BitSet[connections.size()];
        for (int one = 0; one < apart.length; one++) {
            apart[one] = new BitSet();
            for (int other = 0; other < apart.length; other++) {
                if (isPatient(connections.get(one))
                        && isPatient(connections.get(other))
                        && keptApart(outputs, one, other)) {
                    apart[one].set(other);
                }
            }
        }
        return apart;
    }

    /** Names of the connections of every output that may not share. */
    static Set<String> names(Scene scene) {
        Set<String> names = new TreeSet<>();
        for (Output output : scene.device().outputs()) {
            if (output.mayShare().isEmpty()) {
                members(scene, output).stream()
                        .forEach(e -> names.add(scene.connections().get(e).name()));
            }
        }
        return names;
    }

    private static boolean isPatient(Connection connection) {
        return connection.kind() == Connection.Kind.PATIENT;
    }

    /** Some output holds exactly one of the two. */
    private static boolean keptApart(List<BitSet> outputs, int one, int other) {
        return outputs.stream().anyMatch(output -> output.get(one) != output.get(other));
    }

    private static BitSet members(Scene scene, Output output) {
        BitSet members = new BitSet();
        for (int e = 0; e < scene.connections().size(); e++) {
            Connection connection = scene.connections().get(e);
            if (isPatient(connection) && actsThrough(scene.device(), output, connection)) {
                members.set(e);
            }
        }
        return members;
    }

    /** Whether an output acts through a patient connection; an output that lists no functions acts through all its part. */
    static boolean actsThrough(Device device, Output output, Connection connection) {
        if (!connection.part().equals(output.appliedPart())) {
            return false;
        }
        if (output.functions().isEmpty()) {
            return true;
        }
        AppliedPart part = device.part(output.appliedPart()).orElseThrow();
        for (PartFunction function : part.functions()) {
            if (output.functions().contains(function.id())
                    && connection.function().equals(part.functionName(function))) {
                return true;
            }
        }
        return false;
    }
}
