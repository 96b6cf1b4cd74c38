package leadwright.planner.order;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NaturalOrder;

/**
 * Which physical instance each hookup's item is: along the order of first use, like instances are paired with those that
 * stand, so that joints stay.
 */
final class Labels {
    private final Map<Integer, Map<String, String>> names = new HashMap<>();

    /** @param sites the sites in the order in which the route comes to them */
    static Labels along(List<Integer> sites, Replugs replugs) {
        Labels labels = new Labels();
        List<Contact> standing = List.of();
        for (int site : sites) {
            int hookup = site % replugs.hookups();
            if (!labels.names.containsKey(hookup)) {
                List<Contact> next = replugs.standing(site);
                Map<String, String> pairing = Likeness.between(standing, next).standsFor();
                labels.names.put(hookup, name(items(next), pairing));
            }
            standing = labels.named(replugs.standing(site), hookup);
        }
        return labels;
    }

    private static Set<String> items(List<Contact> contacts) {
        Set<String> items = new TreeSet<>(NaturalOrder.IDS);
        for (Contact each : contacts) {
            for (String end : List.of(each.from(), each.to())) {
                if (Scene.isItem(end)) {
                    items.add(end);
                }
            }
        }
        return items;
    }

    private static Map<String, String> name(Set<String> next, Map<String, String> pairing) {
        Map<String, String> result = new LinkedHashMap<>();
        Set<String> taken = new HashSet<>(pairing.keySet());
        pairing.forEach((mine, theirs) -> result.put(theirs, mine));
        for (String own : next) {
            if (!result.containsKey(own)) {
                String name = own;
                // Its own number where that is free, else the lowest free one.
                for (int number = 1; taken.contains(name); number++) {
                    name = Scene.kind(own) + "/" + number;
                }
                taken.add(name);
                result.put(own, name);
            }
        }
        return result;
    }

    List<Contact> named(List<Contact> contacts, int hookup) {
        Map<String, String> map = names.getOrDefault(hookup, Map.of());
        return contacts.stream()
                .map(each -> each.renamed(name -> map.getOrDefault(name, name)))
                .toList();
    }

    /** The hookup under its final id, with physical instances. */
    Hookup named(Hookup hookup, int index, String id, boolean earth) {
        Map<String, String> map = names.getOrDefault(index, Map.of());
        List<Bundle> bundles = new ArrayList<>();
        for (Bundle each : hookup.bundles()) {
            bundles.add(new Bundle(
                    id + ".b" + (bundles.size() + 1), each.connections(), each.jacks(), all(each.links(), map)));
        }
        List<Chain> chains = hookup.chains().stream()
                .map(each -> new Chain(each.connection(), all(each.items(), map), each.jack(), each.contacts()))
                .toList();
        List<EarthPath> paths = earth
                ? hookup.earth().stream()
                        .map(each -> new EarthPath(each.pole(), each.point(), each.socket(), all(each.items(), map)))
                        .toList()
                : List.of();
        return new Hookup(id, bundles, chains, paths);
    }

    private static List<String> all(List<String> items, Map<String, String> map) {
        return items.stream()
                .map(each -> Optional.ofNullable(map.get(each)).orElse(each))
                .toList();
    }
}
