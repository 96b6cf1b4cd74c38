package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.plan.Occasion;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Shortfall;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Devices with kits made short in many ways, planned whole: with what is proposed the plan is possible, and without any one
 * piece of it something is stopped again.
 */
class ShortKitsTest {
    private static int fallShort;
    private static int propose;
    private static int alternatives;
    private static int severalCauses;
    private static int newKinds;
    private static int twoNewKinds;

    record Case(String name, Device device, Kit kit, House house, String rules) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Case> cases() {
        return LongStream.rangeClosed(1, 200).mapToObj(ShortKitsTest::draw);
    }

    private static Case draw(long seed) {
        RandomCases.Case ample = RandomCases.withAmpleKit(seed);
        Random random = new Random(seed * 7919 + 3);
        int way = (int) (seed % 10);
        Kit kit = ample.kit();
        Device device = way == 6 ? far(ample.device(), 800 + random.nextInt(1500)) : ample.device();
        if (way == 0 || way == 9) {
            kit = changed(kit, item -> item.withStock(Math.min(item.stock(), random.nextInt(3))));
        }
        if (way == 1 || way == 8) {
            kit = without(kit, "spread");
        }
        if (way == 2) {
            kit = changed(kit, item -> item.kind() == ItemKind.LEAD ? item.withStock(random.nextInt(2)) : item);
        }
        if (way == 3 || way == 8) {
            kit = without(kit, random.nextBoolean() ? "wrap" : "line-pin");
        }
        if (way == 4 || way == 8 || way == 9) {
            kit = without(kit, random.nextBoolean() ? "snap-pin" : "tp-pin");
        }
        if (way == 5) {
            Optional<Quantity> volts = random.nextBoolean() ? Optional.empty() : Optional.of(Quantity.volts(100));
            Set<String> weak =
                    Set.of(random.nextBoolean() ? "snap-pin" : "tp-pin", random.nextBoolean() ? "wrap" : "line-pin");
            kit = changed(kit, item -> weak.contains(item.id()) ? rated(item, volts) : item);
        }
        if (way == 6) {
            long most = 100 + random.nextInt(400);
            kit = changed(kit, item -> item.length().isPresent() ? shortened(item, most) : item);
        }
        if (way == 7) {
            String jaw = random.nextBoolean() ? "jaw" : "lead-earth";
            boolean gone = random.nextBoolean();
            kit = gone
                    ? without(kit, jaw)
                    : changed(kit, item -> item.id().startsWith("lead") ? shortened(item, 200) : item);
            kit = gone ? without(kit, random.nextBoolean() ? "needle" : "lead") : kit;
        }
        return new Case("seed " + seed, device, kit, ample.house(), "iec-62353-2014");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void what_is_proposed_does_and_no_piece_of_it_is_needless(Case each) {
        Bench bench = new Bench(each);
        Optional<Plan> planned = bench.proposing();
        if (planned.isEmpty()) {
            return;
        }
        Plan plan = planned.get();
        assertThat(stopped(bench.plan(each.kit()).orElseThrow()))
                .as("stopped, where no proposals are asked for")
                .isEqualTo(stopped(plan));
        List<Shortfall> wired =
                plan.shortfalls().stream().filter(s -> !s.readings().isEmpty()).toList();
        if (wired.isEmpty()) {
            return;
        }
        fallShort++;
        severalCauses += wired.size() > 1 ? 1 : 0;
        for (Shortfall each2 : plan.shortfalls()) {
            assertThat(each2.because()).isNotBlank();
            assertThat(each2.additions()).as(each2.because()).isNotEmpty();
        }
        boolean proposes = wired.stream().anyMatch(s -> !s.proposals().isEmpty());
        assertThat(plan.remedy().isPresent()).isEqualTo(proposes);
        if (!proposes) {
            return;
        }
        propose++;
        whole(bench, plan);
        wired.forEach(shortfall -> cause(bench, plan, shortfall));
    }

    /** Each alternative for all together. */
    private static void whole(Bench bench, Plan plan) {
        Set<String> helpless = plan.shortfalls().stream()
                .filter(s -> s.proposals().isEmpty())
                .flatMap(s -> s.readings().stream())
                .collect(Collectors.toSet());
        for (Proposal alternative : plan.remedy().orElseThrow().alternatives()) {
            alternatives++;
            count(alternative);
            Plan with = bench.plan(alternative.addedTo(bench.of.kit())).orElseThrow();
            Set<String> stopped = stopped(with);
            stopped.removeAll(helpless);
            assertThat(stopped).as(alternative.text()).isEmpty();
            for (Proposal fewer : fewer(alternative)) {
                Set<String> again =
                        stopped(bench.plan(fewer.addedTo(bench.of.kit())).orElseThrow());
                again.removeAll(helpless);
                assertThat(again)
                        .as(alternative.text() + " less one piece: " + fewer.pieces())
                        .isNotEmpty();
            }
        }
    }

    /** Each alternative of one cause, for the readings that nothing else stops. */
    private static void cause(Bench bench, Plan plan, Shortfall shortfall) {
        Set<String> only = new HashSet<>(shortfall.readings());
        plan.shortfalls().stream().filter(s -> s != shortfall).forEach(s -> only.removeAll(s.readings()));
        for (Proposal alternative : shortfall.proposals()) {
            Set<String> left =
                    stopped(bench.plan(alternative.addedTo(bench.of.kit())).orElseThrow());
            left.retainAll(only);
            assertThat(left).as(shortfall.about() + ": " + alternative.text()).isEmpty();
            for (Proposal fewer : fewer(alternative)) {
                Set<String> again =
                        stopped(bench.plan(fewer.addedTo(bench.of.kit())).orElseThrow());
                again.retainAll(shortfall.readings());
                assertThat(again)
                        .as(shortfall.about() + ": " + alternative.text() + " less one piece: " + fewer.pieces())
                        .isNotEmpty();
            }
        }
    }

    @AfterAll
    static void most_seeds_fall_short_and_these_propose() {
        assertThat(fallShort).as("seeds that fall short").isGreaterThanOrEqualTo(100);
        assertThat(propose).as("of these that propose").isGreaterThanOrEqualTo(100);
        assertThat(severalCauses).as("with several causes at once").isGreaterThanOrEqualTo(20);
        assertThat(newKinds).as("alternatives of new kinds").isGreaterThanOrEqualTo(40);
        assertThat(twoNewKinds).as("alternatives of two new kinds").isGreaterThanOrEqualTo(10);
    }

    private static void count(Proposal alternative) {
        long fresh = alternative.pieces().stream()
                .filter(piece -> piece.item().id().contains(" "))
                .count();
        newKinds += fresh > 0 ? 1 : 0;
        twoNewKinds += fresh > 1 ? 1 : 0;
    }

    /** Keys of the readings that the wiring stops. */
    private static Set<String> stopped(Plan plan) {
        return plan.shortfalls().stream()
                .flatMap(s -> s.readings().stream())
                .collect(Collectors.toCollection(HashSet::new));
    }

    private static List<Proposal> fewer(Proposal proposal) {
        List<Proposal> fewer = new ArrayList<>();
        for (Proposal.Piece piece : proposal.pieces()) {
            List<Proposal.Piece> left = new ArrayList<>(proposal.pieces());
            left.remove(piece);
            if (piece.count() > 1) {
                left.add(new Proposal.Piece(piece.item(), piece.count() - 1, piece.one()));
            }
            fewer.add(new Proposal(left, "fewer"));
        }
        return fewer;
    }

    /** Plans of one device, each kit once. Only of the short kit are proposals asked for: looking for them takes most of the time. */
    private static final class Bench {
        private final Case of;
        private final Map<Kit, Optional<Plan>> plans = new HashMap<>();

        Bench(Case of) {
            this.of = of;
        }

        Optional<Plan> proposing() {
            return planned(of.kit(), true);
        }

        Optional<Plan> plan(Kit kit) {
            return plans.computeIfAbsent(kit, each -> planned(each, false));
        }

        private Optional<Plan> planned(Kit kit, boolean proposals) {
            Outcome outcome = Planner.plan(new Request(
                    of.device(),
                    kit,
                    RuleSets.builtIn().find(of.rules()).orElseThrow(),
                    of.house(),
                    Occasion.RECURRENT,
                    Optional.empty(),
                    proposals));
            assertThat(outcome).as(of + ": " + outcome).isNotInstanceOf(Outcome.Rejected.class);
            return outcome instanceof Outcome.Planned planned ? Optional.of(planned.plan()) : Optional.empty();
        }
    }

    /** The device with its applied parts at so many millimetres from the tester, less 0.1 m of own cable. */
    private static Device far(Device device, long millimetres) {
        List<AppliedPart> parts = device.appliedParts().stream()
                .map(part -> new AppliedPart(
                        part.id(),
                        part.name(),
                        part.type(),
                        part.defibrillationProof(),
                        part.functions(),
                        part.namedFunctions(),
                        part.set(),
                        Optional.of(Quantity.millimetres(millimetres)),
                        Optional.of(Quantity.millimetres(100))))
                .toList();
        return new Device(
                device.name(),
                device.supply(),
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
                parts,
                device.ports(),
                device.outputs(),
                device.touchPoints(),
                device.earthPoints(),
                device.panel(),
                device.limits(),
                device.electrical(),
                device.modes(),
                device.adapter(),
                device.connectors());
    }

    private static Kit without(Kit kit, String id) {
        return with(
                kit, kit.items().stream().filter(item -> !item.id().equals(id)).toList());
    }

    private static Kit changed(Kit kit, UnaryOperator<KitItem> change) {
        return with(kit, kit.items().stream().map(change).toList());
    }

    private static Kit with(Kit kit, List<KitItem> items) {
        return new Kit(kit.name(), kit.tester(), items, kit.checks(), kit.connectors());
    }

    private static KitItem rated(KitItem item, Optional<Quantity> volts) {
        return item(item, item.length(), volts);
    }

    private static KitItem shortened(KitItem item, long millimetres) {
        return item(item, Optional.of(Quantity.millimetres(millimetres)), item.voltage());
    }

    private static KitItem item(KitItem item, Optional<Quantity> length, Optional<Quantity> volts) {
        return new KitItem(
                item.id(),
                item.kind(),
                item.ends(),
                item.branches(),
                item.also(),
                length,
                item.conductor(),
                item.current(),
                volts,
                item.capacitance(),
                item.stock(),
                item.price());
    }
}
