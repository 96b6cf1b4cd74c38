package leadwright.catalog.table;

import leadwright.catalog.house.LabelCode;

/**
 * One patient wire of a set.
 *
 * @param id connection id in every plan, whatever is printed on the wire
 * @param site where its electrode goes
 * @param iec marking in the code R L F N C…; equal to {@code aha} for wires that have one marking
 * @param aha marking in the code RA LA LL RL V…
 */
public record ElectrodeWire(String id, String site, WireMarking iec, WireMarking aha, Origin origin) {
    public WireMarking marking(LabelCode code) {
        return code == LabelCode.IEC ? iec : aha;
    }
}
