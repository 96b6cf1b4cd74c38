package leadwright.planner;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import leadwright.catalog.device.SupplySystem;
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

/** Kits for {@link RandomCases}. */
final class RandomKits {

    private static final String PLUG = "lab-4mm-plug-shrouded";
    private static final String SOCKET = "lab-4mm-socket-recessed";

    private RandomKits() {}

    /** A bench that lacks nothing. */
    static Kit ample(int jacks) {
        Tester tester = tester(
                new Jacks(jacks, SOCKET, Ties.ANY, AtRest.OPEN),
                Optional.of(AtRest.OPEN),
                TouchThrough.OWN,
                Set.of(TesterSwitch.values()),
                List.of(Method.DIRECT, Method.ALTERNATIVE),
                List.of(Component.AC, Component.DC),
                List.of("earth-jack", "outlet-earth", "second-jack"),
                Optional.of(new PartSource(Quantity.volts(230), amps("3.5 mA"), SourceReading.CORRECTED)));
        return new Kit("Ample bench", tester, items(12, 3, 12), checks(), List.of());
    }

    static Kit any(Random random) {
        Jacks jacks = new Jacks(
                2 + random.nextInt(5),
                SOCKET,
                random.nextBoolean() ? Ties.ANY : Ties.RUNS,
                random.nextInt(100) < 70 ? AtRest.OPEN : random.nextBoolean() ? AtRest.EARTHED : AtRest.CHOSEN);
        List<Method> methods = random.nextInt(100) < 70
                ? List.of(Method.DIRECT, Method.ALTERNATIVE)
                : List.of(Method.values()[random.nextInt(3)]);
        Set<TesterSwitch> switches = random.nextInt(100) < 80
                ? Set.of(TesterSwitch.values())
                : Set.of(TesterSwitch.values()[random.nextInt(3)]);
        List<String> sockets = random.nextInt(100) < 60
                ? List.of("earth-jack", "outlet-earth", "second-jack")
                : List.of("earth-jack", random.nextBoolean() ? "outlet-earth" : "second-jack");
        Optional<PartSource> source = random.nextInt(100) < 10
                ? Optional.empty()
                : Optional.of(new PartSource(
                        Quantity.volts(230),
                        amps("3.5 mA"),
                        random.nextInt(100) < 70 ? SourceReading.CORRECTED : SourceReading.RAW));
        Tester tester = tester(
                jacks,
                random.nextInt(100) < 60
                        ? Optional.of(AtRest.OPEN)
                        : random.nextBoolean() ? Optional.of(AtRest.EARTHED) : Optional.empty(),
                TouchThrough.values()[random.nextInt(3)],
                switches,
                methods,
                random.nextInt(100) < 80 ? List.of(Component.AC, Component.DC) : List.of(Component.AC),
                sockets,
                source);
        boolean plenty = random.nextInt(100) < 60;
        return new Kit(
                "Random bench",
                tester,
                items(
                        plenty ? 8 : 1 + random.nextInt(4),
                        plenty ? 2 : random.nextInt(2),
                        plenty ? 8 : 2 + random.nextInt(3)),
                random.nextInt(100) < 70 ? checks() : List.of(),
                List.of());
    }

    private static Tester tester(
            Jacks jacks,
            Optional<AtRest> earthJackAtRest,
            TouchThrough touchThrough,
            Set<TesterSwitch> switches,
            List<Method> methods,
            List<Component> components,
            List<String> sockets,
            Optional<PartSource> source) {
        return new Tester(
                "Random tester",
                Optional.of(jacks),
                Optional.of(new EarthJack(SOCKET, earthJackAtRest)),
                Optional.of(touchThrough),
                Optional.of(new Inlet("bs-1363", amps("13 A"))),
                List.of(new Outlet("bs-1363", SupplySystem.LINE_NEUTRAL, Quantity.volts(230), amps("13 A"))),
                switches,
                List.of(MeasuringNetwork.IEC_60601),
                methods,
                components,
                Optional.of(new EarthTest(
                        List.of(amps("200 mA"), amps("25 A")),
                        Component.AC,
                        Quantity.volts(6),
                        "two-wire",
                        Optional.of(Quantity.milliOhms(2000)),
                        sockets)),
                List.of(Quantity.volts(500)),
                source,
                Map.of(
                        "leakage",
                        new Accuracy(Quantity.of(Dimension.RATIO, 10_000), Quantity.microAmperes(1)),
                        "earth",
                        new Accuracy(Quantity.of(Dimension.RATIO, 20_000), Quantity.milliOhms(10))),
                Optional.empty());
    }

    /**
     * @param aids stock of each adapter and contact aid
     * @param fanOuts stock of the fan-out
     * @param leads stock of leads, clips and probes
     */
    private static List<KitItem> items(int aids, int fanOuts, int leads) {
        List<KitItem> items = new ArrayList<>(List.of(
                twoEnded("snap-pin", ItemKind.ADAPTER, "snap-stud", PLUG, List.of(), Optional.empty(), aids),
                twoEnded("tp-pin", ItemKind.ADAPTER, "tp15-pin", PLUG, List.of(), Optional.empty(), aids),
                twoEnded("wrap", ItemKind.CONTACT_AID, "foil-wrap", PLUG, List.of(), metres(500), aids),
                twoEnded("line-pin", ItemKind.CONTACT_AID, "fluid-electrode", PLUG, List.of(), metres(500), aids),
                twoEnded("lead", ItemKind.LEAD, PLUG, PLUG, List.of(), metres(1500), leads),
                twoEnded("lead-earth", ItemKind.LEAD, PLUG, PLUG, List.of(), metres(3000), 2),
                twoEnded("jaw", ItemKind.CLIP, SOCKET, "metal-edge", List.of(), Optional.empty(), leads),
                twoEnded(
                        "needle", ItemKind.PROBE, SOCKET, "metal-spot", List.of("recessed-pin"), Optional.empty(), 2)));
        if (fanOuts > 0) {
            items.add(new KitItem(
                    "spread",
                    ItemKind.FAN_OUT,
                    List.of(PLUG, SOCKET),
                    8,
                    List.of(),
                    metres(300),
                    Optional.of("0.75 mm2"),
                    Optional.of(amps("10 A")),
                    Optional.of(Quantity.volts(600)),
                    Optional.empty(),
                    fanOuts,
                    Optional.empty()));
        }
        return items;
    }

    private static KitItem twoEnded(
            String id, ItemKind kind, String from, String to, List<String> also, Optional<Quantity> length, int stock) {
        return new KitItem(
                id,
                kind,
                List.of(from, to),
                0,
                also,
                length,
                kind == ItemKind.LEAD ? Optional.of("2.5 mm2") : Optional.empty(),
                Optional.of(amps("25 A")),
                Optional.of(Quantity.volts(600)),
                Optional.empty(),
                stock,
                Optional.empty());
    }

    private static List<KnownResistor> checks() {
        return List.of(new KnownResistor(
                "known-resistor",
                Quantities.parse("2.3 Mohm", Dimension.RESISTANCE),
                Quantities.parse("5 %", Dimension.RATIO),
                Optional.of(Quantity.volts(300))));
    }

    private static Optional<Quantity> metres(long millimetres) {
        return Optional.of(Quantity.millimetres(millimetres));
    }

    private static Quantity amps(String text) {
        return Quantities.parse(text, Dimension.CURRENT);
    }
}
