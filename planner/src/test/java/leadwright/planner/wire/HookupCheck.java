package leadwright.planner.wire;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.table.Connector;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.Mating;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;

/**
 * Replays a wiring by its words alone: every item in stock and used once, every joint a joint, every bundle what is really
 * joined, every obligation covered where the wiring says it may be taken.
 */
final class HookupCheck {
    private final Device device;
    private final Kit kit;
    private final Connectors connectors;

    HookupCheck(Device device, Kit kit, Connectors connectors) {
        this.device = device;
        this.kit = kit;
        this.connectors = connectors;
    }

    void check(Wiring wiring, List<Obligation> obligations) {
        Map<String, Hookup> byId = new HashMap<>();
        for (Hookup hookup : wiring.hookups()) {
            byId.put(hookup.id(), hookup);
            check(hookup);
        }
        assertThat(wiring.takenIn().keySet())
                .containsExactlyInAnyOrderElementsOf(
                        obligations.stream().map(Obligation::key).toList());
        for (Obligation each : obligations) {
            List<String> ids = wiring.takenIn().get(each.key());
            assertThat(ids.isEmpty())
                    .as(each.key())
                    .isEqualTo(wiring.uncovered().contains(each.key()));
            for (String id : ids) {
                assertThat(covers(byId.get(id), each))
                        .as(id + " covers " + each.key())
                        .isTrue();
            }
        }
    }

    private KitItem item(String instance) {
        return kit.item(instance.substring(0, instance.indexOf('/'))).orElseThrow();
    }

    private void check(Hookup hookup) {
        Map<String, String> parent = new LinkedHashMap<>();
        Map<String, Integer> lone = new HashMap<>();
        for (Chain chain : hookup.chains()) {
            String from = chain.connection();
            assertThat(chain.contacts()).isEqualTo(chain.items().size() + 1);
            for (String instance : chain.items()) {
                join(parent, from, instance);
                from = instance;
            }
            join(parent, from, "jack-" + chain.jack());
        }
        hookup.earth().forEach(path -> path.items().forEach(each -> lone.merge(each, 1, Integer::sum)));
        hookup.bundles().forEach(bundle -> bundle.links().forEach(each -> lone.merge(each, 1, Integer::sum)));
        Set<String> instances = new LinkedHashSet<>(parent.values());
        instances.removeIf(each -> each.startsWith("jack-"));
        lone.forEach((instance, count) -> {
            assertThat(count).as(instance).isEqualTo(1);
            assertThat(instances.add(instance)).as(instance).isTrue();
        });
        for (String instance : instances) {
            int number = Integer.parseInt(instance.substring(instance.indexOf('/') + 1));
            assertThat(number).as(instance).isBetween(1, item(instance).stock());
        }
        bundles(hookup);
        mating(hookup, parent);
        reach(hookup);
    }

    private static void join(Map<String, String> parent, String from, String to) {
        String before = parent.put(from, to);
        assertThat(before == null || before.equals(to))
                .as(from + " to " + before + " and " + to)
                .isTrue();
    }

    private void bundles(Hookup hookup) {
        Map<Integer, Set<String>> byJack = new HashMap<>();
        hookup.chains()
                .forEach(chain -> byJack.computeIfAbsent(chain.jack(), key -> new HashSet<>())
                        .add(chain.connection()));
        Set<Integer> jacks = new HashSet<>();
        for (Bundle bundle : hookup.bundles()) {
            assertThat(bundle.jacks())
                    .allMatch(jacks::add)
                    .allMatch(jack -> jack >= 1
                            && jack <= kit.tester().jacks().orElseThrow().count());
            List<Integer> wired =
                    bundle.jacks().stream().filter(byJack::containsKey).toList();
            assertThat(wired).hasSize(1);
            assertThat(bundle.jacks().size() > 1).isEqualTo(!bundle.links().isEmpty());
            assertThat(byJack.remove(wired.get(0))).isEqualTo(new HashSet<>(bundle.connections()));
        }
        assertThat(byJack).isEmpty();
    }

    /** Every item can be turned so that its own end goes where it goes and all that is plugged into it finds an end. */
    private void mating(Hookup hookup, Map<String, String> parent) {
        Map<String, List<String>> children = new LinkedHashMap<>();
        parent.forEach((from, to) ->
                children.computeIfAbsent(to, key -> new ArrayList<>()).add(from));
        for (Bundle bundle : hookup.bundles()) {
            if (!bundle.links().isEmpty()) {
                linked(bundle, parent, children);
            }
        }
        String socket = kit.tester().jacks().orElseThrow().socket();
        children.forEach((to, from) -> {
            if (to.startsWith("jack-")) {
                assertThat(from).as(to).hasSize(1);
                assertThat(goes(from.get(0), socket, null, children))
                        .as(hookup.id() + " " + to + " " + children)
                        .isTrue();
            }
        });
    }

    /** Links are leads of equal length in items; each runs from a far jack to an end of the bundle's tree. */
    private void linked(Bundle bundle, Map<String, String> parent, Map<String, List<String>> children) {
        int far = bundle.jacks().size() - 1;
        int share = bundle.links().size() / far;
        assertThat(share * far).isEqualTo(bundle.links().size());
        // Which end takes the link is not said: any item of the bundle's chains may.
        List<String> tree = parent.values().stream()
                .filter(each -> !each.startsWith("jack-"))
                .filter(each -> bundle.connections().stream().anyMatch(name -> passes(name, each, parent)))
                .distinct()
                .toList();
        for (int i = 0; i < far; i++) {
            List<String> link = bundle.links().subList(i * share, (i + 1) * share);
            for (int l = 0; l + 1 < link.size(); l++) {
                children.computeIfAbsent(link.get(l + 1), key -> new ArrayList<>())
                        .add(link.get(l));
            }
            children.computeIfAbsent(link.get(0), key -> new ArrayList<>()).add("far-jack");
            boolean found = false;
            for (String each : tree) {
                children.computeIfAbsent(each, key -> new ArrayList<>()).add(link.get(share - 1));
                String root = root(each, parent, children);
                if (goes(root, kit.tester().jacks().orElseThrow().socket(), null, children)) {
                    found = true;
                    break;
                }
                children.get(each).remove(link.get(share - 1));
            }
            assertThat(found).as("link " + link).isTrue();
        }
    }

    private static boolean passes(String name, String item, Map<String, String> parent) {
        String at = name;
        while (at != null) {
            if (at.equals(item)) {
                return true;
            }
            at = parent.get(at);
        }
        return false;
    }

    private static String root(String from, Map<String, String> parent, Map<String, List<String>> children) {
        String at = from;
        while (!parent.get(at).startsWith("jack-")) {
            at = parent.get(at);
        }
        return at;
    }

    private boolean goes(String from, String end, KitItem into, Map<String, List<String>> children) {
        if (!from.contains("/")) {
            String terminal =
                    from.equals("far-jack") ? kit.tester().jacks().orElseThrow().socket() : terminal(from);
            boolean probe = !from.equals("touch-probe") || into != null && into.kind() == ItemKind.PROBE;
            return probe && connectors.mates(terminal, end) != Mating.NO
                    || into != null && into.also().contains(terminal);
        }
        KitItem item = item(from);
        List<List<String>> ways = new ArrayList<>();
        String first = item.ends().get(0);
        String second = item.ends().get(1);
        ways.add(List.of(first, second));
        if (item.kind() != ItemKind.FAN_OUT) {
            ways.add(List.of(second, first));
        }
        for (List<String> way : ways) {
            if (connectors.mates(way.get(0), end) == Mating.NO) {
                continue;
            }
            List<String> inlets = new ArrayList<>();
            int count = item.kind() == ItemKind.FAN_OUT ? item.branches() : 1;
            for (int i = 0; i < count; i++) {
                inlets.add(way.get(1));
            }
            for (String each : way) {
                connectors.find(each).flatMap(Connector::rear).ifPresent(inlets::add);
            }
            if (seat(children.getOrDefault(from, List.of()), 0, inlets, item, children)) {
                return true;
            }
        }
        return false;
    }

    private boolean seat(
            List<String> waiting, int next, List<String> inlets, KitItem item, Map<String, List<String>> children) {
        if (next == waiting.size()) {
            return true;
        }
        for (String inlet : new LinkedHashSet<>(inlets)) {
            if (goes(waiting.get(next), inlet, item, children)) {
                List<String> left = new ArrayList<>(inlets);
                left.remove(inlet);
                if (seat(waiting, next + 1, left, item, children)) {
                    return true;
                }
            }
        }
        return false;
    }

    private Connection connection(String name) {
        return device.connections().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private String terminal(String name) {
        return name.equals("touch-probe") ? "metal" : connection(name).terminal();
    }

    private void reach(Hookup hookup) {
        for (Chain chain : hookup.chains()) {
            if (chain.connection().equals("touch-probe")) {
                continue;
            }
            device.part(connection(chain.connection()).part())
                    .ifPresent(part -> part.distance().ifPresent(distance -> {
                        long length = part.cable().map(each -> each.amount()).orElse(0L)
                                + chain.items().stream()
                                        .mapToLong(each -> item(each)
                                                .length()
                                                .map(l -> l.amount())
                                                .orElse(0L))
                                        .sum();
                        assertThat(length * 5).isGreaterThanOrEqualTo(distance.amount() * 6);
                    }));
        }
    }

    private boolean covers(Hookup hookup, Obligation each) {
        if (each.phase() == Obligation.Phase.EARTH) {
            return !hookup.earth().isEmpty();
        }
        boolean rated = each.sourcePolarity().isEmpty()
                || hookup.chains().stream()
                        .flatMap(chain -> chain.items().stream())
                        .allMatch(instance -> item(instance)
                                .voltage()
                                .map(volts -> volts.amount() >= 230_000_000L)
                                .orElse(false));
        return rated
                && CoverageByWords.covers(
                        hookup, each.demand(), kit.tester().jacks().orElseThrow());
    }

    /** Coverage once more, jack by jack. */
    static final class CoverageByWords {
        private CoverageByWords() {}

        static boolean covers(
                Hookup hookup, leadwright.planner.plan.Demand demand, leadwright.catalog.kit.Jacks jacks) {
            String[] owner = new String[jacks.count() + 1];
            hookup.bundles().forEach(bundle -> bundle.jacks().forEach(jack -> owner[jack] = bundle.id()));
            Set<String> present = hookup.bundles().stream()
                    .flatMap(bundle -> bundle.connections().stream())
                    .collect(Collectors.toSet());
            if (jacks.atRest() == leadwright.catalog.kit.AtRest.EARTHED
                    && present.stream()
                            .anyMatch(name ->
                                    !name.equals("touch-probe") && !demand.all().contains(name))) {
                return false;
            }
            for (Set<String> set : List.of(demand.measured(), demand.against(), demand.earthed())) {
                Set<String> wanted = new HashSet<>();
                for (String name : set) {
                    if (!present.contains(name)) {
                        return false;
                    }
                    Bundle bundle = hookup.bundleOf(name).orElseThrow();
                    if (!set.containsAll(bundle.connections())) {
                        return false;
                    }
                    wanted.add(bundle.id());
                }
                boolean tied = wanted.size() <= 1 || jacks.ties() == leadwright.catalog.kit.Ties.ANY;
                for (int first = 1; first <= jacks.count() && !tied; first++) {
                    Set<String> met = new HashSet<>();
                    for (int jack = first; jack <= jacks.count() && wanted.contains(owner[jack]); jack++) {
                        met.add(owner[jack]);
                    }
                    tied = met.equals(wanted);
                }
                if (!tied) {
                    return false;
                }
            }
            return true;
        }
    }
}
