package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.PriorityQueue;
import java.util.Set;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;

/**
 * The fewest crossings as {@link FewestCrossings} seeks them, where besides no wire bends more than twice: between the ends of a
 * line it changes its height once at most. Read from left to right such a drawing is a sequence of single lines that leap over
 * neighbours, none twice, and of fan-outs that gather what lies together, at once or later. A shortest way through all such
 * sequences; it shares nothing with what lays the drawings out.
 *
 * <p>Neighbouring lines to one fan-out that all may still leap, or of which none may, are one strand: what is cheapest for one
 * of them is open to all and cheapest for all.
 */
final class FewestOnce {
    private final Map<String, List<String>> outs;
    private final Map<State, Integer> known = new HashMap<>();
    private final PriorityQueue<Reached> queue =
            new PriorityQueue<>((a, b) -> Integer.compare(a.crossings(), b.crossings()));
    private final int below;

    /** @param leapt whether its lines have changed their height */
    private record Strand(String to, int lines, boolean leapt) {}

    private record State(List<Strand> strands) {}

    private record Reached(State state, int crossings) {}

    /** @param found the fewest, if fewer than asked for; @param decided whether all was looked at */
    record Answer(OptionalInt found, boolean decided) {}

    private FewestOnce(Map<String, List<String>> outs, int below) {
        this.outs = outs;
        this.below = below;
    }

    /**
     * Whether it can be done with fewer crossings than a number.
     *
     * @param most states that are looked at before it gives up
     */
    static Answer fewerThan(int below, Plan plan, Panel panel, Hookup hookup, int most) {
        FewestCrossings.Asked asked = FewestCrossings.asked(plan, panel, hookup);
        List<Strand> start =
                asked.ends().stream().map(end -> new Strand(end, 1, false)).toList();
        return new FewestOnce(asked.outs(), below).run(start, most);
    }

    private Answer run(List<Strand> start, int most) {
        reach(start, 0);
        int looked = 0;
        while (!queue.isEmpty()) {
            Reached next = queue.remove();
            if (next.crossings() > known.get(next.state())) {
                continue;
            }
            List<Strand> strands = next.state().strands();
            if (done(strands)) {
                return new Answer(OptionalInt.of(next.crossings()), true);
            }
            if (looked++ == most) {
                return new Answer(OptionalInt.empty(), false);
            }
            gather(strands, next.crossings());
            leap(strands, next.crossings());
        }
        return new Answer(OptionalInt.empty(), true);
    }

    private void reach(List<Strand> strands, int crossings) {
        State state = new State(merged(strands));
        if (crossings < below && crossings < known.getOrDefault(state, Integer.MAX_VALUE)) {
            known.put(state, crossings);
            queue.add(new Reached(state, crossings));
        }
    }

    private static List<Strand> merged(List<Strand> strands) {
        List<Strand> merged = new ArrayList<>();
        for (Strand each : strands) {
            int last = merged.size() - 1;
            boolean same = last >= 0
                    && merged.get(last).to().equals(each.to())
                    && merged.get(last).leapt() == each.leapt();
            if (same) {
                merged.set(last, new Strand(each.to(), merged.get(last).lines() + each.lines(), each.leapt()));
            } else {
                merged.add(each);
            }
        }
        return List.copyOf(merged);
    }

    /** Lets one strand leap over one neighbour after another, up and down. */
    private void leap(List<Strand> strands, int crossings) {
        for (int i = 0; i < strands.size(); i++) {
            Strand one = strands.get(i);
            for (int by : one.leapt() ? new int[0] : new int[] {-1, 1}) {
                List<Strand> now = new ArrayList<>(strands);
                now.set(i, new Strand(one.to(), one.lines(), true));
                int sum = crossings;
                for (int at = i; at + by >= 0 && at + by < now.size(); at += by) {
                    Strand other = now.get(at + by);
                    sum += one.lines() * other.lines();
                    now.set(at + by, now.get(at));
                    now.set(at, other);
                    reach(now, sum);
                }
            }
        }
    }

    /** Each fan-out that has all its lines together may gather them. */
    private void gather(List<Strand> strands, int crossings) {
        Set<String> ahead = new HashSet<>();
        strands.forEach(strand -> further(strand.to(), ahead));
        for (String box : outs.keySet()) {
            int first = -1;
            int last = -1;
            int count = 0;
            for (int i = 0; i < strands.size(); i++) {
                if (strands.get(i).to().equals(box)) {
                    first = first < 0 ? i : first;
                    last = i;
                    count++;
                }
            }
            if (count > 0 && last - first == count - 1 && !ahead.contains(box)) {
                List<Strand> now = new ArrayList<>(strands.subList(0, first));
                outs.get(box).stream().sorted().forEach(to -> now.add(new Strand(to, 1, false)));
                now.addAll(strands.subList(last + 1, strands.size()));
                reach(now, crossings);
            }
        }
    }

    private void further(String end, Set<String> found) {
        for (String next : outs.getOrDefault(end, List.of())) {
            if (found.add(next)) {
                further(next, found);
            }
        }
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
}
