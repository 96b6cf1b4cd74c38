package leadwright.planner.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Demand;
import org.chocosolver.solver.Model;
import org.chocosolver.solver.Solver;
import org.chocosolver.solver.variables.BoolVar;
import org.chocosolver.solver.variables.IntVar;

/**
 * The same instance for a general constraint solver: a hookup is a jack number for each connection. Fewest hookups by
 * asking for one after the other, from one up.
 */
final class GeneralSolver {
    private final Instance instance;
    private final List<String> names;
    private final long endsAt;

    /**
     * What the solver found.
     *
     * @param hookups the fewest; 0 where the time ended first
     * @param refuted numbers of hookups that it ruled out
     */
    record Found(int hookups, int refuted) {
        boolean proven() {
            return hookups > 0;
        }
    }

    private GeneralSolver(Instance instance, long seconds) {
        this.instance = instance;
        this.names = instance.names();
        this.endsAt = System.nanoTime() + seconds * 1_000_000_000L;
    }

    /** @param demands those that fit some hookup at all */
    static Found solve(Instance instance, List<Demand> demands, long seconds) {
        GeneralSolver solver = new GeneralSolver(instance, seconds);
        for (int hookups = 1; hookups <= demands.size(); hookups++) {
            switch (solver.enough(demands, hookups)) {
                case YES -> {
                    return new Found(hookups, hookups - 1);
                }
                case NO -> {}
                case ENDED -> {
                    return new Found(0, hookups - 1);
                }
            }
        }
        throw new IllegalStateException("a hookup for each demand is always enough");
    }

    private enum Answer {
        YES,
        NO,
        ENDED
    }

    private Answer enough(List<Demand> demands, int hookups) {
        Model model = new Model();
        IntVar[] hookupOf = model.intVarArray("hookup", demands.size(), 0, hookups - 1);
        if (hookups > 1) {
            model.intValuePrecedeChain(hookupOf, IntStream.range(0, hookups).toArray())
                    .post();
        }
        for (int h = 0; h < hookups; h++) {
            IntVar[] jackOf = model.intVarArray("jack" + h, names.size(), 0, instance.jacks());
            if (instance.ties() == Ties.ANY) {
                model.intValuePrecedeChain(
                                jackOf,
                                IntStream.rangeClosed(1, instance.jacks()).toArray())
                        .post();
            }
            stock(model, jackOf);
            BoolVar[][] apart = new BoolVar[names.size()][names.size()];
            for (int d = 0; d < demands.size(); d++) {
                BoolVar here = model.arithm(hookupOf[d], "=", h).reify();
                Demand demand = demands.get(d);
                for (Set<String> set : List.of(demand.measured(), demand.against(), demand.earthed())) {
                    if (!set.isEmpty()) {
                        tied(model, jackOf, apart, here, set);
                    }
                }
            }
            if (System.nanoTime() > endsAt) {
                return Answer.ENDED;
            }
        }
        Solver solver = model.getSolver();
        solver.limitTime(Math.max(1, (endsAt - System.nanoTime()) / 1_000_000));
        if (solver.solve()) {
            return Answer.YES;
        }
        return solver.isStopCriterionMet() ? Answer.ENDED : Answer.NO;
    }

    /** All of the set present, none of them joined with others, and in a run of jacks where the tester ties only such. */
    private void tied(Model model, IntVar[] jackOf, BoolVar[][] apart, BoolVar here, Set<String> set) {
        List<IntVar> own = new ArrayList<>();
        for (String member : set) {
            int one = names.indexOf(member);
            own.add(jackOf[one]);
            model.arithm(here, "<=", jackOf[one]).post();
            for (int other = 0; other < names.size(); other++) {
                if (!set.contains(names.get(other))) {
                    int low = Math.min(one, other);
                    int high = Math.max(one, other);
                    if (apart[low][high] == null) {
                        apart[low][high] =
                                model.arithm(jackOf[low], "!=", jackOf[high]).reify();
                    }
                    model.arithm(here, "<=", apart[low][high]).post();
                }
            }
        }
        if (instance.ties() == Ties.RUNS && set.size() > 1) {
            IntVar first = model.intVar(0, instance.jacks());
            IntVar last = model.intVar(0, instance.jacks());
            model.min(first, own.toArray(IntVar[]::new)).post();
            model.max(last, own.toArray(IntVar[]::new)).post();
            for (int other = 0; other < names.size(); other++) {
                if (!set.contains(names.get(other))) {
                    BoolVar before = model.arithm(jackOf[other], "<", first).reify();
                    BoolVar after = model.arithm(jackOf[other], ">", last).reify();
                    model.sum(new BoolVar[] {before, after, here.not()}, ">=", 1)
                            .post();
                }
            }
        }
    }

    /** Adapters by terminal; a jack takes a chain, a fan-out of N branches N - 1 more, a comb is a chain that takes its wires. */
    private void stock(Model model, IntVar[] jackOf) {
        int jacks = instance.jacks();
        List<IntVar[]> fans = new ArrayList<>();
        for (Instance.Fan fan : instance.fans()) {
            IntVar[] here = model.intVarArray(jacks, 0, fan.stock());
            model.sum(here, "<=", fan.stock()).post();
            fans.add(here);
        }
        List<IntVar[]> combs = new ArrayList<>();
        for (Instance.Fan comb : instance.combs()) {
            IntVar[] here = model.intVarArray(jacks, 0, comb.stock());
            model.sum(here, "<=", comb.stock()).post();
            combs.add(here);
        }
        for (String terminal : new TreeSet<>(instance.kinds())) {
            IntVar[] wires = IntStream.range(0, jackOf.length)
                    .filter(e -> instance.kinds().get(e).equals(terminal))
                    .mapToObj(e -> jackOf[e])
                    .toArray(IntVar[]::new);
            int stock = Math.min(wires.length, instance.adapters().getOrDefault(terminal, 0));
            if (combs.isEmpty() || !terminal.equals("tp15-socket")) {
                IntVar absent = model.intVar(wires.length - stock, wires.length);
                model.count(0, wires, absent).post();
            }
        }
        IntVar[] throughCombs = model.intVarArray(jacks, 0, combs.isEmpty() ? 0 : jackOf.length);
        if (!combs.isEmpty()) {
            combed(model, jackOf, combs, throughCombs);
        }
        for (int jack = 1; jack <= jacks; jack++) {
            IntVar wires = model.intVar(0, jackOf.length);
            model.count(jack, jackOf, wires).post();
            List<IntVar> terms = new ArrayList<>(List.of(wires, throughCombs[jack - 1]));
            List<Integer> factors = new ArrayList<>(List.of(1, -1));
            for (IntVar[] comb : combs) {
                terms.add(comb[jack - 1]);
                factors.add(1);
            }
            for (int f = 0; f < fans.size(); f++) {
                terms.add(fans.get(f)[jack - 1]);
                factors.add(1 - instance.fans().get(f).branches());
            }
            model.scalar(
                            terms.toArray(IntVar[]::new),
                            factors.stream().mapToInt(Integer::intValue).toArray(),
                            "<=",
                            1)
                    .post();
        }
    }

    /** Wires on each jack that stand in combs; the others take adapters. */
    private void combed(Model model, IntVar[] jackOf, List<IntVar[]> combs, IntVar[] throughCombs) {
        IntVar[] wires = IntStream.range(0, jackOf.length)
                .filter(e -> instance.kinds().get(e).equals("tp15-socket"))
                .mapToObj(e -> jackOf[e])
                .toArray(IntVar[]::new);
        int stock = Math.min(wires.length, instance.adapters().getOrDefault("tp15-socket", 0));
        IntVar[] rest = model.intVarArray(instance.jacks(), 0, stock);
        model.sum(rest, "<=", stock).post();
        for (int jack = 1; jack <= instance.jacks(); jack++) {
            IntVar here = model.intVar(0, wires.length);
            model.count(jack, wires, here).post();
            model.arithm(here, "=", throughCombs[jack - 1], "+", rest[jack - 1]).post();
            List<IntVar> terms = new ArrayList<>(List.of(throughCombs[jack - 1]));
            List<Integer> factors = new ArrayList<>(List.of(1));
            for (int c = 0; c < combs.size(); c++) {
                terms.add(combs.get(c)[jack - 1]);
                factors.add(-instance.combs().get(c).branches());
            }
            model.scalar(
                            terms.toArray(IntVar[]::new),
                            factors.stream().mapToInt(Integer::intValue).toArray(),
                            "<=",
                            0)
                    .post();
        }
    }
}
