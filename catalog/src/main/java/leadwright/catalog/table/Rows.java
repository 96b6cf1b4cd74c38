package leadwright.catalog.table;

import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;
import leadwright.catalog.text.Fields;

/** Rows of a table by their keys. */
final class Rows {
    private Rows() {}

    /**
     * Reads the rows of a list.
     *
     * @param key key of the row that no two rows share
     * @param row reads one row
     * @return by the value of {@code key}; a second row of the same key is noted as a problem
     */
    static <T> SortedMap<String, T> byKey(Fields top, String list, String key, Function<Fields, T> row) {
        SortedMap<String, T> all = new TreeMap<>();
        for (Fields fields : top.rows(list)) {
            String id = fields.text(key);
            if (all.put(id, row.apply(fields)) != null) {
                fields.findings().problem(fields.at(key), "'" + id + "' has a row already");
            }
        }
        return all;
    }
}
