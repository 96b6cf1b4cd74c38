package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Earthed;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Surface;
import leadwright.catalog.device.TherapyKind;
import leadwright.catalog.device.TouchPoint;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Obligation;

/** A small device, a thin kit and a few demands, drawn from a seed; small enough to try everything. */
record SmallCase(long seed, Device device, Kit kit, List<Demand> demands, List<Boolean> mains) {

    @Override
    public String toString() {
        return "seed " + seed;
    }

    List<Obligation> obligations() {
        List<Obligation> all = new ArrayList<>();
        for (int i = 0; i < demands.size(); i++) {
            all.add(mains.get(i) ? Rig.mains("d" + i, demands.get(i)) : Rig.reading("d" + i, demands.get(i)));
        }
        return all;
    }

    /** Everything that a demand may name. */
    List<Connection> connections() {
        List<Connection> all = new ArrayList<>(device.connections());
        all.add(new Connection(
                "touch-probe", Connection.Kind.TOUCH_PROBE, "touch-probe", "touch-probe", "metal", Optional.empty()));
        return all;
    }

    /** Micrometres that the chain of a connection must be long. */
    long reach(Connection connection) {
        Optional<AppliedPart> part = device.part(connection.part());
        if (part.isEmpty() || part.get().distance().isEmpty()) {
            return 0;
        }
        long cable = part.get().cable().map(each -> each.amount()).orElse(0L);
        return (part.get().distance().get().amount() * 12 + 9) / 10 - cable;
    }

    static SmallCase draw(long seed) {
        return new Drawing(new Random(seed * 0x9E3779B97F4A7C15L + 77)).small(seed);
    }

    /** Wires of one part on a tester that ties neighbours, with leads that may join a second jack to a bundle. */
    static SmallCase drawRow(long seed) {
        return new Drawing(new Random(seed * 0x9E3779B97F4A7C15L + 78)).row(seed);
    }

    /** Bare plugs on a tester that ties neighbours: a lead with a stackable plug may itself stand in two jacks. */
    static SmallCase drawStack(long seed) {
        return new Drawing(new Random(seed * 0x9E3779B97F4A7C15L + 79)).stack(seed);
    }

    /** Few wires, few jacks, few items: small enough to try every row of hookups. */
    static SmallCase drawRanked(long seed) {
        return new Drawing(new Random(seed * 0x9E3779B97F4A7C15L + 80)).ranked(seed);
    }

    private static final class Drawing {
        private static final List<String> TERMINALS =
                List.of("snap-socket", "snap-socket", "tp15-socket", "skin-surface", "lab-4mm-plug", "pinch-clip");
        private final Random random;

        Drawing(Random random) {
            this.random = random;
        }

        private boolean chance(int percent) {
            return random.nextInt(100) < percent;
        }

        private <T> T pick(List<T> from) {
            return from.get(random.nextInt(from.size()));
        }

        SmallCase small(long seed) {
            Device device = device();
            Kit kit = kit(device.appliedParts().stream()
                    .map(part -> part.connections().get(0).terminal())
                    .collect(Collectors.toSet()));
            List<String> names = new ArrayList<>(Rig.names(device));
            if (chance(20)) {
                names.add("touch-probe");
            }
            List<Demand> demands = new ArrayList<>();
            List<Boolean> mains = new ArrayList<>();
            for (int i = 2 + random.nextInt(5); i > 0; i--) {
                demands.add(demand(device, names));
                mains.add(chance(20));
            }
            return new SmallCase(seed, device, kit, demands, mains);
        }

        SmallCase ranked(long seed) {
            boolean large = chance(15);
            int wires = large ? 5 + random.nextInt(2) : 3 + random.nextInt(2);
            int own = chance(60) ? wires : 1 + random.nextInt(wires - 1);
            List<AppliedPart> parts = new ArrayList<>();
            parts.add(Rig.part("p1", PartType.CF, "snap-socket", own));
            String other = pick(List.of("snap-socket", "tp15-socket", "skin-surface"));
            if (own < wires) {
                parts.add(Rig.part("p2", PartType.BF, other, wires - own));
            }
            Device device = Rig.device(parts, List.of(), List.of(), List.of());
            List<KitItem> items = new ArrayList<>();
            items.add(Rig.item("snap", ItemKind.ADAPTER, "snap-stud", Rig.PLUG, large ? 3 : 2 + random.nextInt(3)));
            if (own < wires && other.equals("tp15-socket")) {
                items.add(Rig.item("tp", ItemKind.ADAPTER, "tp15-pin", Rig.PLUG, 2));
            }
            if (own < wires && other.equals("skin-surface")) {
                items.add(Rig.item("wrap", ItemKind.CONTACT_AID, List.of("foil-wrap", Rig.PLUG), 0, 500, 600, 2));
            }
            if (!large && chance(60)) {
                int branches = 2 + random.nextInt(2);
                items.add(Rig.item("fan", ItemKind.FAN_OUT, List.of(Rig.PLUG, Rig.SOCKET), branches, 300, 600, 1));
            }
            if (!large && chance(15)) {
                items.add(Rig.item("reach", ItemKind.LEAD, List.of(Rig.SOCKET, Rig.PLUG), 0, 1000, 600, 1));
            }
            int count = 2 + random.nextInt(large ? 1 : 2);
            AtRest atRest = chance(85) ? AtRest.OPEN : AtRest.EARTHED;
            Jacks jacks = new Jacks(count, Rig.SOCKET, chance(60) ? Ties.ANY : Ties.RUNS, atRest);
            List<String> names = Rig.names(device);
            List<Demand> demands = new ArrayList<>();
            List<Boolean> mains = new ArrayList<>();
            for (int i = 2 + random.nextInt(3); i > 0; i--) {
                List<String> rest = new ArrayList<>(names);
                String one = pick(rest);
                rest.remove(one);
                String two = pick(rest);
                demands.add(
                        switch (random.nextInt(4)) {
                            case 0 -> Demand.of(List.of(one));
                            case 1 -> Demand.of(List.of(one, two));
                            case 2 -> Demand.of(List.of(one), List.of(two), List.of());
                            default -> large ? Demand.of(List.of(one)) : Demand.of(List.of(one), rest, List.of());
                        });
                mains.add(chance(20));
            }
            return new SmallCase(seed, device, Rig.kit(jacks, 3500, items), demands, mains);
        }

        SmallCase row(long seed) {
            int wires = 3 + random.nextInt(2);
            Device device = Rig.device(Rig.part("p", PartType.CF, "snap-socket", wires));
            List<KitItem> items = new ArrayList<>();
            items.add(Rig.item("snap", ItemKind.ADAPTER, "snap-stud", Rig.PLUG, wires));
            items.add(Rig.fanOut("two", Rig.PLUG, Rig.SOCKET, 2, 1 + random.nextInt(2)));
            items.add(Rig.item("lead", ItemKind.LEAD, Rig.PLUG, Rig.PLUG, 1 + random.nextInt(2)));
            Jacks jacks = new Jacks(wires + random.nextInt(3), Rig.SOCKET, Ties.RUNS, AtRest.OPEN);
            List<String> names = Rig.names(device);
            List<Demand> demands = new ArrayList<>();
            List<Boolean> mains = new ArrayList<>();
            for (int i = 3 + random.nextInt(3); i > 0; i--) {
                List<String> rest = new ArrayList<>(names);
                String one = pick(rest);
                rest.remove(one);
                demands.add(
                        chance(50) ? Demand.of(List.of(one, pick(rest))) : Demand.of(List.of(one), rest, List.of()));
                mains.add(false);
            }
            return new SmallCase(seed, device, Rig.kit(jacks, 3500, items), demands, mains);
        }

        SmallCase stack(long seed) {
            int wires = 3 + random.nextInt(2);
            Device device = Rig.device(Rig.part("p", PartType.CF, "snap-socket", wires));
            List<KitItem> items = new ArrayList<>();
            items.add(Rig.item("snap", ItemKind.ADAPTER, "snap-stud", "lab-4mm-plug", wires));
            items.add(
                    Rig.item("stack", ItemKind.LEAD, "lab-4mm-plug-stackable", "lab-4mm-plug", 1 + random.nextInt(2)));
            if (chance(30)) {
                items.add(Rig.item("lead", ItemKind.LEAD, "lab-4mm-plug", "lab-4mm-plug", 1));
            }
            if (chance(20)) {
                items.add(Rig.fanOut("two", "lab-4mm-plug", "lab-4mm-socket", 2, 1));
            }
            Jacks jacks = new Jacks(wires + random.nextInt(2), "lab-4mm-socket", Ties.RUNS, AtRest.OPEN);
            List<String> names = Rig.names(device);
            List<Demand> demands = new ArrayList<>();
            List<Boolean> mains = new ArrayList<>();
            for (int i = 3 + random.nextInt(2); i > 0; i--) {
                List<String> rest = new ArrayList<>(names);
                String one = pick(rest);
                rest.remove(one);
                demands.add(
                        chance(60) ? Demand.of(List.of(one, pick(rest))) : Demand.of(List.of(one), rest, List.of()));
                mains.add(false);
            }
            return new SmallCase(seed, device, Rig.kit(jacks, 3500, items), demands, mains);
        }

        private Device device() {
            int left = chance(6) ? 6 + random.nextInt(2) : 2 + random.nextInt(3);
            List<AppliedPart> parts = new ArrayList<>();
            while (left > 0) {
                int size = 1 + random.nextInt(left);
                AppliedPart part =
                        Rig.part("p" + (parts.size() + 1), pick(List.of(PartType.values())), pick(TERMINALS), size);
                parts.add(chance(10) ? Rig.at(part, 1000L + random.nextInt(2) * 500, 500) : part);
                left -= size;
            }
            List<TouchPoint> points = chance(25)
                    ? List.of(new TouchPoint(
                            "t1",
                            "T",
                            Earthed.NO,
                            pick(List.of(Surface.METAL, Surface.INSULATING)),
                            Optional.empty(),
                            Optional.empty()))
                    : List.of();
            List<Output> outputs = chance(12)
                    ? List.of(new Output(
                            "o",
                            pick(parts).id(),
                            List.of(),
                            TherapyKind.PACING,
                            Optional.empty(),
                            Optional.empty(),
                            chance(30) ? Optional.of("locked") : Optional.empty()))
                    : List.of();
            return Rig.device(parts, points, List.of(), outputs);
        }

        private Kit kit(Set<String> terminals) {
            boolean shrouded = chance(60);
            String plug = shrouded ? Rig.PLUG : "lab-4mm-plug";
            String socket = shrouded || chance(50) ? Rig.SOCKET : "lab-4mm-socket";
            AtRest atRest = chance(75) ? AtRest.OPEN : chance(60) ? AtRest.EARTHED : AtRest.CHOSEN;
            Jacks jacks = new Jacks(
                    chance(10) ? 1 : 2 + random.nextInt(3), socket, chance(50) ? Ties.ANY : Ties.RUNS, atRest);
            List<KitItem> items = new ArrayList<>();
            if (terminals.contains("snap-socket") || terminals.contains("pinch-clip")) {
                add(items, "snap", ItemKind.ADAPTER, "snap-stud", plug, 0, 5);
            }
            if (terminals.contains("tp15-socket")) {
                add(items, "tp", ItemKind.ADAPTER, "tp15-pin", plug, 0, 4);
            }
            if (terminals.contains("skin-surface") || chance(30)) {
                add(items, "wrap", ItemKind.CONTACT_AID, "foil-wrap", plug, 500, 3);
            }
            if (terminals.contains("lab-4mm-plug")) {
                add(items, "coupler", ItemKind.ADAPTER, socket, plug, 0, 3);
            }
            if (chance(40)) {
                add(items, "lead", ItemKind.LEAD, plug, plug, 1000, 2);
            }
            if (chance(30)) {
                add(items, "jaw", ItemKind.CLIP, socket, "metal-edge", 0, 2);
                add(items, "needle", ItemKind.PROBE, socket, "metal-spot", 0, 2);
            }
            if (!shrouded && chance(50)) {
                add(items, "stack", ItemKind.LEAD, "lab-4mm-plug-stackable", "lab-4mm-plug", 0, 2);
            }
            if (!shrouded && chance(40)) {
                add(items, "snap-stack", ItemKind.ADAPTER, "snap-stud", "lab-4mm-plug-stackable", 0, 3);
            }
            if (chance(60)) {
                items.add(Rig.item(
                        "fan",
                        ItemKind.FAN_OUT,
                        List.of(plug, socket),
                        2 + random.nextInt(3),
                        300,
                        volts(),
                        1 + random.nextInt(2)));
            }
            if (chance(25)) {
                items.add(Rig.item(
                        "comb", ItemKind.FAN_OUT, List.of(plug, "tp15-pin"), 2 + random.nextInt(2), 300, volts(), 1));
            }
            return Rig.kit(jacks, chance(70) ? 3500 : 5000, items);
        }

        private void add(
                List<KitItem> items, String id, ItemKind kind, String from, String to, long millimetres, int most) {
            int stock = Math.max(random.nextInt(most + 1), random.nextInt(most + 1));
            if (stock > 0) {
                items.add(Rig.item(id, kind, List.of(from, to), 0, millimetres, volts(), stock));
            }
        }

        private long volts() {
            return chance(85) ? 600 : chance(50) ? 0 : 100;
        }

        private Demand demand(Device device, List<String> names) {
            if (names.contains("touch-probe") && chance(20)) {
                return Demand.of(List.of("touch-probe"));
            }
            List<String> patient =
                    names.stream().filter(name -> !name.equals("touch-probe")).toList();
            String one = pick(patient);
            int kind = random.nextInt(5);
            List<String> part = patient.stream()
                    .filter(name -> name.startsWith(one.substring(0, one.indexOf('.') + 1)))
                    .toList();
            if (kind == 0) {
                return Demand.of(List.of(one));
            }
            if (kind == 1) {
                return Demand.of(part);
            }
            List<String> rest = new ArrayList<>(kind == 2 ? part : patient);
            rest.remove(one);
            if (kind <= 3) {
                return Demand.of(List.of(one), rest, List.of());
            }
            List<String> measured = new ArrayList<>();
            List<String> against = new ArrayList<>();
            List<String> earthed = new ArrayList<>();
            measured.add(one);
            for (String name : rest) {
                pick(List.of(measured, against, earthed, new ArrayList<String>()))
                        .add(name);
            }
            return Demand.of(measured, against, earthed);
        }
    }
}
