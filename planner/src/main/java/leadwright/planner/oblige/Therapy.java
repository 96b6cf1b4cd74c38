package leadwright.planner.oblige;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Output;

/**
 * Which patient connections belong to a therapy output that has a hookup of its own. They are never joined with those of
 * other parts: whatever joins them is split.
 */
final class Therapy {
    private final Map<String, String> outputOf;

    private Therapy(Map<String, String> outputOf) {
        this.outputOf = outputOf;
    }

    static Therapy of(Device device) {
        Map<String, String> outputOf = new LinkedHashMap<>();
        for (Output output : device.outputs()) {
            if (output.mayShare().isEmpty()) {
                device.part(output.appliedPart())
                        .ifPresent(part -> connections(part, output)
                                // An output that acts through connections of an earlier one shares its hookup.
                                .forEach(name -> outputOf.putIfAbsent(name, output.id())));
            }
        }
        return new Therapy(outputOf);
    }

    private static List<String> connections(AppliedPart part, Output output) {
        List<String> functions = part.functions().stream()
                .filter(function ->
                        output.functions().isEmpty() || output.functions().contains(function.id()))
                .map(part::functionName)
                .toList();
        return part.connections().stream()
                .filter(connection -> functions.contains(connection.function()))
                .map(Connection::name)
                .toList();
    }

    /** The output that keeps this connection to itself. */
    Optional<String> outputOf(String connection) {
        return Optional.ofNullable(outputOf.get(connection));
    }

    /** Whether the two may be in one hookup: of the same output, or both of none. */
    boolean together(String one, String other) {
        return outputOf(one).equals(outputOf(other));
    }

    /**
     * The connections in groups that may be together: first those of no output, then those of each output.
     *
     * @return groups by output; the empty key is that of no output; none is empty
     */
    Map<Optional<String>, List<Connection>> split(Collection<Connection> connections) {
        Map<Optional<String>, List<Connection>> groups = new LinkedHashMap<>();
        groups.put(Optional.empty(), new ArrayList<>());
        for (Connection connection : connections) {
            groups.computeIfAbsent(outputOf(connection.name()), output -> new ArrayList<>())
                    .add(connection);
        }
        groups.values().removeIf(List::isEmpty);
        return groups;
    }

    /** Of these connections, those that may be in one hookup with it. */
    List<Connection> companions(Connection of, Collection<Connection> among) {
        return among.stream()
                .filter(connection ->
                        connection.kind() != Connection.Kind.PATIENT || together(connection.name(), of.name()))
                .toList();
    }
}
