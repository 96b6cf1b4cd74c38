package leadwright.planner.wire;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/** Small devices, kits and obligations for tests, in a few words. */
public final class Rig {
    public static final String PLUG = "lab-4mm-plug-shrouded";
    public static final String SOCKET = "lab-4mm-socket-recessed";

    private Rig() {}

    /** A part with so many connections c1, c2 … of one terminal. */
    public static AppliedPart part(String id, PartType type, String terminal, int count) {
        List<PatientConnection> connections = IntStream.rangeClosed(1, count)
                .mapToObj(n -> new PatientConnection("c" + n, terminal, Optional.empty()))
                .toList();
        return new AppliedPart(
                id,
                id,
                type,
                false,
                List.of(new PartFunction(id, connections)),
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    public static AppliedPart at(AppliedPart part, long distanceMillimetres, long cableMillimetres) {
        return new AppliedPart(
                part.id(),
                part.name(),
                part.type(),
                part.defibrillationProof(),
                part.functions(),
                part.namedFunctions(),
                part.set(),
                Optional.of(Quantity.millimetres(distanceMillimetres)),
                cableMillimetres == 0 ? Optional.empty() : Optional.of(Quantity.millimetres(cableMillimetres)));
    }

    public static Device device(AppliedPart... parts) {
        return device(List.of(parts), List.of(), List.of(), List.of());
    }

    public static Device device(
            List<AppliedPart> parts, List<TouchPoint> points, List<Port> ports, List<Output> outputs) {
        return new Device(
                "Small device",
                new Supply(
                        SupplyConnection.FIXED_CORD,
                        Optional.empty(),
                        Optional.of("bs-1363"),
                        SupplySystem.LINE_NEUTRAL,
                        Optional.of(Quantity.volts(230)),
                        Optional.of(Quantity.volts(230)),
                        Optional.empty(),
                        Optional.empty()),
                Protection.CLASS_1,
                FunctionalEarth.NONE,
                Battery.NONE,
                MainsSwitch.BOTH_POLES,
                Quantity.seconds(0),
                Quantity.seconds(0),
                true,
                Optional.of(true),
                Optional.empty(),
                List.of(),
                parts,
                ports,
                outputs,
                points,
                List.of(),
                parts.stream().map(AppliedPart::id).toList(),
                List.of(),
                Map.of(),
                List.of(),
                Optional.empty(),
                List.of());
    }

    public static KitItem item(String id, ItemKind kind, String from, String to, int stock) {
        return item(id, kind, List.of(from, to), 0, 0, 600, stock);
    }

    public static KitItem fanOut(String id, String trunk, String branch, int branches, int stock) {
        return item(id, ItemKind.FAN_OUT, List.of(trunk, branch), branches, 0, 600, stock);
    }

    /**
     * @param millimetres 0 where it states no length
     * @param volts 0 where it states no voltage
     */
    public static KitItem item(
            String id, ItemKind kind, List<String> ends, int branches, long millimetres, long volts, int stock) {
        return new KitItem(
                id,
                kind,
                ends,
                branches,
                List.of(),
                millimetres == 0 ? Optional.empty() : Optional.of(Quantity.millimetres(millimetres)),
                Optional.empty(),
                Optional.of(Quantity.microAmperes(25_000_000)),
                volts == 0 ? Optional.empty() : Optional.of(Quantity.volts(volts)),
                Optional.empty(),
                stock,
                Optional.empty());
    }

    public static Kit kit(int jacks, Ties ties, KitItem... items) {
        return kit(new Jacks(jacks, SOCKET, ties, AtRest.OPEN), 3500, List.of(items));
    }

    public static Kit kit(Jacks jacks, long shortCircuitMicroamperes, List<KitItem> items) {
        Tester tester = new Tester(
                "Small tester",
                Optional.of(jacks),
                Optional.of(new EarthJack(SOCKET, Optional.of(AtRest.OPEN))),
                Optional.empty(),
                Optional.empty(),
                List.of(new Outlet(
                        "bs-1363", SupplySystem.LINE_NEUTRAL, Quantity.volts(230), Quantity.microAmperes(13_000_000))),
                Set.of(),
                List.of(),
                List.of(),
                List.of(),
                Optional.of(new EarthTest(
                        List.of(Quantity.microAmperes(200_000)),
                        leadwright.catalog.kit.Component.AC,
                        Quantity.volts(6),
                        "two-wire",
                        Optional.empty(),
                        List.of("earth-jack", "outlet-earth"))),
                List.of(),
                Optional.of(new PartSource(
                        Quantity.volts(230), Quantity.microAmperes(shortCircuitMicroamperes), SourceReading.CORRECTED)),
                Map.of(),
                Optional.empty());
        return new Kit("Small kit", tester, items, List.of(), List.of());
    }

    public static Obligation reading(String key, Demand demand) {
        return obligation(key, QuantityKind.PATIENT_LEAKAGE, demand, Optional.empty(), Optional.empty());
    }

    public static Obligation mains(String key, Demand demand) {
        return obligation(
                key,
                QuantityKind.MAINS_ON_APPLIED_PART,
                demand,
                Optional.of(Obligation.SourcePolarity.NORMAL),
                Optional.empty());
    }

    public static Obligation insulation(String key, Demand demand) {
        return obligation(key, QuantityKind.INSULATION_RESISTANCE, demand, Optional.empty(), Optional.empty());
    }

    public static Obligation earth(String key, String place) {
        return obligation(key, QuantityKind.EARTH_RESISTANCE, Demand.NOTHING, Optional.empty(), Optional.of(place));
    }

    private static Obligation obligation(
            String key,
            QuantityKind quantity,
            Demand demand,
            Optional<Obligation.SourcePolarity> source,
            Optional<String> place) {
        return new Obligation(
                key,
                quantity,
                "1",
                List.of(),
                demand,
                place,
                place.map(point -> Obligation.EarthSubject.PLUG_TO_PART),
                MainsState.NORMAL,
                "on",
                source,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** Each connection measured alone, all others open and unplugged. */
    public static List<Obligation> eachAlone(Collection<String> names) {
        return names.stream()
                .map(name -> reading("alone/" + name, Demand.of(List.of(name))))
                .toList();
    }

    /** Each connection against all the others tied. */
    public static List<Obligation> eachAgainstTheRest(Collection<String> names) {
        List<Obligation> all = new ArrayList<>();
        for (String name : names) {
            List<String> rest =
                    names.stream().filter(other -> !other.equals(name)).toList();
            all.add(reading("rest/" + name, Demand.of(List.of(name), rest, List.of())));
        }
        return all;
    }

    public static Wiring wire(Device device, Kit kit, List<Obligation> obligations) {
        return wire(device, kit, House.defaults(), obligations);
    }

    public static Wiring wire(Device device, Kit kit, House house, List<Obligation> obligations) {
        return Wire.wire(device, kit, house, Connectors.builtIn(), obligations);
    }

    /** A house that lets nothing float joined. */
    public static House nothingFloatsJoined() {
        return HouseReader.read("house", "leadwright: house/1\nfloat-joined: never\n".getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    public static List<String> names(Device device) {
        return device.connections().stream().map(each -> each.name()).toList();
    }
}
