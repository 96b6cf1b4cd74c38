package leadwright.planner.order;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.NaturalOrder;

/**
 * Phase 9: which physical instance each hookup's item is, so that joints stay when hookups change.
 *
 * <p>Needs the sites in the order of the route. Gives one set of names for each hookup, however often the route comes to it.
 * Method: the first hookup keeps its own names; each next is paired with those named before that it follows or precedes; then
 * each is paired again, as long as that keeps more joints; where some are lost, hookups are named in other orders too. Pairings of a hookup that is come to twice may contradict one
 * another: then more is re-plugged than the route was counted with.
 */
final class Labels {
    private static final int MOST_ORDERS = 120;

    private final Replugs replugs;
    private final List<Integer> sites;
    private final Map<Integer, Map<String, String>> names = new LinkedHashMap<>();

    private Labels(List<Integer> sites, Replugs replugs) {
        this.replugs = replugs;
        this.sites = sites;
    }

    /** @param sites the sites in the order in which the route comes to them */
    static Labels along(List<Integer> sites, Replugs replugs) {
        Labels best = new Labels(sites, replugs);
        List<Integer> route = sites.stream().map(best::hookup).distinct().toList();
        best.build(route);
        // In which order they are named decides what the later ones have left to agree with.
        List<List<Integer>> others = new ArrayList<>(List.of(List.of()));
        for (int i = 1; i < route.size() && best.lost() > 0; i++) {
            int next = route.get(i);
            others = others.stream()
                    .flatMap(start -> IntStream.rangeClosed(0, start.size()).mapToObj(at -> {
                        List<Integer> longer = new ArrayList<>(start);
                        longer.add(at, next);
                        return longer;
                    }))
                    .limit(MOST_ORDERS)
                    .toList();
        }
        for (List<Integer> order : others) {
            if (best.lost() == 0) {
                break;
            }
            List<Integer> all = new ArrayList<>(order);
            all.add(0, route.get(0));
            Labels other = new Labels(sites, replugs);
            other.build(all);
            best = other.lost() < best.lost() ? other : best;
        }
        return best;
    }

    private void build(List<Integer> order) {
        for (int hookup : order) {
            names.put(hookup, pair(replugs.leads(hookup), hookup == order.get(0) ? List.of() : around(hookup)));
        }
        boolean better = true;
        while (better && lost() > 0) {
            better = false;
            for (int hookup : order.subList(1, order.size())) {
                better |= improve(hookup);
            }
        }
    }

    private int hookup(int site) {
        return site % replugs.hookups();
    }

    /** Joints of the hookups named so far from which, and to which, the route comes here. */
    private List<Contact> around(int hookup) {
        List<Contact> around = new ArrayList<>();
        for (int i = 0; i < sites.size(); i++) {
            if (hookup(sites.get(i)) == hookup) {
                if (i > 0 && names.containsKey(hookup(sites.get(i - 1)))) {
                    around.addAll(named(replugs.standing(sites.get(i - 1)), hookup(sites.get(i - 1))));
                }
                if (i + 1 < sites.size() && names.containsKey(hookup(sites.get(i + 1)))) {
                    around.addAll(named(replugs.leads(hookup(sites.get(i + 1))), hookup(sites.get(i + 1))));
                }
            }
        }
        return around;
    }

    /** Worth of the joints that do not stay, though the route was counted as if they did. */
    private int lost() {
        int lost = 0;
        for (int i = 1; i < sites.size(); i++) {
            Set<Joint> after = new HashSet<>();
            named(replugs.leads(hookup(sites.get(i))), hookup(sites.get(i))).forEach(each -> after.add(each.plain()));
            lost += replugs.between(sites.get(i - 1), hookup(sites.get(i))).kept();
            for (Contact each : named(replugs.standing(sites.get(i - 1)), hookup(sites.get(i - 1)))) {
                lost -= after.contains(each.plain()) ? each.worth() : 0;
            }
        }
        return lost;
    }

    /** Joints that change when the route comes to the site of this number. */
    List<Contact> changed(int i) {
        List<Contact> standing = named(replugs.standing(sites.get(i - 1)), hookup(sites.get(i - 1)));
        List<Contact> next = named(replugs.leads(hookup(sites.get(i))), hookup(sites.get(i)));
        Set<Joint> before = new HashSet<>();
        standing.forEach(each -> before.add(each.plain()));
        Set<Joint> after = new HashSet<>();
        next.forEach(each -> after.add(each.plain()));
        List<Contact> changed = new ArrayList<>();
        standing.stream().filter(each -> !after.contains(each.plain())).forEach(changed::add);
        next.stream().filter(each -> !before.contains(each.plain())).forEach(changed::add);
        return changed;
    }

    private boolean improve(int hookup) {
        int lost = lost();
        Map<String, String> old = names.get(hookup);
        names.put(hookup, pair(replugs.leads(hookup), around(hookup)));
        if (lost() < lost) {
            return true;
        }
        names.put(hookup, old);
        return false;
    }

    /** Names for the items of these joints: those of their likes that stand around them, else their own, else free ones. */
    private static Map<String, String> pair(List<Contact> own, List<Contact> around) {
        Map<String, String> result =
                new LinkedHashMap<>(Likeness.between(own, around).standsFor());
        Set<String> taken = new HashSet<>(result.values());
        Set<String> items = new TreeSet<>(NaturalOrder.IDS);
        for (Contact each : own) {
            List.of(each.from(), each.to()).stream().filter(Scene::isItem).forEach(items::add);
        }
        for (String item : items) {
            if (!result.containsKey(item)) {
                String name = item;
                for (int number = 1; taken.contains(name); number++) {
                    name = Scene.kind(item) + "/" + number;
                }
                taken.add(name);
                result.put(item, name);
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
