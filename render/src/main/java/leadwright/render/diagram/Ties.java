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
import leadwright.planner.Plan;
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

    static List<Ties> of(Plan plan, Hookup hookup) {
        Map<List<Integer>, Set<String>> found = new LinkedHashMap<>();
        for (Reading reading : plan.readings()) {
            if (!reading.hookup().equals(Optional.of(hookup.id()))) {
                continue;
            }
            String what = FramePainter.quantity(plan, reading);
            add(found, hookup, reading.obligation().demand().measured(), what);
            add(found, hookup, reading.obligation().demand().against(), "other pole, " + what);
            add(found, hookup, reading.obligation().demand().earthed(), Panel.say(plan, "earthed, ") + what);
        }
        List<Ties> ties = new ArrayList<>();
        found.forEach((jacks, what) ->
                ties.add(new Ties(String.valueOf((char) ('A' + ties.size() % 26)), jacks, List.copyOf(what))));
        return ties;
    }

    private static void add(
            Map<List<Integer>, Set<String>> found, Hookup hookup, SortedSet<String> connections, String what) {
        SortedSet<Integer> jacks = new TreeSet<>();
        for (String connection : connections) {
            hookup.bundleOf(connection).ifPresent(bundle -> jacks.addAll(bundle.jacks()));
        }
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
