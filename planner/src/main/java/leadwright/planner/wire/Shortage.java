package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.Connection;
import leadwright.catalog.house.CapacitanceLimit;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Shortfall;

/**
 * Phase 13: why requirements fit no hookup at all, and the smallest additions that would do.
 *
 * <p>Needs: scene, requirements that do not fit alone. Gives: shortfalls, one a cause, however many readings it stops.
 * Method: the cause is what the rules of phase 6 ask for first: parts that never share, jacks, then each connection on its own
 * ({@link Barrier}), then the stock ({@link StockShortage}) for what is left, then capacitance. Each cause's additions are
 * those that make its readings possible where nothing else stops them ({@link Search}); what makes all of them possible
 * together is {@link Whole}. Cost: a few fitting tests a requirement, and a budget of them in all.
 */
final class Shortage {
    private final Scene scene;
    private final Trial trial;
    private final Map<Object, Cause> causes = new LinkedHashMap<>();
    private final Map<Barrier.Block, Cause> blocks = new LinkedHashMap<>();
    private final List<Want> scarce = new ArrayList<>();
    private final List<Want> helpless = new ArrayList<>();
    private final List<Want> wants;
    private final Barrier barrier;
    private final Search search;

    Shortage(Scene scene, List<Requirement> unfit) {
        this.scene = scene;
        this.trial = new Trial(scene);
        this.wants = unfit.stream()
                .filter(each -> !each.earth())
                .sorted(Comparator.comparingInt(
                                (Requirement each) -> -each.all().cardinality())
                        .thenComparingInt(Requirement::index))
                .map(each -> Want.of(scene, each))
                .toList();
        this.barrier = new Barrier(scene, WhatIf.plenty(scene.kit(), many()));
        Duty strictest = wants.stream().map(each -> each.requirement().duty()).reduce(Duty.ORDINARY, Duty::and);
        this.search = new Search(scene, trial, new Offers(scene, trial, barrier, strictest));
    }

    List<Shortfall> shortfalls() {
        wants.forEach(this::look);
        List<Shortfall> all = new ArrayList<>();
        blocks.values().forEach(each -> all.add(search.shortfall(each)));
        causes.values().forEach(each -> all.add(search.shortfall(each)));
        all.addAll(new StockShortage(scene, trial, search).of(scarce));
        return List.copyOf(all);
    }

    /** Readings that items of some kind may make possible. */
    List<Want> helpable() {
        return wants.stream().filter(each -> !helpless.contains(each)).toList();
    }

    Search search() {
        return search;
    }

    /** So many more pieces of everything leave no stock to run out: no chain has so many items of a kind. */
    private int many() {
        return 16 * (scene.leaves().size() + scene.jackCount());
    }

    private void look(Want want) {
        Requirement requirement = want.requirement();
        Draft draft = Draft.empty(scene).with(requirement);
        if (scene.conflict()[requirement.index()][requirement.index()]) {
            helpless(
                    "therapy",
                    want,
                    "therapy output",
                    "a therapy output has a hookup of its own, and this reading joins it with other parts",
                    "may-share with the reason, in the device file, if its maker allows it");
            return;
        }
        if (draft.cells() > scene.jackCount()) {
            helpless(
                    "jacks",
                    want,
                    "jacks",
                    "the reading needs " + draft.cells() + " bundles that the tester can tell apart, and it has "
                            + (scene.jackCount() == 1 ? "1 jack" : scene.jackCount() + " jacks"),
                    "a tester with " + draft.cells() + " jacks or more");
            return;
        }
        List<String> blocked = new ArrayList<>();
        Map<Barrier.Block, List<String>> here = new LinkedHashMap<>();
        requirement.all().stream()
                .forEach(e -> barrier.of(e, requirement.duty()).ifPresent(block -> {
                    here.computeIfAbsent(block, key -> new ArrayList<>()).add(scene.name(e));
                    blocked.add(scene.name(e));
                }));
        here.forEach((block, names) -> {
            List<String> others = new ArrayList<>(blocked);
            others.removeAll(names);
            Want most = want.without(others);
            boolean nothing = most.reading().demand().isNothing();
            blocks.computeIfAbsent(block, key -> new Cause(about(block), block.because(), otherwise(block)))
                    .stops(nothing ? want.only(names) : most, names);
        });
        rest(blocked.isEmpty() ? want : want.without(blocked), blocked.isEmpty());
    }

    private static String about(Barrier.Block block) {
        return switch (block.kind()) {
            case MATING ->
                block.leaf().kind() == Leaf.Kind.TOUCH
                        ? Connection.Kind.TOUCH_PROBE
                                .name()
                                .toLowerCase(Locale.ROOT)
                                .replace('_', ' ')
                        : block.leaf().terminal();
            case RATING -> "voltage rating";
            case REACH -> "reach";
        };
    }

    /** What to look for where no item that was thought of does; in words that promise nothing. */
    private List<String> otherwise(Barrier.Block block) {
        return switch (block.kind()) {
            case MATING -> {
                List<String> ends = scene.connectors()
                        .find(block.leaf().terminal())
                        .map(each -> each.mates().isEmpty() ? each.matesUnprotected() : each.mates())
                        .orElse(List.of());
                String on =
                        ends.isEmpty() ? "made for " + block.leaf().terminal() : "with " + String.join(" or ", ends);
                yield List.of("an item " + on + ", and what leads on to a jack (" + scene.jackSocket() + ")");
            }
            case RATING ->
                List.of("such items with shrouded ends and rated for "
                        + Barrier.volts(block.duty()).text() + " or more");
            case REACH -> List.of("leads that make the chain " + Barrier.metres(block.reach()) + " long");
        };
    }

    /** What is left of a reading when the connections that nothing reaches are taken away. */
    private void rest(Want want, boolean whole) {
        if (want.reading().demand().isNothing()) {
            return;
        }
        if (!whole && trial.fits(scene.kit(), want.reading())) {
            return;
        }
        Kit plenty = WhatIf.plenty(scene.kit(), many());
        Verdict withPlenty = trial.verdict(scene.device(), plenty, scene.house(), want.reading());
        if (withPlenty == Verdict.YES) {
            scarce.add(want);
        } else if (scene.house().capacitanceLimit() == CapacitanceLimit.HARD
                && trial.fits(scene.device(), plenty, WhatIf.warning(scene.house()), want.reading())) {
            helpless(
                    "capacitance",
                    want,
                    "lead capacitance",
                    "the chains' capacitance takes more than the house's share of the limit, or items do not state it",
                    "shorter leads, or items that state a lower capacitance",
                    "a house that sets capacitance-limit to warn, and reads the background");
        } else if (withPlenty == Verdict.UNKNOWN) {
            helpless(
                    "search",
                    want,
                    "search",
                    "whether more pieces would do was not settled: the search for a wiring ended at its budget");
        } else {
            String because =
                    "each connection reaches a jack, but not all of them at once, however many pieces there are"
                            + " of what the kit lists";
            causes.computeIfAbsent(
                            because,
                            key -> new Cause(
                                    "kinds of item",
                                    because,
                                    List.of("a fan-out that these chains go into and that goes into a jack")))
                    .stops(want, want.reading().demand().all());
        }
    }

    /** A cause that no item takes away. */
    private void helpless(String key, Want want, String about, String because, String... otherwise) {
        helpless.addAll(wants.stream()
                .filter(each -> each.requirement() == want.requirement())
                .toList());
        causes.computeIfAbsent(key + because, any -> new Cause(about, because, List.of(otherwise)))
                .stopsForGood(want, want.requirement().demand().all());
    }

    /** Terminal word of a connection. */
    static String terminal(Scene scene, String name) {
        Optional<Connection> found = scene.connections().stream()
                .filter(each -> each.name().equals(name))
                .findFirst();
        return found.orElseThrow().terminal();
    }
}
