package leadwright.planner.order;

import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Hookup;

/**
 * Seconds of plugging between hookups, counted as the order of hookups counts them, for who ranks wirings before they are
 * ordered. The earth lead is left out. Answers are kept by the hookup's identity.
 */
public final class Replugging {
    private final Scene scene;
    private final Map<Hookup, Plugs> known = new IdentityHashMap<>();
    private final Map<Hookup, Map<Hookup, Integer>> counted = new IdentityHashMap<>();
    private final Map<String, Integer> kinds = new HashMap<>();

    /**
     * Joints of a hookup, instances not told apart: sorted numbers of kinds of joint, how many of each, and their seconds.
     */
    private record Plugs(
            List<Contact> contacts, int[] kind, int[] count, int[] join, int[] part, int joins, int parts) {}

    public Replugging(Device device, Kit kit, House house, Connectors connectors) {
        this.scene = Scene.of(device, kit, house, connectors);
    }

    /** Seconds of setting this hookup up. */
    public int first(Hookup hookup) {
        return Replugs.replug(List.of(), plugs(hookup).contacts(), scene).seconds();
    }

    /** Seconds of coming from one hookup to another, like instances paired for the least. */
    public int between(Hookup from, Hookup to) {
        return counted.computeIfAbsent(from, key -> new IdentityHashMap<>())
                .computeIfAbsent(
                        to,
                        key -> Replugs.replug(plugs(from).contacts(), plugs(to).contacts(), scene)
                                .seconds());
    }

    /** No more than {@link #first}, found quickly: without the wait of therapy outputs. */
    public int atLeast(Hookup hookup) {
        return plugs(hookup).joins();
    }

    /**
     * No more than {@link #between}, found quickly: joints of like kinds count as kept even where no pairing of instances
     * keeps them all.
     */
    public int atLeast(Hookup from, Hookup to) {
        Plugs one = plugs(from);
        Plugs other = plugs(to);
        int seconds = one.parts() + other.joins();
        int b = 0;
        for (int a = 0; a < one.kind().length; a++) {
            while (b < other.kind().length && other.kind()[b] < one.kind()[a]) {
                b++;
            }
            if (b < other.kind().length && other.kind()[b] == one.kind()[a]) {
                seconds -= Math.min(one.count()[a], other.count()[b]) * (one.part()[a] + other.join()[b]);
            }
        }
        return seconds;
    }

    private Plugs plugs(Hookup hookup) {
        return known.computeIfAbsent(hookup, key -> counted(Arrangement.ofLeads(key, scene)));
    }

    private Plugs counted(List<Contact> contacts) {
        Map<Integer, int[]> sums = new TreeMap<>();
        int joins = 0;
        int parts = 0;
        for (Contact each : contacts) {
            String name = Scene.kind(each.from()) + " " + Scene.kind(each.to());
            int[] sum = sums.computeIfAbsent(kinds.computeIfAbsent(name, key -> kinds.size()), key -> new int[3]);
            sum[0]++;
            sum[1] = Math.max(sum[1], each.join());
            sum[2] = Math.max(sum[2], each.part());
            joins += each.join();
            parts += each.part();
        }
        return new Plugs(
                contacts,
                sums.keySet().stream().mapToInt(Integer::intValue).toArray(),
                column(sums, 0),
                column(sums, 1),
                column(sums, 2),
                joins,
                parts);
    }

    private static int[] column(Map<Integer, int[]> sums, int column) {
        return sums.values().stream().mapToInt(sum -> sum[column]).toArray();
    }
}
