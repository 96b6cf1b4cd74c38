package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Phase 7h: heavy sets of requirements that fit one hookup.
 *
 * <p>Needs: fitting test, twins, requirements with weights. Gives: some sets that are heavy enough, one beginning with each
 * requirement at most, or the certainty that there is none. Method: take or leave the next requirement, heaviest first; what
 * cuts no cell further and asks nothing else is taken at once. Cells are counted in machine words; the fitting test is asked
 * for what is taken. A branch is cut when it cannot become heavy enough, and when something that was left could be had for
 * nothing: with it the set was met before. Cost: exponential at worst, with a budget. Proof: that of {@link Kinds}; what fits
 * stays fitting with less.
 */
final class Heavy {
    /** With something found, no more beginnings are tried after so many cases. */
    private static final long ENOUGH_CASES = 60_000;

    private final Scene scene;
    private final Fit fit;
    private final Twins twins;
    private final List<Requirement> order;
    private final int[] positions;
    private final boolean[] lonely;
    private final long[] weight;
    private final Cuts cuts;
    private final int jacks;
    private final long mostCases;
    private final boolean[] free;
    private final List<Level> levels = new ArrayList<>();
    private final boolean[] left;
    private final List<Draft> found = new ArrayList<>();
    private long enough;
    private long cases;

    /** What is kept of one depth of the search: the cells, what may be taken, what was left and may still join. */
    private static final class Level {
        private final long[] cells;
        private final int[] candidates;
        private final int[] outs;
        private final Kinds kinds;
        private int count;
        private int outCount;

        Level(long[] cells, int size) {
            this.cells = cells;
            this.candidates = new int[size];
            this.outs = new int[size];
            this.kinds = new Kinds(size);
        }
    }

    /**
     * @param weights by requirement number, equal for those of one kind
     * @param kinds by requirement number; those that an exchange of twins makes of one another are of one kind
     * @param mostCases budget of counted cells
     */
    Heavy(Scene scene, Fit fit, Twins twins, List<Requirement> core, long[] weights, int[] kinds, long mostCases) {
        this.scene = scene;
        this.fit = fit;
        this.twins = twins;
        this.mostCases = mostCases;
        this.jacks = scene.jackCount();
        this.order = core.stream()
                .filter(each -> weights[each.index()] > 0)
                .sorted(Comparator.comparingLong((Requirement each) -> -weights[each.index()]))
                .toList();
        this.weight = order.stream().mapToLong(each -> weights[each.index()]).toArray();
        this.positions = new int[scene.requirements().size()];
        Arrays.fill(positions, -1);
        IntStream.range(0, order.size()).forEach(i -> positions[order.get(i).index()] = i);
        int[] count = new int[scene.requirements().size()];
        order.forEach(each -> count[kinds[each.index()]]++);
        this.lonely = new boolean[order.size()];
        this.free = new boolean[order.size()];
        for (int i = 0; i < order.size(); i++) {
            Requirement each = order.get(i);
            lonely[i] = count[kinds[each.index()]] == 1;
            free[i] = !scene.runs()
                    && !scene.floatApart()
                    && !each.earth()
                    && each.capacitance().isEmpty()
                    && !each.all().isEmpty()
                    && order.stream()
                            .noneMatch(other -> scene.conflict()[each.index()][other.index()]
                                    || scene.conflict()[other.index()][each.index()]);
        }
        this.cuts = new Cuts(scene.connections().size(), jacks, order);
        this.left = new boolean[order.size()];
    }

    /**
     * Sets at least so heavy; where there is none and the search was complete, no set that fits is. What may or may not fit
     * counts as fitting.
     */
    List<Draft> heavy(long heavyEnough) {
        enough = heavyEnough;
        Level level = level(0);
        level.count = 0;
        level.outCount = 0;
        level.kinds.clear();
        for (int each = 0; each < order.size(); each++) {
            offer(level, 0, each);
        }
        visit(0, 0, Draft.empty(scene), List.of(), 0);
        return found;
    }

    /** Whether the search ended within its budget. */
    boolean complete() {
        return cases <= mostCases;
    }

    long cases() {
        return cases;
    }

    private Level level(int depth) {
        while (levels.size() <= depth) {
            levels.add(new Level(cuts.room(), order.size()));
        }
        return levels.get(depth);
    }

    private void offer(Level level, int cells, int each) {
        cases++;
        int then = cuts.with(level.cells, cells, each);
        if (then <= jacks) {
            level.kinds.add(level.count, cuts.signature(), then - cells, weight[each]);
            level.candidates[level.count++] = each;
        }
    }

    /** Whether a hookup that serves the draft and is cut no further serves this too. */
    private boolean comesAlong(Draft draft, int each) {
        return free[each] && order.get(each).duty().within(draft.duty());
    }

    /** Looks at all that may be taken; returns whether something heavy enough was found. */
    private boolean visit(int depth, int cells, Draft draft, List<Requirement> members, long weighs) {
        Level level = levels.get(depth);
        int rest = jacks - cells;
        List<Integer> closed = new ArrayList<>();
        boolean some = false;
        for (int at = 0; at < level.count && cases <= mostCases; at++) {
            int each = level.candidates[at];
            if (left[each]) {
                continue;
            }
            if (weighs + level.kinds.most(rest) < enough) {
                break;
            }
            some |= rest == 1 && weighs + level.kinds.mostWith(at) < enough
                    ? false
                    : take(depth, at, cells, draft, members, weighs);
            if (some && (depth > 0 || cases > ENOUGH_CASES)) {
                break;
            }
            leave(level, at, closed);
            if (!lonely[each]) {
                for (Requirement twin : twins.equivalents(order.get(each), draft)) {
                    int position = positions[twin.index()];
                    for (int other = at + 1; other < level.count; other++) {
                        if (level.candidates[other] == position && !left[position]) {
                            leave(level, other, closed);
                        }
                    }
                }
            }
        }
        closed.forEach(each -> left[each] = false);
        return some;
    }

    private void leave(Level level, int at, List<Integer> closed) {
        int each = level.candidates[at];
        left[each] = true;
        closed.add(each);
        level.outs[level.outCount++] = each;
        level.kinds.remove(at);
    }

    private boolean take(int depth, int at, int cells, Draft draft, List<Requirement> members, long weighs) {
        Level level = levels.get(depth);
        Level next = level(depth + 1);
        int each = level.candidates[at];
        Requirement taken = order.get(each);
        int then = cuts.into(level.cells, cells, each, next.cells);
        next.outCount = 0;
        next.count = 0;
        next.kinds.clear();
        for (int o = 0; o < level.outCount; o++) {
            int out = level.outs[o];
            cases++;
            int with = cuts.with(next.cells, then, out);
            if (with == then && comesAlong(draft, out)) {
                // Had it been taken, all this would have been met with it.
                return false;
            }
            if (with <= jacks) {
                next.outs[next.outCount++] = out;
            }
        }
        if (!draft.suits(scene, taken)) {
            return false;
        }
        Draft with = draft.with(taken);
        if (fit.fits(with) == Verdict.NO) {
            return false;
        }
        List<Requirement> all = new ArrayList<>(members);
        all.add(taken);
        long weighsThen = weighs + weight[each];
        for (int other = at + 1; other < level.count; other++) {
            int candidate = level.candidates[other];
            if (!left[candidate]) {
                cases++;
                int cut = cuts.with(next.cells, then, candidate);
                if (cut == then && comesAlong(with, candidate)) {
                    all.add(order.get(candidate));
                    weighsThen += weight[candidate];
                } else if (cut <= jacks) {
                    next.kinds.add(next.count, cuts.signature(), cut - then, weight[candidate]);
                    next.candidates[next.count++] = candidate;
                }
            }
        }
        if (weighsThen >= enough) {
            found.add(filled(all));
            return true;
        }
        return visit(depth + 1, then, with, all, weighsThen);
    }

    /** The set with all that can be added, heaviest first. */
    private Draft filled(List<Requirement> members) {
        Draft draft = Draft.of(scene, members);
        for (Requirement each : order) {
            if (!members.contains(each) && fit.fits(draft, each) == Verdict.YES) {
                draft = draft.with(each);
            }
        }
        return draft;
    }
}
