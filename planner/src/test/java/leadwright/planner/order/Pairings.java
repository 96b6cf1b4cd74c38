package leadwright.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import leadwright.catalog.kit.AtRest;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/** What re-plugging from one hookup to another takes when every way of taking like items for one another is tried. */
final class Pairings {
    private final Bench bench;

    Pairings(Bench bench) {
        this.bench = bench;
    }

    /** Least seconds, and for each way of pairing that takes them, the owners of the joints that change. */
    record Change(int seconds, List<List<String>> changed) {}

    /** Seconds of the first set-up, the earth lead apart. */
    int first(Hookup hookup) {
        return replug(Map.of(), joints(hookup, false), new ArrayList<>());
    }

    /** @param earthLead whether the earth lead hangs on the first one */
    Change between(Hookup from, boolean earthLead, Hookup to) {
        List<List<String>> changed = new ArrayList<>();
        return new Change(replug(joints(from, earthLead), joints(to, false), changed), changed);
    }

    static String part(String connection) {
        return connection.contains(".") ? connection.substring(0, connection.indexOf('.')) : connection;
    }

    /** Joints with their owner: from, to, connection, kind. */
    private Map<List<String>, Integer> joints(Hookup hookup, boolean earthLead) {
        Map<List<String>, Integer> joints = new HashMap<>();
        for (Chain chain : hookup.chains()) {
            String from = chain.connection();
            for (String item : chain.items()) {
                if (!from.equals("touch-probe")) {
                    String kind = from.contains(".") ? bench.parts.get(part(from)) : "lab";
                    joints.put(List.of(from, item, chain.connection(), kind), 0);
                }
                from = item;
            }
            joints.put(List.of(from, "jack-" + chain.jack(), chain.connection(), "lab"), 0);
        }
        if (earthLead) {
            joints.put(List.of("jaw/1", "lead-earth/1", "", "lab"), 0);
            if (bench.earthRest == AtRest.OPEN) {
                joints.put(List.of("lead-earth/1", "earth-jack", "", "lab"), 0);
            }
        }
        return joints;
    }

    private static int join(String kind) {
        return kind.equals("snap-socket") ? 6 : kind.equals("skin-surface") ? 60 : 5;
    }

    private static int apart(String kind) {
        return kind.equals("skin-surface") ? 15 : 3;
    }

    /** Least seconds over all ways of taking like items for one another, and all ways that take them. */
    private int replug(Map<List<String>, Integer> from, Map<List<String>, Integer> to, List<List<String>> sets) {
        List<String> mine = items(from);
        List<String> theirs = items(to);
        int[] least = {Integer.MAX_VALUE};
        pair(mine, theirs, 0, new HashMap<>(), map -> {
            List<String> now = new ArrayList<>();
            int seconds = 0;
            int wait = 0;
            Set<List<String>> kept = new HashSet<>();
            for (List<String> joint : from.keySet()) {
                List<String> image = List.of(
                        map.getOrDefault(joint.get(0), mine.contains(joint.get(0)) ? "-" : joint.get(0)),
                        map.getOrDefault(joint.get(1), mine.contains(joint.get(1)) ? "-" : joint.get(1)));
                List<String> there = to.keySet().stream()
                        .filter(each -> each.subList(0, 2).equals(image))
                        .findFirst()
                        .orElse(List.of());
                if (there.isEmpty()) {
                    seconds += apart(joint.get(3));
                    now.add(owner(joint));
                } else {
                    kept.add(there);
                }
            }
            for (List<String> joint : to.keySet()) {
                if (!kept.contains(joint)) {
                    seconds += join(joint.get(3));
                    now.add(owner(joint));
                    wait = Math.max(wait, bench.therapy.getOrDefault(part(joint.get(2)), 0));
                }
            }
            if (seconds + wait < least[0]) {
                least[0] = seconds + wait;
                sets.clear();
            }
            if (seconds + wait == least[0]) {
                sets.add(now);
            }
        });
        return least[0];
    }

    private static String owner(List<String> joint) {
        return joint.get(3).equals("skin-surface") ? "!" + joint.get(2) : joint.get(2);
    }

    private static List<String> items(Map<List<String>, Integer> joints) {
        Set<String> items = new TreeSet<>();
        joints.keySet()
                .forEach(joint -> joint.subList(0, 2).stream()
                        .filter(end -> end.contains("/"))
                        .forEach(items::add));
        return List.copyOf(items);
    }

    private static void pair(
            List<String> mine,
            List<String> theirs,
            int i,
            Map<String, String> map,
            Consumer<Map<String, String>> each) {
        if (i == mine.size()) {
            each.accept(map);
            return;
        }
        String item = mine.get(i);
        for (String other : theirs) {
            boolean like = other.substring(0, other.indexOf('/')).equals(item.substring(0, item.indexOf('/')));
            if (like && !map.containsValue(other)) {
                map.put(item, other);
                pair(mine, theirs, i + 1, map, each);
                map.remove(item);
            }
        }
        pair(mine, theirs, i + 1, map, each);
    }
}
