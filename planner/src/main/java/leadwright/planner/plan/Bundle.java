package leadwright.planner.plan;

import java.util.List;

/**
 * Connections joined by the wiring, which cannot be told apart.
 *
 * @param id {@code H1.b1}
 * @param jacks jack numbers from 1, ascending; several only where {@code links} join them
 * @param links items that join a fan-out branch to a further jack
 */
public record Bundle(String id, List<String> connections, List<Integer> jacks, List<String> links) {
    public Bundle {
        connections = List.copyOf(connections);
        jacks = List.copyOf(jacks);
        links = List.copyOf(links);
    }
}
