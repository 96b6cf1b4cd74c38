package leadwright.planner.wire;

import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.kit.KitItem;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/**
 * Phase 11a: whether the items of a hookup, as it is wired, may carry a requirement's readings.
 *
 * <p>Needs: a hookup and a bench for the duty. Gives: yes or no. Method: every present chain's items are rated, every joint
 * keeps what the duty asks for, no end that must be filled is free, the measured chains keep to a hard limit on capacitance.
 * Cost: linear in the joints.
 */
final class Rated {
    private final Scene scene;
    private final Bench bench;
    private final Hookup hookup;
    private final Map<String, Leaf> leaves = new HashMap<>();
    private final Map<Part, Set<Part.Inlet>> inlets = new IdentityHashMap<>();
    private Optional<Boolean> sound = Optional.empty();

    Rated(Scene scene, Bench bench, Hookup hookup) {
        this.scene = scene;
        this.bench = bench;
        this.hookup = hookup;
        for (int e = 0; e < scene.leaves().size(); e++) {
            leaves.put(scene.name(e), scene.leaves().get(e));
        }
    }

    boolean carries(Requirement requirement) {
        if (sound.isEmpty()) {
            sound = Optional.of(isSound());
        }
        return sound.get() && withinCapacitance(requirement);
    }

    /** What depends on the hookup and the duty alone. */
    private boolean isSound() {
        Map<String, Set<String>> taken = new HashMap<>();
        for (Chain chain : hookup.chains()) {
            if (!chainMates(chain)) {
                return false;
            }
            String from = chain.connection();
            for (String instance : chain.items()) {
                taken.computeIfAbsent(instance, key -> new HashSet<>()).add(from);
                from = instance;
            }
        }
        hookup.bundles()
                .forEach(bundle -> bundle.links()
                        .forEach(link -> taken.computeIfAbsent(link, key -> new HashSet<>())
                                .add("link")));
        return taken.entrySet().stream()
                .allMatch(each -> full(each.getKey(), each.getValue().size()));
    }

    private boolean chainMates(Chain chain) {
        Leaf leaf = leaves.get(chain.connection());
        Set<String> offered = new HashSet<>();
        for (int i = 0; i < chain.items().size(); i++) {
            KitItem item = item(chain.items().get(i));
            Set<String> onward = new HashSet<>();
            for (Part part : bench.parts()) {
                if (!part.item().equals(item)) {
                    continue;
                }
                for (Part.Inlet inlet : inlets(part)) {
                    boolean joined = i == 0
                            ? bench.takes(leaf, part, inlet)
                            : offered.stream().anyMatch(end -> bench.mates(end, inlet.end()));
                    if (joined) {
                        onward.add(part.out());
                    }
                }
            }
            offered = onward;
        }
        return chain.items().isEmpty()
                ? bench.mates(leaf.terminal(), scene.jackSocket())
                : offered.stream().anyMatch(end -> bench.mates(end, scene.jackSocket()));
    }

    /** Each kind of inlet once: a wide fan-out has hundreds that are alike. */
    private Set<Part.Inlet> inlets(Part part) {
        return inlets.computeIfAbsent(part, key -> new LinkedHashSet<>(part.inlets()));
    }

    private boolean full(String instance, int used) {
        KitItem item = item(instance);
        return bench.parts().stream()
                .filter(part -> part.item().equals(item))
                .anyMatch(part ->
                        part.inlets().size() == used || part.inlets().stream().noneMatch(Part.Inlet::fill));
    }

    private boolean withinCapacitance(Requirement requirement) {
        if (requirement.capacitance().isEmpty()) {
            return true;
        }
        return measuredFemtofarads(requirement) <= requirement.capacitance().getAsLong();
    }

    /** Sum over the items of the measured chains, each once; a stand-in for infinity where one does not state it. */
    long measuredFemtofarads(Requirement requirement) {
        return measured(requirement).stream()
                .mapToLong(item -> Capacitance.known(item) ? Capacitance.of(item) : Option.UNKNOWN_CAPACITANCE)
                .sum();
    }

    /** Length of the items of the measured chains, each once; micrometres. */
    long measuredMicrometres(Requirement requirement) {
        return measured(requirement).stream().mapToLong(Bench::length).sum();
    }

    /** Femtofarads of those of them that state it. */
    long knownFemtofarads(Requirement requirement) {
        return measured(requirement).stream()
                .filter(Capacitance::known)
                .mapToLong(Capacitance::of)
                .sum();
    }

    /** Items of the measured chains and of the links of their bundles, one entry an instance. */
    private List<KitItem> measured(Requirement requirement) {
        Set<String> instances = new HashSet<>();
        hookup.chains().stream()
                .filter(chain -> requirement.demand().measured().contains(chain.connection()))
                .forEach(chain -> instances.addAll(chain.items()));
        hookup.bundles().stream()
                .filter(bundle -> bundle.connections().stream()
                        .anyMatch(requirement.demand().measured()::contains))
                .forEach(bundle -> instances.addAll(bundle.links()));
        return instances.stream().map(this::item).toList();
    }

    /** Items of the measured chains that state a length and no capacitance. */
    List<String> unknownCapacitance(Requirement requirement) {
        return measured(requirement).stream()
                .filter(item -> !Capacitance.known(item))
                .map(KitItem::id)
                .distinct()
                .sorted(leadwright.planner.plan.NaturalOrder.IDS)
                .toList();
    }

    private KitItem item(String instance) {
        return scene.kit()
                .item(instance.substring(0, instance.lastIndexOf('/')))
                .orElseThrow();
    }
}
