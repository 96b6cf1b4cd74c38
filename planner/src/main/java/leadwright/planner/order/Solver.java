package leadwright.planner.order;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import leadwright.planner.plan.Obligation;

/**
 * Phase 7: the cheapest route, with its proof.
 *
 * <p>Where few units may be taken in several hookups, each may go where it will and one search is exact. Where many may,
 * those that ask for the same state in the same hookups go together; a second search, in which every selection that could
 * be carried over counts as saved, then bounds every other way of sharing them out. Where a gap is left, every sharing out is
 * tried after all, as far as nodes go.
 */
final class Solver {
    /** Nodes of one search: some 80 bytes each. */
    private static final int NODES = 1_000_000;

    private static final int[] WIDTHS = {100, 1000};

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

    private Answer solve(Replugs replugs) {
        Problem fine = problem(replugs, true);
        boolean free = fine.units().stream().anyMatch(unit -> !unit.bound());
        if (!free || within(fine, FREE_IN_ONE_BLOCK, FREE_IN_ALL)) {
            return exact(fine, free);
        }
        Problem coarse = problem(replugs, false);
        Search.Outcome best = search(coarse, true, false).run();
        Search.Outcome lowest = search(coarse, false, false).run();
        int settled = best.settled() + lowest.settled();
        int least = proven() ? lowest.least() : 0;
        if (best.route().isEmpty()) {
            return around(coarse, false, least, settled);
        }
        Route route = best.route().get();
        boolean open = least < route.seconds();
        if (open && settled < NODES / 4 && within(fine, MOST_IN_ONE_BLOCK, MOST_IN_ALL)) {
            Search.Outcome every = search(fine, true, true).run();
            settled += every.settled();
            least = Math.max(least, every.least());
            if (every.route().isPresent()) {
                return new Answer(fine, every.route().get(), every.least(), settled);
            }
        }
        return new Answer(coarse, route, Math.min(least, route.seconds()), settled);
    }

    private Answer exact(Problem fine, boolean choices) {
        Search.Outcome best = search(fine, true, choices).run();
        return best.route()
                .map(route -> new Answer(fine, route, route.seconds(), best.settled()))
                .orElseGet(() -> around(fine, choices, best.least(), best.settled()));
    }

    /** Taking a class together in its first visit is never dearer where settling costs as much as a selection. */
    private boolean proven() {
        return scene.times().settling() >= scene.times().select();
    }

    private Problem problem(Replugs replugs, boolean fine) {
        Units.Classes classes = Units.of(scene, readings, hookups, poses.modes(), fine);
        return Problem.of(scene, poses, replugs, classes, opening, firstSite);
    }

    private static boolean within(Problem problem, int inOneBlock, int inAll) {
        long all = problem.units().stream().filter(unit -> !unit.bound()).count();
        int most = problem.blocks().stream()
                .flatMap(List::stream)
                .mapToInt(block -> block.free().cardinality())
                .max()
                .orElse(0);
        return all <= inAll && most <= inOneBlock;
    }

    private Search search(Problem problem, boolean exact, boolean choices) {
        return new Search(problem, new Bound(problem), exact, choices, NODES);
    }

    /** A good route where the best could not be found. */
    private Answer around(Problem problem, boolean choices, int least, int settled) {
        int sum = settled;
        Optional<Route> best = Optional.empty();
        for (int width : WIDTHS) {
            Search.Outcome outcome = search(problem, true, choices).beam(width);
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
