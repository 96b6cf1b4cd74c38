package leadwright.planner.order;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Phase 7: a lower bound on what is left to do.
 *
 * <p>Only readings that one hookup alone may take are counted with their hookup; for the others there is {@link Loose}. Where hookups change with everything off, the bound is the best
 * {@link Tour}; elsewhere (re-plugging under power, too many tasks) the stays of every hookup are bounded on their own, split
 * as favourably as can be, and a bare tour of re-pluggings is added.
 */
final class Bound {
    static final int NEVER = Integer.MAX_VALUE;

    private final Problem problem;
    private final Gates gates;
    private final List<Stay> stays;
    private final Loose loose;
    private final Optional<Tour> tour;
    private final Optional<Selecting> selecting;
    private final List<Stay> discountedStays;
    private final Optional<Tour> discounted;
    private final Ways ways;
    private final int[][] alone;
    private final boolean regular;

    Bound(Problem problem) {
        this.problem = problem;
        this.gates = new Gates(problem);
        this.stays = stays(0);
        this.loose = new Loose(problem, stays);
        this.ways = new Ways(problem, gates);
        Optional<Tour> whole = problem.scene().mayReplugUnderPower() ? Optional.empty() : tour(stays, false);
        this.regular = whole.isPresent();
        this.tour = whole.or(() -> tour(stays, true));
        this.selecting = regular ? Selecting.of(problem) : Optional.empty();
        this.discountedStays =
                selecting.isPresent() ? stays(problem.scene().times().select()) : List.of();
        this.discounted = selecting.isPresent() ? tour(discountedStays, false) : Optional.empty();
        this.alone = new int[problem.hookups()][];
        for (int h = 0; h < alone.length && !regular; h++) {
            alone[h] = alone(h);
        }
    }

    private List<Stay> stays(int discount) {
        List<Stay> each = new ArrayList<>();
        for (int h = 0; h < problem.hookups(); h++) {
            each.add(new Stay(problem, gates, h, discount));
        }
        return each;
    }

    /** The tour that heeds most and whose answers can be kept. */
    private Optional<Tour> tour(List<Stay> stays, boolean bare) {
        for (Tour.Heed heed : Tour.Heed.values()) {
            Tour tour = new Tour(problem, gates, ways, stays, heed, bare);
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
        int tasks = tour.map(each -> each.tasksOf(hookup).length).orElse(1);
        int detour = ways.detour(hookup);
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
        int trip = tour.isPresent() ? byTour(tour.get(), site, pose, selected, left) : nearest(site, left);
        int least = trip + (regular ? 0 : apart(hookup, pose, selected, left));
        if (discounted.isPresent() && least < Stay.FAR) {
            int selections = selecting.get().rest(done);
            if (selections > 0) {
                int here = discountedStays.get(hookup).saved(pose, left[hookup]);
                int with = byTour(discounted.get(), site, pose, selected, left) + selections - here;
                least = Math.max(least, with);
            }
        }
        return least >= Stay.FAR ? NEVER : least + loose.rest(hookup, pose, done, left);
    }

    private int byTour(Tour over, int site, int pose, boolean selected, int[] left) {
        long tasks = 0;
        for (int h = 0; h < left.length; h++) {
            for (int task : over.tasksOf(h)) {
                if ((over.items(task) & left[h]) != 0) {
                    tasks |= 1L << task;
                }
            }
        }
        int hookup = problem.hookupOf(site);
        return over.stay(site, hookup, pose, selected, left[hookup], tasks, false);
    }

    /** Every hookup that must still be made is come to from somewhere. */
    private int nearest(int site, int[] left) {
        int sum = 0;
        for (int to = 0; to < left.length; to++) {
            if (to != problem.hookupOf(site) && left[to] != 0) {
                int least = ways.least(site, to);
                for (int from = 0; from < left.length; from++) {
                    least = from == to ? least : Math.min(least, ways.least(from, to));
                }
                sum += least;
            }
        }
        return sum;
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
}
