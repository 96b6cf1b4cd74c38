package leadwright.planner.order;

import java.util.List;
import java.util.function.Predicate;
import leadwright.planner.plan.MainsState.Fault;

/** Ways through a fault, beside the ways around it. */
final class Excursions {
    private final Poses poses;

    /** For each pose, the least seconds to each one without going through a fault. */
    private final int[][] around;

    Excursions(Poses poses) {
        this.poses = poses;
        this.around = new int[poses.all().size()][];
        for (int p = 0; p < around.length; p++) {
            around[p] = poses.around(p);
        }
    }

    /** The move to a fault from which the way back makes no more than the least that the fault adds to any way. */
    int thereAndBack(Predicate<Pose> fault, int pose, int added) {
        List<Move> moves = poses.from(pose);
        for (int m = 0; m < moves.size(); m++) {
            Move in = moves.get(m);
            if (fault.test(poses.get(in.to()))) {
                for (Move out : poses.from(in.to())) {
                    if (out.to() == pose && in.seconds() + out.seconds() <= added) {
                        return m + 1;
                    }
                }
            }
        }
        return Prompt.NONE;
    }

    /** Least that a visit in this fault adds to a way that has none; 0 where it cannot be told. */
    int added(Predicate<Pose> fault) {
        int least = Stay.FAR;
        for (int p = 0; p < around.length; p++) {
            for (Move in : poses.from(p)) {
                if (!fault.test(poses.get(in.to()))) {
                    continue;
                }
                for (Move out : poses.from(in.to())) {
                    if (poses.get(p).fault() || poses.get(out.to()).fault()) {
                        return 0;
                    }
                    least = Math.min(least, in.seconds() + out.seconds() - around[p][out.to()]);
                }
            }
        }
        return Math.max(0, least);
    }

    /** Whether some way through this fault takes less than the best way around all faults. */
    boolean shortens(Stand stand) {
        if (stand.state().fault() == Fault.NONE) {
            return false;
        }
        for (int p = 0; p < around.length; p++) {
            if (poses.get(p).fault()) {
                continue;
            }
            for (Move in : poses.from(p)) {
                if (!stand.fits(poses.get(in.to()))) {
                    continue;
                }
                for (Move out : poses.from(in.to())) {
                    if (around[p][out.to()] > in.seconds() + out.seconds()) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
