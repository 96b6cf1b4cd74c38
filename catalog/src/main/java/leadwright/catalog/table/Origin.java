package leadwright.catalog.table;

import java.util.List;
import leadwright.catalog.rules.Mark;

/**
 * Where a row of a table comes from.
 *
 * @param mark how well it is confirmed
 * @param sources keys of {@link Sources}; may be empty for mark C
 * @param fromMemory whether documents must say that the row is from memory
 */
public record Origin(Mark mark, List<String> sources, boolean fromMemory) {
    public Origin {
        sources = List.copyOf(sources);
    }
}
