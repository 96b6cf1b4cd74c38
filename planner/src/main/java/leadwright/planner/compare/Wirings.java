package leadwright.planner.compare;

import static leadwright.planner.compare.HookupPairs.kinds;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NaturalOrder;

/** What changed in the wiring. */
record Wirings(Side a, Side b, Names names, Pairs readings, HookupPairs hookups) {

    List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        if (a.hookups().size() != b.hookups().size()) {
            changes.add(Change.of(
                    Kind.HOOKUPS,
                    "hookups",
                    Optional.of(String.valueOf(a.hookups().size())),
                    Optional.of(String.valueOf(b.hookups().size()))));
        }
        hookups.onlyA().forEach(each -> changes.add(alone(each).mirrored()));
        hookups.onlyB().forEach(each -> changes.add(alone(each)));
        for (HookupPairs.Pair pair : hookups.both()) {
            connections(pair, changes);
            compare(Kind.LINK, pair, links(pair.a()), links(pair.b()), changes);
            compare(Kind.EARTH_LEAD, pair, earth(pair.a()), earth(pair.b()), changes);
        }
        takenIn(changes);
        items(changes);
        return changes;
    }

    /** A hookup that only the second plan has. */
    private static Change alone(Hookup hookup) {
        Map<Integer, List<String>> jacks = new TreeMap<>();
        hookup.chains()
                .forEach(chain -> jacks.computeIfAbsent(chain.jack(), absent -> new ArrayList<>())
                        .add(chain.connection()));
        String wired = jacks.entrySet().stream()
                .map(jack -> "jack " + jack.getKey() + " " + Names.few(jack.getValue()))
                .collect(Collectors.joining("; "));
        return new Change(
                Kind.HOOKUP,
                Trend.CAME,
                "hookup",
                "hookup " + hookup.id(),
                Optional.empty(),
                Optional.of(wired.isEmpty() ? "earth lead only" : wired),
                List.of(),
                List.of(hookup.id()));
    }

    private static void connections(HookupPairs.Pair pair, List<Change> changes) {
        for (String connection : HookupPairs.connections(pair.a(), pair.b())) {
            Optional<Chain> before = pair.a().chainOf(connection);
            Optional<Chain> after = pair.b().chainOf(connection);
            add(Kind.JACK, pair, connection, before.map(Wirings::jack), after.map(Wirings::jack), changes);
            if (before.isPresent() && after.isPresent()) {
                add(Kind.CHAIN, pair, connection, before.map(Wirings::items), after.map(Wirings::items), changes);
            }
        }
    }

    private static String jack(Chain chain) {
        return "jack " + chain.jack();
    }

    private static String items(Chain chain) {
        return via(chain.items());
    }

    private static String via(List<String> items) {
        return items.isEmpty() ? "nothing between" : String.join(" + ", kinds(items));
    }

    private static void compare(
            Kind kind,
            HookupPairs.Pair pair,
            Map<String, String> before,
            Map<String, String> after,
            List<Change> changes) {
        Set<String> subjects = new TreeSet<>(NaturalOrder.IDS);
        subjects.addAll(before.keySet());
        subjects.addAll(after.keySet());
        for (String subject : subjects) {
            add(
                    kind,
                    pair,
                    subject,
                    Optional.ofNullable(before.get(subject)),
                    Optional.ofNullable(after.get(subject)),
                    changes);
        }
    }

    private static void add(
            Kind kind,
            HookupPairs.Pair pair,
            String subject,
            Optional<String> before,
            Optional<String> after,
            List<Change> changes) {
        if (!before.equals(after)) {
            changes.add(new Change(
                    kind,
                    Change.trend(before, after),
                    "wiring",
                    subject,
                    before,
                    after,
                    List.of(pair.a().id()),
                    List.of(pair.b().id())));
        }
    }

    /** Jacks that the wiring joins, and by what. */
    private static Map<String, String> links(Hookup hookup) {
        Map<String, String> links = new LinkedHashMap<>();
        for (Bundle bundle : hookup.bundles()) {
            if (bundle.jacks().size() > 1) {
                String jacks = bundle.jacks().stream().map(String::valueOf).collect(Collectors.joining(" and "));
                links.put("jacks " + jacks, String.join(" + ", new TreeSet<>(kinds(bundle.links()))));
            }
        }
        return links;
    }

    private Map<String, String> earth(Hookup hookup) {
        Map<String, String> leads = new LinkedHashMap<>();
        for (EarthPath path : hookup.earth()) {
            String which = path.pole().equals("reference") ? "second lead to " : "earth lead to ";
            leads.merge(
                    which + names.of(path.point()),
                    "from the " + path.socket().replace('-', ' ') + " by " + via(path.items()),
                    (one, other) -> one + ", " + other);
        }
        return leads;
    }

    /** Readings that are taken in another hookup than the one that stands for theirs. */
    private void takenIn(List<Change> changes) {
        for (Pairs.Pair each : readings.both()) {
            boolean same = each.a().hookup().isPresent()
                    ? each.b().hookup().isPresent()
                            && hookups.counterpart(each.a().hookup().get())
                                    .equals(each.b().hookup())
                    : each.b().hookup().isEmpty();
            if (!same) {
                changes.add(new Change(
                        Kind.TAKEN_IN,
                        Trend.OTHERWISE,
                        Names.quantity(each.inA()),
                        names.reading(each),
                        Optional.of(each.a().hookup().orElse("no hookup")),
                        Optional.of(each.b().hookup().orElse("no hookup")),
                        List.of(each.a().id()),
                        List.of(each.b().id())));
            }
        }
    }

    /** How many of each kind of item must lie ready. */
    private void items(List<Change> changes) {
        Map<String, Integer> before = needed(a);
        Map<String, Integer> after = needed(b);
        Set<String> kinds = new TreeSet<>(NaturalOrder.IDS);
        kinds.addAll(before.keySet());
        kinds.addAll(after.keySet());
        for (String kind : kinds) {
            Optional<String> mine = Optional.ofNullable(before.get(kind)).map(String::valueOf);
            Optional<String> theirs = Optional.ofNullable(after.get(kind)).map(String::valueOf);
            if (!mine.equals(theirs)) {
                changes.add(Change.of(Kind.ITEMS, kind, mine, theirs));
            }
        }
    }

    private static Map<String, Integer> needed(Side side) {
        Set<String> items = new HashSet<>();
        for (Hookup hookup : side.hookups()) {
            Stream.of(
                            hookup.chains().stream().map(Chain::items),
                            hookup.earth().stream().map(EarthPath::items),
                            hookup.bundles().stream().map(Bundle::links))
                    .flatMap(lists -> lists)
                    .forEach(items::addAll);
        }
        Map<String, Integer> needed = new TreeMap<>(NaturalOrder.IDS);
        items.forEach(item -> needed.merge(HookupPairs.kind(item), 1, Integer::sum));
        return needed;
    }
}
