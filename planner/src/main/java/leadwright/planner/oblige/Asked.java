package leadwright.planner.oblige;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.PartType;
import leadwright.planner.plan.Demand;

/**
 * One thing that a quantity is read of: its demand, before states and limits.
 *
 * @param subject its part of the key
 * @param of subjects by id
 * @param type type of the applied part whose limit counts; empty for the whole device
 * @param total whether it is the total of a type
 */
record Asked(String subject, List<String> of, Demand demand, Optional<PartType> type, boolean total) {

    static List<String> names(Collection<Connection> connections) {
        return connections.stream().map(Connection::name).toList();
    }
}
