package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.house.House;
import leadwright.catalog.house.LabelCode;
import leadwright.catalog.house.Paper;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.KnownResistor;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.TesterSwitch;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.kit.TouchThrough;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;

/** The device, kit, house and hookup of {@link SmallPlan}. */
final class SmallBench {

    private static final Optional<Quantity> NONE = Optional.empty();
    private static final List<String> ECG = List.of("R", "L", "F", "N", "C1", "C2", "C3", "C4", "C5", "C6");

    private SmallBench() {}

    static Device device(String name) {
        List<PatientConnection> ecg = ECG.stream()
                .map(id -> new PatientConnection(id, "snap-socket", Optional.of(id)))
                .toList();
        return new Device(
                name,
                new Supply(
                        SupplyConnection.DETACHABLE_CORD,
                        Optional.of("iec-60320-c14"),
                        Optional.of("bs-1363"),
                        SupplySystem.LINE_NEUTRAL,
                        Optional.of(Quantity.volts(230)),
                        Optional.of(Quantity.volts(230)),
                        NONE,
                        NONE),
                Protection.CLASS_1,
                FunctionalEarth.NONE,
                Battery.BACKS_UP,
                MainsSwitch.BOTH_POLES,
                Quantity.seconds(75),
                Quantity.seconds(20),
                true,
                Optional.of(true),
                Optional.empty(),
                List.of(),
                List.of(
                        part("ecg", "ECG", PartType.CF, ecg, Optional.of("ecg-10")),
                        part("spo2", "Pulse oximetry", PartType.BF, one("sensor"), Optional.empty()),
                        part("temp", "Temperature", PartType.CF, one("probe"), Optional.empty())),
                List.of(new Port("lan", "Network", "metal")),
                List.of(),
                List.of(touch("pole-clamp", "Pole clamp"), touch("back-plate", "Back plate")),
                List.of(),
                List.of("ecg", "spo2", "temp"),
                List.of(),
                Map.of(),
                List.of(),
                Optional.empty(),
                List.of());
    }

    private static List<PatientConnection> one(String id) {
        return List.of(new PatientConnection(id, "skin-surface", Optional.empty()));
    }

    private static AppliedPart part(
            String id, String name, PartType type, List<PatientConnection> wires, Optional<String> set) {
        return new AppliedPart(id, name, type, false, List.of(new PartFunction(id, wires)), false, set, NONE, NONE);
    }

    private static TouchPoint touch(String id, String name) {
        return new TouchPoint(
                id, name, Earthed.YES, Surface.METAL, Optional.of(Quantity.millimetres(500)), Optional.empty());
    }

    static Kit kit() {
        return new Kit(
                "Marrowgate bench",
                new Tester(
                        "Marrowgate bench tester",
                        Optional.of(new Jacks(6, "lab-4mm-socket-recessed", Ties.ANY, AtRest.OPEN)),
                        Optional.of(new EarthJack("lab-4mm-socket-recessed", Optional.of(AtRest.OPEN))),
                        Optional.of(TouchThrough.OWN),
                        Optional.empty(),
                        List.of(new Outlet("bs-1363", SupplySystem.LINE_NEUTRAL, Quantity.volts(230), amperes(13))),
                        Set.of(TesterSwitch.EARTH, TesterSwitch.SUPPLY, TesterSwitch.POLARITY),
                        List.of(MeasuringNetwork.IEC_60601),
                        List.of(Method.DIRECT),
                        List.of(Component.AC),
                        Optional.empty(),
                        List.of(),
                        Optional.empty(),
                        Map.of("earth", new Accuracy(Quantity.of(Dimension.RATIO, 20_000), Quantity.milliOhms(10))),
                        Optional.of(java.time.LocalDate.of(2027, 8, 31))),
                List.of(
                        item("snap-pin", ItemKind.ADAPTER, 0, 12),
                        item("spread", ItemKind.FAN_OUT, 10, 2),
                        item("wrap", ItemKind.CONTACT_AID, 0, 10),
                        item("lead-earth", ItemKind.LEAD, 0, 2),
                        item("jaw", ItemKind.CLIP, 0, 8)),
                List.of(new KnownResistor(
                        "known-resistor",
                        Quantity.of(Dimension.RESISTANCE, 2_300_000_000_000L),
                        Quantity.of(Dimension.RATIO, 50_000),
                        NONE)),
                List.of());
    }

    private static Quantity amperes(long amperes) {
        return Quantity.of(Dimension.CURRENT, amperes * 1_000_000_000L);
    }

    private static KitItem item(String id, ItemKind kind, int branches, int stock) {
        return new KitItem(
                id,
                kind,
                List.of("lab-4mm-plug-shrouded", "lab-4mm-socket-recessed"),
                branches,
                List.of(),
                NONE,
                Optional.empty(),
                NONE,
                NONE,
                NONE,
                stock,
                Optional.empty());
    }

    static House house(LabelCode labels, Paper paper, EarthWord words) {
        House usual = House.defaults();
        return new House(
                usual.rules(),
                usual.methods(),
                usual.insulation(),
                labels,
                paper,
                words,
                usual.aim(),
                usual.replugUnderPower(),
                usual.capacitanceShare(),
                usual.capacitanceLimit(),
                usual.floatJoined(),
                usual.pastDue(),
                usual.decision(),
                usual.times(),
                List.of(),
                List.of(),
                List.of(),
                List.of("technician"),
                List.of(),
                Optional.of("Marrowgate, Ambersluice Infirmary"));
    }

    static Hookup hookup(Device device) {
        List<Chain> chains = new ArrayList<>();
        int adapter = 0;
        for (Connection each : device.patientConnections()) {
            adapter++;
            if (each.part().equals("ecg")) {
                chains.add(new Chain(each.name(), List.of("snap-pin/" + adapter, "spread/1"), 1, 3));
            } else {
                int jack = adapter - 9;
                chains.add(new Chain(each.name(), List.of("wrap/" + (adapter - 10)), jack, 2));
            }
        }
        return new Hookup(
                "H1",
                List.of(
                        new Bundle("H1.b1", ECG.stream().map(id -> "ecg." + id).toList(), List.of(1), List.of()),
                        new Bundle("H1.b2", List.of("spo2.sensor"), List.of(2), List.of()),
                        new Bundle("H1.b3", List.of("temp.probe"), List.of(3), List.of())),
                chains,
                List.of(new EarthPath("part", "pole-clamp", "earth-jack", List.of("lead-earth/1", "jaw/1"))));
    }
}
