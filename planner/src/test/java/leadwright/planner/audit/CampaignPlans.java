package leadwright.planner.audit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.read.DeviceReader;
import leadwright.catalog.read.HouseReader;
import leadwright.catalog.read.SystemReader;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.Outcome;
import leadwright.planner.Planner;
import leadwright.planner.RandomCases;
import leadwright.planner.Request;
import leadwright.planner.SamplePlans;
import leadwright.planner.SamplePlans.Sample;
import leadwright.planner.plan.Occasion;

/** Good plans of many sorts: samples, a system, houses that choose otherwise, and random devices on random benches. */
final class CampaignPlans {
    private static final String K1 = "k1-marrowgate-bench.yaml";
    private static final String K2 = "k2-round-trolley.yaml";
    private static final String K3 = "k3-fixed-plant-case.yaml";
    private static final String RECURRENT = "iec-62353-2014";
    private static final String OPEN = "earth-jack: {socket: lab-4mm-socket-recessed, at-rest: open}";
    private static final String TYPE_TEST = "iec-60601-1-ed3";

    private CampaignPlans() {}

    /** A plan with a name that finds it again. */
    record Good(String name, Sample sample) {
        @Override
        public String toString() {
            return name;
        }
    }

    static List<Good> all() {
        List<Supplier<Optional<Good>>> wanted = new ArrayList<>();
        int number = 0;
        for (Sample sample : Undamaged.all()) {
            String name = "undamaged " + ++number;
            // A thousand steps to replay for each damage: this one is damaged on purpose only.
            if (sample == Undamaged.WARD) {
                continue;
            }
            wanted.add(() -> Optional.of(new Good(name, sample)));
        }
        for (String device : List.of("brindlewick-ward-monitor", "dovecote-infant-warmer", "mossback-bed")) {
            wanted.add(sample(device, K1, RECURRENT));
        }
        wanted.add(sample("dovecote-infant-warmer", K1, "iec-60601-1-ed2"));
        wanted.add(sample("dovecote-infant-warmer", K1, "nfpa-99-2012"));
        wanted.add(sample("wickling-rhythm-card", K1, TYPE_TEST));
        wanted.add(sample("wickling-on-charger", K1, RECURRENT));
        wanted.add(sample("kettlemoor-bench-steriliser", K1, "iec-61010-1"));
        wanted.add(sample("fenlark-scanner", K2, "nfpa-99-2012"));
        wanted.add(sample("slaterow-tilt-table", K3, RECURRENT));
        wanted.add(sample("slaterow-tilt-table", K3, TYPE_TEST));
        wanted.add(() -> planned("trolley", trolley(), SamplePlans.kit(K1), RECURRENT, House.defaults()));
        wanted.add(() -> planned(
                "monitor, house",
                SamplePlans.device("brindlewick-ward-monitor.yaml"),
                SamplePlans.kit(K1),
                RECURRENT,
                house("replug-under-power: after-earth-and-touch\nfloat-joined: never\nwords: ground\n")));
        for (String device : List.of("brindlewick-ward-monitor", "dovecote-infant-warmer", "oddlebar-rescue-set")) {
            wanted.add(() -> planned(
                    device + ", insulation, earth jack earthed",
                    SamplePlans.device(device + ".yaml"),
                    SamplePlans.kitWith(K1, OPEN, OPEN.replace("open}", "earthed}")),
                    RECURRENT,
                    house("insulation: always\n")));
        }
        Stream.concat(RandomCases.any(62_000, 250), RandomCases.withAmpleKit(63_000, 100))
                .filter(each -> !each.device().outputs().isEmpty()
                        || each.kit()
                                .tester()
                                .earthJack()
                                .flatMap(EarthJack::atRest)
                                .filter(AtRest.EARTHED::equals)
                                .isPresent())
                .limit(40)
                .forEach(each -> wanted.add(() -> planned(
                        each + ", insulation", each.device(), each.kit(), RECURRENT, house("insulation: always\n"))));
        for (String rules : List.of(RECURRENT, TYPE_TEST, "nfpa-99-2012", "us-leads-older")) {
            boolean recurrent = rules.equals(RECURRENT);
            Stream.concat(
                            RandomCases.any(60_000, recurrent ? 30 : 12),
                            RandomCases.withAmpleKit(61_000, recurrent ? 20 : 12))
                    .filter(each ->
                            recurrent || each.device().patientConnections().size() <= 2)
                    .forEach(each -> wanted.add(
                            () -> planned(each + ", " + rules, each.device(), each.kit(), rules, each.house())));
        }
        return wanted.parallelStream().flatMap(each -> each.get().stream()).toList();
    }

    private static Supplier<Optional<Good>> sample(String device, String kit, String rules) {
        return () -> planned(
                device + ", " + rules,
                SamplePlans.device(device + ".yaml"),
                SamplePlans.kit(kit),
                rules,
                House.defaults());
    }

    /** Empty where the request is refused, as a bench that reads nothing of it is. */
    private static Optional<Good> planned(String name, Device device, Kit kit, String id, House house) {
        RuleSet rules = RuleSets.builtIn().find(id).orElseThrow();
        Outcome outcome = Planner.plan(new Request(device, kit, rules, house, Occasion.RECURRENT, Optional.empty()));
        return outcome instanceof Outcome.Planned planned
                ? Optional.of(new Good(name, new Sample(planned.plan(), rules, SamplePlans.connectors(device, kit))))
                : Optional.empty();
    }

    private static House house(String lines) {
        return HouseReader.read("house", ("leadwright: house/1\n" + lines).getBytes(StandardCharsets.UTF_8))
                .orThrow();
    }

    private static Device trolley() {
        return SystemReader.read(
                        "trolley", bytes("pennywhistle-trolley.yaml"), name -> DeviceReader.read(name, bytes(name)))
                .orThrow()
                .whole();
    }

    private static byte[] bytes(String name) {
        try {
            return Files.readAllBytes(Path.of("..", "samples", name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
