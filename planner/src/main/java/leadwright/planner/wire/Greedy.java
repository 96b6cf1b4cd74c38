package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.ToIntFunction;

/**
 * Phase 9b: hookups that serve all, found quickly.
 *
 * <p>Needs: fitting test, requirements that each fit a hookup. Gives: a good way to share them among hookups. Method: each
 * requirement into the hookup that fits and grows least, in several orders, then in shuffled ones; the seeds are fixed, so the
 * same problem has the same answer. Cost: requirements × hookups fitting tests an order; like requirements ask once. Proof:
 * none; the answer is a wiring, and its number is an upper bound.
 */
final class Greedy {
    private static final int MOST_ORDERS = 60;
    private static final long MOST_TESTS = 60_000;

    private final Scene scene;
    private final Fit fit;
    private final Canon canon;
    private final List<Requirement> core;
    private long tests;
    private List<Draft> best;

    Greedy(Scene scene, Fit fit, Canon canon, List<Requirement> core) {
        this.scene = scene;
        this.fit = fit;
        this.canon = canon;
        this.core = core;
        this.best = inOrder(core, draft -> 0);
    }

    List<Draft> best() {
        return best;
    }

    /** The orders that are worth a look first. */
    void usual(int enough) {
        List<Requirement> wide = new ArrayList<>(core);
        wide.sort(Comparator.comparingInt((Requirement each) -> -each.all().cardinality())
                .thenComparingInt(Requirement::index));
        List<Requirement> narrow = new ArrayList<>(wide);
        Collections.reverse(narrow);
        for (List<Requirement> order : List.of(core, wide, narrow)) {
            for (ToIntFunction<Draft> growth : List.<ToIntFunction<Draft>>of(Draft::cells, Draft::present)) {
                improve(order, growth, enough);
            }
        }
    }

    /** Shuffled orders, until so few hookups are found or the budget ends. */
    void shuffled(int enough) {
        Random random = new Random(20_27);
        List<Requirement> order = new ArrayList<>(core);
        long until = tests + MOST_TESTS;
        for (int round = 0; round < MOST_ORDERS && tests < until; round++) {
            Collections.shuffle(order, random);
            ToIntFunction<Draft> growth = round % 3 == 2 ? Draft::present : Draft::cells;
            improve(order, growth, enough);
        }
    }

    private void improve(List<Requirement> order, ToIntFunction<Draft> growth, int enough) {
        if (best.size() > enough) {
            List<Draft> next = inOrder(order, growth);
            best = next.size() < best.size() ? next : best;
        }
    }

    /**
     * Hookups that hold what is left of promising sets, in several orders, and the rest where it fits.
     *
     * @param promising best first
     */
    void along(List<Draft> promising, int enough) {
        if (promising.isEmpty()) {
            return;
        }
        Random random = new Random(20_27);
        long until = tests + MOST_TESTS;
        for (int round = 0; round < 3 * MOST_ORDERS && tests < until && best.size() > enough; round++) {
            List<Draft> order = new ArrayList<>(promising);
            for (int i = 0; round > 0 && i < order.size() / 3 + 1; i++) {
                // A few move forward: the best stay near the front.
                Draft moved = order.remove(random.nextInt(order.size()));
                order.add(random.nextInt(order.size() + 1), moved);
            }
            Set<Requirement> left = new LinkedHashSet<>(core);
            List<Draft> begun = new ArrayList<>();
            for (int least = largest(order); least > 1; least--) {
                for (Draft each : order) {
                    List<Requirement> fresh =
                            each.members().stream().filter(left::contains).toList();
                    if (fresh.size() >= least) {
                        begun.add(Draft.of(scene, fresh));
                        fresh.forEach(left::remove);
                    }
                }
            }
            List<Draft> next = inOrder(List.copyOf(left), Draft::cells, begun);
            best = next.size() < best.size() ? next : best;
        }
    }

    private static int largest(List<Draft> drafts) {
        return drafts.stream().mapToInt(each -> each.members().size()).max().orElse(0);
    }

    /** A hookup in the making, with what is known to fit it. */
    private record Open(Draft draft, Map<Long, Boolean> known) {}

    /** Each requirement into the hookup that fits and grows least, the first of equals. */
    private List<Draft> inOrder(List<Requirement> order, ToIntFunction<Draft> size) {
        return inOrder(order, size, List.of());
    }

    private List<Draft> inOrder(List<Requirement> order, ToIntFunction<Draft> size, List<Draft> begun) {
        List<Open> hookups = new ArrayList<>();
        begun.forEach(draft -> hookups.add(new Open(draft, new HashMap<>())));
        for (Requirement each : order) {
            int chosen = -1;
            int least = Integer.MAX_VALUE;
            for (int h = 0; h < hookups.size(); h++) {
                Draft now = hookups.get(h).draft();
                if (now.suits(scene, each) && fits(hookups.get(h), each)) {
                    int growth = size.applyAsInt(now.with(each)) - size.applyAsInt(now);
                    if (growth < least) {
                        chosen = h;
                        least = growth;
                    }
                }
            }
            Draft into = chosen < 0 ? Draft.empty(scene) : hookups.get(chosen).draft();
            Open next = new Open(into.with(each), new HashMap<>());
            if (chosen < 0) {
                hookups.add(next);
            } else {
                hookups.set(chosen, next);
            }
        }
        return hookups.stream().map(Open::draft).toList();
    }

    private boolean fits(Open hookup, Requirement each) {
        long like = canon.like(each, hookup.draft());
        return like < 0
                ? test(hookup.draft(), each)
                : hookup.known().computeIfAbsent(like, key -> test(hookup.draft(), each));
    }

    private boolean test(Draft draft, Requirement each) {
        tests++;
        return fit.fits(draft, each) == Verdict.YES;
    }
}
