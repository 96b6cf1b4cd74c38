package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Shortfall;

/**
 * Phase 13d: readings that more pieces of the kit's own items would make possible.
 *
 * <p>Needs: these readings, those with most connections first. Gives: shortfalls whose first additions together make all of
 * them possible, while without any one piece some is not. Method: the smallest additions for the first reading that is still
 * stopped; then for the next with these in the kit; at the end pieces that later additions made needless are taken back.
 * Where only distance stops the reading ({@link TooShort}), that is the cause, and a lead comes before fan-outs that would only
 * lengthen a chain.
 * Cost: that of the additions, and a test a piece and reading.
 */
final class StockShortage {
    private final Scene scene;
    private final Trial trial;
    private final int many;
    private final List<Entry> entries = new ArrayList<>();
    private final List<Want> open = new ArrayList<>();

    private static final class Entry {
        private final Additions additions;
        private final List<Map<String, Integer>> choices;
        private final String because;
        private final Optional<TooShort> tooShort;
        private final Map<String, Integer> first;
        private final List<Want> wants = new ArrayList<>();

        Entry(Additions additions, List<Map<String, Integer>> choices, String because, Optional<TooShort> tooShort) {
            this.additions = additions;
            this.choices = choices;
            this.because = because;
            this.tooShort = tooShort;
            this.first = new LinkedHashMap<>(choices.get(0));
        }
    }

    /** @param many so many more of every item leave nothing that runs out */
    StockShortage(Scene scene, Trial trial, int many) {
        this.scene = scene;
        this.trial = trial;
        this.many = many;
    }

    List<Shortfall> of(List<Want> wants) {
        for (Want want : wants) {
            Optional<Entry> entry = helping(want);
            if (entry.isEmpty()) {
                entry = entry(want);
                entry.ifPresent(entries::add);
            }
            entry.ifPresentOrElse(each -> each.wants.add(want), () -> open.add(want));
        }
        takeBack(wants.stream().filter(each -> !open.contains(each)).toList());
        List<Shortfall> all = new ArrayList<>();
        entries.forEach(each -> all.add(shortfall(each)));
        if (!open.isEmpty()) {
            all.add(unsettled());
        }
        return all;
    }

    private Kit with(int entriesUsed) {
        Kit kit = scene.kit();
        for (Entry each : entries.subList(0, entriesUsed)) {
            kit = WhatIf.more(kit, each.first);
        }
        return kit;
    }

    /** Readings for which the budget ended before any addition was found. */
    private Shortfall unsettled() {
        SortedSet<String> names = new TreeSet<>(NaturalOrder.IDS);
        List<Obligation> readings = new ArrayList<>();
        open.forEach(want -> {
            names.addAll(want.reading().demand().all());
            readings.addAll(want.readings());
        });
        return new Shortfall(
                "stock",
                List.copyOf(names),
                "the stock does not bring all connections to jacks at once; which additions would do was not searched"
                        + " further; not measured: " + Shortage.words(readings),
                List.of("more pieces of what the kit lists"));
    }

    private Optional<Entry> helping(Want want) {
        for (int used = 1; used <= entries.size(); used++) {
            if (trial.fits(with(used), want.reading())) {
                return Optional.of(entries.get(used - 1));
            }
        }
        return Optional.empty();
    }

    private Optional<Entry> entry(Want want) {
        Kit kit = with(entries.size());
        Additions additions =
                new Additions(kit, kinds(kit, want), many, each -> trial.fits(each, want.reading()), trial::ended);
        List<Map<String, Integer>> smallest = additions.smallest();
        if (smallest.isEmpty()) {
            return Optional.empty();
        }
        Optional<TooShort> tooShort = TooShort.of(scene, trial, kit, want);
        List<Map<String, Integer>> choices = new ArrayList<>(smallest);
        if (tooShort.isPresent()) {
            choices.sort(Comparator.comparing(each -> fansOut(kit, each)));
        }
        String because = tooShort.map(
                        each -> each.because() + (fansOut(kit, choices.get(0)) ? "" : has(kit, choices.get(0))))
                .orElseGet(() -> places(kit, want) + has(kit, choices.get(0)));
        return Optional.of(new Entry(additions, choices, because, tooShort));
    }

    /** Whether it holds fan-outs: where places are not short these are a costly way to make a chain longer. */
    private static boolean fansOut(Kit kit, Map<String, Integer> addition) {
        return addition.keySet().stream()
                .anyMatch(id -> kit.item(id).orElseThrow().kind() == ItemKind.FAN_OUT);
    }

    /** Items that a chain of the reading may hold: more of the others cannot help. */
    private List<String> kinds(Kit kit, Want want) {
        Tray tray = trial.tray(WhatIf.plenty(kit, 2), want.reading());
        Routes routes = tray.routes();
        SortedSet<String> met = new TreeSet<>(NaturalOrder.IDS);
        List<Leaf> leaves = new ArrayList<>();
        want.requirement().all().stream().forEach(e -> leaves.add(scene.leaves().get(e)));
        tray.bench().parts().stream().filter(Part::gathers).forEach(part -> {
            leaves.add(Leaf.trunk(part.out()));
            met.add(part.item().id());
        });
        for (Leaf leaf : leaves.stream().distinct().toList()) {
            for (Routes.Label label : routes.from(leaf)) {
                label.route().steps().forEach(step -> met.add(step.part().item().id()));
            }
        }
        return List.copyOf(met);
    }

    /** Takes back what the later additions made needless. */
    private void takeBack(List<Want> wants) {
        if (entries.size() < 2) {
            return;
        }
        for (Entry entry : entries) {
            for (String id : List.copyOf(entry.first.keySet())) {
                boolean needless = true;
                while (needless && entry.first.containsKey(id)) {
                    entry.first.computeIfPresent(id, (key, count) -> count == 1 ? null : count - 1);
                    Kit kit = with(entries.size());
                    needless = wants.stream().allMatch(want -> trial.fits(kit, want.reading()));
                    if (!needless) {
                        entry.first.merge(id, 1, Integer::sum);
                    }
                }
            }
        }
        List<Entry> empty =
                entries.stream().filter(each -> each.first.isEmpty()).toList();
        entries.removeAll(empty);
        empty.forEach(each -> entries.get(0).wants.addAll(each.wants));
    }

    private Shortfall shortfall(Entry entry) {
        SortedSet<String> names = new TreeSet<>(NaturalOrder.IDS);
        List<Obligation> readings = new ArrayList<>();
        for (Want want : entry.wants) {
            names.addAll(want.reading().demand().all());
            readings.addAll(want.readings());
        }
        boolean unchanged = entry.first.equals(entry.choices.get(0));
        List<Map<String, Integer>> choices = unchanged ? entry.choices : List.of(entry.first);
        List<String> texts = new ArrayList<>();
        choices.stream()
                .filter(each -> entry.tooShort.isEmpty() || !fansOut(scene.kit(), each))
                .forEach(each -> texts.add(entry.additions.text(each)));
        entry.tooShort.ifPresent(each -> {
            texts.addAll(each.leads());
            choices.stream()
                    .filter(choice -> fansOut(scene.kit(), choice))
                    .forEach(choice -> texts.add(entry.additions.text(choice) + ", only to lengthen the chain"));
        });
        String unsettled = entry.additions.settled() && !trial.unknownMet()
                ? ""
                : " (whether fewer pieces of several kinds would do was not searched further)";
        return new Shortfall(
                entry.tooShort.isPresent() ? "reach" : String.join(", ", entry.first.keySet()),
                List.copyOf(names),
                entry.because + unsettled + "; not measured: " + Shortage.words(readings),
                texts);
    }

    private static String has(Kit kit, Map<String, Integer> addition) {
        return addition.keySet().stream()
                .map(id -> kit.item(id).orElseThrow().stock() + " " + id)
                .collect(Collectors.joining(", ", " (the kit has ", ")"));
    }

    /** Of the connections with one terminal, how many find a place beside all others. */
    private String places(Kit kit, Want want) {
        Map<String, List<String>> byTerminal = want.reading().demand().all().stream()
                .collect(Collectors.groupingBy(
                        name -> Shortage.terminal(scene, name), TreeMap::new, Collectors.toList()));
        for (Map.Entry<String, List<String>> each : byTerminal.entrySet()) {
            // What is measured stays longest: without it there is no reading.
            List<String> alike = new ArrayList<>(each.getValue());
            alike.sort(Comparator.comparing(
                    (String name) -> !want.reading().demand().measured().contains(name)));
            if (places(kit, want, alike, 0)) {
                int low = 0;
                int high = alike.size() - 1;
                while (low < high) {
                    int middle = (low + high + 1) / 2;
                    boolean fits = places(kit, want, alike, middle);
                    low = fits ? middle : low;
                    high = fits ? high : middle - 1;
                }
                int lacking = alike.size() - low;
                return "of " + alike.size() + " connections that end in " + each.getKey() + " " + low
                        + (low == 1 ? " finds" : " find") + " a place in one hookup, " + lacking + " more "
                        + (lacking == 1 ? "place is" : "places are") + " needed";
            }
        }
        return "the stock does not bring all " + want.reading().demand().all().size() + " connections of "
                + String.join(", ", byTerminal.keySet()) + " to jacks at once";
    }

    private boolean places(Kit kit, Want want, List<String> alike, int kept) {
        Want fewer = want.without(alike.subList(kept, alike.size()));
        return fewer.reading().demand().isNothing()
                ? kept == 0 && alike.size() == want.reading().demand().all().size()
                : trial.fits(kit, fewer.reading());
    }
}
