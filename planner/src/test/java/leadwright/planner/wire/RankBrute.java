package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import leadwright.catalog.device.Connection;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;

/**
 * The first in rank of a small case by trying every row of as few hookups as do. It knows what the planning guide says of the
 * rank and nothing of the planner: wires are plugged in one after the other in every way, like items are paired in every way.
 */
final class RankBrute {

    /** A connection, its items from the device to the jack, and the jack. */
    record Wired(int connection, List<String> items, int jack) {}

    /** A hookup, with what it serves as a bit mask of demands. */
    record Whole(List<Wired> wires, int serves) {}

    private final SmallCase small;
    private final Jacks jacks;
    private final List<Connection> connections;
    private final TrialItems trial;
    private final RankPairings pairings;
    private final List<Whole> all = new ArrayList<>();
    private final Map<List<Wired>, Map<List<Wired>, Integer>> known = new IdentityHashMap<>();
    private final List<List<String>> paths = new ArrayList<>();
    private final Map<String, Integer> branches = new LinkedHashMap<>();
    private final Map<String, List<String>> fanPaths = new HashMap<>();
    private final Set<Integer> taken = new HashSet<>();
    private final Map<String, Integer> used = new HashMap<>();

    RankBrute(SmallCase small) {
        this.small = small;
        this.jacks = small.kit().tester().jacks().orElseThrow();
        this.connections = small.device().connections();
        this.trial = new TrialItems(small.kit(), false);
        this.pairings = new RankPairings(connections);
        connect(0);
    }

    List<Whole> all() {
        return all;
    }

    /** Every way for this connection and those after it: left out, or from its terminal on. */
    private void connect(int connection) {
        if (connection == connections.size()) {
            finish();
            return;
        }
        paths.add(List.of());
        connect(connection + 1);
        paths.remove(paths.size() - 1);
        extend(connection, connections.get(connection).terminal(), List.of());
    }

    private void extend(int connection, String end, List<String> path) {
        for (int jack = 1; jack <= jacks.count(); jack++) {
            if (!taken.contains(jack) && trial.mates(end, jacks.socket())) {
                taken.add(jack);
                place(connection, path, List.of("jack-" + jack));
                taken.remove(jack);
            }
        }
        for (String fan : List.copyOf(branches.keySet())) {
            KitItem item = item(fan);
            if (!path.contains(fan)
                    && branches.get(fan) > 0
                    && trial.mates(end, item.ends().get(1))) {
                branches.merge(fan, -1, Integer::sum);
                List<String> rest = new ArrayList<>(List.of(fan));
                rest.addAll(fanPaths.get(fan));
                place(connection, path, rest);
                branches.merge(fan, 1, Integer::sum);
            }
        }
        for (KitItem item : small.kit().items()) {
            int number = used.getOrDefault(item.id(), 0) + 1;
            if (number > item.stock()) {
                continue;
            }
            for (TrialItems.Placed way : trial.ways(item)) {
                if (trial.mates(end, way.inlets[0])) {
                    String name = item.id() + "/" + number;
                    used.put(item.id(), number);
                    if (item.kind() == ItemKind.FAN_OUT) {
                        branches.put(name, item.branches() - 1);
                    }
                    List<String> more = new ArrayList<>(path);
                    more.add(name);
                    extend(connection, way.out, more);
                    branches.remove(name);
                    used.put(item.id(), number - 1);
                }
            }
        }
    }

    private void place(int connection, List<String> path, List<String> rest) {
        List<String> whole = new ArrayList<>(path);
        whole.addAll(rest);
        List<String> fans = new ArrayList<>();
        for (int i = 0; i < path.size(); i++) {
            if (item(path.get(i)).kind() == ItemKind.FAN_OUT) {
                fans.add(path.get(i));
                fanPaths.put(path.get(i), List.copyOf(whole.subList(i + 1, whole.size())));
            }
        }
        paths.add(whole);
        connect(connection + 1);
        paths.remove(paths.size() - 1);
        fans.forEach(fanPaths::remove);
    }

    private KitItem item(String instance) {
        return small.kit().item(kind(instance)).orElseThrow();
    }

    static String kind(String instance) {
        int slash = instance.indexOf('/');
        return slash < 0 ? instance : instance.substring(0, slash);
    }

    private void finish() {
        List<Wired> wires = new ArrayList<>();
        for (int c = 0; c < paths.size(); c++) {
            List<String> path = paths.get(c);
            if (!path.isEmpty()) {
                String jack = path.get(path.size() - 1);
                wires.add(new Wired(
                        c,
                        List.copyOf(path.subList(0, path.size() - 1)),
                        Integer.parseInt(jack.substring("jack-".length()))));
            }
        }
        Whole whole = new Whole(wires, serves(wires));
        if (whole.serves() != 0) {
            all.add(whole);
        }
    }

    private int serves(List<Wired> wires) {
        int serves = 0;
        for (int d = 0; d < small.demands().size(); d++) {
            serves |= serves(wires, small.demands().get(d)) ? 1 << d : 0;
        }
        return serves;
    }

    private boolean serves(List<Wired> wires, Demand demand) {
        Map<Integer, Set<String>> bundles = new TreeMap<>();
        Set<String> present = new HashSet<>();
        for (Wired each : wires) {
            String name = connections.get(each.connection()).name();
            present.add(name);
            bundles.computeIfAbsent(each.jack(), key -> new HashSet<>()).add(name);
        }
        boolean earthed = jacks.atRest() == AtRest.EARTHED;
        if (!present.containsAll(demand.all()) || earthed && !demand.all().containsAll(present)) {
            return false;
        }
        for (Set<String> set : List.<Set<String>>of(demand.measured(), demand.against(), demand.earthed())) {
            TreeSet<Integer> own = new TreeSet<>();
            for (Map.Entry<Integer, Set<String>> bundle : bundles.entrySet()) {
                Set<String> inside = new HashSet<>(bundle.getValue());
                inside.retainAll(set);
                if (!inside.isEmpty() && inside.size() < bundle.getValue().size()) {
                    return false;
                }
                if (!inside.isEmpty()) {
                    own.add(bundle.getKey());
                }
            }
            if (jacks.ties() == Ties.RUNS && own.size() > 1 && own.last() - own.first() != own.size() - 1) {
                return false;
            }
        }
        return true;
    }

    List<Wired> wires(Hookup hookup) {
        List<Wired> wires = new ArrayList<>();
        for (Chain chain : hookup.chains()) {
            int number = 0;
            while (!connections.get(number).name().equals(chain.connection())) {
                number++;
            }
            wires.add(new Wired(number, chain.items(), chain.jack()));
        }
        return wires;
    }

    /** Rank by the guide, of hookups in any order: seconds, contacts, items, micrometres with mains, crossings. */
    long[] rank(List<Whole> hookups) {
        long seconds = Long.MAX_VALUE;
        for (List<Integer> visits : visits(hookups)) {
            long sum = 0;
            for (int i = 0; i < visits.size(); i++) {
                List<Wired> to = hookups.get(visits.get(i)).wires();
                sum += plugging(
                        i == 0 ? List.of() : hookups.get(visits.get(i - 1)).wires(), to);
            }
            seconds = Math.min(seconds, sum);
        }
        long contacts = 0;
        long crossings = 0;
        Map<String, Integer> pieces = new HashMap<>();
        for (Whole hookup : hookups) {
            Map<String, Set<String>> instances = new HashMap<>();
            for (Wired each : hookup.wires()) {
                contacts += each.items().size() + 1;
                each.items()
                        .forEach(item -> instances
                                .computeIfAbsent(kind(item), key -> new HashSet<>())
                                .add(item));
                for (Wired lower : hookup.wires()) {
                    crossings += each.connection() < lower.connection() && each.jack() > lower.jack() ? 1 : 0;
                }
            }
            instances.forEach((kind, names) -> pieces.merge(kind, names.size(), Math::max));
        }
        return new long[] {
            seconds,
            contacts,
            pieces.values().stream().mapToInt(Integer::intValue).sum(),
            micrometres(hookups),
            crossings
        };
    }

    private long micrometres(List<Whole> hookups) {
        long sum = 0;
        for (int d = 0; d < small.demands().size(); d++) {
            long least = Long.MAX_VALUE;
            for (Whole hookup : hookups) {
                if (small.mains().get(d) && (hookup.serves() >> d & 1) == 1) {
                    least = Math.min(least, micrometres(hookup, small.demands().get(d)));
                }
            }
            sum += least == Long.MAX_VALUE ? 0 : least;
        }
        return sum;
    }

    private long micrometres(Whole hookup, Demand demand) {
        Set<String> items = new HashSet<>();
        for (Wired each : hookup.wires()) {
            if (demand.measured().contains(connections.get(each.connection()).name())) {
                items.addAll(each.items());
            }
        }
        return items.stream()
                .mapToLong(name ->
                        item(name).length().map(length -> length.amount()).orElse(0L))
                .sum();
    }

    /** Every order of visits, back again where need be, in which mains goes on a part after all that is read without. */
    private List<List<Integer>> visits(List<Whole> hookups) {
        List<List<Integer>> complete = new ArrayList<>();
        visits(hookups, new ArrayList<>(), complete);
        return complete;
    }

    private void visits(List<Whole> hookups, List<Integer> so, List<List<Integer>> complete) {
        if (complete(hookups, so)) {
            complete.add(List.copyOf(so));
            return;
        }
        if (so.size() < 2 * hookups.size() - 1) {
            for (int next = 0; next < hookups.size(); next++) {
                if (so.isEmpty() || so.get(so.size() - 1) != next) {
                    so.add(next);
                    visits(hookups, so, complete);
                    so.remove(so.size() - 1);
                }
            }
        }
    }

    private boolean complete(List<Whole> hookups, List<Integer> visits) {
        int served = 0;
        for (Whole each : hookups) {
            served |= each.serves();
        }
        int live = 0;
        for (int d = 0; d < small.demands().size(); d++) {
            live |= small.mains().get(d) ? served & 1 << d : 0;
        }
        int before = 0;
        for (int split = 0; split < visits.size(); split++) {
            before |= hookups.get(visits.get(split)).serves();
            int after = 0;
            for (int i = split; i < visits.size(); i++) {
                after |= hookups.get(visits.get(i)).serves();
            }
            if ((served & ~live & ~before) == 0 && (live & ~after) == 0) {
                return true;
            }
        }
        return false;
    }

    private int plugging(List<Wired> from, List<Wired> to) {
        return known.computeIfAbsent(from, key -> new IdentityHashMap<>())
                .computeIfAbsent(to, key -> pairings.least(from, to));
    }

    /** Fewest hookups that serve all that can be served. */
    int fewest() {
        int wanted = all.stream().mapToInt(Whole::serves).reduce(0, (a, b) -> a | b);
        int[] fewest = new int[wanted + 1];
        Arrays.fill(fewest, 99);
        fewest[0] = 0;
        Set<Integer> sets = new HashSet<>();
        all.forEach(each -> sets.add(each.serves()));
        for (int set = 1; set <= wanted; set++) {
            for (int each : sets) {
                if ((each & set) != 0) {
                    fewest[set] = Math.min(fewest[set], fewest[set & ~each] + 1);
                }
            }
        }
        return fewest[wanted];
    }

    /** The least rank, and how many ranks by seconds, contacts and crossings there are among equally few hookups. */
    record Answer(long[] best, int seconds, int contacts, int crossings) {}

    Answer first() {
        int wanted = all.stream().mapToInt(Whole::serves).reduce(0, (a, b) -> a | b);
        List<long[]> best = new ArrayList<>();
        List<Set<Long>> kinds = List.of(new HashSet<>(), new HashSet<>(), new HashSet<>());
        rows(wanted, fewest(), 0, new ArrayList<>(), best, kinds);
        return new Answer(
                best.get(0),
                kinds.get(0).size(),
                kinds.get(1).size(),
                kinds.get(2).size());
    }

    private void rows(int left, int hookups, int from, List<Whole> so, List<long[]> best, List<Set<Long>> kinds) {
        if (hookups == 0) {
            if (left == 0) {
                long[] rank = rank(so);
                kinds.get(0).add(rank[0]);
                kinds.get(1).add(rank[1]);
                kinds.get(2).add(rank[4]);
                if (best.isEmpty() || Arrays.compare(rank, best.get(0)) < 0) {
                    best.clear();
                    best.add(rank);
                }
            }
            return;
        }
        for (int next = from; next < all.size(); next++) {
            Whole each = all.get(next);
            if ((left & each.serves()) != 0 && (hookups > 1 || (left & ~each.serves()) == 0)) {
                so.add(each);
                rows(left & ~each.serves(), hookups - 1, next + 1, so, best, kinds);
                so.remove(so.size() - 1);
            }
        }
    }
}
