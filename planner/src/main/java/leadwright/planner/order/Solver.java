package leadwright.planner.order;

import java.util.BitSet;
import java.util.List;
import leadwright.planner.plan.Obligation;

/**
 * Phase 7: the cheapest route, with its proof.
 *
 * <p>Where few units may be taken in several hookups, each may go where it will and one search is exact. Where many may,
 * those that ask for the same state in the same hookups go together; a second search, in which every selection that could
 * be carried over counts as saved, then bounds every other way of sharing them out.
 */
final class Solver {
    /** Nodes of one search: some 60 bytes each. */
    private static final int NODES = 2_000_000;

    private static final int FREE_IN_ONE_BLOCK = 5;
    private static final int FREE_IN_ALL = 16;

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
        boolean choices = free && few(fine);
        Problem problem = choices || !free ? fine : problem(replugs, false);
        Search.Outcome best = search(problem, true, choices, 1);
        int settled = best.settled();
        if (best.route().isEmpty()) {
            int least = best.least();
            for (int weight : List.of(3, 20)) {
                Search.Outcome quick = search(problem, true, choices, weight);
                settled += quick.settled();
                if (quick.route().isPresent()) {
                    return new Answer(problem, quick.route().get(), proven(problem) ? least : 0, settled);
                }
            }
            throw new IllegalStateException("no order was found within " + NODES + " nodes");
        }
        Route route = best.route().get();
        if (choices || !free) {
            return new Answer(problem, route, route.seconds(), settled);
        }
        int least = 0;
        if (proven(problem)) {
            Search.Outcome lowest = search(problem, false, false, 1);
            settled += lowest.settled();
            least = Math.min(lowest.least(), route.seconds());
        }
        return new Answer(problem, route, least, settled);
    }

    /** Taking a class together in its first visit is never dearer where settling costs as much as a selection. */
    private boolean proven(Problem problem) {
        return scene.times().settling() >= scene.times().select()
                || problem.units().stream().allMatch(Unit::bound);
    }

    private Problem problem(Replugs replugs, boolean fine) {
        Units.Classes classes = Units.of(scene, readings, hookups, poses.modes(), fine);
        return Problem.of(scene, poses, replugs, classes, opening, firstSite);
    }

    private static boolean few(Problem problem) {
        long all = problem.units().stream().filter(unit -> !unit.bound()).count();
        int most = problem.blocks().stream()
                .flatMap(List::stream)
                .mapToInt(block -> block.free().cardinality())
                .max()
                .orElse(0);
        return all <= FREE_IN_ALL && most <= FREE_IN_ONE_BLOCK;
    }

    private Search.Outcome search(Problem problem, boolean exact, boolean choices, int weight) {
        return new Search(problem, new Bound(problem), exact, choices, weight, NODES).run();
    }
}
