package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
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
 * are in the way; what floats need not be taken off. Cost: hookups² × requirements. Proof: none needed, the number of
 * hookups does not change and each exchange is checked by the same test of service.
 */
final class Alike {
    private final Kit kit;
    private final List<Requirement> requirements;
    private final BiPredicate<Hookup, Requirement> serves;

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
        List<Requirement> own = requirements.stream()
                .filter(each -> serves.test(mine, each))
                .filter(each -> settled.stream().noneMatch(hookup -> !hookup.equals(mine) && serves.test(hookup, each)))
                .toList();
        Optional<Hookup> thinned = thinned(other, own, mine.id());
        if (thinned.isPresent()
                && own.stream().allMatch(each -> serves.test(thinned.get(), each))
                && difference(thinned.get(), other) < nearest(settled, at)) {
            settled.set(at, thinned.get());
        }
    }

    private static boolean touches(Hookup hookup, Set<String> connections) {
        return hookup.chains().stream().anyMatch(chain -> connections.contains(chain.connection()));
    }

    /** The other hookup less every wire that shares a bundle with a set it does not belong to. */
    private static Optional<Hookup> thinned(Hookup other, List<Requirement> own, String id) {
        Set<String> kept = new TreeSet<>();
        other.chains().forEach(chain -> kept.add(chain.connection()));
        Set<String> needed = new HashSet<>();
        for (Requirement each : own) {
            Demand demand = each.demand();
            needed.addAll(demand.all());
            for (Set<String> set : List.of(demand.measured(), demand.against(), demand.earthed())) {
                for (Bundle bundle : other.bundles()) {
                    boolean some = bundle.connections().stream().anyMatch(set::contains);
                    if (some) {
                        bundle.connections().stream()
                                .filter(name -> !set.contains(name))
                                .forEach(kept::remove);
                    }
                }
            }
        }
        if (!kept.containsAll(needed)) {
            return Optional.empty();
        }
        return Optional.of(keep(other, kept, id));
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

    private static int nearest(List<Hookup> settled, int at) {
        int least = Integer.MAX_VALUE;
        for (int i = 0; i < settled.size(); i++) {
            if (i != at) {
                least = Math.min(least, difference(settled.get(at), settled.get(i)));
            }
        }
        return least;
    }

    /** Joints of one hookup and not of the other. */
    private static int difference(Hookup one, Hookup other) {
        Set<String> joints = joints(one);
        Set<String> common = new HashSet<>(joints);
        Set<String> others = joints(other);
        common.retainAll(others);
        return joints.size() + others.size() - 2 * common.size();
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
