package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.ConnectorDefinition;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.CapacitanceLimit;
import leadwright.catalog.house.FloatJoined;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Obligation;

/**
 * Phase 1: the problem in numbers.
 *
 * <p>Needs: device, kit, house, connector table, obligations. Gives: the connections that some demand asks for, numbered
 * in panel order; the distinct requirements; which pairs of them can never share a hookup. Method: one pass. Cost: linear
 * in the obligations, quadratic in the requirements.
 */
record Scene(
        Device device,
        Kit kit,
        House house,
        Connectors connectors,
        List<Obligation> obligations,
        List<Connection> connections,
        List<Leaf> leaves,
        List<Requirement> requirements,
        boolean[][] conflict) {

    /** Insulation is read at 500 V, IEC 62353 and IEC 60601-1 (from memory). */
    private static final long INSULATION_MICROVOLTS = 500_000_000L;

    static Scene of(Device device, Kit kit, House house, Connectors table, List<Obligation> obligations) {
        Connectors connectors = connectors(device, kit, table);
        List<Connection> connections = connections(device, obligations);
        Map<String, Integer> numbers = new HashMap<>();
        connections.forEach(each -> numbers.put(each.name(), numbers.size()));
        List<Requirement> requirements = requirements(device, kit, house, obligations, numbers);
        Scene scene = new Scene(
                device,
                kit,
                house,
                connectors,
                List.copyOf(obligations),
                connections,
                connections.stream().map(each -> leaf(device, each)).toList(),
                requirements,
                new boolean[requirements.size()][requirements.size()]);
        scene.fillConflicts();
        return scene;
    }

    /** The table with what device and kit define. */
    static Connectors connectors(Device device, Kit kit, Connectors table) {
        List<ConnectorDefinition> definitions = new ArrayList<>(device.connectors());
        definitions.addAll(kit.connectors());
        return table.with(definitions);
    }

    int jackCount() {
        return kit.tester().jacks().map(Jacks::count).orElse(0);
    }

    /** Connector word of the jacks; empty where the tester has none. */
    String jackSocket() {
        return kit.tester().jacks().map(Jacks::socket).orElse("");
    }

    boolean runs() {
        return kit.tester().jacks().map(jacks -> jacks.ties() == Ties.RUNS).orElse(false);
    }

    /**
     * Whether a bundle on several jacks can be of use: where any jacks are tied one is enough, and where idle jacks are
     * earthed a second one would earth it.
     */
    boolean linksHelp() {
        return runs() && !earthsIdleJacks();
    }

    boolean earthsIdleJacks() {
        return kit.tester()
                .jacks()
                .map(jacks -> jacks.atRest() == AtRest.EARTHED)
                .orElse(false);
    }

    /** Whether the house lets nothing float joined. */
    boolean floatApart() {
        return house.floatJoined() == FloatJoined.NEVER;
    }

    boolean hardCapacitance() {
        return house.capacitanceLimit() == CapacitanceLimit.HARD;
    }

    String name(int connection) {
        return connections.get(connection).name();
    }

    private static List<Connection> connections(Device device, List<Obligation> obligations) {
        Map<String, Connection> known = new LinkedHashMap<>();
        device.connections().forEach(each -> known.put(each.name(), each));
        device.touchPoints().stream().map(TouchPoint::connection).forEach(each -> known.putIfAbsent(each.name(), each));
        String probe = Device.TOUCH_PROBE;
        known.put(
                probe,
                new Connection(probe, Connection.Kind.TOUCH_PROBE, probe, probe, "metal", java.util.Optional.empty()));
        java.util.Set<String> wanted = obligations.stream()
                .flatMap(each -> each.demand().all().stream())
                .collect(Collectors.toSet());
        for (String name : wanted) {
            if (!known.containsKey(name)) {
                throw new IllegalArgumentException(
                        "a demand names connection '" + name + "', which " + device.name() + " does not have");
            }
        }
        return known.values().stream()
                .filter(each -> wanted.contains(each.name()))
                .toList();
    }

    private static Leaf leaf(Device device, Connection connection) {
        return switch (connection.kind()) {
            case PATIENT -> new Leaf(Leaf.Kind.PATIENT, connection.terminal(), reach(device, connection.part()));
            case HOUSING ->
                new Leaf(Leaf.Kind.SURFACE, connection.terminal(), (routed(device, connection.part(), 0) * 6 + 4) / 5);
            case PORT -> new Leaf(Leaf.Kind.SURFACE, connection.terminal(), 0);
            case TOUCH_PROBE -> new Leaf(Leaf.Kind.TOUCH, connection.terminal(), 0);
        };
    }

    /** Routed distance of a touch point from the tester's place, over the points it counts from. */
    private static long routed(Device device, String id, int passed) {
        if (passed > device.touchPoints().size()) {
            return 0;
        }
        return device.touchPoints().stream()
                .filter(point -> point.id().equals(id))
                .findFirst()
                .map(point -> point.distance().map(Quantity::amount).orElse(0L)
                        + point.from()
                                .map(next -> routed(device, next, passed + 1))
                                .orElse(0L))
                .orElse(0L);
    }

    /** Routed distance and a fifth, less the part's own cable. */
    private static long reach(Device device, String part) {
        AppliedPart applied = device.part(part).orElseThrow();
        if (applied.distance().isEmpty()) {
            return 0;
        }
        long needed = (applied.distance().get().amount() * 6 + 4) / 5;
        return Math.max(0, needed - applied.cable().map(Quantity::amount).orElse(0L));
    }

    private static List<Requirement> requirements(
            Device device, Kit kit, House house, List<Obligation> obligations, Map<String, Integer> numbers) {
        record Key(String demand, Duty duty, boolean earth, OptionalLong capacitance) {}
        Map<Key, Requirement> found = new LinkedHashMap<>();
        boolean earthsIdle = kit.tester()
                .jacks()
                .map(jacks -> jacks.atRest() == AtRest.EARTHED)
                .orElse(false);
        for (Obligation each : obligations) {
            boolean earth = each.phase() == Obligation.Phase.EARTH;
            boolean check = each.phase() == Obligation.Phase.CHECK;
            // Without wiring a reading goes anywhere, unless idle jacks would earth what is plugged in.
            if (each.demand().isNothing() && !earth && (check || !earthsIdle)) {
                continue;
            }
            Demand demand = earth ? Demand.NOTHING : each.demand();
            Duty duty = earth ? Duty.ORDINARY : duty(kit, each);
            OptionalLong capacitance = capacitance(device, kit, house, each, duty);
            Requirement requirement = found.computeIfAbsent(
                    new Key(demand.key(), duty, earth, capacitance),
                    key -> requirement(found.size(), demand, duty, earth, capacitance, numbers));
            requirement.keys().add(each.key());
        }
        return List.copyOf(found.values());
    }

    private static Requirement requirement(
            int index,
            Demand demand,
            Duty duty,
            boolean earth,
            OptionalLong capacitance,
            Map<String, Integer> numbers) {
        byte[] role = new byte[numbers.size()];
        BitSet all = new BitSet();
        demand.measured().forEach(name -> role[numbers.get(name)] = Requirement.MEASURED);
        demand.against().forEach(name -> role[numbers.get(name)] = Requirement.AGAINST);
        demand.earthed().forEach(name -> role[numbers.get(name)] = Requirement.EARTHED);
        demand.all().forEach(name -> all.set(numbers.get(name)));
        return new Requirement(index, demand, duty, earth, role, all, capacitance, new ArrayList<>());
    }

    static Duty duty(Kit kit, Obligation obligation) {
        if (obligation.phase() == Obligation.Phase.INSULATION) {
            return new Duty(INSULATION_MICROVOLTS, false, true);
        }
        if (obligation.sourcePolarity().isEmpty()) {
            return Duty.ORDINARY;
        }
        long outlet = kit.tester().outlets().stream()
                .mapToLong(each -> each.voltage().amount())
                .max()
                .orElse(0);
        long source =
                kit.tester().partSource().map(each -> each.voltage().amount()).orElse(outlet);
        return new Duty(source, true, false);
    }

    /** Where the house makes it a hard limit: most capacitance that keeps the leads' own current in its share. */
    private static OptionalLong capacitance(Device device, Kit kit, House house, Obligation obligation, Duty duty) {
        if (house.capacitanceLimit() != CapacitanceLimit.HARD
                || !duty.mains()
                || obligation.limit().isEmpty()
                || obligation.limit().get().bound() != Limit.Bound.AT_MOST) {
            return OptionalLong.empty();
        }
        Limit limit = obligation.limit().get();
        return OptionalLong.of(Capacitance.most(device, duty, limit, house));
    }

    private void fillConflicts() {
        BitSet[] apart = Therapy.apart(this);
        for (Requirement one : requirements) {
            for (Requirement other : requirements) {
                conflict[one.index()][other.index()] = therapyParts(apart, one, other) || idleEarths(one, other);
            }
        }
    }

    private static boolean therapyParts(BitSet[] apart, Requirement one, Requirement other) {
        for (int e = one.all().nextSetBit(0); e >= 0; e = one.all().nextSetBit(e + 1)) {
            if (apart[e].intersects(other.all())) {
                return true;
            }
        }
        return false;
    }

    /** A tester that earths idle jacks: nothing may be plugged in that a reading does not name, the touch probe apart. */
    private boolean idleEarths(Requirement one, Requirement other) {
        if (!earthsIdleJacks() || one.earth() || other.earth()) {
            return false;
        }
        BitSet difference = (BitSet) one.all().clone();
        difference.xor(other.all());
        for (int e = difference.nextSetBit(0); e >= 0; e = difference.nextSetBit(e + 1)) {
            if (connections.get(e).kind() != Connection.Kind.TOUCH_PROBE) {
                return true;
            }
        }
        return false;
    }
}
