package leadwright.planner.order;

import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import leadwright.planner.plan.Obligation;

/**
 * Phase 7: the cheapest route, with its proof.
 *
 * <p>First the relaxed problem is solved ({@link Sketch}), in which a selection counts as saved wherever it might be carried
 * over, and ordinary readings that ask for the same state in the same hookups go together. That bounds every order: taking a
 * class together in its first visit is never dearer where the settling of a later visit that falls away costs as much as the
 * two selections that might have been carried into it and out of it. Its route, charged in full ({@link Charge}), mostly
 * costs as much as that, and is then optimal. Where it does not, selections are followed one by one ({@link Search}): where
 * there are few ways of sharing out the units that several hookups may take, {@link Twins} counted once, one search is exact;
 * where there are many, every sharing out is tried as far as nodes go.
 */
final class Solver {
    /** Nodes of one search: some 80 bytes each. */
    private static final int NODES = 20_000;

    /** Nodes of one relaxed search. */
    private static final int SKETCHED = 40_000;

    private static final int HASTY_NODES = 5_000;
    private static final int[] WEIGHTS = {5, 6, 8, 16};
    private static final int[] WIDTHS = {10, 30};

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

    private Answer solve(Replugs replugs) {
        Task unsettled = task(replugs, Grain.UNSETTLED);
        Task coarse = unsettled.within(FREE_IN_ONE_BLOCK, FREE_IN_ALL) ? unsettled : task(replugs, Grain.NONE);
        Search.Outcome sketch = coarse.sketch(SKETCHED).run();
        int least = proven() ? Math.max(0, sketch.least() - coarse.slack()) : 0;
        Optional<Route> drawn = sketch.route().flatMap(route -> Charge.charged(route, coarse.problem()));
        if (drawn.isPresent() && drawn.get().seconds() <= least) {
            return new Answer(coarse.problem(), drawn.get(), least, sketch.settled());
        }
        if (sketch.route().isEmpty()) {
            // What follows every selection has more to look at still.
            return hasty(coarse, least, sketch.settled());
        }
        return searched(replugs, coarse, drawn, least, sketch.settled());
    }

    /** A good route where the relaxed problem could not be solved: what is still to come is counted for more than it is. */
    private Answer hasty(Task task, int least, int settled) {
        int sum = settled;
        Optional<Route> best = Optional.empty();
        for (int weight : WEIGHTS) {
            Search.Outcome sketch = task.sketch(HASTY_NODES).run(weight);
            sum += sketch.settled();
            best = shorter(best, sketch.route().flatMap(route -> Charge.charged(route, task.problem())));
        }
        return answer(task, best, least, sum);
    }

    /** Where following selections one by one makes a difference. */
    private Answer searched(Replugs replugs, Task coarse, Optional<Route> drawn, int least, int settled) {
        Task fine = task(replugs, Grain.EVERY);
        if (!fine.isFree() || fine.within(FREE_IN_ONE_BLOCK, FREE_IN_ALL)) {
            Search.Outcome best = fine.search(true).run();
            int sum = settled + best.settled();
            return best.route()
                    .map(route -> new Answer(fine.problem(), route, route.seconds(), sum))
                    .orElseGet(() -> answer(coarse, drawn, Math.max(least, best.least()), sum));
        }
        Search.Outcome best = coarse.search(true).run();
        Search.Outcome lowest = coarse.search(false).run();
        int sum = settled + best.settled() + lowest.settled();
        boolean bounds = proven() && !coarse.divides();
        int most = Math.max(least, bounds ? Math.max(0, lowest.least() - coarse.slack()) : 0);
        Optional<Route> route = shorter(drawn, best.route());
        boolean open = route.isEmpty() || most < route.get().seconds();
        if (open && fine.within(MOST_IN_ONE_BLOCK, MOST_IN_ALL)) {
            Search.Outcome every = fine.search(true).run();
            sum += every.settled();
            most = Math.max(most, every.least());
            if (every.route().isPresent()) {
                return new Answer(fine.problem(), every.route().get(), every.least(), sum);
            }
        }
        return answer(coarse, route, most, sum);
    }

    private static Optional<Route> shorter(Optional<Route> one, Optional<Route> other) {
        return Stream.concat(one.stream(), other.stream()).min(Comparator.comparingInt(Route::seconds));
    }

    /** With the route that was found, or a good one where none was. */
    private Answer answer(Task task, Optional<Route> found, int least, int settled) {
        return found.map(route -> new Answer(task.problem(), route, Math.min(least, route.seconds()), settled))
                .orElseGet(() -> around(task, least, settled));
    }

    /**
     * Taking a class together in its first visit is never dearer where the settling of a later visit that falls away costs as
     * much as the two selections that might have been carried into it and out of it.
     */
    private boolean proven() {
        return scene.times().settling() >= 2 * scene.times().select();
    }

    private Task task(Replugs replugs, Grain grain) {
        return Task.of(problem(replugs, grain), grain, NODES);
    }

    /** The problem of this bench at a grain. */
    Problem problem(Grain grain) {
        return problem(replugs, grain);
    }

    private Problem problem(Replugs replugs, Grain grain) {
        Units.Classes classes = Units.of(scene, readings, hookups, poses.modes(), grain);
        return Problem.of(scene, poses, replugs, classes, opening, firstSite);
    }

    /** A good route where the best could not be found. */
    private Answer around(Task task, int least, int settled) {
        int sum = settled;
        Optional<Route> best = Optional.empty();
        for (int width : WIDTHS) {
            Search.Outcome outcome = task.search(true).beam(width);
            sum += outcome.settled();
            if (outcome.route().isPresent()
                    && best.map(route -> route.seconds() > outcome.route().get().seconds())
                            .orElse(true)) {
                best = outcome.route();
            }
        }
        int settledAll = sum;
        return best.map(route -> new Answer(task.problem(), route, Math.min(least, route.seconds()), settledAll))
                .orElseThrow(() -> new IllegalStateException("no order was found"));
    }
}
