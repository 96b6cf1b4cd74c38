package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import leadwright.catalog.device.Connection;
import leadwright.planner.wire.RankBrute.Wired;

/** For {@link RankBrute}: seconds between two hookups, like items paired in every way. */
final class RankPairings {
    private final List<Connection> connections;

    RankPairings(List<Connection> connections) {
        this.connections = connections;
    }

    /** Least seconds of parting and joining, over all pairings of like items. */
    int least(List<Wired> from, List<Wired> to) {
        Map<List<String>, int[]> standing = joints(from);
        Map<List<String>, int[]> wanted = joints(to);
        int all = standing.values().stream().mapToInt(each -> each[1]).sum()
                + wanted.values().stream().mapToInt(each -> each[0]).sum();
        List<String> mine = List.copyOf(instances(from));
        return all - kept(0, mine, new ArrayList<>(instances(to)), new HashMap<>(), standing, wanted);
    }

    private int kept(
            int at,
            List<String> mine,
            List<String> free,
            Map<String, String> names,
            Map<List<String>, int[]> standing,
            Map<List<String>, int[]> wanted) {
        if (at == mine.size()) {
            int kept = 0;
            for (Map.Entry<List<String>, int[]> each : standing.entrySet()) {
                List<String> joint = each.getKey().stream()
                        .map(end -> end.contains("/") ? names.getOrDefault(end, "none") : end)
                        .toList();
                kept += wanted.containsKey(joint) ? each.getValue()[1] + wanted.get(joint)[0] : 0;
            }
            return kept;
        }
        String one = mine.get(at);
        int best = 0;
        boolean some = false;
        for (String other : List.copyOf(free)) {
            if (RankBrute.kind(other).equals(RankBrute.kind(one))) {
                some = true;
                free.remove(other);
                names.put(one, other);
                best = Math.max(best, kept(at + 1, mine, free, names, standing, wanted));
                names.remove(one);
                free.add(other);
            }
        }
        long left = mine.subList(at, mine.size()).stream()
                .filter(each -> RankBrute.kind(each).equals(RankBrute.kind(one)))
                .count();
        long places = free.stream()
                .filter(each -> RankBrute.kind(each).equals(RankBrute.kind(one)))
                .count();
        return !some || left > places ? Math.max(best, kept(at + 1, mine, free, names, standing, wanted)) : best;
    }

    private static Set<String> instances(List<Wired> wires) {
        Set<String> instances = new TreeSet<>();
        wires.forEach(each -> instances.addAll(each.items()));
        return instances;
    }

    /** Joints with seconds of joining and parting: snap 6/3, foil 60/15, touch-proof and 4 mm 5/3. */
    private Map<List<String>, int[]> joints(List<Wired> wires) {
        Map<List<String>, int[]> joints = new HashMap<>();
        for (Wired each : wires) {
            List<String> ends = new ArrayList<>();
            ends.add("c" + each.connection());
            ends.addAll(each.items());
            ends.add("jack-" + each.jack());
            for (int i = 0; i + 1 < ends.size(); i++) {
                String terminal = connections.get(each.connection()).terminal();
                int[] times = i > 0 || each.items().isEmpty()
                        ? new int[] {5, 3}
                        : switch (terminal) {
                            case "snap-socket" -> new int[] {6, 3};
                            case "skin-surface" -> new int[] {60, 15};
                            default -> new int[] {5, 3};
                        };
                joints.put(List.of(ends.get(i), ends.get(i + 1)), times);
            }
        }
        return joints;
    }
}
