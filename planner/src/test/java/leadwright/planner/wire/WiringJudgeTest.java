package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.PartType;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Obligation;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.variables.BoolVar;
import org.chocosolver.solver.variables.IntVar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Against a general solver, on cases too large to try everything: snap wires, any ties or neighbours only, fan-outs that may
 * be cascaded. A hookup is a jack number for each wire; f fan-outs of N branches on one jack take 1 + f (N − 1) wires. In a
 * row the jacks of each set are neighbours; no kit here has a lead, so that no bundle stands on two jacks.
 */
class WiringJudgeTest {
    private static final long MOST_FAILS = 20_000;
    private static final Map<String, Wiring> WIRED = new ConcurrentHashMap<>();

    /** Seeds whose cases the solver does not settle within its limit: others stand for them. */
    private static final Set<Long> TOO_LONG = Set.of(36L, 45L, 73L, 114L, 132L, 137L);

    private static final Set<Long> TOO_LONG_IN_A_ROW = Set.of(17L, 46L, 49L, 55L);

    /** @param branches of each fan-out */
    record Case(
            long seed, Device device, Ties ties, int jacks, int pins, int fans, int branches, List<Demand> demands) {
        @Override
        public String toString() {
            return "seed " + seed;
        }

        Kit kit() {
            return Rig.kit(
                    jacks,
                    ties,
                    Rig.item("pin", ItemKind.ADAPTER, "snap-stud", Rig.PLUG, pins),
                    Rig.fanOut("fan", Rig.PLUG, Rig.SOCKET, branches, fans));
        }

        List<Obligation> obligations() {
            return IntStream.range(0, demands.size())
                    .mapToObj(i -> Rig.reading("d" + i, demands.get(i)))
                    .toList();
        }

        static Case draw(long seed) {
            Random random = new Random(seed * 0x9E3779B97F4A7C15L + 91);
            return draw(seed, random, Ties.ANY, 3 + random.nextInt(4), 2 + random.nextInt(4));
        }

        static Case drawRow(long seed) {
            Random random = new Random(seed * 0x9E3779B97F4A7C15L + 92);
            return draw(seed, random, Ties.RUNS, 2 + random.nextInt(3), 2 + random.nextInt(2));
        }

        private static Case draw(long seed, Random random, Ties ties, int first, int second) {
            Device device = Rig.device(
                    Rig.part("a", PartType.CF, "snap-socket", first),
                    Rig.part("b", PartType.BF, "snap-socket", second));
            List<String> names = Rig.names(device);
            List<Demand> demands = new ArrayList<>();
            for (int i = 6 + random.nextInt(6); i > 0; i--) {
                demands.add(demand(random, names, first));
            }
            int wires = first + second;
            return new Case(
                    seed,
                    device,
                    ties,
                    3 + random.nextInt(3),
                    wires - random.nextInt(2),
                    1 + random.nextInt(3),
                    2 + random.nextInt(4),
                    demands);
        }

        private static Demand demand(Random random, List<String> names, int first) {
            int kind = random.nextInt(4);
            boolean inFirst = random.nextBoolean();
            List<String> part = inFirst ? names.subList(0, first) : names.subList(first, names.size());
            String one = part.get(random.nextInt(part.size()));
            if (kind == 0) {
                return Demand.of(List.of(one));
            }
            if (kind == 1) {
                return Demand.of(part);
            }
            List<String> rest = new ArrayList<>(kind == 2 ? part : names);
            rest.remove(one);
            if (kind == 2) {
                return Demand.of(List.of(one), rest, List.of());
            }
            List<String> against = new ArrayList<>();
            List<String> earthed = new ArrayList<>();
            for (String name : rest) {
                int where = random.nextInt(4);
                if (where < 2) {
                    (where == 0 ? against : earthed).add(name);
                }
            }
            return Demand.of(List.of(one), against, earthed);
        }
    }

    static Stream<Case> cases() {
        return LongStream.rangeClosed(1, 146)
                .filter(seed -> !TOO_LONG.contains(seed))
                .mapToObj(Case::draw);
    }

    static Stream<Case> rows() {
        return LongStream.rangeClosed(1, 64)
                .filter(seed -> !TOO_LONG_IN_A_ROW.contains(seed))
                .mapToObj(Case::drawRow);
    }

    /** Several tests ask of the same cases. */
    private static Wiring wired(Case each) {
        return WIRED.computeIfAbsent(
                each.ties() + " " + each.seed(), key -> Rig.wire(each.device(), each.kit(), each.obligations()));
    }

    /*
     *   a.c1 --pin--fan--[1]\
     *   a.c2 --pin---/       } measured: neighbours
     *   a.c3 --pin-------[2]/
     *   b.c1 --pin-------[3]    against
     */
    @ParameterizedTest(name = "{0}, in a row")
    @MethodSource("rows")
    void the_solver_agrees_where_only_neighbours_can_be_tied(Case each) {
        the_solver_finds_as_many_hookups_enough_and_one_fewer_too_few(each);
    }

    @Test
    void some_rows_of_seeds_1_to_64_need_more_hookups_than_any_ties_would() {
        boolean more = rows().anyMatch(each -> {
            Kit free = new Case(
                            each.seed(),
                            each.device(),
                            Ties.ANY,
                            each.jacks(),
                            each.pins(),
                            each.fans(),
                            each.branches(),
                            each.demands())
                    .kit();
            Wiring row = wired(each);
            Wiring any = Rig.wire(each.device(), free, each.obligations());
            return row.uncovered().equals(any.uncovered())
                    && row.hookups().size() > any.hookups().size();
        });
        assertThat(more).isTrue();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void the_solver_finds_as_many_hookups_enough_and_one_fewer_too_few(Case each) {
        Wiring wiring = wired(each);
        assertThat(wiring.proof().optimal()).as(wiring.proof().argument()).isTrue();
        List<Demand> covered = new ArrayList<>();
        for (int i = 0; i < each.demands().size(); i++) {
            Demand demand = each.demands().get(i);
            if (wiring.uncovered().contains("d" + i)) {
                assertThat(enough(each, List.of(demand), 1)).as(demand.key()).isFalse();
            } else {
                covered.add(demand);
            }
        }
        if (covered.isEmpty()) {
            return;
        }
        int hookups = wiring.hookups().size();
        assertThat(enough(each, covered, hookups)).isTrue();
        assertThat(hookups == 1 || !enough(each, covered, hookups - 1)).isTrue();
    }

    @Test
    void most_of_seeds_1_to_146_need_two_hookups_or_more_and_some_have_demands_that_fit_none() {
        List<Wiring> wirings = cases().map(WiringJudgeTest::wired).toList();
        assertThat(wirings).filteredOn(wiring -> wiring.hookups().size() > 1).hasSizeGreaterThan(70);
        assertThat(wirings).filteredOn(wiring -> !wiring.uncovered().isEmpty()).isNotEmpty();
    }

    /** Whether so many hookups can serve the demands, by the solver. */
    private static boolean enough(Case each, List<Demand> demands, int hookups) {
        Model model = new Model();
        List<String> names = Rig.names(each.device());
        IntVar[] hookupOf = model.intVarArray("hookup", demands.size(), 0, hookups - 1);
        if (hookups > 1) {
            model.intValuePrecedeChain(hookupOf, IntStream.range(0, hookups).toArray())
                    .post();
        }
        for (int h = 0; h < hookups; h++) {
            IntVar[] jackOf = model.intVarArray("jack" + h, names.size(), 0, each.jacks());
            if (each.ties() == Ties.ANY) {
                model.intValuePrecedeChain(
                                jackOf, IntStream.rangeClosed(1, each.jacks()).toArray())
                        .post();
            }
            Map<Set<String>, BoolVar> runs = new HashMap<>();
            stock(model, each, jackOf);
            BoolVar[][] apart = new BoolVar[names.size()][names.size()];
            for (int d = 0; d < demands.size(); d++) {
                BoolVar here = model.arithm(hookupOf[d], "=", h).reify();
                for (Set<String> set : List.of(
                        demands.get(d).measured(),
                        demands.get(d).against(),
                        demands.get(d).earthed())) {
                    if (each.ties() == Ties.RUNS && set.size() > 1) {
                        BoolVar run = runs.computeIfAbsent(set, of -> run(model, jackOf, names, of));
                        model.arithm(here, "<=", run).post();
                    }
                    for (String member : set) {
                        int one = names.indexOf(member);
                        model.arithm(here, "<=", jackOf[one]).post();
                        for (int other = 0; other < names.size(); other++) {
                            if (!set.contains(names.get(other))) {
                                int low = Math.min(one, other);
                                int high = Math.max(one, other);
                                if (apart[low][high] == null) {
                                    apart[low][high] = model.arithm(jackOf[low], "!=", jackOf[high])
                                            .reify();
                                }
                                model.arithm(here, "<=", apart[low][high]).post();
                            }
                        }
                    }
                }
            }
        }
        Solver solver = model.getSolver();
        solver.limitFail(MOST_FAILS);
        boolean found = solver.solve();
        assertThat(solver.isStopCriterionMet()).as("ended at its limit").isFalse();
        return found;
    }

    /** Whether the jacks of the set are neighbours: as many as from the first of them to the last. */
    private static BoolVar run(Model model, IntVar[] jackOf, List<String> names, Set<String> set) {
        IntVar[] jacks = set.stream().map(name -> jackOf[names.indexOf(name)]).toArray(IntVar[]::new);
        int most = jacks[0].getUB();
        IntVar first = model.intVar(0, most);
        IntVar last = model.intVar(0, most);
        IntVar different = model.intVar(1, most + 1);
        model.min(first, jacks).post();
        model.max(last, jacks).post();
        model.nValues(jacks, different).post();
        IntVar length = model.intVar(1, most + 1);
        model.arithm(model.intView(1, last, 1), "-", first, "=", length).post();
        return model.arithm(length, "=", different).reify();
    }

    private static void stock(Model model, Case each, IntVar[] jackOf) {
        IntVar[] fans = model.intVarArray("fans", each.jacks(), 0, each.fans());
        model.sum(fans, "<=", each.fans()).post();
        IntVar absent = model.intVar(jackOf.length - Math.min(each.pins(), jackOf.length), jackOf.length);
        model.count(0, jackOf, absent).post();
        for (int jack = 1; jack <= each.jacks(); jack++) {
            IntVar wires = model.intVar(0, jackOf.length);
            model.count(jack, jackOf, wires).post();
            IntVar places = model.intView(each.branches() - 1, fans[jack - 1], 1);
            model.arithm(wires, "<=", places).post();
        }
    }
}
