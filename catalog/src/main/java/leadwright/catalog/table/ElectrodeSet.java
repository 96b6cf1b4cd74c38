package leadwright.catalog.table;

import java.util.List;

/** A set of patient wires, counted in wires, never in recorded leads. */
public record ElectrodeSet(String id, String name, List<ElectrodeWire> wires, Origin origin) {
    public ElectrodeSet {
        wires = List.copyOf(wires);
    }
}
