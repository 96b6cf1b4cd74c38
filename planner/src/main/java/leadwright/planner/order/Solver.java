package leadwright.planner.order;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Phase 7: the cheapest route, with its proof.
 *
 * <p>Where there are few ways of sharing out the units that several hookups may take, {@link Twins} counted once, one search
 * is exact. Where there are many, ordinary readings that ask for the same state in the same hookups go together; a second
 * search, in which every selection of theirs that could be carried over counts as saved, then bounds every other way of
 * sharing them out. Where a gap is left, every sharing out is tried after all, as far as nodes go.
 */
final class Solver {
    /** Nodes of one search: some 80 bytes each. */
    private static final int NODES = 1_000_000;

    private static final int[] WIDTHS = {100, 1000};

    /** Binary logarithms of how many ways there are to share out what several hookups may take. */
    private static final int FREE_IN_ONE_BLOCK = 5;

    private static final int FREE_IN_ALL = 16;
    private static final int MOST_IN_ONE_BLOCK = 8;
    private static final int MOST_IN_ALL = 60;

    /**
     * Answer.
     *
     * @param least no order takes less, in seconds beyond {@link Problem#base}
     * @param settled nodes that the searches settled
     */
    record Answer(Problem problem, Route route, int least, int settled) {}

    private final Scene scene;
    private final Poses poses;
    private final Replugs replugs;
    private final List<Obligation> readings;
    private final List<BitSet> hookups;
    private final int[] opening;
    private final int[] firstSite;

    Solver(
            Scene scene,
            Poses poses,
            Replugs replugs,
            List<Obligation> readings,
            List<BitSet> hookups,
            int[] opening,
            int[] firstSite) {
        this.scene = scene;
        this.poses = poses;
        this.replugs = replugs;
        this.readings = readings;
        this.hookups = hookups;
        this.opening = opening;
        this.firstSite = firstSite;
    }

    /** The cheapest route that moves nothing which only a lucky pairing of like items would let stay; proves nothing. */
    Answer strict(Answer answer) {
        Answer strict = solve(replugs.strict());
        return new Answer(strict.problem(), strict.route(), answer.least(), answer.settled() + strict.settled());
    }

    Answer solve() {
        Answer answer = solve(replugs);
        if (!replugs.open()) {
            return answer;
        }
        Answer lowest = solve(replugs.lowest());
        return new Answer(
                answer.problem(),
                answer.route(),
                Math.min(answer.least(), lowest.least()),
                answer.settled() + lowest.settled());
    }

    /**
     * Seconds of one search, for tests: with or without twins, with selections followed exactly or not.
     *
     * @return empty where a limit ends the search
     */
    OptionalInt seconds(Grain grain, boolean exact, boolean twins) {
        Problem problem = problem(replugs, grain);
        Lineup lineup = new Lineup(twins ? new Twins(problem).families() : List.of());
        Search.Outcome outcome = new Search(problem, new Bound(problem), exact, grain, lineup, NODES).run();
        return outcome.route().isPresent() ? OptionalInt.of(problem.base() + outcome.least()) : OptionalInt.empty();
    }

    /** Families of twins, for tests. */
    int twins() {
        return new Twins(problem(replugs, Grain.EVERY)).families().size();
    }

    private Answer solve(Replugs replugs) {
        Problem fine = problem(replugs, Grain.EVERY);
        boolean free = fine.units().stream().anyMatch(unit -> !unit.bound());
        if (!free || within(fine, FREE_IN_ONE_BLOCK, FREE_IN_ALL)) {
            return exact(fine, free ? Grain.EVERY : Grain.NONE);
        }
        Grain grain = Grain.UNSETTLED;
        Problem coarse = problem(replugs, grain);
        if (!withinUnsettled(coarse)) {
            grain = Grain.NONE;
            coarse = problem(replugs, grain);
        }
        Search.Outcome best = search(coarse, true, grain).run();
        Search.Outcome lowest = search(coarse, false, grain).run();
        int settled = best.settled() + lowest.settled();
        int least = proven() ? Math.max(0, lowest.least() - (grain == Grain.NONE ? slack(coarse) : 0)) : 0;
        if (best.route().isEmpty()) {
            return around(coarse, grain, least, settled);
        }
        Route route = best.route().get();
        boolean open = least < route.seconds();
        if (open && settled < NODES / 4 && within(fine, MOST_IN_ONE_BLOCK, MOST_IN_ALL)) {
            Search.Outcome every = search(fine, true, Grain.EVERY).run();
            settled += every.settled();
            least = Math.max(least, every.least());
            if (every.route().isPresent()) {
                return new Answer(fine, every.route().get(), every.least(), settled);
            }
        }
        return new Answer(coarse, route, Math.min(least, route.seconds()), settled);
    }

    private Answer exact(Problem fine, Grain grain) {
        Search.Outcome best = search(fine, true, grain).run();
        return best.route()
                .map(route -> new Answer(fine, route, route.seconds(), best.settled()))
                .orElseGet(() -> around(fine, grain, best.least(), best.settled()));
    }

    /**
     * Taking a class together in its first visit is never dearer where the settling of a later visit that falls away costs as
     * much as the two selections that might have been carried into it and out of it.
     */
    private boolean proven() {
        return scene.times().settling() >= 2 * scene.times().select();
    }

    /** Insulation and mains on a part need no settling: there each further visit of a class may save its two selections. */
    private int slack(Problem coarse) {
        return coarse.units().stream()
                .filter(unit -> !unit.bound() && unit.phase() != Phase.ORDINARY)
                .mapToInt(unit -> 2 * scene.times().select() * (unit.demands().cardinality() - 1))
                .sum();
    }

    private Problem problem(Replugs replugs, Grain grain) {
        Units.Classes classes = Units.of(scene, readings, hookups, poses.modes(), grain);
        return Problem.of(scene, poses, replugs, classes, opening, firstSite);
    }

    private static boolean within(Problem problem, double inOneBlock, double inAll) {
        return within(problem, problem.blocks().stream().flatMap(List::stream).toList(), inOneBlock, inAll);
    }

    private static boolean withinUnsettled(Problem problem) {
        List<Problem.Block> blocks = problem.blocks().stream()
                .flatMap(List::stream)
                .filter(block -> block.phase() != Phase.ORDINARY)
                .toList();
        return within(problem, blocks, FREE_IN_ONE_BLOCK, FREE_IN_ALL);
    }

    private static boolean within(Problem problem, List<Problem.Block> blocks, double inOneBlock, double inAll) {
        Lineup lineup = new Lineup(new Twins(problem).families());
        BitSet free = new BitSet();
        blocks.forEach(block -> free.or(block.free()));
        double most = blocks.stream()
                .mapToDouble(block -> lineup.freedom(block.free()))
                .max()
                .orElse(0);
        return lineup.freedom(free) <= inAll && most <= inOneBlock;
    }

    private Search search(Problem problem, boolean exact, Grain grain) {
        Lineup lineup = new Lineup(grain == Grain.NONE ? List.of() : new Twins(problem).families());
        return new Search(problem, new Bound(problem), exact, grain, lineup, NODES);
    }

    /** A good route where the best could not be found. */
    private Answer around(Problem problem, Grain grain, int least, int settled) {
        int sum = settled;
        Optional<Route> best = Optional.empty();
        for (int width : WIDTHS) {
            Search.Outcome outcome = search(problem, true, grain).beam(width);
            sum += outcome.settled();
            if (outcome.route().isPresent()
                    && best.map(route -> route.seconds() > outcome.route().get().seconds())
                            .orElse(true)) {
                best = outcome.route();
            }
        }
        int settledAll = sum;
        return best.map(route -> new Answer(problem, route, Math.min(least, route.seconds()), settledAll))
                .orElseThrow(() -> new IllegalStateException("no order was found"));
    }
}
