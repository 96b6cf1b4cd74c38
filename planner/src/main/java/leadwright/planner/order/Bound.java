package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Phase 7: a lower bound on what is left to do.
 *
 * <p>Only readings that one hookup alone may take are counted with their hookup; for the others there is {@link Loose}. Where hookups change with everything off, the bound is the best
 * {@link Tour}; elsewhere (re-plugging under power, too many tasks) the stays of every hookup are bounded on their own, split
 * as favourably as can be, and a bare tour of re-pluggings is added.
 */
final class Bound {
    static final int NEVER = Integer.MAX_VALUE;

    private record Level(Tasks.Heed heed, Tasks.Share share, int most) {}

    private static final List<Level> LEVELS = List.of(
            new Level(Tasks.Heed.ALL, Tasks.Share.ALL, 200_000),
            new Level(Tasks.Heed.ALL, Tasks.Share.LEAST, 50_000),
            new Level(Tasks.Heed.PHASES, Tasks.Share.LEAST, 50_000),
            new Level(Tasks.Heed.NOTHING, Tasks.Share.LEAST, 50_000),
            new Level(Tasks.Heed.NOTHING, Tasks.Share.NONE, 50_000));

    private final Problem problem;
    private final Gates gates;
    private final List<Stay> stays;
    private final Loose loose;
    private final Optional<Tour> tour;
    private final Optional<Selecting> selecting;
    private final List<Stay> discountedStays;
    private final Optional<Tour> discounted;
    private final Ways ways;
    private final int[][] prices;
    private final int[][][] alone;
    private final boolean regular;

    Bound(Problem problem) {
        this.problem = problem;
        this.gates = new Gates(problem);
        this.stays = stays(0);
        this.loose = new Loose(problem, stays);
        this.ways = new Ways(problem, gates);
        boolean live = problem.scene().mayReplugUnderPower();
        Tasks.Kind kind = live ? Tasks.Kind.SINGLE : Tasks.Kind.WHOLE;
        Optional<Tour> whole = tour(stays, kind);
        this.regular = whole.isPresent();
        this.tour = whole.or(() -> tour(stays, Tasks.Kind.BARE));
        this.selecting = regular ? Selecting.of(problem) : Optional.empty();
        int select = problem.scene().times().select();
        this.discountedStays = selecting.isPresent() ? stays(select) : List.of();
        this.discounted = selecting.isPresent() ? tour(discountedStays, kind) : Optional.empty();
        this.prices = new int[][] {new int[gates.count()], fromTheStart()};
        this.alone = new int[prices.length][problem.hookups()][];
        for (int h = 0; h < problem.hookups() && !regular; h++) {
            for (int v = 0; v < prices.length; v++) {
                alone[v][h] = alone(h, prices[v]);
            }
        }
    }

    private List<Stay> stays(int discount) {
        List<Stay> each = new ArrayList<>();
        for (int h = 0; h < problem.hookups(); h++) {
            each.add(new Stay(problem, gates, h, discount));
        }
        return each;
    }

    /**
     * The tour that heeds most and whose answers can be kept. Only re-plugging alone may be counted with less heed: what is
     * kept apart by another hookup must be a task of its own, or a task that is begun would count in full once more.
     */
    private Optional<Tour> tour(List<Stay> ending, Tasks.Kind kind) {
        for (Level level : LEVELS) {
            if (kind != Tasks.Kind.BARE && level.heed() != Tasks.Heed.ALL) {
                continue;
            }
            Tasks tasks = new Tasks(problem, ways, ending, level.heed(), level.share(), kind);
            Tour tour = new Tour(problem, gates, ways, tasks, ending, stays, level.most());
            if (tour.fill()) {
                return Optional.of(tour);
            }
        }
        return Optional.empty();
    }

    /** Least seconds to come to each gate from the pose in which the bench is found. */
    private int[] fromTheStart() {
        int[] least = new int[problem.poses().all().size()];
        Arrays.fill(least, Stay.FAR);
        least[problem.poses().start()] = 0;
        boolean better = true;
        while (better) {
            better = false;
            for (int p = 0; p < least.length; p++) {
                for (Move move : problem.poses().from(p)) {
                    if (least[p] + move.seconds() < least[move.to()]) {
                        least[move.to()] = least[p] + move.seconds();
                        better = true;
                    }
                }
            }
        }
        return gates.all()
                .map(gate -> IntStream.range(0, least.length)
                        .filter(p -> gates.of(p) == gate && least[p] < Stay.FAR)
                        .map(p -> least[p])
                        .min()
                        .orElse(0))
                .toArray();
    }

    /**
     * Least for a set of a hookup's blocks, split into stays at will, each from and to the gates that suit it best. Stays
     * beyond its tasks are not in the tour: each of them costs a detour.
     *
     * <p>A stay pays the price of the gate that it comes through and is paid that of the gate that it leaves by. One stay
     * leaves by the gate through which the next comes, so that a whole order pays the first price and is paid the last,
     * whatever the prices; but a stay on its own can no longer come to a running device for nothing and leave it dead.
     */
    private int[] alone(int hookup, int[] price) {
        Stay stay = stays.get(hookup);
        int tasks = tour.map(each -> each.tasksOf(hookup)).orElse(1);
        int detour = ways.detour(hookup);
        int subsets = 1 << stay.own();
        int[] single = new int[subsets];
        for (int subset = 1; subset < subsets; subset++) {
            single[subset] = Stay.FAR;
            for (int from = 0; from < gates.count(); from++) {
                for (int to = 0; to < gates.count(); to++) {
                    int here = stay.least(to, gates.entry(from), false, false, subset);
                    if (here < Stay.FAR) {
                        single[subset] = Math.min(single[subset], here + price[from] - price[to]);
                    }
                }
            }
        }
        int[] least = single.clone();
        for (int stayed = 2; stayed <= stay.own(); stayed++) {
            int extra = stayed > tasks ? detour : 0;
            int[] more = least.clone();
            for (int subset = 1; subset < subsets; subset++) {
                for (int part = subset - 1 & subset; part > 0; part = part - 1 & subset) {
                    more[subset] = Math.min(more[subset], single[part] + least[subset & ~part] + extra);
                }
            }
            if (Arrays.equals(more, least)) {
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
        int trip = tour.isPresent() ? byTour(tour.get(), site, pose, selected, left, done) : nearest(site, left);
        int least = trip + (regular ? 0 : apart(hookup, pose, selected, ended(hookup, done), left));
        if (discounted.isPresent() && least < Stay.FAR) {
            int selections = selecting.get().rest(done);
            if (selections > 0) {
                int here = discountedStays.get(hookup).saved(pose, left[hookup]);
                int with = byTour(discounted.get(), site, pose, selected, left, done) + selections - here;
                least = Math.max(least, with);
            }
        }
        return least >= Stay.FAR ? NEVER : least + loose.rest(hookup, pose, done, left);
    }

    /** Whether mains was on a part in this hookup, where that is kept apart. */
    private boolean ended(int hookup, BitSet done) {
        return done.get(problem.units().size() + hookup);
    }

    private int byTour(Tour over, int site, int pose, boolean selected, int[] left, BitSet done) {
        return over.stay(site, pose, selected, ended(problem.hookupOf(site), done), left, done);
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

    private int apart(int hookup, int pose, boolean selected, boolean ended, int[] left) {
        int most = 0;
        for (int v = 0; v < prices.length; v++) {
            most = Math.max(most, apart(hookup, pose, selected, ended, left, prices[v], alone[v]));
        }
        return most;
    }

    /** Stays alone; the tour has the re-plugging between them. */
    private int apart(int hookup, int pose, boolean selected, boolean ended, int[] left, int[] price, int[][] alone) {
        int least = Stay.FAR;
        int own = left[hookup];
        for (int part = own; ; part = part - 1 & own) {
            for (int gate = 0; gate < gates.count(); gate++) {
                int here = stays.get(hookup).least(gate, pose, selected, ended, part);
                int later = alone[hookup][own & ~part];
                if (here < Stay.FAR && later < Stay.FAR) {
                    least = Math.min(least, here - price[gate] + later);
                }
            }
            if (part == 0) {
                break;
            }
        }
        for (int h = 0; h < left.length; h++) {
            if (h != hookup) {
                least = Math.min(Stay.FAR, least + alone[h][left[h]]);
            }
        }
        return least;
    }
}
