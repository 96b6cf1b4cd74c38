package leadwright.planner.measure;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartFunction;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.PatientConnection;
import leadwright.catalog.kit.Ties;
import leadwright.planner.measure.Instance.Family;
import leadwright.planner.measure.Instance.Fan;
import leadwright.planner.plan.Demand;
import leadwright.planner.wire.Rig;

/** Instances of the benchmark, drawn from seeds: the same on every machine. */
public final class Families {
    private static final List<String> TERMINALS =
            List.of("snap-socket", "tp15-socket", "skin-surface", "liquid-column");

    /** Connections of the instances of a family: small ones for the general solver's sake, large ones for ours. */
    private static final List<Integer> SIZES = List.of(8, 10, 12, 16, 20, 24, 32, 40, 64, 96, 128, 256);

    private final Random random;

    private Families(long seed) {
        // Neighbouring seeds of java.util.Random give like first draws; mixing parts them.
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 0x51EDL);
    }

    /** All instances of the benchmark: twelve a family. */
    public static List<Instance> all() {
        List<Instance> all = new ArrayList<>();
        for (Family family : Family.values()) {
            for (int size : SIZES) {
                all.add(draw(family, size, 1));
            }
        }
        return all;
    }

    /** One instance; its name tells size and seed. */
    public static Instance draw(Family family, int size, long seed) {
        Families draw = new Families(seed * 1_000_003 + size * 31L + family.ordinal());
        return switch (family) {
            case JOINED -> draw.joined(size, seed);
            case ALONE -> draw.alone(size, seed);
            case AGAINST_REST -> draw.againstRest(size, seed);
            case REALISTIC -> draw.realistic(size, seed);
            case CROSSING -> draw.crossing(size, seed);
        };
    }

    private int between(int least, int most) {
        return least + random.nextInt(most - least + 1);
    }

    /** A part in the making: functions, each with the terminal of its connections. */
    private record Part(String id, PartType type, List<Function> functions) {
        List<String> names() {
            List<String> names = new ArrayList<>();
            functions.forEach(each -> names.addAll(each.names(this)));
            return names;
        }
    }

    private record Function(String id, String terminal, int count) {
        List<String> names(Part part) {
            String stem = part.functions().size() == 1 ? part.id() : part.id() + "." + id;
            return IntStream.rangeClosed(1, count)
                    .mapToObj(n -> stem + ".c" + n)
                    .toList();
        }
    }

    private static Device device(List<Part> parts) {
        List<AppliedPart> applied = new ArrayList<>();
        for (Part part : parts) {
            List<PartFunction> functions = part.functions().stream()
                    .map(each -> new PartFunction(
                            part.functions().size() == 1 ? part.id() : each.id(),
                            IntStream.rangeClosed(1, each.count())
                                    .mapToObj(n ->
                                            new PatientConnection("c" + n, each.terminal(), java.util.Optional.empty()))
                                    .toList()))
                    .toList();
            AppliedPart plain = Rig.part(part.id(), part.type(), "snap-socket", 1);
            applied.add(new AppliedPart(
                    plain.id(),
                    plain.name(),
                    plain.type(),
                    plain.defibrillationProof(),
                    functions,
                    part.functions().size() > 1,
                    plain.set(),
                    plain.distance(),
                    plain.cable()));
        }
        return Rig.device(applied.toArray(AppliedPart[]::new));
    }

    private Instance instance(
            Family family,
            int size,
            long seed,
            List<Part> parts,
            int jacks,
            Ties ties,
            Map<String, Integer> adapters,
            List<Fan> fans,
            List<Fan> combs,
            Collection<Demand> demands) {
        Device device = device(parts);
        List<String> kinds =
                device.connections().stream().map(each -> each.terminal()).toList();
        return new Instance(
                family,
                size + "/" + seed,
                device,
                kinds,
                jacks,
                ties,
                adapters,
                fans,
                combs,
                List.copyOf(new LinkedHashSet<>(demands)));
    }

    /** Parts of several functions until the connections are used up. */
    private List<Part> parts(int size, int mostInFunction, int mostFunctions) {
        List<Part> parts = new ArrayList<>();
        int left = size;
        while (left > 0) {
            String terminal = TERMINALS.get(Math.min(between(0, 5) % 6, 3));
            List<Function> functions = new ArrayList<>();
            for (int f = between(1, mostFunctions); f > 0 && left > 0; f--) {
                int count = Math.min(left, between(1, mostInFunction));
                left -= count;
                functions.add(new Function("f" + (functions.size() + 1), terminal, count));
            }
            PartType type = random.nextInt(3) == 0 ? PartType.BF : PartType.CF;
            parts.add(new Part("p" + (parts.size() + 1), type, functions));
        }
        return parts;
    }

    private static Map<String, Integer> count(List<Part> parts) {
        Map<String, Integer> count = new TreeMap<>();
        for (Part part : parts) {
            part.functions().forEach(each -> count.merge(each.terminal(), each.count(), Integer::sum));
        }
        return count;
    }

    private static List<String> all(List<Part> parts) {
        return parts.stream().flatMap(each -> each.names().stream()).toList();
    }

    /** Totals: all parts of one type, and all together. */
    private static List<Demand> totals(List<Part> parts) {
        Map<PartType, List<String>> byType = new LinkedHashMap<>();
        parts.forEach(each ->
                byType.computeIfAbsent(each.type(), key -> new ArrayList<>()).addAll(each.names()));
        List<Demand> totals = new ArrayList<>();
        byType.values().forEach(names -> totals.add(Demand.of(names)));
        totals.add(Demand.of(all(parts)));
        return totals;
    }

    /** Fan-outs with so many further places in all. */
    private List<Fan> fans(int further) {
        Map<Integer, Integer> fans = new TreeMap<>();
        int left = further;
        List<Integer> sizes = List.of(3, 4, 5, 6, 8, 10, 12, 16, 24);
        while (left > 0) {
            int largest = left;
            List<Integer> fit = sizes.stream()
                    .filter(each -> each - 1 <= Math.max(2, largest))
                    .toList();
            int branches = fit.get(random.nextInt(fit.size()));
            fans.merge(branches, 1, Integer::sum);
            left -= branches - 1;
        }
        return fans.entrySet().stream()
                .map(each -> new Fan(each.getKey(), each.getValue()))
                .toList();
    }

    private Ties ties() {
        return random.nextInt(3) == 0 ? Ties.RUNS : Ties.ANY;
    }

    private static int jacks(int size) {
        return Math.max(3, Math.min(16, size / 4 + 1));
    }

    private Instance joined(int size, long seed) {
        List<Part> parts = parts(size, Math.max(3, size / 8), 5);
        List<Demand> demands = new ArrayList<>();
        for (Part part : parts) {
            part.functions().forEach(each -> demands.add(Demand.of(each.names(part))));
        }
        demands.addAll(totals(parts));
        int jacks = between(Math.max(3, jacks(size) - 2), jacks(size));
        return instance(
                Family.JOINED,
                size,
                seed,
                parts,
                jacks,
                ties(),
                count(parts),
                fans(size - jacks + between(0, 4)),
                List.of(),
                demands);
    }

    private Instance alone(int size, long seed) {
        List<Part> parts = parts(size, Math.max(3, size / 4), 2);
        List<Demand> demands = new ArrayList<>();
        all(parts).forEach(each -> demands.add(Demand.of(List.of(each))));
        demands.addAll(random.nextBoolean() ? totals(parts) : List.of());
        int jacks = between(2, jacks(size));
        return instance(
                Family.ALONE,
                size,
                seed,
                parts,
                jacks,
                ties(),
                count(parts),
                fans(Math.max(2, size - jacks + between(0, 3))),
                List.of(),
                demands);
    }

    private Instance againstRest(int size, long seed) {
        List<Part> parts = parts(size, Math.max(3, size / 3), 1);
        List<Demand> demands = new ArrayList<>();
        boolean ofAll = random.nextInt(3) == 0;
        for (Part part : parts) {
            List<String> names = ofAll ? all(parts) : part.names();
            for (String one : part.names()) {
                if (names.size() > 1) {
                    demands.add(Demand.of(List.of(one), without(names, List.of(one)), List.of()));
                }
            }
        }
        int jacks = between(3, jacks(size));
        return instance(
                Family.AGAINST_REST,
                size,
                seed,
                parts,
                jacks,
                ties(),
                count(parts),
                fans(Math.max(2, size - jacks + between(0, 3))),
                List.of(),
                demands);
    }

    private static List<String> without(Collection<String> all, Collection<String> some) {
        List<String> rest = new ArrayList<>(all);
        rest.removeAll(some);
        return rest;
    }

    /** Monitors, recorders, defibrillators with the demands of a type test: alone, against the rest, joined, totals, earthed. */
    private Instance realistic(int size, long seed) {
        List<Part> parts = new ArrayList<>();
        int kind = (int) (seed + size) % 3;
        if (kind == 0 || size < 16) {
            parts.add(one("ecg", PartType.CF, "snap-socket", Math.min(10, size / 2)));
            parts.add(one("spo2", PartType.BF, "skin-surface", 1));
            parts.add(one("temp", PartType.BF, "tp15-socket", 2));
            parts.add(channels("ibp", PartType.CF, "liquid-column", 1));
        } else if (kind == 1) {
            parts.add(one("eeg", PartType.BF, "tp15-socket", size * 2 / 3));
            parts.add(one("ecg", PartType.CF, "snap-socket", 3));
            parts.add(one("resp", PartType.BF, "tp15-socket", 2));
        } else {
            parts.add(one("ecg", PartType.CF, "snap-socket", Math.min(10, size / 2)));
            parts.add(one("pads", PartType.BF, "skin-surface", 2));
            parts.add(one("cuff", PartType.BF, "skin-surface", 1));
            parts.add(channels("ibp", PartType.CF, "liquid-column", 1));
        }
        int left = size - all(parts).size();
        for (int n = 1; left > 0; n++) {
            int count = Math.min(left, between(2, 16));
            PartType type = random.nextBoolean() ? PartType.CF : PartType.BF;
            parts.add(one("more" + n, type, random.nextBoolean() ? "tp15-socket" : "snap-socket", count));
            left -= count;
        }
        List<Demand> demands = realisticDemands(parts);
        Map<String, Integer> adapters = count(parts);
        List<Fan> combs = List.of();
        if (adapters.getOrDefault("tp15-socket", 0) > 8) {
            int wires = adapters.get("tp15-socket");
            combs = List.of(new Fan(8, (wires + 7) / 8 + between(0, 1)));
            adapters.put("tp15-socket", between(4, 12));
        }
        int jacks = between(6, Math.max(6, jacks(size)));
        return instance(
                Family.REALISTIC,
                size,
                seed,
                parts,
                jacks,
                ties(),
                adapters,
                fans(Math.max(10, size - jacks + between(0, 4))),
                combs,
                demands);
    }

    private List<Demand> realisticDemands(List<Part> parts) {
        List<Demand> demands = new ArrayList<>();
        boolean typeTest = random.nextBoolean();
        for (Part part : parts) {
            List<String> names = part.names();
            demands.add(Demand.of(names));
            if (typeTest) {
                demands.add(Demand.of(names, List.of(), without(all(parts), names)));
            }
            if (part.type() == PartType.CF && typeTest) {
                names.forEach(each -> demands.add(Demand.of(List.of(each))));
                names.stream()
                        .filter(each -> names.size() > 1)
                        .forEach(each ->
                                demands.add(Demand.of(List.of(each), without(names, List.of(each)), List.of())));
            }
            if (part.functions().size() > 1) {
                part.functions().forEach(each -> demands.add(Demand.of(each.names(part))));
            }
        }
        demands.addAll(totals(parts));
        return demands;
    }

    private static Part one(String id, PartType type, String terminal, int count) {
        return new Part(id, type, List.of(new Function("f1", terminal, count)));
    }

    private static Part channels(String id, PartType type, String terminal, int each) {
        return new Part(id, type, List.of(new Function("f1", terminal, each), new Function("f2", terminal, each)));
    }

    /** Sets that cross, short stock. */
    private Instance crossing(int size, long seed) {
        List<Part> parts = parts(size, Math.max(3, size / 3), 2);
        List<String> names = all(parts);
        int jacks = between(3, Math.max(4, jacks(size)));
        Set<Demand> demands = new LinkedHashSet<>();
        int wanted = Math.min(400, between(size, size * 3 / 2 + 4));
        for (int i = 0; i < wanted; i++) {
            demands.add(crossingDemand(names, jacks));
        }
        Map<String, Integer> adapters = count(parts);
        return instance(
                Family.CROSSING,
                size,
                seed,
                parts,
                jacks,
                Ties.ANY,
                adapters,
                fans(Math.max(4, size - jacks)),
                List.of(),
                demands);
    }

    private Demand crossingDemand(List<String> names, int jacks) {
        List<String> shuffled = new ArrayList<>(names);
        Collections.shuffle(shuffled, random);
        int from = random.nextInt(names.size());
        int length = between(1, Math.max(1, names.size() / 3));
        List<String> window = new ArrayList<>();
        for (int i = 0; i < length; i++) {
            window.add(names.get((from + i) % names.size()));
        }
        if (random.nextInt(3) == 0) {
            return Demand.of(window);
        }
        String one = window.get(0);
        List<String> rest = without(window, List.of(one));
        return random.nextBoolean()
                ? Demand.of(List.of(one), rest, List.of())
                : Demand.of(List.of(one), List.of(), rest);
    }
}
