package leadwright.catalog.table;

import java.util.List;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.text.Fields;

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

    /** Reads mark and sources of a row; one without a source has to say that it is from memory, and only mark C may. */
    static Origin of(Fields row) {
        Origin origin = new Origin(
                row.word("mark", Mark.values(), Mark::name), row.texts("sources"), row.yesNo("from-memory", false));
        if (origin.sources().isEmpty() && !origin.fromMemory()) {
            row.findings().problem(row.at(), "the row has neither a source nor 'from-memory: yes'");
        }
        if (origin.fromMemory() != (origin.mark() == Mark.C)) {
            row.findings().problem(row.at("mark"), "mark C and 'from-memory: yes' go together");
        }
        return origin;
    }
}
