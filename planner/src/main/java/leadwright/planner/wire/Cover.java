package leadwright.planner.wire;

import java.util.List;
import java.util.Optional;

/**
 * Phase 9: the fewest hookups.
 *
 * <p>Needs: fitting test, requirements that each fit a hookup. Gives: hookups that serve them all, a lower bound, and the
 * argument. Method: greedy hookups in several orders; the bounds of phase 8; where these do not meet, dives of phase 9c, then
 * the search of phase 9a for every number in between. Cost: that of its parts; a search that ends at its budget leaves an honest gap. Proof: the
 * answer is a wiring, the bound is an argument, and a number in between is ruled out by a search that ended.
 */
final class Cover {
    private static final long MOST_WORK = 12_000_000;

    private final Scene scene;
    private final Fit fit;

    Cover(Scene scene, Fit fit) {
        this.scene = scene;
        this.fit = fit;
    }

    /** @param argument the proof in words and numbers */
    record Covering(List<Draft> hookups, int lowerBound, String argument) {}

    Covering cover(List<Requirement> wanted) {
        List<Requirement> core = Followers.leaders(scene, wanted);
        if (core.isEmpty()) {
            return new Covering(List.of(), 0, "");
        }
        Twins twins = new Twins(scene, core);
        Canon canon = new Canon(twins, core);
        Pairs pairs = new Pairs(scene, fit);
        Greedy greedy = new Greedy(scene, fit, canon, core);
        Bounds bounds = new Bounds(scene, fit, twins, pairs, core);
        Bound bound = bounds.quick(greedy.best().size());
        greedy.usual(bound.hookups());
        if (greedy.best().size() == 2) {
            bound = whole(core, bound);
        }
        if (greedy.best().size() > bound.hookups()) {
            bound = bounds.alone(bound);
        }
        greedy.shuffled(bound.hookups());
        if (greedy.best().size() > bound.hookups()) {
            bound = bounds.best(bound, greedy.best());
            greedy.along(bounds.dual().promising(), bound.hookups());
        }
        Covering shortly = close(greedy.best(), bound, core, canon, pairs, budget() / 2);
        List<Draft> sets = bounds.dual().met();
        if (shortly.hookups().size() == shortly.lowerBound() || sets.isEmpty()) {
            return shortly;
        }
        List<Draft> best = new Dive(scene, fit, twins, core, sets).best(shortly.hookups(), shortly.lowerBound());
        return close(best, bound, core, canon, pairs, budget());
    }

    /** All together in one hookup: if that fails there are two at least. */
    private Bound whole(List<Requirement> core, Bound bound) {
        if (bound.hookups() > 1) {
            return bound;
        }
        Draft all = Draft.of(scene, core);
        boolean apart = core.stream().anyMatch(each -> !all.suits(scene, each));
        if (apart) {
            return bound.raised(2, "Some demands cannot share a hookup, so one is not enough.");
        }
        if (fit.fits(all) != Verdict.NO) {
            return bound;
        }
        String why = all.cells() > scene.jackCount()
                ? "All demands together cut the connections into " + all.cells() + " bundles, and the tester has "
                        + scene.jackCount() + " jacks, so one hookup is not enough."
                : "All demands together need more than the kit has or the row of jacks can tie,"
                        + " so one hookup is not enough.";
        return bound.raised(2, why);
    }

    /** Closes the gap between bound and answer, as far as the budget goes. */
    private Covering close(
            List<Draft> reached, Bound bound, List<Requirement> core, Canon canon, Pairs pairs, long most) {
        List<Draft> best = reached;
        int lower = bound.hookups();
        StringBuilder argument = new StringBuilder(bound.argument());
        while (lower < best.size()) {
            // Equal weights first, shortly: what weights are good for differs from case to case.
            Partition search = new Partition(scene, fit, bound.plain(core), canon, pairs, most / 4);
            Optional<List<Draft>> found = search.among(lower, core);
            if (found.isEmpty() && search.ended()) {
                search = new Partition(scene, fit, bound, canon, pairs, most);
                found = search.among(lower, core);
            }
            String what =
                    " to share " + core.size() + " demands among " + lower + (lower == 1 ? " hookup" : " hookups");
            if (found.isPresent()) {
                best = found.get();
                argument.append(" A search for a way").append(what).append(" found one.");
            } else if (search.ended()) {
                argument.append(" The search for a way").append(what).append(" ended at its budget after ");
                argument.append(search.cases()).append(" cases: ").append(unproven(best));
                return new Covering(best, lower, argument.toString());
            } else if (search.unknownMet()) {
                argument.append(" Whether there is a way").append(what);
                argument.append(" hangs on wirings that were not searched: ").append(unproven(best));
                return new Covering(best, lower, argument.toString());
            } else {
                argument.append(" The search over all ways").append(what);
                argument.append(" ruled them out in ").append(search.cases()).append(" cases.");
                lower++;
            }
        }
        return new Covering(best, lower, argument.toString());
    }

    /** Fitting tests of one search; a test of a large device, or of a row of jacks, takes longer. */
    private long budget() {
        long size = scene.connections().size() * (scene.runs() ? 16L : 1L);
        return Math.min(400_000, MOST_WORK / Math.max(1, size));
    }

    private static String unproven(List<Draft> best) {
        return best.size() + " is not proven to be the fewest.";
    }
}
