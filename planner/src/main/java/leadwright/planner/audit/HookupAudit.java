package leadwright.planner.audit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Output;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.Connectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.NaturalOrder;
import org.jgrapht.Graph;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.graph.DefaultEdge;
import org.jgrapht.graph.SimpleGraph;

/**
 * Rebuilds each hookup as a graph of connections, item instances and jacks and compares what is joined with what the plan
 * says is joined.
 *
 * <p>Method: connected components of the graph of joints. Cost: linear in the joints.
 */
final class HookupAudit {
    private final Plan plan;
    private final RuleSet rules;
    private final Connectors connectors;
    private final Breaches breaches;
    private final Map<String, Connection> connections = new HashMap<>();

    HookupAudit(Plan plan, RuleSet rules, Connectors connectors, Breaches breaches) {
        this.plan = plan;
        this.rules = rules;
        this.connectors = connectors;
        this.breaches = breaches;
        plan.device().connections().forEach(each -> connections.put(each.name(), each));
        connections.put(
                Device.TOUCH_PROBE,
                new Connection(
                        Device.TOUCH_PROBE,
                        Connection.Kind.TOUCH_PROBE,
                        Device.TOUCH_PROBE,
                        Device.TOUCH_PROBE,
                        "metal",
                        Optional.empty()));
    }

    void run() {
        Set<String> ids = new HashSet<>();
        for (Hookup hookup : plan.hookups()) {
            breaches.check(ids.add(hookup.id()), Invariant.BUNDLE_JOINED, hookup.id(), "two hookups of one name");
            items(hookup);
            chains(hookup);
            graph(hookup);
            therapyAlone(hookup);
        }
    }

    private Optional<KitItem> item(String instance) {
        int slash = instance.lastIndexOf('/');
        return slash < 0 ? Optional.empty() : plan.kit().item(instance.substring(0, slash));
    }

    private void items(Hookup hookup) {
        List<String> used = new ArrayList<>();
        Map<String, String> next = new HashMap<>();
        for (Chain chain : hookup.chains()) {
            for (int i = 0; i < chain.items().size(); i++) {
                String instance = chain.items().get(i);
                String onward = i + 1 < chain.items().size() ? chain.items().get(i + 1) : "jack-" + chain.jack();
                String before = next.putIfAbsent(instance, onward);
                boolean gathers = gathers(instance);
                if (before != null) {
                    breaches.check(
                            before.equals(onward),
                            Invariant.ITEM_ONCE,
                            hookup.id(),
                            instance + " leads to " + before + " and to " + onward);
                }
                if (before == null || !(gathers || sharedAfterGathering(hookup, instance))) {
                    used.add(instance);
                }
            }
        }
        hookup.bundles().forEach(bundle -> used.addAll(bundle.links()));
        hookup.earth().forEach(path -> used.addAll(path.items()));
        Set<String> seen = new HashSet<>();
        for (String instance : used) {
            breaches.check(seen.add(instance), Invariant.ITEM_ONCE, hookup.id(), instance + " is used twice");
            Optional<KitItem> item = item(instance);
            if (item.isEmpty()) {
                breaches.add(Invariant.ITEM_KNOWN, hookup.id(), instance + " is not in the kit");
                continue;
            }
            breaches.check(
                    number(instance) >= 1 && number(instance) <= item.get().stock(),
                    Invariant.STOCK,
                    hookup.id(),
                    instance + " while the kit has " + item.get().stock());
        }
    }

    /** A fan-out gathers chains on its branches, a stackable plug one more in its back. */
    private boolean gathers(String instance) {
        return item(instance)
                .map(item -> item.kind() == ItemKind.FAN_OUT || item.ends().contains("lab-4mm-plug-stackable"))
                .orElse(false);
    }

    /** An item between what gathers chains and the jack serves all of them. */
    private boolean sharedAfterGathering(Hookup hookup, String instance) {
        return hookup.chains().stream()
                        .filter(chain -> chain.items().contains(instance))
                        .filter(chain -> chain.items().subList(0, chain.items().indexOf(instance)).stream()
                                .noneMatch(this::gathers))
                        .count()
                <= 1;
    }

    private static int number(String instance) {
        try {
            return Integer.parseInt(instance.substring(instance.lastIndexOf('/') + 1));
        } catch (NumberFormatException e) {
            return -1;
        }
    }

    private void chains(Hookup hookup) {
        Jacks jacks = plan.kit().tester().jacks().orElse(null);
        Set<String> wired = new HashSet<>();
        for (Chain chain : hookup.chains()) {
            String where = hookup.id() + " " + chain.connection();
            breaches.check(wired.add(chain.connection()), Invariant.BUNDLE_JOINED, where, "has two chains");
            Connection connection = connections.get(chain.connection());
            if (connection == null) {
                breaches.add(Invariant.CONNECTION_KNOWN, where, "is no connection of the device");
                continue;
            }
            if (jacks == null || chain.jack() < 1 || chain.jack() > jacks.count()) {
                breaches.add(Invariant.JACK_KNOWN, where, "the tester has no jack " + chain.jack());
                continue;
            }
            breaches.check(
                    chain.contacts() == chain.items().size() + 1,
                    Invariant.CONTACTS,
                    where,
                    "says " + chain.contacts() + " contacts for "
                            + chain.items().size() + " items");
            List<KitItem> items = new ArrayList<>();
            chain.items().forEach(instance -> item(instance).ifPresent(items::add));
            if (items.size() == chain.items().size()) {
                String terminal = connection.kind() == Connection.Kind.TOUCH_PROBE ? "metal" : connection.terminal();
                new ChainMating(connectors)
                        .fault(terminal, items, jacks.socket())
                        .ifPresent(what -> breaches.add(Invariant.MATING, where, what));
                reach(connection, items, where);
            }
        }
        for (EarthPath path : hookup.earth()) {
            new EarthAudit(plan, rules, connectors, breaches).path(hookup, path);
        }
    }

    private void reach(Connection connection, List<KitItem> items, String where) {
        if (connection.kind() == Connection.Kind.HOUSING) {
            long length = items.stream()
                    .mapToLong(item -> item.length().map(each -> each.amount()).orElse(0L))
                    .sum();
            long distance = EarthAudit.distance(plan.device(), connection.part(), 0);
            breaches.check(
                    5 * length >= 6 * distance,
                    Invariant.REACH,
                    where,
                    "the chain is shorter than 1.2 x " + distance / 1000 + " mm");
        }
        plan.device()
                .part(connection.part())
                .ifPresent(part -> part.distance().ifPresent(distance -> {
                    long length = part.cable().map(cable -> cable.amount()).orElse(0L)
                            + items.stream()
                                    .mapToLong(item -> item.length()
                                            .map(each -> each.amount())
                                            .orElse(0L))
                                    .sum();
                    breaches.check(
                            5 * length >= 6 * distance.amount(),
                            Invariant.REACH,
                            where,
                            "cable and chain are shorter than 1.2 x " + distance.text());
                }));
    }

    private void graph(Hookup hookup) {
        Graph<String, DefaultEdge> graph = new SimpleGraph<>(DefaultEdge.class);
        Map<String, Integer> deviceSide = new HashMap<>();
        for (Joint joint : Joints.ofLeads(hookup, plan.kit())) {
            graph.addVertex(joint.from());
            graph.addVertex(joint.to());
            graph.addEdge(joint.from(), joint.to());
            deviceSide.merge(joint.to(), 1, Integer::sum);
        }
        for (Chain chain : hookup.chains()) {
            // The touch probe's own place is touched, not joined, but the probe belongs to its bundle.
            if (chain.connection().equals(Device.TOUCH_PROBE) && !chain.items().isEmpty()) {
                graph.addVertex(chain.connection());
                graph.addEdge(chain.connection(), chain.items().get(0));
            }
        }
        deviceSide.forEach((node, count) -> places(hookup, node, count));
        List<Set<String>> components = new ConnectivityInspector<>(graph).connectedSets();
        Set<String> joined = components.stream().map(this::describe).collect(Collectors.toCollection(TreeSet::new));
        Set<String> said = hookup.bundles().stream()
                .map(bundle -> describe(bundle.connections(), bundle.jacks()))
                .collect(Collectors.toCollection(TreeSet::new));
        breaches.check(
                joined.equals(said), Invariant.BUNDLE_JOINED, hookup.id(), "joined " + joined + ", said " + said);
        Set<Integer> jacks = new HashSet<>();
        hookup.bundles()
                .forEach(bundle -> bundle.jacks()
                        .forEach(jack -> breaches.check(
                                jacks.add(jack), Invariant.JACK_SHARED, hookup.id(), "two bundles on jack " + jack)));
    }

    private void places(Hookup hookup, String node, int count) {
        if (node.startsWith("jack-") && item(node).isEmpty()) {
            long stackable = hookup.chains().stream()
                    .filter(chain -> ("jack-" + chain.jack()).equals(node)
                            && !chain.items().isEmpty())
                    .map(chain -> chain.items().get(chain.items().size() - 1))
                    .distinct()
                    .filter(instance -> item(instance)
                            .map(item -> item.ends().contains("lab-4mm-plug-stackable"))
                            .orElse(false))
                    .count();
            breaches.check(count <= 1 + stackable, Invariant.JACK_CROWDED, hookup.id(), count + " plugs in " + node);
            return;
        }
        item(node).ifPresent(item -> {
            int places = item.kind() == ItemKind.FAN_OUT ? item.branches() : 1;
            int rear = item.ends().contains("lab-4mm-plug-stackable") ? 1 : 0;
            breaches.check(
                    count <= places + rear,
                    Invariant.BRANCHES,
                    hookup.id(),
                    node + " takes " + places + " and has " + count);
        });
    }

    private String describe(Set<String> component) {
        List<String> names = component.stream().filter(connections::containsKey).toList();
        List<Integer> jacks = component.stream()
                .filter(node -> node.startsWith("jack-") && item(node).isEmpty())
                .map(node -> Integer.valueOf(node.substring(5)))
                .toList();
        return describe(names, jacks);
    }

    private static String describe(List<String> names, List<Integer> jacks) {
        TreeSet<String> sorted = new TreeSet<>(NaturalOrder.IDS);
        sorted.addAll(names);
        return sorted + "@" + new TreeSet<>(jacks);
    }

    private void therapyAlone(Hookup hookup) {
        for (Output output : plan.device().outputs()) {
            if (output.mayShare().isPresent()) {
                continue;
            }
            Set<String> own = Therapy.connections(plan.device(), output);
            boolean present = hookup.chains().stream().anyMatch(chain -> own.contains(chain.connection()));
            boolean other = hookup.chains().stream()
                    .map(chain -> connections.get(chain.connection()))
                    .anyMatch(connection -> connection != null
                            && connection.kind() == Connection.Kind.PATIENT
                            && !own.contains(connection.name()));
            breaches.check(
                    !(present && other),
                    Invariant.THERAPY_ALONE,
                    hookup.id(),
                    "therapy output " + output.id() + " shares the hookup with other parts");
        }
    }
}
