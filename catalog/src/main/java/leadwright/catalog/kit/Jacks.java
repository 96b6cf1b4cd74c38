package leadwright.catalog.kit;

/**
 * The tester's row of jacks, numbered from 1.
 *
 * @param socket connector word of every jack
 */
public record Jacks(int count, String socket, Ties ties, AtRest atRest) {}
