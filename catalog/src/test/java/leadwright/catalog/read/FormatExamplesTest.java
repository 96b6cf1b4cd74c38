package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.EarthPoint;
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
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.Inlet;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.KnownResistor;
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
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import org.junit.jupiter.api.Test;

/** The examples of the formats, as they stand, give these records. */
class FormatExamplesTest {

    private static final String PLUG = "lab-4mm-plug-shrouded";
    private static final String SOCKET = "lab-4mm-socket-recessed";

    private static byte[] example(String kind) {
        return TestFiles.example(kind).getBytes(StandardCharsets.UTF_8);
    }

    private static Quantity amps(String text) {
        return Quantities.parse(text, Dimension.CURRENT);
    }

    private static Quantity ohms(String text) {
        return Quantities.parse(text, Dimension.RESISTANCE);
    }

    private static Quantity percent(int percent) {
        return Quantity.of(Dimension.RATIO, percent * 10_000L);
    }

    @Test
    void device() {
        List<PatientConnection> ecg = new ArrayList<>();
        for (String id : List.of("R", "L", "F", "N", "C1", "C2", "C3", "C4", "C5", "C6")) {
            ecg.add(new PatientConnection(id, "snap-socket", Optional.of(id)));
        }
        Device expected = new Device(
                "Brindlewick ward monitor",
                new Supply(
                        SupplyConnection.DETACHABLE_CORD,
                        Optional.of("iec-60320-c14"),
                        Optional.of("bs-1363"),
                        SupplySystem.LINE_NEUTRAL,
                        Optional.of(Quantity.volts(230)),
                        Optional.of(Quantity.volts(230)),
                        Optional.of(Quantity.of(Dimension.FREQUENCY, 50_000)),
                        Optional.of(amps("0.6 A"))),
                Protection.CLASS_1,
                FunctionalEarth.NONE,
                Battery.BACKS_UP,
                MainsSwitch.BOTH_POLES,
                Quantity.seconds(75),
                Quantity.seconds(20),
                true,
                Optional.of(true),
                Optional.of("iec-60601-1-ed3"),
                List.of(),
                List.of(
                        part(
                                "ecg",
                                "ECG",
                                PartType.CF,
                                true,
                                List.of(new PartFunction("ecg", ecg)),
                                false,
                                Optional.of("ecg-10")),
                        part(
                                "spo2",
                                "Pulse oximetry",
                                PartType.BF,
                                false,
                                List.of(function("spo2", "sensor", "skin-surface")),
                                false,
                                Optional.empty()),
                        part(
                                "ibp",
                                "Invasive pressure, 2 channels",
                                PartType.CF,
                                false,
                                List.of(
                                        function("p1", "dome-1", "liquid-column"),
                                        function("p2", "dome-2", "liquid-column")),
                                true,
                                Optional.empty())),
                List.of(new Port("lan", "Network", "metal"), new Port("defib-sync", "ECG out", "metal")),
                List.of(),
                List.of(
                        new TouchPoint(
                                "pole-clamp",
                                "Pole clamp",
                                Earthed.YES,
                                Surface.METAL,
                                Optional.of(Quantity.millimetres(500)),
                                Optional.empty()),
                        new TouchPoint(
                                "bezel-screw",
                                "Bezel screw",
                                Earthed.NO,
                                Surface.METAL,
                                Optional.empty(),
                                Optional.empty())),
                List.of(new EarthPoint(
                        "stud", "Equipotential stud", "din-42801-stud", Optional.empty(), Optional.empty())),
                List.of("ecg", "spo2", "ibp"),
                List.of(),
                Map.of(),
                List.of(),
                Optional.empty(),
                List.of());
        Device device = DeviceReader.read("device.yaml", example("device")).orThrow();
        assertThat(device).isEqualTo(expected);
        assertThat(device.connections())
                .extracting(Connection::name)
                .contains("ecg.C6", "ibp.p1.dome-1", "housing.bezel-screw", "port.lan")
                .hasSize(10 + 1 + 2 + 1 + 2);
    }

    private static AppliedPart part(
            String id,
            String name,
            PartType type,
            boolean proof,
            List<PartFunction> functions,
            boolean named,
            Optional<String> set) {
        return new AppliedPart(id, name, type, proof, functions, named, set, Optional.empty(), Optional.empty());
    }

    private static PartFunction function(String id, String connection, String terminal) {
        return new PartFunction(id, List.of(new PatientConnection(connection, terminal, Optional.empty())));
    }

    @Test
    void kit() {
        Kit kit = KitReader.read("kit.yaml", example("kit")).orThrow();
        assertThat(kit.name()).isEqualTo("Workshop bench, six-jack tester");
        assertThat(kit.connectors()).isEmpty();
        assertThat(kit.tester())
                .isEqualTo(new Tester(
                        "Bench tester",
                        Optional.of(new Jacks(6, SOCKET, Ties.RUNS, AtRest.OPEN)),
                        Optional.of(new EarthJack(SOCKET, Optional.of(AtRest.OPEN))),
                        Optional.of(TouchThrough.JACK),
                        Optional.of(new Inlet("bs-1363", amps("13 A"))),
                        List.of(new Outlet("bs-1363", SupplySystem.LINE_NEUTRAL, Quantity.volts(230), amps("13 A"))),
                        Set.of(TesterSwitch.EARTH, TesterSwitch.SUPPLY, TesterSwitch.POLARITY),
                        List.of(MeasuringNetwork.IEC_60601),
                        List.of(Method.DIRECT, Method.ALTERNATIVE),
                        List.of(Component.AC, Component.DC),
                        Optional.of(new EarthTest(
                                List.of(amps("200 mA"), amps("10 A")),
                                Component.AC,
                                Quantity.volts(6),
                                "two-wire",
                                Optional.of(ohms("2 ohm")),
                                List.of("earth-jack", "outlet-earth"))),
                        List.of(Quantity.volts(500)),
                        Optional.of(new PartSource(Quantity.volts(230), amps("3.5 mA"), SourceReading.CORRECTED)),
                        Map.of(
                                "leakage", new Accuracy(percent(1), Quantity.microAmperes(1)),
                                "earth", new Accuracy(percent(2), Quantity.milliOhms(15))),
                        Optional.of(LocalDate.of(2027, 5, 31))));
        Optional<Quantity> v600 = Optional.of(Quantity.volts(600));
        Optional<Quantity> a25 = Optional.of(amps("25 A"));
        assertThat(kit.items())
                .containsExactly(
                        item("press-pin", ItemKind.ADAPTER, "snap-stud", PLUG, v600, 10, Optional.of("4 GBP")),
                        new KitItem(
                                "spread",
                                ItemKind.FAN_OUT,
                                List.of(PLUG, SOCKET),
                                10,
                                List.of(),
                                Optional.of(Quantity.millimetres(300)),
                                Optional.empty(),
                                Optional.empty(),
                                v600,
                                Optional.empty(),
                                1,
                                Optional.of("60 GBP")),
                        lead("lead-short", 1_500, "1.5 mm2", Optional.of(60_000L), 2),
                        lead("lead-long", 18_000, "2.5 mm2", Optional.empty(), 1),
                        metal("jaw", ItemKind.CLIP, List.of(SOCKET, "metal-edge"), List.of(), a25, Optional.empty(), 1),
                        metal(
                                "needle",
                                ItemKind.PROBE,
                                List.of(SOCKET, "metal-spot"),
                                List.of("recessed-pin"),
                                Optional.of(amps("10 A")),
                                v600,
                                2),
                        metal(
                                "stud-cap",
                                ItemKind.ADAPTER,
                                List.of("din-42801-socket", SOCKET),
                                List.of(),
                                a25,
                                Optional.empty(),
                                1),
                        item("wrap", ItemKind.CONTACT_AID, "foil-wrap", PLUG, v600, 4, Optional.empty()),
                        item("basin", ItemKind.CONTACT_AID, "saline-bath", PLUG, v600, 1, Optional.empty()),
                        item("line-pin", ItemKind.CONTACT_AID, "fluid-electrode", PLUG, v600, 2, Optional.empty()));
        assertThat(kit.checks())
                .containsExactly(new KnownResistor(
                        "known-resistor", ohms("2.3 Mohm"), percent(5), Optional.of(Quantity.volts(300))));
    }

    private static KitItem item(
            String id,
            ItemKind kind,
            String one,
            String other,
            Optional<Quantity> voltage,
            int stock,
            Optional<String> price) {
        return new KitItem(
                id,
                kind,
                List.of(one, other),
                0,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                voltage,
                Optional.empty(),
                stock,
                price);
    }

    private static KitItem metal(
            String id,
            ItemKind kind,
            List<String> ends,
            List<String> also,
            Optional<Quantity> current,
            Optional<Quantity> voltage,
            int stock) {
        return new KitItem(
                id,
                kind,
                ends,
                0,
                also,
                Optional.empty(),
                Optional.empty(),
                current,
                voltage,
                Optional.empty(),
                stock,
                Optional.empty());
    }

    private static KitItem lead(String id, long millimetres, String conductor, Optional<Long> femtofarads, int stock) {
        return new KitItem(
                id,
                ItemKind.LEAD,
                List.of(PLUG, PLUG),
                0,
                List.of(),
                Optional.of(Quantity.millimetres(millimetres)),
                Optional.of(conductor),
                Optional.of(amps("25 A")),
                Optional.of(Quantity.volts(600)),
                femtofarads.map(amount -> Quantity.of(Dimension.CAPACITANCE_PER_LENGTH, amount)),
                stock,
                Optional.empty());
    }

    /** The example states the defaults, every one of them. */
    @Test
    void house() {
        assertThat(HouseReader.read("house.yaml", example("house")).orThrow()).isEqualTo(House.defaults());
    }
}
