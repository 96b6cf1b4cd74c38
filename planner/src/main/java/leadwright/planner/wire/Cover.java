package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * Phase 9: the fewest hookups.
 *
 * <p>Needs: fitting test, requirements that each fit a hookup. Gives: hookups that serve them all, a lower bound, and the
 * argument. Method: greedy hookups in several orders; the bounds of phase 8; where these do not meet, for every number in
 * between a search over all ways to hand the requirements out, ways that differ by an exchange of twins tried once. Cost:
 * exponential in the worst case, with a budget; a search that ends early leaves an honest gap. Proof: what fits stays
 * fitting when something is left out, so hookups may be taken to share no requirement, and a partition is looked for.
 */
final class Cover {
    private static final long MOST_CASES = 150_000;

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
        Sequence sequence = new Sequence(twins, core);
        List<Draft> best = greedy(sequence.order(), draft -> 0);
        Bounds bounds = new Bounds(scene, fit, twins, core);
        Bounds.Bound bound = whole(core, bounds.best(best.size()));
        for (List<Requirement> order : orders(sequence.order())) {
            for (Function<Draft, Integer> growth : List.<Function<Draft, Integer>>of(Draft::cells, Draft::present)) {
                if (best.size() > bound.hookups()) {
                    List<Draft> next = greedy(order, growth);
                    best = next.size() < best.size() ? next : best;
                }
            }
        }
        return close(best, bound, sequence);
    }

    /** All together in one hookup: if that fails there are two at least. */
    private Bounds.Bound whole(List<Requirement> core, Bounds.Bound bound) {
        if (bound.hookups() > 1) {
            return bound;
        }
        Draft all = Draft.of(scene.connections().size(), core);
        boolean apart = core.stream().anyMatch(each -> !all.suits(scene, each));
        if (apart) {
            return new Bounds.Bound(2, "Some demands cannot share a hookup, so one is not enough.", core, core.size());
        }
        if (fit.fits(all) != Verdict.NO) {
            return bound;
        }
        String why = all.cells() > scene.jackCount()
                ? "All demands together cut the connections into " + all.cells() + " bundles, and the tester has "
                        + scene.jackCount() + " jacks, so one hookup is not enough."
                : "All demands together need more than the kit has or the row of jacks can tie,"
                        + " so one hookup is not enough.";
        return new Bounds.Bound(2, why, List.of(), Integer.MAX_VALUE);
    }

    private static List<List<Requirement>> orders(List<Requirement> order) {
        List<Requirement> wide = new ArrayList<>(order);
        wide.sort(Comparator.comparingInt((Requirement each) -> -each.all().cardinality())
                .thenComparingInt(Requirement::index));
        List<Requirement> narrow = new ArrayList<>(wide);
        java.util.Collections.reverse(narrow);
        return List.of(order, wide, narrow);
    }

    /** Each requirement into the hookup that fits and grows least, the first of equals. */
    private List<Draft> greedy(List<Requirement> order, Function<Draft, Integer> size) {
        List<Draft> hookups = new ArrayList<>();
        for (Requirement each : order) {
            int chosen = -1;
            int least = Integer.MAX_VALUE;
            for (int h = 0; h < hookups.size(); h++) {
                Draft now = hookups.get(h);
                if (now.suits(scene, each)) {
                    Draft next = now.with(each);
                    int growth = size.apply(next) - size.apply(now);
                    if (growth < least && fit.fits(next) == Verdict.YES) {
                        chosen = h;
                        least = growth;
                    }
                }
            }
            if (chosen < 0) {
                hookups.add(Draft.empty(scene.connections().size()).with(each));
            } else {
                hookups.set(chosen, hookups.get(chosen).with(each));
            }
        }
        return hookups;
    }

    /** Closes the gap between bound and answer, as far as the budget goes. */
    private Covering close(List<Draft> reached, Bounds.Bound bound, Sequence sequence) {
        List<Draft> best = reached;
        int lower = bound.hookups();
        StringBuilder argument = new StringBuilder(bound.argument());
        while (lower < best.size()) {
            Search search = new Search(sequence, bound, lower);
            Optional<List<Draft>> found = search.run();
            if (found.isPresent()) {
                best = found.get();
                argument.append(" The search over all ways to share ")
                        .append(sequence.order().size())
                        .append(" demands among ")
                        .append(lower)
                        .append(" hookups found one after ")
                        .append(search.cases)
                        .append(" cases.");
            } else if (search.cases > MOST_CASES) {
                argument.append(" The search for ")
                        .append(lower)
                        .append(" hookups ended at its budget of ")
                        .append(MOST_CASES)
                        .append(" cases: ")
                        .append(best.size())
                        .append(" is not proven to be the fewest.");
                return new Covering(best, lower, argument.toString());
            } else if (search.unknown) {
                argument.append(" Whether ")
                        .append(lower)
                        .append(" would do hangs on wirings that were not searched: ")
                        .append(best.size())
                        .append(" is not proven to be the fewest.");
                return new Covering(best, lower, argument.toString());
            } else {
                argument.append(" The search over all ways to share ")
                        .append(sequence.order().size())
                        .append(" demands among ")
                        .append(lower)
                        .append(lower == 1 ? " hookup" : " hookups")
                        .append(" ruled them out in ")
                        .append(search.cases)
                        .append(" cases.");
                lower++;
            }
        }
        return new Covering(best, lower, argument.toString());
    }

    /** All ways to hand the requirements out among a number of hookups. */
    private final class Search {
        private final Sequence sequence;
        private final Bounds.Bound bound;
        private final int hookups;
        private final int[] hookup;
        private final List<Draft> drafts = new ArrayList<>();
        private long cases;
        private boolean unknown;

        Search(Sequence sequence, Bounds.Bound bound, int hookups) {
            this.sequence = sequence;
            this.bound = bound;
            this.hookups = hookups;
            this.hookup = new int[sequence.order().size()];
        }

        Optional<List<Draft>> run() {
            return place(0) ? Optional.of(List.copyOf(drafts)) : Optional.empty();
        }

        private boolean place(int at) {
            if (at == hookup.length) {
                return true;
            }
            if (cases > MOST_CASES || !roomLeft(at)) {
                return false;
            }
            Requirement each = sequence.order().get(at);
            int least = sequence.least(at, hookup);
            for (int h = least; h < drafts.size(); h++) {
                Draft was = drafts.get(h);
                if (goes(was, each)) {
                    drafts.set(h, was.with(each));
                    hookup[at] = h;
                    if (place(at + 1)) {
                        return true;
                    }
                    drafts.set(h, was);
                }
            }
            if (drafts.size() < hookups) {
                cases++;
                drafts.add(Draft.empty(scene.connections().size()).with(each));
                hookup[at] = drafts.size() - 1;
                if (place(at + 1)) {
                    return true;
                }
                drafts.remove(drafts.size() - 1);
            }
            return false;
        }

        private boolean goes(Draft was, Requirement each) {
            cases++;
            Verdict verdict = fit.fits(was, each);
            unknown |= verdict == Verdict.UNKNOWN;
            return verdict == Verdict.YES;
        }

        /** Whether the hookups can still take what is left of the family that the bound counts. */
        private boolean roomLeft(int at) {
            if (bound.family().isEmpty()) {
                return true;
            }
            long left = sequence.order().subList(at, hookup.length).stream()
                    .filter(bound.family()::contains)
                    .count();
            long room = (long) (hookups - drafts.size()) * bound.perHookup();
            for (Draft draft : drafts) {
                room += bound.perHookup()
                        - draft.members().stream()
                                .filter(bound.family()::contains)
                                .count();
            }
            return left <= room;
        }
    }
}
