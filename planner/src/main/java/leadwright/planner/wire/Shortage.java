package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.device.Connection;
import leadwright.catalog.house.CapacitanceLimit;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Shortfall;

/**
 * Phase 13: why requirements fit no hookup at all, and the smallest additions that would do.
 *
 * <p>Needs: scene, requirements that do not fit alone. Gives: shortfalls, one a cause, however many readings it stops.
 * Method: the cause is what the rules of phase 6 ask for first: parts that never share, jacks, then each connection on its own
 * ({@link Barrier}), then the stock ({@link StockShortage}) for what is left, then capacitance. Cost: a few fitting tests a
 * requirement, and a budget of them in all.
 */
final class Shortage {
    private final Scene scene;
    private final Trial trial;
    private final Map<Object, Cause> causes = new LinkedHashMap<>();
    private final List<Want> scarce = new ArrayList<>();
    private final Map<Barrier.Block, Asked> blocks = new LinkedHashMap<>();

    /** A cause with everything that it stops. */
    private static final class Cause {
        private final String about;
        private final String because;
        private final List<String> additions;
        private final SortedSet<String> connections = new TreeSet<>(NaturalOrder.IDS);
        private final List<Obligation> readings = new ArrayList<>();

        Cause(String about, String because, List<String> additions) {
            this.about = about;
            this.because = because;
            this.additions = additions;
        }

        Shortfall shortfall() {
            return new Shortfall(
                    about, List.copyOf(connections), because + "; not measured: " + words(readings), additions);
        }
    }

    /** The reading that asks for most connections behind one barrier. */
    private record Asked(Want want, int count) {}

    Shortage(Scene scene) {
        this.scene = scene;
        this.trial = new Trial(scene);
    }

    List<Shortfall> of(List<Requirement> unfit) {
        List<Want> wants = unfit.stream()
                .filter(each -> !each.earth())
                .sorted(Comparator.comparingInt(
                                (Requirement each) -> -each.all().cardinality())
                        .thenComparingInt(Requirement::index))
                .map(each -> Want.of(scene, each))
                .toList();
        Barrier barrier = new Barrier(scene, WhatIf.plenty(scene.kit(), many()));
        wants.forEach(want -> look(want, barrier));
        blocks.forEach((block, asked) -> {
            Cause was = causes.get(block);
            List<String> proposals = Remedies.of(scene, trial, block, asked.want(), asked.count());
            Cause cause = new Cause(was.about, was.because, proposals);
            cause.connections.addAll(was.connections);
            cause.readings.addAll(was.readings);
            causes.put(block, cause);
        });
        List<Shortfall> all =
                new ArrayList<>(causes.values().stream().map(Cause::shortfall).toList());
        all.addAll(new StockShortage(scene, trial, many()).of(scarce));
        return List.copyOf(all);
    }

    /** So many more pieces of everything leave no stock to run out: no chain has so many items of a kind. */
    private int many() {
        return 16 * (scene.leaves().size() + scene.jackCount());
    }

    private void look(Want want, Barrier barrier) {
        Requirement requirement = want.requirement();
        Draft draft = Draft.empty(scene).with(requirement);
        if (scene.conflict()[requirement.index()][requirement.index()]) {
            add(
                    "therapy",
                    want,
                    "therapy output",
                    "a therapy output has a hookup of its own, and this reading joins it with other parts",
                    "may-share with the reason, in the device file, if its maker allows it");
            return;
        }
        if (draft.cells() > scene.jackCount()) {
            add(
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
            Cause cause = causes.computeIfAbsent(block, key -> new Cause(about(block), block.because(), List.of()));
            cause.connections.addAll(names);
            cause.readings.addAll(want.readings());
            if (!blocks.containsKey(block) || blocks.get(block).count() < names.size()) {
                List<String> others = new ArrayList<>(blocked);
                others.removeAll(names);
                Want most = want.without(others);
                boolean nothing = most.reading().demand().isNothing();
                blocks.put(block, new Asked(nothing ? want.only(names) : most, names.size()));
            }
        });
        rest(blocked.isEmpty() ? want : want.without(blocked), blocked.isEmpty());
    }

    private String about(Barrier.Block block) {
        return switch (block.kind()) {
            case MATING ->
                block.leaf().kind() == Leaf.Kind.TOUCH
                        ? Connection.Kind.TOUCH_PROBE
                                .name()
                                .toLowerCase(java.util.Locale.ROOT)
                                .replace('_', ' ')
                        : block.leaf().terminal();
            case RATING -> "voltage rating";
            case REACH -> "reach";
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
            add(
                    "capacitance",
                    want,
                    "lead capacitance",
                    "the chains' capacitance takes more than the house's share of the limit, or items do not state it",
                    "shorter leads, or items that state a lower capacitance",
                    "a house that sets capacitance-limit to warn, and reads the background");
        } else if (withPlenty == Verdict.UNKNOWN) {
            add(
                    "search",
                    want,
                    "search",
                    "whether more pieces would do was not settled: the search for a wiring ended at its budget");
        } else {
            add(
                    "kinds",
                    want,
                    "kinds of item",
                    "each connection reaches a jack, but not all of them at once, however many pieces there are of what the"
                            + " kit lists",
                    "a fan-out that these chains go into and that goes into a jack");
        }
    }

    private void add(String key, Want want, String about, String because, String... additions) {
        Cause cause = causes.computeIfAbsent(key + because, any -> new Cause(about, because, List.of(additions)));
        cause.connections.addAll(want.requirement().demand().all());
        cause.readings.addAll(want.readings());
    }

    /** {@code touch current (2 readings), patient leakage current (1 reading)}. */
    static String words(List<Obligation> readings) {
        Map<String, Long> counts = readings.stream()
                .distinct()
                .collect(Collectors.groupingBy(
                        each -> each.quantity().word(), LinkedHashMap::new, Collectors.counting()));
        return counts.entrySet().stream()
                .map(each ->
                        each.getKey() + " (" + each.getValue() + (each.getValue() == 1 ? " reading)" : " readings)"))
                .collect(Collectors.joining(", "));
    }

    /** Terminal word of a connection. */
    static String terminal(Scene scene, String name) {
        Optional<Connection> found = scene.connections().stream()
                .filter(each -> each.name().equals(name))
                .findFirst();
        return found.orElseThrow().terminal();
    }
}
