package leadwright.render.sheet;

import java.util.LinkedHashMap;
import java.util.Map;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.LabelCode;
import leadwright.catalog.table.ElectrodeSets;
import leadwright.catalog.table.ElectrodeWire;

/** What is printed on a device's patient wires in the code that the house uses. */
public final class WireLabels {

    private WireLabels() {}

    /** Label by full connection name, for the wires whose electrode set or file gives one. */
    public static Map<String, String> of(Device device, LabelCode code) {
        Map<String, String> labels = new LinkedHashMap<>();
        for (AppliedPart part : device.appliedParts()) {
            for (Connection each : part.connections()) {
                each.label().ifPresent(label -> labels.put(each.name(), label));
            }
            part.set()
                    .flatMap(ElectrodeSets.builtIn()::find)
                    .ifPresent(set -> set.wires().forEach(wire -> mark(part, wire, code, labels)));
        }
        return labels;
    }

    private static void mark(AppliedPart part, ElectrodeWire wire, LabelCode code, Map<String, String> labels) {
        for (Connection each : part.connections()) {
            if (each.name().endsWith("." + wire.id())) {
                labels.put(each.name(), wire.marking(code).label());
            }
        }
    }
}
