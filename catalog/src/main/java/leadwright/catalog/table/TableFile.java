package leadwright.catalog.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;

/**
 * One of the catalog's own data files, read with every scalar as text so that numbers keep their digits. A mistake in
 * such a file is a mistake of the program, and stops it with the file and the row named.
 */
final class TableFile {
    private final String name;
    private final Map<?, ?> root;

    private TableFile(String name, Map<?, ?> root) {
        this.name = name;
        this.root = root;
    }

    /**
     * Loads a resource of the catalog.
     *
     * @param name file name beside the other tables, such as {@code connectors.yaml}
     * @param kind what the file must declare itself to be, such as {@code connectors/1}
     */
    static TableFile load(String name, String kind) {
        try (InputStream in = TableFile.class.getResourceAsStream("/leadwright/catalog/" + name)) {
            if (in == null) {
                throw new IllegalStateException("the catalog has no " + name);
            }
            LoadSettings settings = LoadSettings.builder()
                    .setLabel(name)
                    .setSchema(new FailsafeSchema())
                    .build();
            if (!(new Load(settings).loadFromInputStream(in) instanceof Map<?, ?> root)
                    || !kind.equals(root.get("leadwright"))) {
                throw new IllegalStateException(name + " is not " + kind);
            }
            return new TableFile(name, root);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Rows of a list, in file order. */
    List<Row> rows(String list) {
        return rows(list, root.get(list));
    }

    /** Rows of each list of a section, by the list's name, in file order. */
    Map<String, List<Row>> rowsByName(String section) {
        if (!(root.get(section) instanceof Map<?, ?> lists)) {
            throw new IllegalStateException(name + " has no section '" + section + "'");
        }
        Map<String, List<Row>> all = new LinkedHashMap<>();
        lists.forEach((key, value) -> all.put(String.valueOf(key), rows(section + "." + key, value)));
        return all;
    }

    private List<Row> rows(String list, Object value) {
        if (!(value instanceof List<?> elements)) {
            throw new IllegalStateException(name + " has no list '" + list + "'");
        }
        List<Row> rows = new ArrayList<>();
        for (Object element : elements) {
            if (!(element instanceof Map<?, ?> map)) {
                throw new IllegalStateException(name + ", " + list + ", row " + (rows.size() + 1) + ": not a row");
            }
            rows.add(new Row(name + ", " + list + ", row " + (rows.size() + 1), map));
        }
        return rows;
    }
}
