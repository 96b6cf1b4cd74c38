package leadwright.planner.order;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.OperatingMode;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TherapyKind;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.House;
import leadwright.catalog.house.ReplugUnderPower;
import leadwright.catalog.house.Times;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.Inlet;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.TesterSwitch;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.SourcePolarity;

/** A small device on a small bench, put together line by line, for tests of the order of steps. */
final class Bench {
    Battery battery = Battery.NONE;
    SupplyConnection supply = SupplyConnection.DETACHABLE_CORD;
    Optional<Boolean> toleratesCut = Optional.of(true);
    int startUp = 75;
    int shutDown = 0;
    boolean underPower;
    AtRest earthRest = AtRest.OPEN;
    Times times = Times.defaults();
    final Map<String, Integer> modes = new LinkedHashMap<>();
    final Map<String, String> parts = new LinkedHashMap<>();
    final Map<String, List<String>> wires = new LinkedHashMap<>();
    final Map<String, Integer> therapy = new LinkedHashMap<>();
    final Map<String, Integer> points = new LinkedHashMap<>();
    final List<Hookup> hookups = new ArrayList<>();
    final Map<String, List<String>> takenIn = new LinkedHashMap<>();
    final List<Obligation> wanted = new ArrayList<>();

    /** An applied part with its wires. */
    Bench part(String id, String terminal, String... wireIds) {
        parts.put(id, terminal);
        wires.put(id, List.of(wireIds));
        return this;
    }

    /** An earthed touch point at this distance in millimetres. */
    Bench point(String id, int distance) {
        points.put(id, distance);
        return this;
    }

    /** A hookup in which each of these connections has a jack of its own, the first jack 1, and so on. */
    Bench hookup(String id, boolean earth, String... connections) {
        List<Bundle> bundles = new ArrayList<>();
        List<Chain> chains = new ArrayList<>();
        Map<String, Integer> used = new LinkedHashMap<>();
        for (String connection : connections) {
            int jack = chains.size() + 1;
            List<String> items = new ArrayList<>();
            for (String kind : chain(connection)) {
                items.add(kind + "/" + used.merge(kind, 1, Integer::sum));
            }
            bundles.add(new Bundle(id + ".b" + jack, List.of(connection), List.of(jack), List.of()));
            chains.add(new Chain(connection, items, jack, items.size() + 1));
        }
        List<EarthPath> paths = earth
                ? List.of(new EarthPath(
                        "part", points.keySet().iterator().next(), "earth-jack", List.of("lead-earth/1", "jaw/1")))
                : List.of();
        hookups.add(new Hookup(id, bundles, chains, paths));
        return this;
    }

    private List<String> chain(String connection) {
        if (connection.equals(Device.TOUCH_PROBE)) {
            return List.of("needle", "lead");
        }
        return switch (parts.get(connection.substring(0, connection.indexOf('.')))) {
            case "snap-socket" -> List.of("snap-pin");
            case "tp15-socket" -> List.of("touch-proof-pin");
            case "skin-surface" -> List.of("wrap");
            default -> throw new IllegalArgumentException(connection);
        };
    }

    /** A reading of these connections as one, taken in the hookups given as {@code "A,B"}. */
    Bench read(QuantityKind kind, MainsState state, String mode, String in, String... measured) {
        return add(kind, state, mode, in, List.of(measured), Optional.empty(), Optional.empty());
    }

    Bench touch(MainsState state, String in, String place) {
        return add(QuantityKind.TOUCH_CURRENT, state, "on", in, List.of(), Optional.of(place), Optional.empty());
    }

    Bench mains(MainsState state, String in, String measured) {
        for (SourcePolarity source : SourcePolarity.values()) {
            add(
                    QuantityKind.MAINS_ON_APPLIED_PART,
                    state,
                    "on",
                    in,
                    List.of(measured),
                    Optional.empty(),
                    Optional.of(source));
        }
        return this;
    }

    Bench add(
            QuantityKind kind,
            MainsState state,
            String mode,
            String in,
            List<String> measured,
            Optional<String> place,
            Optional<SourcePolarity> source) {
        String key = kind.word() + "/" + String.join("+", measured) + place.orElse("") + "/" + state.word() + "/" + mode
                + source.map(each -> "/" + each.word()).orElse("") + "/" + wanted.size();
        Set<String> of = new LinkedHashSet<>();
        measured.forEach(each -> of.add(each.contains(".") ? each.substring(0, each.indexOf('.')) : each));
        wanted.add(new Obligation(
                key,
                kind,
                "",
                List.copyOf(of),
                Demand.of(measured),
                place,
                kind == QuantityKind.EARTH_RESISTANCE
                        ? Optional.of(Obligation.EarthSubject.PLUG_TO_PART)
                        : Optional.empty(),
                state,
                mode,
                source,
                Optional.of(Method.DIRECT),
                Optional.of(Component.AC),
                Optional.of(MeasuringNetwork.IEC_60601),
                Optional.empty(),
                Optional.empty()));
        takenIn.put(key, List.of(in.split(",")));
        return this;
    }

    Device device() {
        List<AppliedPart> applied = new ArrayList<>();
        List<Output> outputs = new ArrayList<>();
        for (Map.Entry<String, String> part : parts.entrySet()) {
            List<PatientConnection> connections = wires.get(part.getKey()).stream()
                    .map(each -> new PatientConnection(each, part.getValue(), Optional.empty()))
                    .toList();
            applied.add(new AppliedPart(
                    part.getKey(),
                    "Part " + part.getKey(),
                    PartType.CF,
                    false,
                    List.of(new PartFunction(part.getKey(), connections)),
                    false,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty()));
        }
        therapy.forEach((id, wait) -> outputs.add(new Output(
                id,
                id,
                List.of(),
                TherapyKind.PACING,
                Optional.of("the key is out"),
                Optional.of(Quantity.seconds(wait)),
                Optional.empty())));
        List<TouchPoint> touchPoints = new ArrayList<>();
        points.forEach((id, distance) -> touchPoints.add(new TouchPoint(
                id,
                "Point " + id,
                Earthed.YES,
                Surface.METAL,
                Optional.of(Quantity.millimetres(distance)),
                Optional.empty())));
        List<OperatingMode> operating = new ArrayList<>();
        modes.forEach((id, reach) -> operating.add(new OperatingMode(id, "Mode " + id, Quantity.seconds(reach))));
        return new Device(
                "Test device",
                new Supply(
                        supply,
                        Optional.empty(),
                        Optional.of("bs-1363"),
                        SupplySystem.LINE_NEUTRAL,
                        Optional.of(Quantity.volts(230)),
                        Optional.of(Quantity.volts(230)),
                        Optional.empty(),
                        Optional.empty()),
                supply == SupplyConnection.NONE ? Protection.INTERNALLY_POWERED : Protection.CLASS_1,
                FunctionalEarth.NONE,
                battery,
                MainsSwitch.BOTH_POLES,
                Quantity.seconds(startUp),
                Quantity.seconds(shutDown),
                true,
                toleratesCut,
                Optional.empty(),
                List.of(),
                applied,
                List.of(),
                outputs,
                touchPoints,
                List.of(),
                List.copyOf(parts.keySet()),
                List.of(),
                Map.of(),
                operating,
                Optional.empty(),
                List.of());
    }

    Kit kit() {
        String plug = "lab-4mm-plug-shrouded";
        String socket = "lab-4mm-socket-recessed";
        List<KitItem> items = List.of(
                item("snap-pin", ItemKind.ADAPTER, "snap-stud", plug, 0),
                item("touch-proof-pin", ItemKind.ADAPTER, "tp15-pin", plug, 0),
                item("wrap", ItemKind.CONTACT_AID, "foil-wrap", plug, 500),
                item("lead", ItemKind.LEAD, plug, plug, 1500),
                item("lead-earth", ItemKind.LEAD, plug, plug, 3000),
                item("jaw", ItemKind.CLIP, socket, "metal-edge", 0),
                item("needle", ItemKind.PROBE, socket, "metal-spot", 0),
                new KitItem(
                        "spread",
                        ItemKind.FAN_OUT,
                        List.of(plug, socket),
                        10,
                        List.of(),
                        Optional.of(Quantity.millimetres(300)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.of(Quantity.volts(600)),
                        Optional.empty(),
                        4,
                        Optional.empty()));
        Tester tester = new Tester(
                "Test bench tester",
                Optional.of(new Jacks(10, socket, Ties.ANY, AtRest.OPEN)),
                Optional.of(new EarthJack(socket, Optional.of(earthRest))),
                Optional.of(TouchThrough.OWN),
                Optional.of(new Inlet("bs-1363", new Quantity(Dimension.CURRENT, 13_000_000_000L))),
                List.of(new Outlet(
                        "bs-1363",
                        SupplySystem.LINE_NEUTRAL,
                        Quantity.volts(230),
                        new Quantity(Dimension.CURRENT, 13_000_000_000L))),
                Set.of(TesterSwitch.values()),
                List.of(MeasuringNetwork.IEC_60601),
                List.of(Method.DIRECT),
                List.of(Component.AC, Component.DC),
                Optional.of(new EarthTest(
                        List.of(new Quantity(Dimension.CURRENT, 200_000_000L)),
                        Component.AC,
                        Quantity.volts(6),
                        "two-wire",
                        Optional.empty(),
                        List.of("earth-jack", "outlet-earth"))),
                List.of(Quantity.volts(500)),
                Optional.of(new PartSource(Quantity.volts(230), Quantity.microAmperes(3500), SourceReading.CORRECTED)),
                Map.of(),
                Optional.empty());
        return new Kit("Test bench", tester, items, List.of(), List.of());
    }

    private static KitItem item(String id, ItemKind kind, String one, String other, int length) {
        return new KitItem(
                id,
                kind,
                List.of(one, other),
                0,
                List.of(),
                length == 0 ? Optional.empty() : Optional.of(Quantity.millimetres(length)),
                Optional.empty(),
                Optional.empty(),
                Optional.of(Quantity.volts(600)),
                Optional.empty(),
                40,
                Optional.empty());
    }

    House house() {
        House d = House.defaults();
        return new House(
                d.rules(),
                d.methods(),
                d.insulation(),
                d.labels(),
                d.paper(),
                d.words(),
                d.aim(),
                underPower ? ReplugUnderPower.AFTER_EARTH_AND_TOUCH : ReplugUnderPower.NEVER,
                d.capacitanceShare(),
                d.capacitanceLimit(),
                d.floatJoined(),
                d.pastDue(),
                d.decision(),
                times,
                d.tighter(),
                d.extraTests(),
                d.joinStricter(),
                d.signs(),
                d.confirmed(),
                d.department());
    }

    Ordering order() {
        return Order.order(device(), kit(), house(), Connectors.builtIn(), hookups, takenIn, wanted);
    }

    /** The solver of the same problem. */
    Solver solver() {
        Scene scene = Scene.of(device(), kit(), house(), Connectors.builtIn());
        return Order.setting(scene, hookups, takenIn, wanted).solver();
    }
}
