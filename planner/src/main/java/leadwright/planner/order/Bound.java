package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import leadwright.planner.order.Problem.Block;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.MainsState.Polarity;

/**
 * Phase 7: a lower bound on what is left to do.
 *
 * <p>Only readings that one hookup alone may take are counted with their hookup; of the others, what visiting their state
 * costs at least where nothing else leads there. Where hookups change with everything off, the bound is the best
 * {@link Tour}; elsewhere (re-plugging under power, operating modes, too many tasks) the stays of every hookup are bounded
 * on their own, split as favourably as can be, and a bare tour of re-pluggings is added.
 */
final class Bound {
    static final int NEVER = Integer.MAX_VALUE;

    private final Problem problem;
    private final Gates gates;
    private final List<Stay> stays = new ArrayList<>();
    private final Tour tour;
    private final int[][] alone;
    private final boolean regular;
    private final boolean cutStops;

    Bound(Problem problem) {
        this.problem = problem;
        this.gates = new Gates(problem);
        for (int h = 0; h < problem.hookups(); h++) {
            stays.add(new Stay(problem, gates, h));
        }
        boolean whole = !problem.scene().mayReplugUnderPower()
                && problem.poses().modes().size() == 1;
        Optional<Tour> full = whole ? tour(false) : Optional.empty();
        this.regular = full.isPresent();
        this.tour = full.or(() -> tour(true)).orElseGet(() -> new Tour(problem, gates, stays, Tour.Heed.NOTHING, true));
        this.alone = new int[problem.hookups()][];
        for (int h = 0; h < alone.length && !regular; h++) {
            alone[h] = alone(h);
        }
        this.cutStops = !problem.poses().onUnderSupplyOpen() && problem.scene().toleratesPowerCut();
    }

    /** The tour that heeds most and whose answers can be kept. */
    private Optional<Tour> tour(boolean bare) {
        for (Tour.Heed heed : Tour.Heed.values()) {
            Tour tour = new Tour(problem, gates, stays, heed, bare);
            if (tour.fill()) {
                return Optional.of(tour);
            }
        }
        return Optional.empty();
    }

    /**
     * Least for a set of a hookup's blocks, split into stays at will, each from and to the gates that suit it best. Stays
     * beyond its tasks are not in the tour: each of them costs a detour.
     */
    private int[] alone(int hookup) {
        Stay stay = stays.get(hookup);
        int tasks = tour.tasksOf(hookup).length;
        int detour = tour.detour(hookup);
        int subsets = 1 << stay.items().size();
        int[] single = new int[subsets];
        for (int subset = 1; subset < subsets; subset++) {
            single[subset] = Stay.FAR;
            for (int from = 0; from < gates.count(); from++) {
                for (int to = 0; to < gates.count(); to++) {
                    single[subset] = Math.min(single[subset], stay.least(to, gates.entry(from), false, subset));
                }
            }
        }
        int[] least = single.clone();
        for (int stayed = 2; stayed <= stay.items().size(); stayed++) {
            int extra = stayed > tasks ? detour : 0;
            int[] more = least.clone();
            for (int subset = 1; subset < subsets; subset++) {
                for (int part = subset - 1 & subset; part > 0; part = part - 1 & subset) {
                    more[subset] = Math.min(more[subset], single[part] + least[subset & ~part] + extra);
                }
            }
            if (java.util.Arrays.equals(more, least)) {
                break;
            }
            least = more;
        }
        return least;
    }

    /** Least seconds from here to the end, beyond what is due anyway; NEVER where no end can be reached. */
    int rest(int site, int pose, boolean selected, BitSet done) {
        int hookup = problem.hookupOf(site);
        int[] left = new int[stays.size()];
        for (int h = 0; h < left.length; h++) {
            left[h] = stays.get(h).remaining(done);
        }
        int least = byTour(site, hookup, pose, selected, left) + (regular ? 0 : apart(hookup, pose, selected, left));
        return least >= Stay.FAR ? NEVER : least + elsewhere(hookup, pose, done, left);
    }

    private int byTour(int site, int hookup, int pose, boolean selected, int[] left) {
        long tasks = 0;
        for (int h = 0; h < left.length; h++) {
            for (int task : tour.tasksOf(h)) {
                if ((tour.items(task) & left[h]) != 0) {
                    tasks |= 1L << task;
                }
            }
        }
        return tour.stay(site, hookup, pose, selected, left[hookup], tasks, false);
    }

    /** Stays alone; the tour has the re-plugging between them. */
    private int apart(int hookup, int pose, boolean selected, int[] left) {
        int least = Stay.FAR;
        int own = left[hookup];
        for (int part = own; ; part = part - 1 & own) {
            for (int gate = 0; gate < gates.count(); gate++) {
                int here = stays.get(hookup).least(gate, pose, selected, part);
                least = Math.min(least, here + alone[hookup][own & ~part]);
            }
            if (part == 0) {
                break;
            }
        }
        for (int h = 0; h < left.length; h++) {
            if (h != hookup) {
                least += alone[h][left[h]];
            }
        }
        return least;
    }

    /** What visits cost at least in states where only readings are left that several hookups may take. */
    private int elsewhere(int hookup, int pose, BitSet done, int[] left) {
        List<Stand> counted = new ArrayList<>();
        boolean[] entered = new boolean[Polarity.values().length];
        Pose at = problem.poses().get(pose);
        int least = 0;
        for (Unit unit : problem.units()) {
            if (unit.bound() || done.get(unit.index()) || !unit.ordinary() || counted.contains(unit.stand())) {
                continue;
            }
            if (visitedAnyway(unit.stand(), left)) {
                continue;
            }
            counted.add(unit.stand());
            BenchTimes times = problem.scene().times();
            least += Math.max(0, times.settling() - times.select());
            if (at.state() == unit.stand().state()) {
                continue;
            }
            boolean cut = unit.stand().state().fault() == Fault.SUPPLY_OPEN && cutStops;
            if (unit.stand().state().fault() != Fault.NONE && !cut) {
                least += 2 * times.conductor();
            }
            Polarity polarity = unit.stand().state().polarity();
            boolean anew = polarity != Polarity.NONE
                    && at.selector() != polarity
                    && !problem.scene().mayReplugUnderPower()
                    && !entered[polarity.ordinal()]
                    && !polarityVisited(polarity, left);
            if (anew) {
                entered[polarity.ordinal()] = true;
                least += Math.min(2 * times.outlet(), times.polarity());
                if (!problem.scene().battery() && unit.stand().on()) {
                    least += times.startUp();
                }
            }
        }
        return least;
    }

    /** Whether some hookup's own readings lead to this stand for ordinary readings. */
    private boolean visitedAnyway(Stand stand, int[] left) {
        for (int h = 0; h < left.length; h++) {
            List<Block> items = stays.get(h).items();
            for (int i = 0; i < items.size(); i++) {
                if ((left[h] >> i & 1) == 1 && items.get(i).stand().state() == stand.state()) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean polarityVisited(Polarity polarity, int[] left) {
        for (int h = 0; h < left.length; h++) {
            List<Block> items = stays.get(h).items();
            for (int i = 0; i < items.size(); i++) {
                if ((left[h] >> i & 1) == 1 && items.get(i).stand().state().polarity() == polarity) {
                    return true;
                }
            }
        }
        return false;
    }
}
