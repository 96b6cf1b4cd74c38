package leadwright.catalog.readings;

import java.util.Optional;
import leadwright.catalog.text.Located;

/**
 * One line of the readings: a value, or the reason why there is none.
 *
 * @param id id of the reading in its plan
 * @param shown what the tester showed; empty where the reading was not taken
 * @param notTaken why it was not taken; present exactly where {@code shown} is empty
 */
public record Taken(
        Located<String> id, Optional<Located<Shown>> shown, Optional<String> notTaken, Optional<String> remark) {}
