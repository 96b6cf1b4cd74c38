package leadwright.planner.plan;

import java.util.List;

/**
 * Something the kit or tester cannot do; the plan becomes partial.
 *
 * @param about the kit item, tester property or connection concerned
 * @param connections full names of the connections concerned; empty where none
 * @param because what is missing and why, for a person
 * @param additions the smallest additions that would do, each spelled out
 */
public record Shortfall(String about, List<String> connections, String because, List<String> additions) {
    public Shortfall {
        connections = List.copyOf(connections);
        additions = List.copyOf(additions);
    }
}
