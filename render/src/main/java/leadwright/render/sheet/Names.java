package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.OperatingMode;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.TouchPoint;
import leadwright.planner.plan.NaturalOrder;

/** What the bench sheet calls the connections and places of a device: short, and the same on list, rows and drawing. */
final class Names {

    private final Device device;
    private final Terms terms;
    private final Map<String, String> printed;
    private final Map<String, Connection> connections = new LinkedHashMap<>();

    /** @param printed label on the wire by full connection name, where the house's code gives one */
    Names(Device device, Terms terms, Map<String, String> printed) {
        this.device = device;
        this.terms = terms;
        this.printed = Map.copyOf(printed);
        for (Connection each : device.connections()) {
            connections.put(each.name(), each);
        }
    }

    /** Full names in the order of the panel, then housing, ports and the touch probe. */
    List<String> inPanelOrder(Collection<String> names) {
        List<String> ordered = new ArrayList<>(
                connections.keySet().stream().filter(names::contains).toList());
        TreeSet<String> rest = new TreeSet<>(NaturalOrder.IDS);
        rest.addAll(names);
        rest.removeAll(connections.keySet());
        ordered.addAll(rest);
        return ordered;
    }

    /** Whether the name is one of the device's connections. */
    boolean isConnection(String name) {
        return connections.containsKey(name);
    }

    boolean runsOnMains() {
        return device.runsOnMains();
    }

    /** The name of a further operating mode; plain on and off have none. */
    Optional<String> mode(String id) {
        return device.modes().stream()
                .filter(mode -> mode.id().equals(id))
                .map(OperatingMode::name)
                .findFirst();
    }

    /** The label on the wire itself: {@code R}, {@code sensor}; a place's name for housing and ports. */
    String wire(String connection) {
        Connection known = connections.get(connection);
        if (known == null) {
            return connection.equals(Device.TOUCH_PROBE) ? "touch probe" : connection;
        }
        return switch (known.kind()) {
            case PATIENT ->
                Optional.ofNullable(printed.get(connection))
                        .orElseGet(() -> connection.substring(connection.lastIndexOf('.') + 1));
            case HOUSING, PORT -> place(known.part());
            case TOUCH_PROBE -> "touch probe";
        };
    }

    /** The group heading for a connection in the list of wires: the part's name, or what kind of place it is. */
    String group(String connection) {
        Connection known = connections.get(connection);
        if (known == null) {
            return "Tester";
        }
        return switch (known.kind()) {
            case PATIENT -> device.part(known.part()).map(AppliedPart::name).orElse(known.part());
            case HOUSING -> "Housing";
            case PORT -> "Socket";
            case TOUCH_PROBE -> "Tester";
        };
    }

    /** A set of connections in few words: whole parts by name, functions by name, else the wires themselves. */
    String subject(Collection<String> names) {
        List<String> words = new ArrayList<>();
        TreeSet<String> left = new TreeSet<>(names);
        List<String> patient =
                device.patientConnections().stream().map(Connection::name).toList();
        if (patient.size() > 1 && device.appliedParts().size() > 1 && left.containsAll(patient)) {
            words.add("All applied parts");
            patient.forEach(left::remove);
        }
        for (String id : device.panel()) {
            device.part(id).ifPresent(part -> takePart(part, left, words));
        }
        inPanelOrder(left).forEach(each -> words.add(wire(each)));
        return String.join(" + ", words);
    }

    private void takePart(AppliedPart part, TreeSet<String> left, List<String> words) {
        List<String> whole = part.connections().stream().map(Connection::name).toList();
        if (left.containsAll(whole)) {
            words.add(part.name() + (whole.size() > 1 ? ", all " + whole.size() : ""));
            whole.forEach(left::remove);
            return;
        }
        for (PartFunction function : part.functions()) {
            String name = part.functionName(function);
            List<String> wires = part.connections().stream()
                    .filter(each -> each.function().equals(name))
                    .map(Connection::name)
                    .toList();
            if (part.namedFunctions() && left.containsAll(wires)) {
                words.add(part.name() + ", " + function.id() + (wires.size() > 1 ? ", all " + wires.size() : ""));
                wires.forEach(left::remove);
            }
        }
        List<String> some = whole.stream().filter(left::contains).toList();
        if (!some.isEmpty()) {
            words.add(part.name() + ": " + some.stream().map(this::wire).collect(Collectors.joining(" ")));
            some.forEach(left::remove);
        }
    }

    /** A touch point's, port's or earth point's name; the implied earth pins in words. */
    String place(String id) {
        Optional<String> named = device.touchPoints().stream()
                .filter(point -> point.id().equals(id))
                .map(TouchPoint::name)
                .findFirst()
                .or(() -> device.ports().stream()
                        .filter(port -> port.id().equals(id))
                        .map(Port::name)
                        .findFirst())
                .or(() -> device.earthPoints().stream()
                        .filter(point -> point.id().equals(id))
                        .map(EarthPoint::name)
                        .findFirst());
        return named.orElseGet(() -> switch (id) {
            case "inlet-earth" -> terms.say("earth pin of the inlet");
            case "cord-earth" -> terms.say("earth of the cord's connector");
            case "cord-plug-earth" -> terms.say("earth pin of the cord's plug");
            case "earth" -> terms.say("Protective earth conductor");
            case "functional-earth" -> terms.say("Functional earth conductor");
            case "equipment" -> "Device";
            case "reference-earth" -> terms.say("reference earth");
            default -> id;
        });
    }
}
