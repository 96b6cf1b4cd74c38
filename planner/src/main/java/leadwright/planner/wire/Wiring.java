package leadwright.planner.wire;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Remedy;
import leadwright.planner.plan.Shortfall;

/**
 * The hookups that serve a set of obligations.
 *
 * @param takenIn obligation key to the ids of the hookups that may take it
 * @param proof of the number of hookups
 * @param shortfalls what the kit lacks, with the smallest additions
 * @param remedy what would make everything possible that items can; empty where nothing is missing or no item helps
 * @param uncovered keys of obligations that no hookup serves
 */
public record Wiring(
        List<Hookup> hookups,
        Map<String, List<String>> takenIn,
        Proof proof,
        List<Shortfall> shortfalls,
        Optional<Remedy> remedy,
        List<String> uncovered,
        List<String> warnings) {
    public Wiring {
        hookups = List.copyOf(hookups);
        takenIn = Map.copyOf(takenIn);
        shortfalls = List.copyOf(shortfalls);
        uncovered = List.copyOf(uncovered);
        warnings = List.copyOf(warnings);
    }
}
