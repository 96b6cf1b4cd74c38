package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import leadwright.planner.plan.Hookup;

/**
 * Phase 12b: the least seconds of plugging where readings have an order that may bring the bench back to a hookup: earth and
 * insulation first, mains on a part last.
 *
 * <p>Needs: which hookup serves what, seconds of plugging. Gives: the least seconds of a walk that takes everything in these
 * stages; it is never less than in the best order of hookups. Method: shortest paths over stage, hookup, and the hookups
 * visited in the stage. Cost: hookups² · 2^hookups, so only few hookups are walked. Proof: nothing else bears on what is still
 * to pay.
 */
final class Walk {
    static final int MOST_HOOKUPS = 4;
    private static final int STAGES = 3;

    private final Weights weights;
    private final Service service;
    private final List<Requirement> requirements;

    private record At(int stage, int hookup, int visited) {}

    private record Reached(long seconds, At at) {}

    Walk(Weights weights, Service service, List<Requirement> requirements) {
        this.weights = weights;
        this.service = service;
        this.requirements = requirements;
    }

    /** Whether some reading must come before another one of the plan by its kind, in a way that a path need not keep. */
    static boolean matters(List<Requirement> requirements) {
        return requirements.stream()
                        .filter(each -> !each.earth())
                        .map(Walk::stage)
                        .distinct()
                        .count()
                > 1;
    }

    private static int stage(Requirement requirement) {
        return requirement.earth() || requirement.duty().insulation()
                ? 0
                : requirement.duty().mains() ? 2 : 1;
    }

    long seconds(List<Hookup> hookups) {
        List<List<Integer>> needs = new ArrayList<>();
        for (int stage = 0; stage < STAGES; stage++) {
            needs.add(new ArrayList<>());
        }
        for (Requirement each : requirements) {
            int takers = 0;
            for (int h = 0; h < hookups.size(); h++) {
                takers |= service.serves(hookups.get(h), each) ? 1 << h : 0;
            }
            if (!needs.get(stage(each)).contains(takers)) {
                needs.get(stage(each)).add(takers);
            }
        }
        return shortest(hookups, needs);
    }

    private long shortest(List<Hookup> hookups, List<List<Integer>> needs) {
        Map<At, Long> least = new HashMap<>();
        PriorityQueue<Reached> open = new PriorityQueue<>((one, other) -> Long.compare(one.seconds(), other.seconds()));
        for (int h = 0; h < hookups.size(); h++) {
            reach(open, least, weights.replugging().first(hookups.get(h)), new At(0, h, 1 << h));
        }
        while (!open.isEmpty()) {
            Reached now = open.poll();
            At at = now.at();
            if (now.seconds() > least.get(at)) {
                continue;
            }
            if (met(needs.get(at.stage()), at.visited())) {
                if (at.stage() == STAGES - 1) {
                    return now.seconds();
                }
                reach(open, least, now.seconds(), new At(at.stage() + 1, at.hookup(), 1 << at.hookup()));
            }
            for (int h = 0; h < hookups.size(); h++) {
                if (h != at.hookup()) {
                    long seconds =
                            now.seconds() + weights.replugging().between(hookups.get(at.hookup()), hookups.get(h));
                    reach(open, least, seconds, new At(at.stage(), h, at.visited() | 1 << h));
                }
            }
        }
        throw new IllegalStateException("the hookups do not serve everything");
    }

    private static void reach(PriorityQueue<Reached> open, Map<At, Long> least, long seconds, At at) {
        if (seconds < least.getOrDefault(at, Long.MAX_VALUE)) {
            least.put(at, seconds);
            open.add(new Reached(seconds, at));
        }
    }

    private static boolean met(List<Integer> needs, int visited) {
        return needs.stream().allMatch(takers -> (takers & visited) != 0);
    }
}
