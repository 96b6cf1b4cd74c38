package leadwright.planner.mistake;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The cheapest proof steps that show everything that can be shown.
 *
 * <p>Needs: proof steps with seconds and what each shows. Gives: a set of them with the fewest seconds that shows all that any of them
 * shows; of equals the one with fewer steps, then the earlier ones. Method: slips that the same steps show are one; then branching on
 * the slip that fewest steps show, with the seconds so far as the bound. Cost: at worst exponential in the steps, of which a
 * hookup has few that compete. Proof: exhaustive but for branches that cost as much as the best found.
 */
final class Cover {
    private final List<ProofStep> steps;
    private final List<BitSet> showers = new ArrayList<>();
    private List<Integer> best = List.of();
    private long bestCost = Long.MAX_VALUE;

    private Cover(List<ProofStep> steps) {
        this.steps = steps;
        Map<String, BitSet> byWhom = new HashMap<>();
        for (int i = 0; i < steps.size(); i++) {
            for (String slip : steps.get(i).exposes()) {
                byWhom.computeIfAbsent(slip, each -> new BitSet()).set(i);
            }
        }
        showers.addAll(new LinkedHashSet<>(byWhom.values()));
        // A slip that more steps show than another needs no asking: whoever shows the other shows it.
        showers.removeIf(many -> showers.stream().anyMatch(few -> few != many && within(few, many)));
        showers.sort(Comparator.comparingInt(BitSet::cardinality).thenComparing(BitSet::toString));
    }

    private static boolean within(BitSet few, BitSet many) {
        BitSet rest = (BitSet) few.clone();
        rest.andNot(many);
        return rest.isEmpty() && !few.equals(many);
    }

    /** In the order given. */
    static List<ProofStep> cheapest(List<ProofStep> steps) {
        List<ProofStep> chosen = new ArrayList<>();
        for (List<ProofStep> competing : apart(steps)) {
            Cover cover = new Cover(competing);
            cover.branch(new BitSet(), 0, 0);
            cover.best.forEach(each -> chosen.add(competing.get(each)));
        }
        return steps.stream().filter(chosen::contains).toList();
    }

    /** Steps that show no slip in common do not compete. */
    private static List<List<ProofStep>> apart(List<ProofStep> steps) {
        List<List<ProofStep>> groups = new ArrayList<>();
        for (ProofStep step : steps) {
            List<ProofStep> own = new ArrayList<>();
            for (List<ProofStep> group : List.copyOf(groups)) {
                if (group.stream().anyMatch(each -> !Collections.disjoint(each.exposes(), step.exposes()))) {
                    groups.remove(group);
                    own.addAll(group);
                }
            }
            own.add(step);
            groups.add(own);
        }
        return groups;
    }

    /** Seconds first, then the number of steps. */
    private void branch(BitSet taken, long cost, int from) {
        if (cost >= bestCost) {
            return;
        }
        int open = from;
        while (open < showers.size() && showers.get(open).intersects(taken)) {
            open++;
        }
        if (open == showers.size()) {
            bestCost = cost;
            best = taken.stream().boxed().toList();
            return;
        }
        BitSet candidates = showers.get(open);
        for (int i = candidates.nextSetBit(0); i >= 0; i = candidates.nextSetBit(i + 1)) {
            BitSet more = (BitSet) taken.clone();
            more.set(i);
            branch(more, cost + 1000L * steps.get(i).seconds() + 1, open + 1);
        }
    }

    /** Seconds of a set of steps. */
    static int seconds(List<ProofStep> steps) {
        return steps.stream().mapToInt(ProofStep::seconds).sum();
    }

    /** All that some step shows. */
    static Set<String> shown(List<ProofStep> steps) {
        Set<String> shown = new LinkedHashSet<>();
        steps.forEach(each -> shown.addAll(each.exposes()));
        return shown;
    }
}
