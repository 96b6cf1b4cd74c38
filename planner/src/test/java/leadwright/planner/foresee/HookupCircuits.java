package leadwright.planner.foresee;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.ElectricalKey;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Supply;
import leadwright.catalog.device.SupplySystem;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.Outlet;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Plan;
import leadwright.planner.Planner;
import leadwright.planner.RandomCases;
import leadwright.planner.Request;
import leadwright.planner.SamplePlans;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import leadwright.planner.plan.Reading;

/** Circuits of readings of many sorts: random devices on random benches, supplies of every system that is modelled, samples. */
final class HookupCircuits {
    private static final String RECURRENT = "iec-62353-2014";
    private static final String THIRD = "iec-60601-1-ed3";
    private static final List<String> RULES =
            List.of(RECURRENT, THIRD, "iec-60601-1-ed2", "nfpa-99-2012", "us-leads-older");
    private static final House INSULATION = HouseReader.read(
                    "house", "leadwright: house/1\ninsulation: always\n".getBytes(StandardCharsets.UTF_8))
            .orThrow();

    private HookupCircuits() {}

    /** A reading's circuit with a name that finds it again. */
    record Case(String name, Obligation what, Variation variation, Setup setup) {
        @Override
        public String toString() {
            return name;
        }
    }

    /** A plan, and the device and the kit to take its readings with. */
    record Bench(String name, Plan plan, Device device, Kit kit) {}

    /**
     * So many circuits, shared evenly among quantities, methods, components, states of the mains and polarities of the source;
     * every third one of an arrangement that differs from the plan's.
     */
    static List<Case> drawn(int count) {
        return Drawn.ALL.subList(0, count);
    }

    /** Planned once for all tests of a process. */
    private static final class Drawn {
        static final List<Case> ALL = all();
    }

    private static List<Case> all() {
        Map<QuantityKind, Map<String, List<Case>>> sorts = new TreeMap<>();
        int number = 0;
        for (Bench bench : benches()) {
            Situation situation =
                    new Situation(15 + number % 3 * 10, number % 4 == 0 ? Optional.of(218.0) : Optional.empty());
            Setups setups = new Setups(bench.device(), bench.kit(), situation);
            for (Reading reading : bench.plan().readings()) {
                number++;
                Variation[] all = Variation.values();
                Variation variation = number % 3 == 0 ? all[number / 3 % all.length] : Variation.NONE;
                Optional<Hookup> hookup = reading.hookup().flatMap(bench.plan()::hookup);
                Obligation what = reading.obligation();
                String name = what.key() + ", " + variation + ", " + bench.name();
                setups.of(what, hookup, variation)
                        .ifPresent(setup -> sorts.computeIfAbsent(what.quantity(), each -> new TreeMap<>())
                                .computeIfAbsent(sort(what), each -> new ArrayList<>())
                                .add(new Case(name, what, variation, setup)));
            }
        }
        List<List<Case>> byQuantity =
                sorts.values().stream().map(each -> evenly(each.values())).toList();
        return evenly(byQuantity);
    }

    private static String sort(Obligation what) {
        return String.join(
                " ",
                what.state().word(),
                what.method().toString(),
                what.component().toString(),
                what.network().toString(),
                what.sourcePolarity().toString());
    }

    /** The first of each list, then the second of each, and so on; each list is begun at another place of it. */
    private static List<Case> evenly(Collection<List<Case>> lists) {
        List<Case> all = new ArrayList<>();
        int longest = lists.stream().mapToInt(List::size).max().orElse(0);
        for (int round = 0; round < longest; round++) {
            int offset = 0;
            for (List<Case> list : lists) {
                if (round < list.size()) {
                    all.add(list.get((round + offset) % list.size()));
                }
                offset += 37;
            }
        }
        return all;
    }

    static List<Bench> benches() {
        List<Supplier<Optional<Bench>>> wanted = new ArrayList<>();
        for (String rules : RULES) {
            LongStream.range(0, 6).forEach(seed -> {
                wanted.add(() -> random(RandomCases.any(81_000 + seed), rules));
                wanted.add(() -> random(RandomCases.withAmpleKit(82_000 + seed), rules));
            });
        }
        // Totals are read where several parts are of one type.
        RandomCases.withAmpleKit(83_000, 200)
                .filter(HookupCircuits::twoOfOneType)
                .limit(6)
                .forEach(each -> wanted.add(() -> random(each, THIRD)));
        String k1 = "k1-marrowgate-bench.yaml";
        for (String device : List.of("brindlewick-ward-monitor", "dovecote-infant-warmer", "oddlebar-rescue-set")) {
            wanted.add(() -> planned(device, SamplePlans.device(device + ".yaml"), SamplePlans.kit(k1), RECURRENT));
        }
        for (String device : List.of("dovecote-infant-warmer", "mossback-bed")) {
            for (String method : List.of("differential", "alternative")) {
                wanted.add(() -> planned(
                        device + " by " + method,
                        SamplePlans.device(device + ".yaml"),
                        SamplePlans.kitWith(k1, "methods: [direct, alternative]", "methods: [" + method + "]"),
                        RECURRENT));
            }
        }
        RandomCases.any(84_000, 400)
                .filter(each -> each.kit().tester().methods().equals(List.of(Method.DIFFERENTIAL)))
                .limit(5)
                .forEach(each -> wanted.add(() -> random(each, RECURRENT)));
        wanted.add(
                () -> planned("wickling", SamplePlans.device("wickling-rhythm-card.yaml"), SamplePlans.kit(k1), THIRD));
        wanted.add(() -> planned(
                "fenlark",
                SamplePlans.device("fenlark-scanner.yaml"),
                SamplePlans.kit("k2-round-trolley.yaml"),
                "nfpa-99-2012"));
        wanted.add(() -> planned(
                "kettlemoor",
                SamplePlans.device("kettlemoor-bench-steriliser.yaml"),
                SamplePlans.kitWith(k1, "networks: [iec-60601]", "networks: [iec-60601, iec-60990]"),
                "iec-61010-1"));
        return wanted.parallelStream().flatMap(each -> each.get().stream()).toList();
    }

    private static boolean total(String rules, RandomCases.Case drawn) {
        return rules.equals(THIRD) && twoOfOneType(drawn);
    }

    private static boolean twoOfOneType(RandomCases.Case drawn) {
        Map<PartType, Long> count = drawn.device().appliedParts().stream()
                .collect(Collectors.groupingBy(AppliedPart::type, TreeMap::new, Collectors.counting()));
        return drawn.device().patientConnections().size() <= 3
                && count.entrySet().stream().anyMatch(each -> each.getKey() != PartType.B && each.getValue() > 1);
    }

    private static Optional<Bench> random(RandomCases.Case drawn, String rules) {
        int connections = drawn.device().patientConnections().size();
        if (connections > (rules.equals(RECURRENT) ? 5 : total(rules, drawn) ? 3 : 2)) {
            return Optional.empty();
        }
        return planned("seed " + drawn.seed(), drawn.device(), drawn.kit(), rules)
                .map(bench -> {
                    Random random = new Random(drawn.seed() * 31 + rules.length());
                    SupplySystem system = List.of(
                                    SupplySystem.LINE_NEUTRAL,
                                    SupplySystem.LINE_NEUTRAL,
                                    SupplySystem.SPLIT_PHASE,
                                    SupplySystem.PHASE_PHASE)
                            .get(random.nextInt(4));
                    boolean sixty = system != SupplySystem.LINE_NEUTRAL;
                    Supply own = drawn.device().supply();
                    Supply supply = new Supply(
                            own.connection(),
                            own.inlet(),
                            own.cordPlug(),
                            system,
                            own.lowest(),
                            own.highest(),
                            own.frequency().map(each -> Quantity.of(Dimension.FREQUENCY, sixty ? 60_000 : 50_000)),
                            own.current());
                    return new Bench(
                            bench.name() + ", " + system.word(),
                            bench.plan(),
                            with(drawn.device(), supply, electrical(random)),
                            with(drawn.kit(), system));
                });
    }

    /** Some of the keys of a device file's electrical section. */
    private static Map<String, Quantity> electrical(Random random) {
        Map<String, Quantity> stated = new TreeMap<>();
        for (ElectricalKey key : ElectricalKey.values()) {
            if (random.nextInt(3) == 0) {
                Dimension dimension =
                        key.dimensions().get(random.nextInt(key.dimensions().size()));
                boolean path = key == ElectricalKey.EARTH_PATH;
                double least = path ? 5e-3 : dimension == Dimension.CAPACITANCE ? 1e-12 : 1e6;
                double value = least * Math.pow(10, random.nextDouble() * (path ? 1 : 4));
                stated.put(key.word(), new Quantity(dimension, Math.max(1, Math.round(value / dimension.toSi()))));
            }
        }
        return stated;
    }

    static Optional<Bench> planned(String name, Device device, Kit kit, String rulesId) {
        RuleSet rules = RuleSets.builtIn().find(rulesId).orElseThrow();
        Outcome outcome =
                Planner.plan(new Request(device, kit, rules, INSULATION, Occasion.RECURRENT, Optional.empty()));
        return outcome instanceof Outcome.Planned planned
                ? Optional.of(new Bench(name + ", " + rulesId, planned.plan(), device, kit))
                : Optional.empty();
    }

    static Device with(Device device, Supply supply, Map<String, Quantity> electrical) {
        return new Device(
                device.name(),
                supply,
                device.protection(),
                device.functionalEarth(),
                device.battery(),
                device.mainsSwitch(),
                device.startUp(),
                device.shutDown(),
                device.startUpStated(),
                device.toleratesPowerCut(),
                device.builtTo(),
                device.forbids(),
                device.appliedParts(),
                device.ports(),
                device.outputs(),
                device.touchPoints(),
                device.earthPoints(),
                device.panel(),
                device.limits(),
                electrical,
                device.modes(),
                device.adapter(),
                device.connectors());
    }

    private static Kit with(Kit kit, SupplySystem system) {
        Tester own = kit.tester();
        long volts = system == SupplySystem.LINE_NEUTRAL ? 230 : system == SupplySystem.SPLIT_PHASE ? 240 : 208;
        List<Outlet> outlets = own.outlets().stream()
                .map(each -> new Outlet(each.socket(), system, Quantity.volts(volts), each.current()))
                .toList();
        Tester tester = new Tester(
                own.name(),
                own.jacks(),
                own.earthJack(),
                own.touchThrough(),
                own.inlet(),
                outlets,
                own.switches(),
                own.networks(),
                own.methods(),
                own.components(),
                own.earthTest(),
                own.insulation(),
                own.partSource(),
                own.accuracy(),
                own.calibratedUntil());
        return new Kit(kit.name(), tester, kit.items(), kit.checks(), kit.connectors());
    }
}
