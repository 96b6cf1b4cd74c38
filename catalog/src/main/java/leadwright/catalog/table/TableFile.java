package leadwright.catalog.table;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Located;
import leadwright.catalog.text.Node;

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
            return new TableFile(
                    name,
                    Document.read(name, in.readAllBytes(), kind, TableFile::root)
                            .orThrow());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Supplier<Map<String, Object>> root(Fields top) {
        Map<String, Object> root = new LinkedHashMap<>();
        for (Located<String> key : top.keys()) {
            top.node(key.value()).ifPresent(node -> root.put(key.value(), plain(node)));
        }
        return () -> root;
    }

    private static Object plain(Node node) {
        if (node instanceof Node.Sequence list) {
            return list.items().stream().map(TableFile::plain).toList();
        }
        if (node instanceof Node.Mapping section) {
            Map<String, Object> map = new LinkedHashMap<>();
            section.entries().forEach(entry -> map.put(entry.key(), plain(entry.value())));
            return map;
        }
        return ((Node.Scalar) node).text();
    }

    /** A section that is one row. */
    Row row(String section) {
        if (!(root.get(section) instanceof Map<?, ?> map)) {
            throw new IllegalStateException(name + " has no section '" + section + "'");
        }
        return new Row(name + ", " + section, map);
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
