package leadwright.planner.order;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import leadwright.planner.plan.MainsState.Polarity;

/**
 * Poses in which hookups may change, those that differ only in where the polarity selector stands being one: a stay begins
 * as if it stood where it is wanted.
 */
final class Gates {
    private final int[] gateOf;
    private final List<Integer> entry = new ArrayList<>();
    private final List<Pose> sample = new ArrayList<>();
    private final List<Boolean> ends = new ArrayList<>();

    Gates(Problem problem) {
        List<Pose> poses = problem.poses().all();
        gateOf = new int[poses.size()];
        Map<Pose, Integer> seen = new LinkedHashMap<>();
        for (int p = 0; p < poses.size(); p++) {
            Pose pose = poses.get(p);
            boolean live = pose.live() && problem.scene().mayReplugUnderPower();
            if (!pose.dead() && !live && !problem.poses().end(p)) {
                gateOf[p] = -1;
                continue;
            }
            Pose key = pose.dead() ? new Pose(pose.state(), Polarity.NONE, pose.on(), pose.mode()) : pose;
            Integer gate = seen.putIfAbsent(key, entry.size());
            if (gate == null) {
                gate = entry.size();
                entry.add(poses.contains(key) ? problem.poses().indexOf(key) : p);
                sample.add(pose);
                ends.add(problem.poses().end(p));
            }
            gateOf[p] = gate;
        }
    }

    int count() {
        return entry.size();
    }

    /** Gate of a pose, or -1. */
    int of(int pose) {
        return gateOf[pose];
    }

    /** The pose in which a stay begins. */
    int entry(int gate) {
        return entry.get(gate);
    }

    boolean end(int gate) {
        return ends.get(gate);
    }

    boolean dead(int gate) {
        return sample.get(gate).dead();
    }

    boolean on(int gate) {
        return sample.get(gate).on();
    }

    IntStream all() {
        return IntStream.range(0, entry.size());
    }
}
