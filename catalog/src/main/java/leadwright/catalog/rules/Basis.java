package leadwright.catalog.rules;

import java.util.List;

/**
 * What a row of a rule set rests on.
 *
 * @param clause clause or table, as printed
 * @param sources keys of the catalog's source list; may be empty for mark C
 */
public record Basis(String clause, Mark mark, List<String> sources) {
    public Basis {
        sources = List.copyOf(sources);
    }
}
