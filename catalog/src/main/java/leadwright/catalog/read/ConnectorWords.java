package leadwright.catalog.read;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.device.ConnectorDefinition;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Located;
import leadwright.catalog.text.Spelling;

/**
 * The connector words that a file may use: the catalog's and those of its own {@code connectors:} section.
 *
 * @param definitions connectors that the file defines
 * @param words every word for a terminal or an end
 */
record ConnectorWords(List<ConnectorDefinition> definitions, Set<String> words) {

    static ConnectorWords of(Fields top) {
        Ids ids = new Ids("connector", top.findings());
        Set<String> words = new TreeSet<>(Connectors.builtIn().byId().keySet());
        List<Fields> rows = top.rows("connectors");
        for (Fields row : rows) {
            String id = ids.claim(row);
            if (Connectors.builtIn().find(id).isPresent()) {
                top.findings()
                        .problem(row.at("id"), "connector '" + id + "' is the catalog's own; take an id of your own");
            }
        }
        words.addAll(ids.all());
        List<ConnectorDefinition> definitions = new ArrayList<>();
        for (Fields row : rows) {
            definitions.add(new ConnectorDefinition(
                    row.optionalId("id").orElse(""),
                    mates(row, words),
                    row.optionalPositive("current", Dimension.CURRENT),
                    row.optionalPositive("voltage", Dimension.VOLTAGE)));
        }
        return new ConnectorWords(List.copyOf(definitions), words);
    }

    /** A mate may be defined in the other file (the kit's for a device); one that is nearly a known word is a slip. */
    private static List<String> mates(Fields row, Set<String> words) {
        List<String> mates = new ArrayList<>();
        for (Located<String> mate : row.locatedTexts("mates")) {
            Optional<String> near = row.findings().nearest(mate.value(), words);
            if (!words.contains(mate.value()) && near.isPresent()) {
                row.findings()
                        .problem(
                                mate.at(),
                                Spelling.show(mate.value()) + " is no known connector; did you mean '" + near.get()
                                        + "'?");
            }
            mates.add(mate.value());
        }
        return mates;
    }
}
