package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Battery;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.FunctionalEarth;
import leadwright.catalog.device.MainsSwitch;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;

/**
 * What the chains of a kit reach, whatever the device.
 *
 * <p>Needs: a kit. Gives: for a terminal and a use the items of a shortest chain, how long a chain can be, and how many such
 * terminals are brought to jacks at once. Method: the routes of phase 3; jack after jack takes as many terminals, tied, as the
 * fitting test of phase 6 lets it. Cost: some tens of fitting tests a terminal. Proof: none that another sharing of the places
 * would not take more; what is given is possible.
 */
public final class KitChains {
    /** No kit brings more terminals to jacks. */
    private static final int MOST = 256;
    /** A chain longer than this is not measured further. */
    private static final long LONG = 30_000_000;

    private final Kit kit;
    private final Connectors connectors;

    /** What a chain is for. */
    public enum Use {
        ORDINARY,
        MAINS_ON_PART,
        INSULATION
    }

    /**
     * @param items ids from the terminal to the jack; empty where the terminal itself goes into a jack
     * @param longest of one chain, in micrometres; what stands for 30 m may be more
     * @param atOnce terminals that are brought to jacks at one time
     */
    public record Way(List<String> items, long longest, int atOnce) {
        public Way {
            items = List.copyOf(items);
        }
    }

    /** @param connectors the built-in table with the kit's own */
    public KitChains(Kit kit, Connectors connectors) {
        this.kit = kit;
        this.connectors = connectors;
    }

    /** Empty where no chain of the kit does. */
    public Optional<Way> way(String terminal, Use use) {
        if (kit.tester().jacks().isEmpty()) {
            return Optional.empty();
        }
        Duty duty = Scene.duty(kit, reading("r", use, Demand.NOTHING));
        Leaf leaf = new Leaf(Leaf.Kind.PATIENT, terminal, LONG);
        Routes routes = new Routes(new Bench(kit, connectors, duty));
        String socket = kit.tester().jacks().orElseThrow().socket();
        List<Route> into = routes.into(leaf, Socket.jack(socket));
        Optional<Route> shortest = into.stream().min(Comparator.comparingInt(Route::items));
        return shortest.map(route -> new Way(
                route.steps().stream().map(step -> step.part().item().id()).toList(),
                into.stream().mapToLong(Route::length).max().orElse(0),
                atOnce(terminal, use)));
    }

    private int atOnce(String terminal, Use use) {
        Device device = device(terminal);
        int jacks = kit.tester().jacks().orElseThrow().count();
        List<Integer> shares = new ArrayList<>();
        for (int jack = 0; jack < jacks; jack++) {
            int share = most(device, use, shares);
            if (share == 0) {
                break;
            }
            shares.add(share);
        }
        return shares.stream().mapToInt(Integer::intValue).sum();
    }

    /** How many the next jack takes when these have been taken. */
    private int most(Device device, Use use, List<Integer> shares) {
        int left = MOST - shares.stream().mapToInt(Integer::intValue).sum();
        int low = 0;
        int step = 1;
        while (low + step <= left && fits(device, use, shares, low + step)) {
            low += step;
            step *= 2;
        }
        int high = Math.min(left + 1, low + step);
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (fits(device, use, shares, middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private boolean fits(Device device, Use use, List<Integer> shares, int next) {
        List<String> names =
                device.patientConnections().stream().map(each -> each.name()).toList();
        List<Obligation> readings = new ArrayList<>();
        int from = 0;
        for (int jack = 0; jack <= shares.size(); jack++) {
            int share = jack == shares.size() ? next : shares.get(jack);
            readings.add(reading("jack" + jack, use, Demand.of(names.subList(from, from + share))));
            from += share;
        }
        Scene scene = Scene.of(device, kit, House.defaults(), connectors, readings);
        Fit fit = new Fit(scene, new EarthLead(device, kit, connectors, List.of(), Optional.empty()));
        Draft draft = Draft.empty(scene);
        for (Requirement each : scene.requirements()) {
            draft = draft.with(each);
        }
        return fit.fits(draft) == Verdict.YES;
    }

    /**
     * The farthest point of bare metal that an earth reading reaches with this current, in micrometres of lead; the routed
     * distance is five sixths of it. Empty where none is reached.
     */
    public Optional<Long> earthReach(Quantity current) {
        if (!earthReaches(current, 0)) {
            return Optional.empty();
        }
        long low = 0;
        long high = 200_000_000;
        // To a centimetre.
        while (high - low > 10_000) {
            long middle = (low + high) / 2;
            if (earthReaches(current, middle)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return Optional.of((low + 9_999) / 10_000 * 10_000);
    }

    private boolean earthReaches(Quantity current, long lead) {
        TouchPoint point = new TouchPoint(
                "point",
                "point",
                Earthed.YES,
                Surface.METAL,
                Optional.of(Quantity.of(Dimension.LENGTH, lead * 5 / 6)),
                Optional.empty());
        Device device = device(List.of(), List.of(point));
        Obligation reading = new Obligation(
                "earth",
                QuantityKind.EARTH_RESISTANCE,
                "",
                List.of(),
                Demand.NOTHING,
                Optional.of("point"),
                Optional.of(Obligation.EarthSubject.PLUG_TO_PART),
                MainsState.OFF,
                "off",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        return !new EarthLead(device, kit, connectors, List.of(reading), Optional.of(current))
                .choices()
                .isEmpty();
    }

    /** Whether the tester has what the use needs. */
    public boolean has(Use use) {
        return switch (use) {
            case ORDINARY -> kit.tester().jacks().isPresent();
            case MAINS_ON_PART ->
                kit.tester().jacks().isPresent() && kit.tester().partSource().isPresent();
            case INSULATION ->
                kit.tester().jacks().isPresent() && !kit.tester().insulation().isEmpty();
        };
    }

    /** Voltage of the source on a part. */
    public Optional<Quantity> partSource() {
        return kit.tester().partSource().map(PartSource::voltage);
    }

    private static Obligation reading(String key, Use use, Demand demand) {
        return new Obligation(
                key,
                use == Use.INSULATION ? QuantityKind.INSULATION_RESISTANCE : QuantityKind.PATIENT_LEAKAGE,
                "",
                List.of("part"),
                demand,
                Optional.empty(),
                Optional.empty(),
                MainsState.OFF,
                "on",
                use == Use.MAINS_ON_PART ? Optional.of(Obligation.SourcePolarity.NORMAL) : Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Device device(String terminal) {
        List<PatientConnection> connections = new ArrayList<>();
        for (int n = 1; n <= MOST; n++) {
            connections.add(new PatientConnection("c" + n, terminal, Optional.empty()));
        }
        AppliedPart part = new AppliedPart(
                "part",
                "Part",
                PartType.BF,
                false,
                List.of(new PartFunction("part", connections)),
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        return device(List.of(part), List.of());
    }

    private static Device device(List<AppliedPart> parts, List<TouchPoint> points) {
        return new Device(
                "any device",
                new Supply(
                        SupplyConnection.FIXED_CORD,
                        Optional.empty(),
                        Optional.empty(),
                        SupplySystem.LINE_NEUTRAL,
                        Optional.empty(),
                        Optional.empty(),
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
                List.of(),
                List.of(),
                points,
                List.of(),
                parts.stream().map(AppliedPart::id).toList(),
                List.of(),
                Map.of(),
                List.of(),
                Optional.empty(),
                List.of());
    }
}
