package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.ElectricalKey;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.circuit.Circuit;

/**
 * The branches inside a device: from its file where it states them, else assumed by its class and the types of its parts.
 *
 * <p>Its mains filter lies behind its main switch. A part's connections meet inside it, behind a resistance each; parts are
 * coupled to the mains, to the chassis and to each other. A metal part that is not earthed, and a socket, are coupled to the
 * chassis in class I, and are one with the inside of the enclosure otherwise. All of this is a model: see docs/physics.md.
 */
final class DeviceBranches {
    /** A file's value may be off by so much: filter capacitors are sold so (common practice, no source). */
    private static final double STATED = 0.2;

    private final Device device;
    private final List<Template.Branch> branches = new ArrayList<>();

    private DeviceBranches(Device device) {
        this.device = device;
    }

    static List<Template.Branch> of(Device device) {
        return new DeviceBranches(device).all();
    }

    /** The class that counts at the mains: an adapter's own where there is one. */
    static Protection protection(Device device) {
        if (device.supply().connection() == SupplyConnection.NONE) {
            return Protection.INTERNALLY_POWERED;
        }
        Protection own = device.adapter().map(each -> each.protection()).orElse(device.protection());
        return own == Protection.INTERNALLY_POWERED ? Protection.CLASS_2 : own;
    }

    static boolean earthed(Device device) {
        return protection(device) == Protection.CLASS_1;
    }

    private List<Template.Branch> all() {
        if (device.runsOnMains()) {
            mains();
        }
        if (earthed(device)) {
            branches.add(
                    Template.Branch.resistance("earth-path", Nodes.EARTH_TERMINAL, Nodes.CHASSIS, earthPath(device)));
        }
        device.touchPoints().stream()
                .filter(point -> point.earthed() != Earthed.YES)
                .map(TouchPoint::connection)
                .forEach(this::metal);
        device.ports().stream().map(Port::connection).forEach(this::metal);
        device.appliedParts().forEach(this::part);
        between();
        return branches;
    }

    static Parameter earthPath(Device device) {
        return stated(device, ElectricalKey.EARTH_PATH, "earth-path", Dimension.RESISTANCE)
                .orElseGet(() -> Assumed.EARTH_PATH.parameter("earth-path"));
    }

    /** The node of a connection, a touch point or an earth point. */
    static String node(Device device, String place) {
        for (TouchPoint point : device.touchPoints()) {
            if (point.id().equals(place) || point.connection().name().equals(place)) {
                return point.earthed() == Earthed.YES
                        ? Nodes.CHASSIS
                        : point.connection().name();
            }
        }
        for (Port port : device.ports()) {
            if (port.id().equals(place)) {
                return port.connection().name();
            }
        }
        if (device.earthPoints().stream().anyMatch(point -> point.id().equals(place))) {
            return Nodes.CHASSIS;
        }
        return place;
    }

    private void mains() {
        Parameter current = device.supply()
                .current()
                .map(rated -> new Parameter(
                        "supply-current", rated.inSi(), rated.inSi() * 0.05, rated.inSi(), Basis.DEVICE_FILE))
                .orElseGet(() -> Assumed.LOAD_CURRENT.parameter("supply-current"));
        double volts = device.supply().highest().map(Quantity::inSi).orElse(230.0);
        // What matters of the load is that it is far below the impedance of any capacitor beside it.
        branches.add(Template.Branch.resistance(
                "load",
                Nodes.LINE,
                Nodes.NEUTRAL,
                new Parameter(
                        "load",
                        volts / current.nominal(),
                        volts / current.high(),
                        volts / current.low(),
                        current.basis())));
        boolean one = earthed(device);
        String line = one ? "line-earth" : "line-enclosure";
        String neutral = one ? "neutral-earth" : "neutral-enclosure";
        Assumed capacitor = one ? Assumed.FILTER : Assumed.ENCLOSURE;
        pair(
                line,
                Nodes.LINE,
                Nodes.CHASSIS,
                one ? ElectricalKey.LINE_EARTH : ElectricalKey.LINE_ENCLOSURE,
                capacitor,
                Assumed.MAINS_INSULATION);
        pair(
                neutral,
                Nodes.NEUTRAL,
                Nodes.CHASSIS,
                one ? ElectricalKey.NEUTRAL_EARTH : ElectricalKey.NEUTRAL_ENCLOSURE,
                capacitor,
                Assumed.MAINS_INSULATION);
    }

    private void metal(Connection connection) {
        String node = connection.name();
        if (!earthed(device)) {
            branches.add(Template.Branch.resistance(
                    node + "-inside", node, Nodes.CHASSIS, Assumed.METAL_ON_ENCLOSURE.parameter("metal/" + node)));
            return;
        }
        capacitor(node + "-chassis", node, Nodes.CHASSIS, Assumed.METAL_TO_CHASSIS.parameter("metal-chassis/" + node));
        resistor(
                node + "-chassis", node, Nodes.CHASSIS, Assumed.METAL_INSULATION.parameter("metal-insulation/" + node));
        if (device.runsOnMains()) {
            pair(
                    node + "-line",
                    Nodes.LINE,
                    node,
                    ElectricalKey.LINE_ENCLOSURE,
                    Assumed.UNEARTHED_METAL,
                    Assumed.MAINS_INSULATION);
            pair(
                    node + "-neutral",
                    Nodes.NEUTRAL,
                    node,
                    ElectricalKey.NEUTRAL_ENCLOSURE,
                    Assumed.UNEARTHED_METAL,
                    Assumed.MAINS_INSULATION);
        }
    }

    private void part(AppliedPart part) {
        String inside = Nodes.inside(part.id());
        for (Connection each : part.connections()) {
            resistor(
                    each.name() + "-inside", each.name(), inside, Assumed.INSIDE_PART.parameter("inside/" + part.id()));
            cable(part, each);
        }
        if (part.type() == PartType.B) {
            resistor(
                    part.id() + "-chassis",
                    inside,
                    Nodes.CHASSIS,
                    stated(device, ElectricalKey.PART_EARTH, "part-earth/" + part.id(), Dimension.RESISTANCE)
                            .orElseGet(() -> Assumed.PART_B.parameter("part-earth/" + part.id())));
        } else {
            boolean cf = part.type() == PartType.CF;
            pair(
                    "part-earth/" + part.id(),
                    inside,
                    Nodes.CHASSIS,
                    ElectricalKey.PART_EARTH,
                    cf ? Assumed.PART_EARTH_CF : Assumed.PART_EARTH_BF,
                    Assumed.PART_INSULATION);
        }
        if (device.runsOnMains()) {
            Assumed coupling = part.type() == PartType.CF ? Assumed.LINE_PART_CF : Assumed.LINE_PART_BF;
            pair(
                    "line-part/" + part.id(),
                    Nodes.LINE,
                    inside,
                    ElectricalKey.LINE_PART,
                    coupling,
                    Assumed.PART_INSULATION);
            pair(
                    "neutral-part/" + part.id(),
                    Nodes.NEUTRAL,
                    inside,
                    ElectricalKey.NEUTRAL_PART,
                    coupling,
                    Assumed.PART_INSULATION);
        }
    }

    private void cable(AppliedPart part, Connection connection) {
        Parameter perMetre = Assumed.CABLE.parameter("cable");
        Parameter length = part.cable()
                .map(stated -> Parameter.within("cable-length/" + part.id(), stated.inSi(), 0.05, Basis.DEVICE_FILE))
                .orElseGet(() -> Assumed.CABLE_LENGTH.parameter("cable-length/" + part.id()));
        int wires = part.connections().size();
        Parameter each = new Parameter(
                "cable/" + part.id(),
                perMetre.nominal() * length.nominal() / wires,
                perMetre.low() * length.low() / wires,
                perMetre.high() * length.high() / wires,
                Basis.ASSUMED);
        capacitor(connection.name() + "-cable", connection.name(), Circuit.EARTH, each);
    }

    private void between() {
        List<AppliedPart> parts = device.appliedParts();
        for (int i = 0; i < parts.size(); i++) {
            for (int j = i + 1; j < parts.size(); j++) {
                String name = parts.get(i).id() + "-" + parts.get(j).id();
                pair(
                        "part-part/" + name,
                        Nodes.inside(parts.get(i).id()),
                        Nodes.inside(parts.get(j).id()),
                        ElectricalKey.PART_PART,
                        Assumed.PART_PART,
                        Assumed.PART_PART_INSULATION);
            }
        }
    }

    /** A capacitance with a resistance beside it; what the file states takes the place of the one or the other. */
    private void pair(String name, String from, String to, ElectricalKey key, Assumed capacitance, Assumed resistance) {
        capacitor(
                name,
                from,
                to,
                stated(device, key, name, Dimension.CAPACITANCE).orElseGet(() -> capacitance.parameter(name)));
        resistor(
                name,
                from,
                to,
                stated(device, key, name + "-insulation", Dimension.RESISTANCE)
                        .orElseGet(() -> resistance.parameter(name + "-insulation")));
    }

    private static Optional<Parameter> stated(Device device, ElectricalKey key, String id, Dimension dimension) {
        return Optional.ofNullable(device.electrical().get(key.word()))
                .filter(value -> value.dimension() == dimension && value.amount() > 0)
                .map(value -> Parameter.within(id, value.inSi(), STATED, Basis.DEVICE_FILE));
    }

    private void capacitor(String name, String from, String to, Parameter value) {
        branches.add(Template.Branch.capacitance("C:" + name, from, to, value));
    }

    private void resistor(String name, String from, String to, Parameter value) {
        branches.add(Template.Branch.resistance("R:" + name, from, to, value));
    }
}
