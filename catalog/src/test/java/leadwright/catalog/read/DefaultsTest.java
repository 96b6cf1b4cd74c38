package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.ConnectorDefinition;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.ExternalAdapter;
import leadwright.catalog.device.Forbidden;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.OperatingMode;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.ParticularLimit;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TherapyKind;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantities;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.text.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** What stands in for the keys that a file leaves out, and every key that the examples do not show. */
class DefaultsTest {

    /** Every key that the example of the format does not show. */
    static final String FULL_DEVICE = """
            leadwright: device/1
            name: Full
            supply: {connection: external-adapter, system: dc, voltage: 12 V, frequency: 50-60 Hz}
            protection: class-2
            adapter: {class: class-1, functional-earth: via-cord, name: Brick}
            forbids: [{test: insulation-resistance, because: surge arresters}]
            connectors:
              - {id: own-socket, mates: [own-pin, tab], current: 2 A, voltage: 60 V}
              - {id: own-pin}
            applied-parts:
              - id: pads
                type: BF
                distance: 2 m
                cable: 1.5 m
                terminal: own-socket
                functions:
                  - {id: shock, connections: [{id: a}, {id: b}]}
                  - {id: eeg, set: eeg-21, terminal: tp15-socket, connections: [{id: ground}]}
            touch-points:
              - {id: far, earthed: true, distance: 1 m, from: near}
              - {id: near, earthed: false, surface: insulating, distance: 2 m}
            earth-points: [{id: bar, terminal: metal, distance: 3 m, from: far}]
            outputs:
              - {id: shock, applied-part: pads, functions: [shock], kind: defibrillation, made-safe-by: dumped, wait: 1 min, may-share: locked}
              - {id: pads, kind: stimulation}
            limits:
              - {quantity: touch-current, of: far, at-most: 300 uA, source: instructions}
              - {quantity: earth-resistance, at-most: 0.2 ohm, source: instructions}
              - {quantity: patient-leakage, of: pads.shock, at-most: 5 uA, source: instructions}
            electrical: {line-earth: 2.2 nF, part-earth: 10 Mohm, earth-path: 50 mohm}
            modes: [{id: idle}, {id: hot, name: Heating, reach: 60 s}]
            """;

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static Outcome.Read<Device> device(String text) {
        Outcome<Device> outcome = DeviceReader.read("t.yaml", bytes(text));
        assertThat(outcome.problems()).isEmpty();
        return (Outcome.Read<Device>) outcome;
    }

    @Test
    void smallestDevice() {
        Outcome.Read<Device> read = device("""
                leadwright: device/1
                name: Small
                supply: {connection: fixed-cord, voltage: 100-240 V}
                protection: class-2
                applied-parts:
                  - {id: a, type: BF, connections: [{id: x, terminal: skin-surface}]}
                  - {id: b, type: B, terminal: tab, connections: [{id: x}, {id: y, terminal: snap-stud, label: Y1}]}
                ports: [{id: usb}, {id: handle, surface: painted}, {id: jack, terminal: lab-4mm-socket}]
                touch-points: [{id: case}]
                panel: [b]
                """);
        Device device = read.record();
        assertThat(device.supply().system()).isEqualTo(SupplySystem.LINE_NEUTRAL);
        assertThat(device.supply().lowest()).contains(Quantity.volts(100));
        assertThat(device.supply().highest()).contains(Quantity.volts(240));
        assertThat(device.supply().current()).isEmpty();
        assertThat(device.functionalEarth()).isEqualTo(FunctionalEarth.NONE);
        assertThat(device.battery()).isEqualTo(Battery.NONE);
        assertThat(device.mainsSwitch()).isEqualTo(MainsSwitch.ELECTRONIC);
        assertThat(device.startUp()).isEqualTo(Quantity.seconds(0));
        assertThat(device.startUpStated()).isFalse();
        assertThat(device.toleratesPowerCut()).isEmpty();
        assertThat(device.builtTo()).isEmpty();
        assertThat(device.panel()).containsExactly("b", "a");
        assertThat(device.part("b").orElseThrow().functions().get(0).connections())
                .containsExactly(
                        new PatientConnection("x", "tab", Optional.empty()),
                        new PatientConnection("y", "snap-stud", Optional.of("Y1")));
        assertThat(device.ports())
                .containsExactly(
                        new Port("usb", "usb", "metal"),
                        new Port("handle", "handle", "painted"),
                        new Port("jack", "jack", "lab-4mm-socket"));
        assertThat(device.touchPoints())
                .containsExactly(new TouchPoint(
                        "case", "case", Earthed.UNKNOWN, Surface.METAL, Optional.empty(), Optional.empty()));
        assertThat(read.assumed())
                .contains(
                        "supply.system: not stated, taken as line-neutral",
                        "supply.current: not stated, not compared with the tester",
                        "mains-switch: not stated, taken as electronic",
                        "battery: not stated, taken as none",
                        "start-up: not stated, left out of the bench time",
                        "tolerates-power-cut: not stated, taken as no",
                        "applied-parts a.defibrillation-proof: not stated, taken as no",
                        "touch-points case.earthed: not stated, taken as unknown",
                        "outputs: not stated, taken as none",
                        "panel: does not list a, drawn last in the order of their ids")
                .doesNotHaveDuplicates();
    }

    @Test
    void internallyPowered() {
        Device device = device("""
                leadwright: device/1
                name: Small
                supply: {connection: none}
                protection: internally-powered
                """).record();
        assertThat(device.runsOnMains()).isFalse();
        assertThat(device.battery()).isEqualTo(Battery.ONLY);
        assertThat(device.appliedParts()).isEmpty();
    }

    @Test
    void everyOtherKeyOfADevice() {
        Device device = device(FULL_DEVICE).record();
        assertThat(device.supply().frequency()).contains(Quantity.of(Dimension.FREQUENCY, 50_000));
        assertThat(device.adapter())
                .contains(new ExternalAdapter(Protection.CLASS_1, FunctionalEarth.VIA_CORD, Optional.of("Brick")));
        assertThat(device.forbids()).containsExactly(new Forbidden("insulation-resistance", "surge arresters"));
        assertThat(device.connectors())
                .containsExactly(
                        new ConnectorDefinition(
                                "own-socket",
                                List.of("own-pin", "tab"),
                                Optional.of(Quantities.parse("2 A", Dimension.CURRENT)),
                                Optional.of(Quantity.volts(60))),
                        new ConnectorDefinition("own-pin", List.of(), Optional.empty(), Optional.empty()));
        AppliedPart pads = device.part("pads").orElseThrow();
        assertThat(pads.distance()).contains(Quantity.millimetres(2000));
        assertThat(pads.cable()).contains(Quantity.millimetres(1500));
        assertThat(pads.functions().get(0).connections())
                .containsExactly(
                        new PatientConnection("a", "own-socket", Optional.empty()),
                        new PatientConnection("b", "own-socket", Optional.empty()));
        assertThat(pads.functions().get(1).connections())
                .hasSize(22)
                .contains(new PatientConnection("Fp1", "tp15-socket", Optional.of("Fp1")))
                .endsWith(new PatientConnection("ground", "tp15-socket", Optional.empty()));
        assertThat(device.touchPoints().get(0).earthed()).isEqualTo(Earthed.YES);
        assertThat(device.touchPoints().get(0).from()).contains("near");
        assertThat(device.touchPoints().get(1).earthed()).isEqualTo(Earthed.NO);
        assertThat(device.outputs())
                .containsExactly(
                        new Output(
                                "shock",
                                "pads",
                                List.of("shock"),
                                TherapyKind.DEFIBRILLATION,
                                Optional.of("dumped"),
                                Optional.of(Quantity.seconds(60)),
                                Optional.of("locked")),
                        new Output(
                                "pads",
                                "pads",
                                List.of(),
                                TherapyKind.STIMULATION,
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty()));
        assertThat(device.limits())
                .containsExactly(
                        new ParticularLimit(
                                "touch-current", Optional.of("far"), Quantity.microAmperes(300), "instructions"),
                        new ParticularLimit(
                                "earth-resistance", Optional.empty(), Quantity.milliOhms(200), "instructions"),
                        new ParticularLimit(
                                "patient-leakage",
                                Optional.of("pads.shock"),
                                Quantity.microAmperes(5),
                                "instructions"));
        assertThat(device.electrical())
                .isEqualTo(Map.of(
                        "line-earth", Quantities.parse("2.2 nF", Dimension.CAPACITANCE),
                        "part-earth", Quantities.parse("10 Mohm", Dimension.RESISTANCE),
                        "earth-path", Quantity.milliOhms(50)));
        assertThat(device.modes())
                .containsExactly(
                        new OperatingMode("idle", "idle", Quantity.seconds(0)),
                        new OperatingMode("hot", "Heating", Quantity.seconds(60)));
    }

    @Test
    void smallestKit() {
        Outcome<Kit> outcome = KitReader.read("t.yaml", bytes("""
                leadwright: kit/1
                name: Small
                tester:
                  jacks: {count: 2, socket: lab-4mm-socket}
                  earth-jack: {socket: lab-4mm-socket}
                """));
        assertThat(outcome.problems()).isEmpty();
        Tester tester = outcome.orThrow().tester();
        assertThat(tester.name()).isEqualTo("Small");
        assertThat(tester.jacks().orElseThrow().ties()).isEqualTo(Ties.RUNS);
        assertThat(tester.jacks().orElseThrow().atRest()).isEqualTo(AtRest.EARTHED);
        assertThat(tester.earthJack().orElseThrow().atRest()).isEmpty();
        assertThat(tester.components()).containsExactly(Component.AC);
        assertThat(tester.switches()).isEqualTo(Set.of());
        assertThat(tester.outlets()).isEmpty();
        assertThat(tester.partSource()).isEmpty();
        assertThat(((Outcome.Read<Kit>) outcome).assumed())
                .contains("tester.jacks.at-rest: not stated, taken as earthed", "items: not stated, taken as none");
    }

    @Test
    void houseWithOneKey() {
        Outcome<House> outcome =
                HouseReader.read("t.yaml", bytes("leadwright: house/1\ntimes: {snap: {part: 2 s}, write: 7 s}\n"));
        assertThat(outcome.problems()).isEmpty();
        House house = outcome.orThrow();
        assertThat(house.rules()).isEqualTo("iec-62353-2014");
        assertThat(house.times().contact("snap").join()).isEqualTo(Quantity.seconds(6));
        assertThat(house.times().contact("snap").part()).isEqualTo(Quantity.seconds(2));
        assertThat(house.times().action("write")).isEqualTo(Quantity.seconds(7));
        assertThat(house.times().action("clip")).isEqualTo(Quantity.seconds(10));
        assertThat(((Outcome.Read<House>) outcome).assumed()).contains("labels: not stated, taken as iec");
    }

    @Test
    void aNameIsData() {
        String name = "\u202Eward\u202C <script>alert(1)</script> \uD83D\uDC69\u200D\uD83D\uDD2C " + "n".repeat(500);
        assertThat(device("leadwright: device/1\nname: '" + name
                                + "'\nsupply: {connection: none}\nprotection: internally-powered\n")
                        .record()
                        .name())
                .isEqualTo(name);
    }

    @Test
    void jsonReadsTheSame() {
        String json = "{\"leadwright\":\"device/1\",\"name\":\"Small\",\"supply\":{\"connection\":\"none\"},"
                + "\"protection\":\"internally-powered\",\"touch-points\":[{\"id\":\"case\",\"earthed\":false}]}";
        Device device = device(json).record();
        assertThat(device.name()).isEqualTo("Small");
        assertThat(device.touchPoints().get(0).earthed()).isEqualTo(Earthed.NO);
    }

    /** Ten thousand parts and two hundred thousand wrong references to them: refused in seconds, all of them named. */
    @Test
    @Timeout(30)
    void aLargeBrokenFileIsRefusedInSeconds() {
        StringBuilder text = new StringBuilder(
                "leadwright: device/1\nname: x\nsupply: {connection: none}\nprotection: internally-powered\napplied-parts:\n");
        for (int i = 0; i < 10_000; i++) {
            text.append("  - {id: part").append(100_000 + i).append(", type: B, set: ecg-3, terminal: tab}\n");
        }
        text.append("panel: [");
        for (int i = 0; i < 200_000; i++) {
            text.append(i == 0 ? "" : ",").append("qqrt").append(100_000 + i);
        }
        assertThat(DeviceReader.read("t.yaml", bytes(text.append("]\n").toString()))
                        .problems())
                .hasSize(200_000);
    }
}
