package leadwright.catalog.table;

import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;

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
        return TableFile.read("sources.yaml", "sources/1", top -> {
            SortedMap<String, String> byKey = Rows.byKey(top, "sources", "key", row -> row.text("text"));
            return () -> new Sources(byKey);
        });
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
