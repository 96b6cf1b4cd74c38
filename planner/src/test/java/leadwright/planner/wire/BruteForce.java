package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Output;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Demand;
import leadwright.planner.wire.TrialItems.Placed;

/**
 * The fewest hookups of a small case by trying every way to plug it together. It knows the definitions of the planning guide
 * and nothing of the planner: ends are plugged one after the other into a jack, a free end of an item in place, or a new item;
 * a finished arrangement is held against every demand; then every way to share the demands out is tried.
 */
final class BruteForce {
    private static final long MOST_TRIED = 2_000_000;

    private final SmallCase small;
    private final boolean floatApart;
    private final Jacks jacks;
    private final List<Connection> connections;
    private long tried;

    /** What waits to be plugged in: a connection, the far jack of a link, or the outer end of an item. */
    private record Pending(String end, Object source) {}

    /** More ways than anybody wants to try. */
    static final class TooLarge extends IllegalStateException {
        private static final long serialVersionUID = 1;

        private TooLarge() {
            super("the case is too large to try everything");
        }
    }

    private List<Demand> demands;
    private boolean mains;
    private TrialItems trial;
    private final List<Placed> items = new ArrayList<>();
    private final Object[] jackTaken;
    private final List<Connection> present = new ArrayList<>();
    private final List<Object> connectionInto = new ArrayList<>();
    private final Map<Integer, Object> linkInto = new HashMap<>();

    /** @param floatApart whether nothing may float joined */
    BruteForce(SmallCase small, boolean floatApart) {
        this.small = small;
        this.floatApart = floatApart;
        this.jacks = small.kit().tester().jacks().orElseThrow();
        this.jackTaken = new Object[jacks.count()];
        this.connections = small.connections();
    }

    /** Least number of hookups for the demands that fit at all; demands that fit none are in {@code unfit}. */
    int fewest(Set<Integer> unfit) {
        int n = small.demands().size();
        boolean[] fits = new boolean[1 << n];
        fits[0] = true;
        for (int set = 1; set < 1 << n; set++) {
            boolean hope = true;
            for (int i = 0; i < n; i++) {
                hope &= (set >> i & 1) == 0 || fits[set & ~(1 << i)];
            }
            fits[set] = hope && fits(set);
        }
        int wanted = 0;
        for (int i = 0; i < n; i++) {
            if (fits[1 << i]) {
                wanted |= 1 << i;
            } else {
                unfit.add(i);
            }
        }
        int[] fewest = new int[1 << n];
        for (int set = 1; set < 1 << n; set++) {
            fewest[set] = Integer.MAX_VALUE;
            for (int part = set; part > 0; part = part - 1 & set) {
                if (fits[part] && fewest[set & ~part] != Integer.MAX_VALUE) {
                    fewest[set] = Math.min(fewest[set], fewest[set & ~part] + 1);
                }
            }
        }
        return fewest[wanted];
    }

    private boolean fits(int set) {
        demands = new ArrayList<>();
        mains = false;
        Set<String> names = new HashSet<>();
        for (int i = 0; i < small.demands().size(); i++) {
            if ((set >> i & 1) == 1) {
                demands.add(small.demands().get(i));
                mains |= small.mains().get(i);
                names.addAll(small.demands().get(i).all());
            }
        }
        trial = new TrialItems(small.kit(), mains);
        present.clear();
        connectionInto.clear();
        items.clear();
        Arrays.fill(jackTaken, null);
        linkInto.clear();
        connections.stream().filter(each -> names.contains(each.name())).forEach(present::add);
        if (!allowedTogether(names) || bundlesAtLeast() > jacks.count()) {
            return false;
        }
        List<Pending> pending = new ArrayList<>();
        for (Connection each : present) {
            connectionInto.add(null);
            pending.add(new Pending(each.terminal(), each));
        }
        // A bundle stands on several jacks where a lead comes back from another jack. Only then is it of use.
        int spare = jacks.ties() == Ties.RUNS && jacks.atRest() != AtRest.EARTHED ? jacks.count() - 1 : 0;
        for (int links = 0; links <= spare; links++) {
            if (withLinks(links, 0, pending)) {
                return true;
            }
        }
        return false;
    }

    private boolean withLinks(int links, int fromJack, List<Pending> pending) {
        if (links == 0) {
            return plug(pending);
        }
        for (int jack = fromJack; jack < jacks.count(); jack++) {
            jackTaken[jack] = "link";
            List<Pending> more = new ArrayList<>(pending);
            more.add(new Pending(jacks.socket(), jack));
            if (withLinks(links - 1, jack + 1, more)) {
                return true;
            }
            jackTaken[jack] = null;
        }
        return false;
    }

    private boolean allowedTogether(Set<String> names) {
        for (Output output : small.device().outputs()) {
            boolean in = present.stream().anyMatch(each -> each.part().equals(output.appliedPart()));
            boolean out = present.stream()
                    .anyMatch(each -> each.kind() == Connection.Kind.PATIENT
                            && !each.part().equals(output.appliedPart()));
            if (output.mayShare().isEmpty() && in && out) {
                return false;
            }
        }
        return jacks.atRest() != AtRest.EARTHED
                || demands.stream()
                        .allMatch(demand -> names.stream()
                                .allMatch(name -> name.equals("touch-probe")
                                        || demand.all().contains(name)));
    }

    private boolean plug(List<Pending> pending) {
        if (++tried > MOST_TRIED) {
            throw new TooLarge();
        }
        if (pending.isEmpty()) {
            return finished();
        }
        Pending next = pending.get(0);
        List<Pending> rest = pending.subList(1, pending.size());
        for (int jack = 0; jack < jackTaken.length; jack++) {
            boolean link = next.source() instanceof Integer;
            if (!link && jackTaken[jack] == null && mates(next, jacks.socket(), null)) {
                jackTaken[jack] = next.source();
                join(next, jack);
                if (noMixture() && plug(rest)) {
                    return true;
                }
                jackTaken[jack] = null;
                part(next);
                // Without runs all free jacks are alike.
                if (jacks.ties() == Ties.ANY) {
                    break;
                }
            }
        }
        for (Placed item : List.copyOf(items)) {
            if (item != next.source() && !leadsTo(item, next.source())) {
                String last = null;
                for (int i = 0; i < item.inlets.length; i++) {
                    String end = item.inlets[i];
                    if (end != null && !end.equals(last) && mates(next, end, item)) {
                        item.inlets[i] = null;
                        join(next, item);
                        if (noMixture() && plug(rest)) {
                            return true;
                        }
                        item.inlets[i] = end;
                        part(next);
                        last = end;
                    }
                }
            }
        }
        for (KitItem item : small.kit().items()) {
            long used = items.stream().filter(placed -> placed.item == item).count();
            if (used < item.stock() && trial.usable(item)) {
                for (Placed placed : trial.ways(item)) {
                    String last = null;
                    for (int i = 0; i < placed.inlets.length; i++) {
                        String end = placed.inlets[i];
                        if (end.equals(last) || !mates(next, end, placed)) {
                            continue;
                        }
                        last = end;
                        placed.inlets[i] = null;
                        items.add(placed);
                        join(next, placed);
                        List<Pending> more = new ArrayList<>();
                        more.add(new Pending(placed.out, placed));
                        more.addAll(rest);
                        if (plug(more)) {
                            return true;
                        }
                        part(next);
                        items.remove(items.size() - 1);
                        placed.inlets[i] = end;
                    }
                }
            }
        }
        return false;
    }

    private void join(Pending pending, Object into) {
        if (pending.source() instanceof Placed placed) {
            placed.into = into;
        } else if (pending.source() instanceof Connection connection) {
            connectionInto.set(present.indexOf(connection), into);
        } else {
            linkInto.put((Integer) pending.source(), into);
        }
    }

    private void part(Pending pending) {
        join(pending, null);
    }

    private static boolean leadsTo(Object from, Object wanted) {
        Object at = from;
        while (at instanceof Placed placed) {
            if (placed == wanted) {
                return true;
            }
            at = placed.into;
        }
        return false;
    }

    /** The jack, or the item that still waits to be plugged in, at the end of what something is plugged into. */
    private static Object root(Object from) {
        Object at = from;
        while (at instanceof Placed placed && placed.into != null) {
            at = placed.into;
        }
        return at;
    }

    /** No two connections that some demand tells apart are joined, nor two that float where that is not allowed. */
    private boolean noMixture() {
        for (int a = 0; a < present.size(); a++) {
            for (int b = a + 1; b < present.size(); b++) {
                Object one = connectionInto.get(a);
                Object other = connectionInto.get(b);
                if (one != null && other != null && root(one).equals(root(other)) && toldApart(a, b)) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Connections of which each two are told apart stand on different jacks. */
    private int bundlesAtLeast() {
        List<Integer> apart = new ArrayList<>();
        for (int i = 0; i < present.size(); i++) {
            int next = i;
            if (apart.stream().allMatch(other -> toldApart(other, next))) {
                apart.add(i);
            }
        }
        return apart.size();
    }

    private boolean toldApart(int a, int b) {
        String one = present.get(a).name();
        String other = present.get(b).name();
        return demands.stream()
                .anyMatch(demand -> demand.measured().contains(one)
                                != demand.measured().contains(other)
                        || demand.against().contains(one) != demand.against().contains(other)
                        || demand.earthed().contains(one) != demand.earthed().contains(other)
                        || floatApart
                                && !demand.all().contains(one)
                                && !demand.all().contains(other));
    }

    private boolean finished() {
        for (int i = 0; i < present.size(); i++) {
            if (!reaches(i)) {
                return false;
            }
        }
        if (mains) {
            for (Placed item : items) {
                for (String inlet : item.inlets) {
                    if (inlet != null && trial.bare(inlet)) {
                        return false;
                    }
                }
            }
        }
        return noMixture() && demands.stream().allMatch(this::covered);
    }

    /** Small cases give stackable items no length, so that it never matters by which end they are entered. */
    private boolean reaches(int connection) {
        long length = 0;
        Object at = connectionInto.get(connection);
        while (at instanceof Placed placed) {
            length += placed.item.length().map(each -> each.amount()).orElse(0L);
            at = placed.into;
        }
        return length >= small.reach(present.get(connection));
    }

    private boolean covered(Demand demand) {
        return tied(demand.measured()) && tied(demand.against()) && tied(demand.earthed());
    }

    /** Some run of jacks reaches every bundle of the set and no other; without runs any jacks do. */
    private boolean tied(Set<String> set) {
        if (set.isEmpty() || jacks.ties() == Ties.ANY) {
            return true;
        }
        Set<Object> roots = new HashSet<>();
        for (int i = 0; i < present.size(); i++) {
            if (set.contains(present.get(i).name())) {
                roots.add(root(connectionInto.get(i)));
            }
        }
        if (roots.size() == 1) {
            return true;
        }
        for (int first = 0; first < jacks.count(); first++) {
            Set<Object> met = new HashSet<>();
            for (int jack = first; jack < jacks.count(); jack++) {
                Object root = linkInto.get(jack) != null && "link".equals(jackTaken[jack])
                        ? root(linkInto.get(jack))
                        : jackTaken[jack] == null ? null : (Object) jack;
                if (root == null || !roots.contains(root)) {
                    break;
                }
                met.add(root);
            }
            if (met.equals(roots)) {
                return true;
            }
        }
        return false;
    }

    private boolean mates(Pending pending, String end, Placed into) {
        boolean probe =
                pending.source() instanceof Connection connection && connection.kind() == Connection.Kind.TOUCH_PROBE;
        return trial.mates(pending.end(), end) && (!probe || into != null && into.item.kind() == ItemKind.PROBE);
    }
}
