package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Phase 9a: whether a given number of hookups serves all requirements.
 *
 * <p>Needs: requirements, a bound with its weights. Gives: the hookups, or that there are none. Method: hookup after hookup;
 * the first holds the first requirement that is left and as much as can be added; it must be so heavy that the others can
 * hold what is then left. What was left once and could not be served is not tried again, nor what differs from it by an
 * exchange of twins. Cost: exponential at worst, with a budget. Proof: what fits stays fitting with less, so the hookup of a
 * requirement may be taken to hold all that can be added, and hookups to share no requirement.
 */
final class Partition {

    private final Scene scene;
    private final Fit fit;
    private final Bound bound;
    private final Canon canon;
    private final long mostCases;
    private final Pairs pairs;
    private final BitSet[] apart;
    private final Set<String> dead = new HashSet<>();
    private final List<Draft> chosen = new ArrayList<>();
    private long cases;
    private boolean unknown;

    Partition(Scene scene, Fit fit, Bound bound, Canon canon, Pairs pairs, long mostCases) {
        this.scene = scene;
        this.fit = fit;
        this.bound = bound;
        this.canon = canon;
        this.mostCases = mostCases;
        this.pairs = pairs;
        this.apart = Therapy.apart(scene);
    }

    Optional<List<Draft>> among(int hookups, List<Requirement> requirements) {
        return serve(requirements, hookups) ? Optional.of(List.copyOf(chosen)) : Optional.empty();
    }

    long cases() {
        return cases;
    }

    boolean ended() {
        return cases > mostCases;
    }

    /** Whether some fitting test gave no answer. */
    boolean unknownMet() {
        return unknown;
    }

    private boolean serve(List<Requirement> left, int hookups) {
        if (left.isEmpty()) {
            return true;
        }
        long weight = left.stream().mapToLong(bound::weight).sum();
        if (hookups == 0 || weight > hookups * bound.heaviest() || ended()) {
            return false;
        }
        String state = hookups + ":" + canon.of(left);
        if (dead.contains(state)) {
            return false;
        }
        Requirement pivot = left.stream()
                .max(Comparator.comparingLong(bound::weight)
                        .thenComparingInt(each -> each.all().cardinality())
                        .thenComparingInt(each -> -each.index()))
                .orElseThrow();
        long enough = Math.max(0, weight - (hookups - 1) * bound.heaviest());
        Packs packs = new Packs(
                scene, fit, new Twins(scene, left, apart), left, bound::weight, Optional.of(pairs), mostCases - cases);
        List<Draft> sets = new ArrayList<>(packs.allWith(pivot, enough));
        cases += packs.cases();
        unknown |= packs.unknownMet();
        sets.sort(Comparator.comparingLong((Draft set) ->
                        -set.members().stream().mapToLong(bound::weight).sum())
                .thenComparingInt(set -> -set.members().size()));
        for (Draft set : sets) {
            List<Requirement> rest =
                    left.stream().filter(each -> !set.members().contains(each)).toList();
            chosen.add(set);
            if (serve(rest, hookups - 1)) {
                return true;
            }
            chosen.remove(chosen.size() - 1);
        }
        if (!ended()) {
            dead.add(state);
        }
        return false;
    }
}
