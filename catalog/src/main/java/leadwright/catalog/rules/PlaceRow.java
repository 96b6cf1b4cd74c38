package leadwright.catalog.rules;

/**
 * A stated circumstance, such as a country's rules or a kind of room, under which some rows of a rule set hold. A house says
 * which one it stands in.
 *
 * @param id as rows name it under {@code where}
 */
public record PlaceRow(String id, String name, Basis basis) {}
