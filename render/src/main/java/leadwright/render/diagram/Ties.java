package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.device.Device;
import leadwright.planner.Plan;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Reading;

/**
 * Jacks that the tester ties for the readings of one hookup.
 *
 * @param name a letter
 * @param jacks at least two, ascending
 * @param purposes what is read with them tied
 */
record Ties(String name, List<Integer> jacks, List<String> purposes) {

    /** The sets that are tied, each once; those that are merely all jacks but one are left to {@link #others}. */
    static List<Ties> of(Plan plan, Hookup hookup) {
        Map<List<Integer>, Set<String>> found = new LinkedHashMap<>();
        for (Reading reading : taken(plan, hookup)) {
            Demand demand = reading.obligation().demand();
            String what = FramePainter.quantity(plan, reading);
            add(found, jacks(hookup, demand.measured()), what);
            if (!againstOthers(hookup, demand, demand.against())) {
                add(found, jacks(hookup, demand.against()), "other pole, " + what);
            }
            if (!againstOthers(hookup, demand, demand.earthed())) {
                add(found, jacks(hookup, demand.earthed()), Panel.say(plan, "earthed, ") + what);
            }
        }
        List<Ties> ties = new ArrayList<>();
        found.forEach((jacks, what) ->
                ties.add(new Ties(String.valueOf((char) ('A' + ties.size() % 26)), jacks, List.copyOf(what))));
        return ties;
    }

    /** In words, readings of one jack against all the others tied. */
    static List<String> others(Plan plan, Hookup hookup) {
        Set<String> words = new LinkedHashSet<>();
        for (Reading reading : taken(plan, hookup)) {
            Demand demand = reading.obligation().demand();
            String what = FramePainter.quantity(plan, reading);
            if (againstOthers(hookup, demand, demand.against())) {
                words.add("all others as the other pole, " + what);
            }
            if (againstOthers(hookup, demand, demand.earthed())) {
                words.add(Panel.say(plan, "all others earthed, ") + what);
            }
        }
        return List.copyOf(words);
    }

    private static boolean againstOthers(Hookup hookup, Demand demand, SortedSet<String> others) {
        SortedSet<Integer> used = new TreeSet<>();
        hookup.bundles().forEach(bundle -> used.addAll(bundle.jacks()));
        SortedSet<Integer> rest = jacks(hookup, others);
        used.removeAll(jacks(hookup, demand.measured()));
        used.removeAll(jacks(hookup, new TreeSet<>(List.of(Device.TOUCH_PROBE))));
        return rest.size() > 1 && rest.equals(used);
    }

    private static List<Reading> taken(Plan plan, Hookup hookup) {
        return plan.readings().stream()
                .filter(reading -> reading.hookup().equals(Optional.of(hookup.id())))
                .toList();
    }

    private static SortedSet<Integer> jacks(Hookup hookup, SortedSet<String> connections) {
        SortedSet<Integer> jacks = new TreeSet<>();
        for (String connection : connections) {
            hookup.bundleOf(connection).ifPresent(bundle -> jacks.addAll(bundle.jacks()));
        }
        return jacks;
    }

    private static void add(Map<List<Integer>, Set<String>> found, SortedSet<Integer> jacks, String what) {
        if (jacks.size() > 1) {
            found.computeIfAbsent(List.copyOf(jacks), each -> new LinkedHashSet<>())
                    .add(what);
        }
    }

    /** {@code A 1–3 equipment leakage}. */
    String words() {
        return name + " " + Changes.ranges(jacks) + " " + purposes.stream().collect(Collectors.joining(", "));
    }
}
