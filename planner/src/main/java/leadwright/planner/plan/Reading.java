package leadwright.planner.plan;

import java.util.Optional;

/**
 * A reading of the finished plan.
 *
 * @param id {@code R01} …, in step order
 * @param obligation what it fulfils
 * @param hookup hookup in which it is taken; empty for readings before any hookup stands
 */
public record Reading(String id, Obligation obligation, Optional<String> hookup) {}
