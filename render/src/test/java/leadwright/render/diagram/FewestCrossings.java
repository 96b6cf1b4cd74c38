package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.kit.ItemKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/**
 * The fewest crossings with which a hookup can be drawn from left to right when its pins stand in a given order: the cheapest way,
 * among all, of exchanging neighbouring lines until every fan-out has gathered what it holds and the jacks stand in their order.
 * A shortest way through the orders of the lines (Dijkstra's method); it shares nothing with what lays the drawings out.
 *
 * <p>Lines to one fan-out that lie together are one strand as heavy as their number: exchanging two strands crosses every line of
 * one with every line of the other. Strands of one fan-out never gain by parting, since what is cheapest for one line of a strand
 * is cheapest for all of them.
 */
final class FewestCrossings {
    private final Map<String, List<String>> outs = new HashMap<>();
    private final int most;

    /** Lines that lie together and go to the same end. */
    private record Strand(String to, int lines) {}

    private record State(List<Strand> strands, int crossings) {}

    private FewestCrossings(int most) {
        this.most = most;
    }

    /**
     * @param most orders that are looked at before it gives up
     * @return nothing where it gave up
     */
    static OptionalInt of(Plan plan, Panel panel, Hookup hookup, int most) {
        FewestCrossings search = new FewestCrossings(most);
        return search.run(search.read(plan, panel, hookup));
    }

    /** What a hookup asks for: the lines from the pins in their order, and what leaves each fan-out; sockets begin with a tilde. */
    record Asked(List<String> ends, Map<String, List<String>> outs) {}

    static Asked asked(Plan plan, Panel panel, Hookup hookup) {
        FewestCrossings reader = new FewestCrossings(0);
        List<Strand> strands = reader.read(plan, panel, hookup);
        return new Asked(strands.stream().map(Strand::to).toList(), reader.outs);
    }

    private List<Strand> read(Plan plan, Panel panel, Hookup hookup) {
        Map<String, Set<String>> users = new LinkedHashMap<>();
        for (Chain chain : hookup.chains()) {
            String from = chain.connection();
            for (String item : chain.items()) {
                users.computeIfAbsent(item, each -> new HashSet<>()).add(from);
                from = item;
            }
        }
        Set<String> boxes = users.keySet().stream()
                .filter(item -> users.get(item).size() > 1
                        || plan.kit()
                                .item(Net.kind(item))
                                .filter(each -> each.kind() == ItemKind.FAN_OUT)
                                .isPresent())
                .collect(Collectors.toCollection(LinkedHashSet::new));
        List<Strand> strands = new ArrayList<>();
        for (Panel.Pin pin : panel.pins()) {
            hookup.chainOf(pin.id()).ifPresent(chain -> {
                List<String> ends = new ArrayList<>(
                        chain.items().stream().filter(boxes::contains).toList());
                ends.add(jack(chain.jack()));
                strands.add(new Strand(ends.get(0), 1));
                for (int i = 0; i + 1 < ends.size(); i++) {
                    outs.put(ends.get(i), new ArrayList<>(List.of(ends.get(i + 1))));
                }
            });
        }
        // A link is one more line out of the bundle's last fan-out.
        hookup.bundles().stream().filter(bundle -> !bundle.links().isEmpty()).forEach(bundle -> {
            Chain chain = hookup.chainOf(bundle.connections().get(0)).orElseThrow();
            List<String> own = chain.items().stream().filter(boxes::contains).toList();
            bundle.jacks().stream()
                    .filter(jack -> jack != chain.jack())
                    .forEach(jack -> outs.get(own.get(own.size() - 1)).add(jack(jack)));
        });
        return strands;
    }

    private static String jack(int number) {
        return String.format("~%03d", number);
    }

    private OptionalInt run(List<Strand> start) {
        Map<List<Strand>, Integer> known = new HashMap<>();
        PriorityQueue<State> queue = new PriorityQueue<>((a, b) -> Integer.compare(a.crossings(), b.crossings()));
        List<Strand> first = gathered(start);
        known.put(first, 0);
        queue.add(new State(first, 0));
        while (!queue.isEmpty() && known.size() < most) {
            State state = queue.remove();
            if (state.crossings() > known.get(state.strands())) {
                continue;
            }
            if (done(state.strands())) {
                return OptionalInt.of(state.crossings());
            }
            for (int i = 0; i + 1 < state.strands().size(); i++) {
                Strand above = state.strands().get(i);
                Strand below = state.strands().get(i + 1);
                List<Strand> next = new ArrayList<>(state.strands());
                next.set(i, below);
                next.set(i + 1, above);
                next = gathered(next);
                int crossings = state.crossings() + above.lines() * below.lines();
                if (crossings < known.getOrDefault(next, Integer.MAX_VALUE)) {
                    known.put(next, crossings);
                    queue.add(new State(next, crossings));
                }
            }
        }
        return OptionalInt.empty();
    }

    private static boolean done(List<Strand> strands) {
        for (int i = 0; i < strands.size(); i++) {
            boolean jack = strands.get(i).to().startsWith("~");
            if (!jack
                    || i > 0 && strands.get(i - 1).to().compareTo(strands.get(i).to()) > 0) {
                return false;
            }
        }
        return true;
    }

    /** Neighbours with one end made one strand, and every fan-out that has all its lines replaced by what leaves it. */
    private List<Strand> gathered(List<Strand> strands) {
        List<Strand> now = strands;
        while (true) {
            List<Strand> merged = new ArrayList<>();
            for (Strand each : now) {
                int last = merged.size() - 1;
                if (last >= 0 && merged.get(last).to().equals(each.to())) {
                    merged.set(last, new Strand(each.to(), merged.get(last).lines() + each.lines()));
                } else {
                    merged.add(each);
                }
            }
            Set<String> ahead = new HashSet<>();
            merged.forEach(strand -> ahead.addAll(further(strand.to())));
            List<Strand> next = new ArrayList<>();
            for (Strand each : merged) {
                boolean whole = outs.containsKey(each.to())
                        && !ahead.contains(each.to())
                        && merged.stream()
                                        .filter(other -> other.to().equals(each.to()))
                                        .count()
                                == 1;
                if (whole) {
                    outs.get(each.to()).stream().sorted().forEach(to -> next.add(new Strand(to, 1)));
                } else {
                    next.add(each);
                }
            }
            if (next.equals(now)) {
                return List.copyOf(next);
            }
            now = next;
        }
    }

    /** Fan-outs that a strand still comes to behind the one where it ends. */
    private Set<String> further(String end) {
        Set<String> further = new HashSet<>();
        List<String> open = new ArrayList<>(outs.getOrDefault(end, List.of()));
        while (!open.isEmpty()) {
            String next = open.remove(open.size() - 1);
            if (further.add(next)) {
                open.addAll(outs.getOrDefault(next, List.of()));
            }
        }
        return further;
    }
}
