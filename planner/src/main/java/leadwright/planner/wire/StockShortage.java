package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Shortfall;

/**
 * Phase 13e: readings that more pieces of the kit's own items would make possible.
 *
 * <p>Needs: these readings, those with most connections first. Gives: shortfalls; every alternative of one makes all of its
 * readings possible, and without any one piece of it some is not. Method: the smallest additions for the first reading; a later
 * one joins it where each of its alternatives helps that too, else has an entry of its own. Where only distance stops the
 * reading ({@link TooShort}), that is the cause, and leads are proposed, not fan-outs that would only lengthen a chain.
 * Cost: that of the additions, and a test an alternative and reading.
 */
final class StockShortage {
    private final Scene scene;
    private final Trial trial;
    private final Search search;
    private final List<Entry> entries = new ArrayList<>();

    private record Entry(Cause cause, List<Proposal> proposals, boolean settled) {}

    StockShortage(Scene scene, Trial trial, Search search) {
        this.scene = scene;
        this.trial = trial;
        this.search = search;
    }

    List<Shortfall> of(List<Want> wants) {
        for (Want want : wants) {
            Entry entry = entries.stream()
                    .filter(each -> helps(each, want))
                    .findFirst()
                    .orElseGet(() -> entry(want));
            entry.cause().stops(want, want.reading().demand().all());
        }
        return entries.stream()
                .map(each -> each.cause().shortfall(each.proposals(), each.settled()))
                .toList();
    }

    private boolean helps(Entry entry, Want want) {
        return !entry.proposals().isEmpty()
                && entry.proposals().stream().allMatch(each -> trial.fits(each.addedTo(scene.kit()), want.reading()));
    }

    private Entry entry(Want want) {
        Kit kit = scene.kit();
        Optional<String> tooShort = TooShort.of(scene, trial, kit, want);
        Optional<Additions> additions = search.additions(List.of(want), tooShort.isPresent());
        List<Proposal> proposals =
                new ArrayList<>(additions.map(Additions::smallest).orElse(List.of()));
        String has = proposals.isEmpty() ? "" : has(kit, proposals.get(0));
        Cause cause = new Cause(
                tooShort.isPresent() ? "reach" : proposals.isEmpty() ? "stock" : kinds(proposals.get(0)),
                tooShort.map(each -> each + has).orElseGet(() -> places(kit, want) + has),
                List.of("many more pieces of what the kit lists"));
        Entry entry =
                new Entry(cause, proposals, additions.map(Additions::settled).orElse(true));
        entries.add(entry);
        return entry;
    }

    private static String kinds(Proposal proposal) {
        return proposal.pieces().stream().map(each -> each.item().id()).collect(Collectors.joining(", "));
    }

    /** How many the kit has of its own kinds among these. */
    private static String has(Kit kit, Proposal proposal) {
        List<String> own = proposal.pieces().stream()
                .flatMap(each -> kit.item(each.item().id()).stream())
                .map(each -> each.stock() + " " + each.id())
                .toList();
        return own.isEmpty() ? "" : " (the kit has " + String.join(", ", own) + ")";
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
