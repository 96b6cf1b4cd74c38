package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;

/**
 * Phase 12: hookups as alike as their demands allow, so that few joints are re-plugged.
 *
 * <p>Needs: the built hookups, and which requirements only one of them serves. Gives: the same number of hookups serving
 * the same. Method: a hookup whose wires all stand in another one as well is replaced by that other one less the wires that
 * are in the way; what floats need not be taken off. Cost: hookups² × what one serves alone. Proof: none needed, the number of
 * hookups does not change and each exchange is checked by the same test of service.
 */
final class Alike {
    private final Kit kit;
    private final List<Requirement> requirements;
    private final BiPredicate<Hookup, Requirement> serves;
    /** By hookup: numbers of the requirements that it serves, and its joints. */
    private final List<BitSet> served = new ArrayList<>();

    private final List<Set<String>> joints = new ArrayList<>();
    private final Map<Requirement, List<Set<String>>> sets = new HashMap<>();

    Alike(Kit kit, List<Requirement> requirements, BiPredicate<Hookup, Requirement> serves) {
        this.kit = kit;
        this.requirements = requirements;
        this.serves = serves;
    }

    List<Hookup> settle(List<Hookup> built, Set<String> neverShared) {
        // Idle jacks that rest earthed leave no room for what must float, and a freed branch may lie bare.
        boolean open = kit.tester()
                .jacks()
                .map(jacks -> jacks.atRest() != AtRest.EARTHED)
                .orElse(false);
        boolean bare = kit.items().stream()
                .anyMatch(item ->
                        item.ends().contains("lab-4mm-plug") || item.ends().contains("lab-4mm-plug-stackable"));
        if (!open || bare) {
            return built;
        }
        List<Hookup> settled = new ArrayList<>(built);
        settled.forEach(each -> {
            served.add(served(each));
            joints.add(joints(each));
        });
        for (int i = 0; i < settled.size(); i++) {
            for (int j = 0; j < settled.size(); j++) {
                if (i != j) {
                    exchange(settled, i, settled.get(j), neverShared);
                }
            }
        }
        return List.copyOf(settled);
    }

    private void exchange(List<Hookup> settled, int at, Hookup other, Set<String> neverShared) {
        Hookup mine = settled.get(at);
        if (touches(mine, neverShared)
                || touches(other, neverShared)
                || mine.earth().isEmpty() != other.earth().isEmpty()) {
            return;
        }
        List<Requirement> own = own(at);
        Optional<Hookup> thinned = thinned(other, own, mine.id());
        if (thinned.isPresent()
                && difference(thinned.get(), other) < nearest(settled, at)
                && own.stream().allMatch(each -> serves.test(thinned.get(), each))) {
            settled.set(at, thinned.get());
            joints.set(at, joints(thinned.get()));
            served.set(at, served(thinned.get()));
        }
    }

    private BitSet served(Hookup hookup) {
        BitSet served = new BitSet();
        for (int r = 0; r < requirements.size(); r++) {
            served.set(r, serves.test(hookup, requirements.get(r)));
        }
        return served;
    }

    /** Requirements that this hookup alone serves. */
    private List<Requirement> own(int at) {
        BitSet own = (BitSet) served.get(at).clone();
        for (int i = 0; i < served.size(); i++) {
            if (i != at) {
                own.andNot(served.get(i));
            }
        }
        return own.stream().mapToObj(requirements::get).toList();
    }

    private static boolean touches(Hookup hookup, Set<String> connections) {
        return hookup.chains().stream().anyMatch(chain -> connections.contains(chain.connection()));
    }

    /** The other hookup less every wire that shares a bundle with a set it does not belong to. */
    private Optional<Hookup> thinned(Hookup other, List<Requirement> own, String id) {
        Set<String> kept = new HashSet<>();
        other.chains().forEach(chain -> kept.add(chain.connection()));
        for (Requirement each : own) {
            for (Set<String> set : sets(each)) {
                for (Bundle bundle : other.bundles()) {
                    if (bundle.connections().stream().anyMatch(set::contains)) {
                        bundle.connections().stream()
                                .filter(name -> !set.contains(name))
                                .forEach(kept::remove);
                    }
                }
            }
        }
        boolean all = own.stream().flatMap(each -> sets(each).stream()).allMatch(kept::containsAll);
        return all ? Optional.of(keep(other, kept, id)) : Optional.empty();
    }

    /** The sets of a requirement's demand, quick to ask. */
    private List<Set<String>> sets(Requirement requirement) {
        Demand demand = requirement.demand();
        return sets.computeIfAbsent(
                requirement,
                key -> List.of(
                        new HashSet<>(demand.measured()),
                        new HashSet<>(demand.against()),
                        new HashSet<>(demand.earthed())));
    }

    private static Hookup keep(Hookup other, Set<String> kept, String id) {
        List<Bundle> bundles = new ArrayList<>();
        for (Bundle bundle : other.bundles()) {
            List<String> connections =
                    bundle.connections().stream().filter(kept::contains).toList();
            if (!connections.isEmpty()) {
                bundles.add(new Bundle(id + ".b" + (bundles.size() + 1), connections, bundle.jacks(), bundle.links()));
            }
        }
        List<Chain> chains = other.chains().stream()
                .filter(chain -> kept.contains(chain.connection()))
                .toList();
        return new Hookup(id, bundles, chains, other.earth());
    }

    private int nearest(List<Hookup> settled, int at) {
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < settled.size(); i++) {
            if (i != at) {
                least = Math.min(least, difference(joints.get(at), joints.get(i)));
            }
        }
        return least;
    }

    /** Joints of one hookup and not of the other. */
    private static int difference(Hookup one, Hookup other) {
        return difference(joints(one), joints(other));
    }

    private static int difference(Set<String> joints, Set<String> others) {
        int common = 0;
        for (String each : joints) {
            common += others.contains(each) ? 1 : 0;
        }
        return joints.size() + others.size() - 2 * common;
    }

    private static Set<String> joints(Hookup hookup) {
        Set<String> joints = new HashSet<>();
        for (Chain chain : hookup.chains()) {
            String from = chain.connection();
            for (String item : chain.items()) {
                joints.add(from + "~" + item);
                from = item;
            }
            joints.add(from + "~" + chain.jack());
        }
        return joints;
    }
}
