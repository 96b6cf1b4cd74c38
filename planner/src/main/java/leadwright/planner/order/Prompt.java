package leadwright.planner.order;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import leadwright.planner.order.Problem.Block;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation.Phase;

/**
 * Which visits of a {@link Sketch} may as well be made at once, so that nothing else need be tried.
 *
 * <p>Let all that is left of an ordinary block be ready, some of it this hookup's alone. Then the block is visited here once
 * in any case. Take it out of the place where it comes later and put it in now: no other visit has to wait, and what other
 * hookups would have taken of it falls away there. Where all blocks of the hookup may hand a selection on to each other,
 * the visit saves one selection wherever another one was made before it in the stay, and one is lost at most where it is
 * taken out. As the first of its stay it saves one for the visit that follows; a stay that visits nothing else is left out,
 * going straight being no dearer, unless it is the first. Without a fault the change of pose costs nothing; to a fault it
 * costs the way there and back, which must be no more than the least that the fault adds to any way.
 */
final class Prompt {
    private final Problem problem;
    private final boolean[] linked;
    private final boolean[] selecting;

    /** For each hookup, block and pose: 0 where the block is read in the pose, a move that leads there, or no way. */
    private final int[][][] ways;

    /** There is no way that is surely as good as a later one. */
    static final int NONE = -1;

    /** @param sound whether going over another hookup never pays, and a visit that falls away pays for two selections */
    Prompt(Problem problem, boolean sound) {
        this.problem = problem;
        int n = problem.hookups();
        this.linked = new boolean[n];
        this.selecting = new boolean[n];
        this.ways = new int[n][][];
        int poses = problem.poses().all().size();
        Excursions excursions = new Excursions(problem.poses());
        boolean calm = sound && IntStream.range(0, 2 * n).noneMatch(this::therapy);
        for (int h = 0; h < n; h++) {
            List<Block> blocks = problem.blocks().get(h);
            List<Block> demanding =
                    blocks.stream().filter(block -> !block.demands().isEmpty()).toList();
            linked[h] = sound
                    && demanding.stream()
                            .allMatch(block -> demanding.stream()
                                    .allMatch(other ->
                                            other == block || block.links().get(other.index())));
            selecting[h] = calm && demanding.size() == blocks.size();
            ways[h] = new int[blocks.size()][poses];
            for (Block block : blocks) {
                ways[h][block.index()] = ways(block, excursions, poses);
            }
        }
    }

    private boolean therapy(int site) {
        return IntStream.range(0, problem.hookups())
                .filter(to -> to != problem.hookupOf(site))
                .anyMatch(to -> problem.replugs().between(site, to).therapy());
    }

    private int[] ways(Block block, Excursions excursions, int poses) {
        int[] way = new int[poses];
        Arrays.fill(way, NONE);
        if (block.phase() != Phase.ORDINARY) {
            return way;
        }
        boolean fault = block.stand().state().fault() != Fault.NONE;
        int added = fault ? excursions.added(block.stand()::fits) : 0;
        for (int p = 0; p < way.length; p++) {
            Pose pose = problem.poses().get(p);
            if (pose.fault()) {
                continue;
            }
            if (block.stand().fits(pose)) {
                way[p] = 0;
            } else if (fault && added > 0) {
                way[p] = excursions.thereAndBack(block.stand()::fits, p, added);
            }
        }
        return way;
    }

    /**
     * How to come to a block that may as well be visited at once, if all that is left of it is ready.
     *
     * @param carries whether a selection is carried into it
     * @param fresh whether nothing was visited before
     * @return 0 where it is read in this pose, the number of the move from here, counted from 1, or {@link #NONE}
     */
    int way(int hookup, Block block, int pose, boolean carries, boolean fresh) {
        boolean saves = carries || block.demands().isEmpty() || selecting[hookup] && !fresh;
        return linked[hookup] && saves ? ways[hookup][block.index()][pose] : NONE;
    }

    /**
     * Whether all that is left of a block is ready, and some of it only this hookup takes.
     *
     * @param before for each unit, what comes before it
     */
    static boolean whole(int[] bound, int[] free, long[][] before, long[] done) {
        return IntStream.of(bound).anyMatch(u -> !Words.has(done, u))
                && IntStream.concat(IntStream.of(bound), IntStream.of(free))
                        .allMatch(u -> Words.has(done, u) || Words.holds(done, before[u]));
    }
}
