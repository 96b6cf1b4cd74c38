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
import leadwright.catalog.device.Device;
import leadwright.planner.Plan;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Reading;

/**
 * Jacks that the tester ties for the readings of one hookup.
 *
 * @param name a letter; empty where no lane is left for a bracket or one jack stands alone: the words alone name the jacks
 * @param lane of its bracket, from the jacks outwards; brackets that do not reach over each other share one
 * @param jacks ascending; one alone only where it is tied to earth, which a bracket could not show
 * @param purposes what is read with them tied
 */
record Ties(String name, int lane, List<Integer> jacks, List<String> purposes) {

    /**
     * The sets that are tied, each once; those that are merely all jacks but one are left to {@link #others}.
     *
     * @param lanes room for brackets side by side
     */
    static List<Ties> of(Plan plan, Hookup hookup, int lanes) {
        Map<List<Integer>, Set<String>> found = new LinkedHashMap<>();
        for (Reading reading : taken(plan, hookup)) {
            Demand demand = reading.obligation().demand();
            String what = FramePainter.quantity(plan, reading);
            add(found, 2, jacks(hookup, demand.measured()), what);
            if (!againstOthers(hookup, demand, demand.against())) {
                add(found, 2, jacks(hookup, demand.against()), "other pole, " + what);
            }
            if (!againstOthers(hookup, demand, demand.earthed())) {
                add(found, 1, jacks(hookup, demand.earthed()), Panel.say(plan, "earthed, ") + what);
            }
        }
        List<Ties> ties = new ArrayList<>();
        List<Ties> single = new ArrayList<>();
        found.forEach((jacks, what) -> {
            if (jacks.size() == 1) {
                single.add(new Ties("", lanes, jacks, List.copyOf(what)));
                return;
            }
            int lane = lane(ties, jacks);
            String letter = String.valueOf((char) ('A' + ties.size() % 26));
            ties.add(new Ties(lane < lanes ? letter : "", lane, jacks, List.copyOf(what)));
        });
        ties.addAll(single);
        return ties;
    }

    /** The first lane in which no bracket stands beside these jacks. */
    private static int lane(List<Ties> ties, List<Integer> jacks) {
        int lane = 0;
        for (int i = 0; i < ties.size(); i++) {
            List<Integer> others = ties.get(i).jacks();
            boolean beside =
                    others.get(0) <= jacks.get(jacks.size() - 1) && jacks.get(0) <= others.get(others.size() - 1);
            if (beside && ties.get(i).lane() == lane) {
                lane++;
                i = -1;
            }
        }
        return lane;
    }

    boolean bracketed() {
        return !name.isEmpty();
    }

    /** In words, readings of one jack against all the others tied. */
    static List<String> others(Plan plan, Hookup hookup) {
        Set<String> poles = new LinkedHashSet<>();
        Set<String> earthed = new LinkedHashSet<>();
        for (Reading reading : taken(plan, hookup)) {
            Demand demand = reading.obligation().demand();
            String what = FramePainter.quantity(plan, reading);
            if (againstOthers(hookup, demand, demand.against())) {
                poles.add(what);
            }
            if (againstOthers(hookup, demand, demand.earthed())) {
                earthed.add(what);
            }
        }
        List<String> words = new ArrayList<>();
        if (!poles.isEmpty()) {
            words.add("all but the one read: other pole, " + String.join(", ", poles));
        }
        if (!earthed.isEmpty()) {
            words.add("all but the one read: " + Panel.say(plan, "earthed, ") + String.join(", ", earthed));
        }
        return words;
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

    private static void add(Map<List<Integer>, Set<String>> found, int least, SortedSet<Integer> jacks, String what) {
        if (jacks.size() >= least) {
            found.computeIfAbsent(List.copyOf(jacks), each -> new LinkedHashSet<>())
                    .add(what);
        }
    }

    /** {@code A 1–3: equipment leakage}. */
    String words() {
        return jacksInWords() + ": " + String.join(", ", purposes);
    }

    private String jacksInWords() {
        // A letter and its jacks stay on one line.
        return (name + " " + Changes.ranges(jacks)).strip().replace(' ', '\u00a0');
    }

    /** All of them, those for the same purposes together: {@code A 1, 2 / B 3, 4: patient leakage}. */
    static List<String> words(List<Ties> ties) {
        Map<List<String>, List<String>> byPurposes = new LinkedHashMap<>();
        ties.forEach(tie -> byPurposes
                .computeIfAbsent(tie.purposes(), each -> new ArrayList<>())
                .add(tie.jacksInWords()));
        List<String> words = new ArrayList<>();
        byPurposes.forEach(
                (purposes, jacks) -> words.add(String.join(" / ", jacks) + ": " + String.join(", ", purposes)));
        return words;
    }
}
