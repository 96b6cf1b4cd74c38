package leadwright.catalog.device;

import java.util.List;

/**
 * A function of an applied part, measured on its own.
 *
 * @param id unique in the part; the part's own id where the file lists no functions
 */
public record PartFunction(String id, List<PatientConnection> connections) {
    public PartFunction {
        connections = List.copyOf(connections);
    }
}
