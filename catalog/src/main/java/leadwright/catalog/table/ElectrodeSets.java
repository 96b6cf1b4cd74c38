package leadwright.catalog.table;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/** The electrode sets that a device file names with {@code set:}. */
public final class ElectrodeSets {
    private final SortedMap<String, ElectrodeSet> byId;

    private ElectrodeSets(SortedMap<String, ElectrodeSet> byId) {
        this.byId = Collections.unmodifiableSortedMap(byId);
    }

    private static final class BuiltIn {
        private static final ElectrodeSets TABLE = load();
    }

    /** The catalog's own table. */
    public static ElectrodeSets builtIn() {
        return BuiltIn.TABLE;
    }

    public Optional<ElectrodeSet> find(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    /** Every set, by id. */
    public SortedMap<String, ElectrodeSet> byId() {
        return byId;
    }

    private static ElectrodeSets load() {
        TableFile file = TableFile.load("electrode-sets.yaml", "electrode-sets/1");
        Map<String, Map<String, ElectrodeWire>> groups = new TreeMap<>();
        file.rowsByName("wires").forEach((group, rows) -> groups.put(group, wires(rows)));
        SortedMap<String, ElectrodeSet> byId = new TreeMap<>();
        for (Row row : file.rows("sets")) {
            ElectrodeSet set = set(row, groups);
            if (byId.put(set.id(), set) != null) {
                throw new IllegalStateException("electrode-sets.yaml has '" + set.id() + "' twice");
            }
        }
        return new ElectrodeSets(byId);
    }

    private static ElectrodeSet set(Row row, Map<String, Map<String, ElectrodeWire>> groups) {
        String id = row.needed("id");
        Map<String, ElectrodeWire> group = groups.getOrDefault(row.needed("of"), Map.of());
        List<ElectrodeWire> wires = new ArrayList<>();
        for (String wire : row.texts("wires")) {
            if (!group.containsKey(wire)) {
                throw new IllegalStateException("electrode-sets.yaml, " + id + ": no wire '" + wire + "'");
            }
            wires.add(group.get(wire));
        }
        ElectrodeSet set = new ElectrodeSet(id, row.needed("name"), wires, row.origin());
        row.finish();
        return set;
    }

    private static Map<String, ElectrodeWire> wires(List<Row> rows) {
        Map<String, ElectrodeWire> wires = new LinkedHashMap<>();
        for (Row row : rows) {
            ElectrodeWire wire = wire(row);
            if (wires.put(wire.id(), wire) != null) {
                throw new IllegalStateException("electrode-sets.yaml has the wire '" + wire.id() + "' twice");
            }
        }
        return wires;
    }

    private static ElectrodeWire wire(Row row) {
        String id = row.needed("id");
        String site = row.needed("site");
        Optional<WireMarking> plain =
                row.text("label").map(label -> new WireMarking(label, Optional.empty(), Optional.empty(), List.of()));
        WireMarking iec = plain.or(() -> row.row("iec").map(ElectrodeSets::marking))
                .orElseThrow(() -> new IllegalStateException("electrode-sets.yaml, " + id + ": no label"));
        WireMarking aha = plain.or(() -> row.row("aha").map(ElectrodeSets::marking))
                .orElseThrow(() -> new IllegalStateException("electrode-sets.yaml, " + id + ": no label"));
        ElectrodeWire wire = new ElectrodeWire(id, site, iec, aha, row.origin());
        row.finish();
        return wire;
    }

    private static WireMarking marking(Row row) {
        String label = row.needed("label");
        String[] colour = row.needed("colour").split("/", 2);
        List<String> solid = new ArrayList<>();
        row.text("solid").ifPresent(solid::add);
        row.text("or").ifPresent(solid::add);
        row.finish();
        return new WireMarking(
                label, Optional.of(colour[0]), colour.length == 2 ? Optional.of(colour[1]) : Optional.empty(), solid);
    }
}
