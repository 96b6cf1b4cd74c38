package leadwright.catalog.table;

import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** The public texts that the catalog's values rest on, by the keys that the tables use. */
public final class Sources {
    private final SortedMap<String, String> byKey;

    private Sources(SortedMap<String, String> byKey) {
        this.byKey = Collections.unmodifiableSortedMap(byKey);
    }

    private static final class BuiltIn {
        private static final Sources LIST = load();
    }

    /** The catalog's own list. */
    public static Sources builtIn() {
        return BuiltIn.LIST;
    }

    private static Sources load() {
        SortedMap<String, String> byKey = new TreeMap<>();
        for (Row row : TableFile.load("sources.yaml", "sources/1").rows("sources")) {
            String key = row.needed("key");
            if (byKey.put(key, row.needed("text")) != null) {
                throw new IllegalStateException("sources.yaml has '" + key + "' twice");
            }
            row.finish();
        }
        return new Sources(byKey);
    }

    /** The source in a line for people. */
    public Optional<String> find(String key) {
        return Optional.ofNullable(byKey.get(key));
    }

    /** Every source, by key. */
    public SortedMap<String, String> byKey() {
        return byKey;
    }
}
