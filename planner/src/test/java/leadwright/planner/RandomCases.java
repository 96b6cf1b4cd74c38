package leadwright.planner;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.EarthPoint;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.ExternalAdapter;
import leadwright.catalog.device.Forbidden;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.OperatingMode;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.device.Port;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TherapyKind;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.read.HouseReader;

/**
 * Small devices with a kit, drawn from a seed: the same seed gives the same case on every machine. Sizes are such that a
 * brute-force search is possible: at most seven patient connections, three touch points and two ports.
 */
public final class RandomCases {

    private static final List<String> TERMINALS =
            List.of("snap-socket", "tp15-socket", "skin-surface", "liquid-column");

    private final Random random;

    private RandomCases(long seed) {
        // Neighbouring seeds of java.util.Random give like first draws; mixing parts them.
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 0x1234567L);
    }

    /** A device and a kit for it; the text names the seed, for a test's display name. */
    public record Case(long seed, Device device, Kit kit, House house) {
        @Override
        public String toString() {
            return "seed " + seed;
        }
    }

    /** Any device with any kit: thin benches, raw sources, jacks in runs or at rest earthed among them. */
    public static Case any(long seed) {
        RandomCases cases = new RandomCases(seed);
        Device device = cases.device();
        Kit kit = RandomKits.any(cases.random);
        return new Case(seed, device, kit, cases.house());
    }

    /** Any device with a bench that lacks nothing: every tester property, and enough of every item. */
    public static Case withAmpleKit(long seed) {
        RandomCases cases = new RandomCases(seed);
        Device device = cases.device();
        Kit kit = RandomKits.ample(4 + cases.random.nextInt(5));
        return new Case(seed, device, kit, cases.house());
    }

    /** Mostly the usual choices; some houses re-plug under power, some let nothing float joined. */
    private House house() {
        StringBuilder text = new StringBuilder("leadwright: house/1\n");
        if (random.nextInt(4) == 0) {
            text.append("replug-under-power: after-earth-and-touch\n");
        }
        if (random.nextInt(4) == 0) {
            text.append("float-joined: never\n");
        }
        return HouseReader.read("house", text.toString().getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    /** {@code count} cases from {@link #any}, seeds counted up from {@code firstSeed}. */
    public static Stream<Case> any(long firstSeed, int count) {
        return LongStream.range(firstSeed, firstSeed + count).mapToObj(RandomCases::any);
    }

    /** {@code count} cases from {@link #withAmpleKit}, seeds counted up from {@code firstSeed}. */
    public static Stream<Case> withAmpleKit(long firstSeed, int count) {
        return LongStream.range(firstSeed, firstSeed + count).mapToObj(RandomCases::withAmpleKit);
    }

    private boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }

    private Device device() {
        SupplyConnection connection = pick(List.of(
                SupplyConnection.DETACHABLE_CORD,
                SupplyConnection.DETACHABLE_CORD,
                SupplyConnection.FIXED_CORD,
                SupplyConnection.FIXED_CORD,
                SupplyConnection.PERMANENT,
                SupplyConnection.EXTERNAL_ADAPTER,
                SupplyConnection.NONE));
        Protection protection = protection(connection);
        boolean earthInCord = protection == Protection.CLASS_1;
        FunctionalEarth functional =
                protection == Protection.CLASS_2 && chance(15) ? FunctionalEarth.VIA_CORD : FunctionalEarth.NONE;
        List<AppliedPart> parts = parts();
        List<String> panel = new ArrayList<>(parts.stream().map(AppliedPart::id).toList());
        if (chance(30)) {
            java.util.Collections.reverse(panel);
        }
        Battery battery =
                connection == SupplyConnection.NONE ? Battery.ONLY : chance(35) ? Battery.BACKS_UP : Battery.NONE;
        boolean startUpStated = chance(80);
        return new Device(
                "Random device",
                supply(connection),
                protection,
                functional,
                battery,
                pick(List.of(MainsSwitch.values())),
                Quantity.seconds(startUpStated ? pick(List.of(2, 10, 45, 90)) : 0),
                Quantity.seconds(startUpStated ? pick(List.of(1, 5, 20)) : 0),
                startUpStated,
                chance(60) ? Optional.of(true) : chance(50) ? Optional.of(false) : Optional.empty(),
                chance(50) ? Optional.of(pick(List.of("iec-60601-1-ed3", "iec-60601-1-ed2"))) : Optional.empty(),
                chance(15) ? List.of(new Forbidden("insulation-resistance", "surge arresters")) : List.of(),
                parts,
                ports(),
                outputs(parts),
                touchPoints(earthInCord),
                chance(20)
                        ? List.of(new EarthPoint("stud", "Stud", "din-42801-stud", Optional.empty(), Optional.empty()))
                        : List.of(),
                panel,
                List.of(),
                java.util.Map.of(),
                modes(connection),
                connection == SupplyConnection.EXTERNAL_ADAPTER
                        ? Optional.of(new ExternalAdapter(protection, functional, Optional.of("Adapter")))
                        : Optional.empty(),
                List.of());
    }

    private Protection protection(SupplyConnection connection) {
        if (connection == SupplyConnection.NONE) {
            return Protection.INTERNALLY_POWERED;
        }
        return chance(60) ? Protection.CLASS_1 : Protection.CLASS_2;
    }

    private static Supply supply(SupplyConnection connection) {
        boolean mains = connection != SupplyConnection.NONE;
        boolean cord = mains && connection != SupplyConnection.PERMANENT;
        return new Supply(
                connection,
                connection == SupplyConnection.DETACHABLE_CORD ? Optional.of("iec-60320-c14") : Optional.empty(),
                cord ? Optional.of("bs-1363") : Optional.empty(),
                SupplySystem.LINE_NEUTRAL,
                mains ? Optional.of(Quantity.volts(230)) : Optional.empty(),
                mains ? Optional.of(Quantity.volts(230)) : Optional.empty(),
                mains ? Optional.of(Quantity.of(Dimension.FREQUENCY, 50_000)) : Optional.empty(),
                mains ? Optional.of(Quantity.microAmperes(500_000)) : Optional.empty());
    }

    private List<AppliedPart> parts() {
        int count = random.nextInt(4);
        int connectionsLeft = 7;
        List<AppliedPart> parts = new ArrayList<>();
        for (int p = 1; p <= count && connectionsLeft > 0; p++) {
            PartType type = pick(List.of(PartType.B, PartType.BF, PartType.BF, PartType.CF, PartType.CF));
            boolean named = chance(25) && connectionsLeft >= 2;
            int functionCount = named ? 2 : 1;
            List<PartFunction> functions = new ArrayList<>();
            for (int f = 1; f <= functionCount; f++) {
                int size = Math.min(1 + random.nextInt(3), connectionsLeft - (functionCount - f));
                connectionsLeft -= size;
                functions.add(new PartFunction(named ? "f" + f : "p" + p, connections(size)));
            }
            parts.add(new AppliedPart(
                    "p" + p,
                    "Part " + p,
                    type,
                    chance(30),
                    functions,
                    named,
                    Optional.empty(),
                    Optional.empty(),
                    chance(30) ? Optional.of(Quantity.millimetres(1500)) : Optional.empty()));
        }
        return parts;
    }

    private List<PatientConnection> connections(int size) {
        String terminal = pick(TERMINALS);
        List<PatientConnection> connections = new ArrayList<>();
        for (int c = 1; c <= size; c++) {
            connections.add(new PatientConnection("c" + c, terminal, Optional.empty()));
        }
        return connections;
    }

    private List<Port> ports() {
        List<Port> ports = new ArrayList<>();
        for (int p = random.nextInt(3); p > 0; p--) {
            ports.add(new Port("port" + p, "Port " + p, "metal"));
        }
        return ports;
    }

    private List<Output> outputs(List<AppliedPart> parts) {
        if (parts.isEmpty() || !chance(20)) {
            return List.of();
        }
        AppliedPart part = pick(parts);
        List<String> functions = part.namedFunctions() && chance(50)
                ? List.of(part.functions().get(0).id())
                : List.of();
        return List.of(new Output(
                "therapy",
                part.id(),
                functions,
                pick(List.of(TherapyKind.values())),
                Optional.of("energy dumped, output locked"),
                Optional.of(Quantity.seconds(30)),
                chance(30) ? Optional.of("the output is cut off by a key") : Optional.empty()));
    }

    private List<TouchPoint> touchPoints(boolean earthInCord) {
        List<TouchPoint> points = new ArrayList<>();
        int count = 1 + random.nextInt(3);
        for (int t = 1; t <= count; t++) {
            Earthed earthed =
                    earthInCord ? pick(List.of(Earthed.YES, Earthed.YES, Earthed.NO, Earthed.UNKNOWN)) : Earthed.NO;
            Surface surface =
                    pick(List.of(Surface.METAL, Surface.METAL, Surface.METAL, Surface.PAINTED, Surface.INSULATING));
            if (earthed != Earthed.NO && surface == Surface.INSULATING) {
                surface = Surface.METAL;
            }
            points.add(new TouchPoint(
                    "t" + t,
                    "Point " + t,
                    earthed,
                    surface,
                    chance(70) ? Optional.of(Quantity.millimetres(300L + 300 * random.nextInt(4))) : Optional.empty(),
                    Optional.empty()));
        }
        return points;
    }

    private List<OperatingMode> modes(SupplyConnection connection) {
        if (connection == SupplyConnection.NONE || !chance(15)) {
            return List.of();
        }
        return List.of(
                new OperatingMode("idle", "Idle", Quantity.seconds(0)),
                new OperatingMode("busy", "Busy", Quantity.seconds(30)));
    }
}
