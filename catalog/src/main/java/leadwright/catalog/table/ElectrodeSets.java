package leadwright.catalog.table;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import leadwright.catalog.text.Fields;

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
        return TableFile.read("electrode-sets.yaml", "electrode-sets/1", top -> {
            Map<String, SortedMap<String, ElectrodeWire>> groups = new TreeMap<>();
            top.section("wires")
                    .ifPresent(wires -> wires.keys()
                            .forEach(group -> groups.put(
                                    group.value(), Rows.byKey(wires, group.value(), "id", ElectrodeSets::wire))));
            SortedMap<String, ElectrodeSet> byId = Rows.byKey(top, "sets", "id", row -> set(row, groups));
            return () -> new ElectrodeSets(byId);
        });
    }

    private static ElectrodeSet set(Fields row, Map<String, SortedMap<String, ElectrodeWire>> groups) {
        SortedMap<String, ElectrodeWire> group =
                groups.getOrDefault(row.oneOf("of", groups.keySet()), Collections.emptySortedMap());
        List<ElectrodeWire> wires =
                row.oneOfs("wires", group.keySet()).stream().map(group::get).toList();
        return new ElectrodeSet(row.id("id"), row.text("name"), wires, Origin.of(row));
    }

    /** Wires of an ECG carry a marking in each code; others one label and no colour. */
    private static ElectrodeWire wire(Fields row) {
        WireMarking iec = row.has("label") ? plain(row.text("label")) : marking(row, "iec");
        WireMarking aha = row.has("label") ? iec : marking(row, "aha");
        return new ElectrodeWire(row.text("id"), row.text("site"), iec, aha, Origin.of(row));
    }

    private static WireMarking plain(String label) {
        return new WireMarking(label, Optional.empty(), Optional.empty(), List.of());
    }

    private static WireMarking marking(Fields row, String code) {
        return row.section(code).map(ElectrodeSets::marking).orElseGet(() -> plain(""));
    }

    private static WireMarking marking(Fields row) {
        String[] colour = row.text("colour").split("/", 2);
        return new WireMarking(
                row.text("label"),
                Optional.of(colour[0]),
                colour.length == 2 ? Optional.of(colour[1]) : Optional.empty(),
                Stream.concat(row.optionalText("solid").stream(), row.optionalText("or").stream())
                        .toList());
    }
}
