package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Phase 6e: the fitting test where only numbers of places count.
 *
 * <p>Needs: a draft, what its cells have of each leaf, a plain kit. Gives: the verdict, and a fitting. Method: phases 6a to 6d;
 * answers are kept by the cells in any order. Cost and proof: those of {@link Places}.
 */
final class PlainFit {
    private static final long MOST_WAYS = 120;

    private final Scene scene;
    private final List<Leaf> leaves;
    private final Function<Duty, Tray> trays;
    private final Map<PlaceKey, Verdict> known = new HashMap<>();

    /** @param leaves distinct, in the order in which cells are counted */
    PlainFit(Scene scene, List<Leaf> leaves, Function<Duty, Tray> trays) {
        this.scene = scene;
        this.leaves = leaves;
        this.trays = trays;
    }

    /** @param fitting present where it fits */
    record Found(Verdict verdict, Optional<Fit.Fitting> fitting) {}

    /** Not where the earth lead could take a gathering item: those are counted for the cells alone. */
    boolean isPlain(Draft draft) {
        Tray tray = trays.apply(draft.duty());
        return tray.plain(leaves).isPresent()
                && (!draft.earth() || tray.earth().stream().noneMatch(choice -> gathers(tray, choice)));
    }

    private static boolean gathers(Tray tray, EarthLead.Choice choice) {
        return tray.bench().parts().stream().anyMatch(part -> part.gathers() && choice.use()[part.piece()] > 0);
    }

    private PlainKit kit(Duty duty) {
        return trays.apply(duty).plain(leaves).orElseThrow();
    }

    /** @param counts by cell, by leaf */
    Verdict verdict(Draft draft, int[][] counts) {
        return known.computeIfAbsent(
                PlaceKey.of(draft, counts),
                key -> earthOf(draft)
                        .map(earth -> places(draft, counts).verdict(earth))
                        .orElse(Verdict.NO));
    }

    /** What the test by places depends on: duty, earth lead, and the cells in any order. */
    private record PlaceKey(Duty duty, boolean earth, java.nio.IntBuffer cells) {
        static PlaceKey of(Draft draft, int[][] counts) {
            int leaves = counts.length == 0 ? 0 : counts[0].length;
            int[] cells = new int[counts.length * leaves];
            int[][] sorted = counts.clone();
            Arrays.sort(sorted, Arrays::compare);
            for (int cell = 0; cell < sorted.length; cell++) {
                System.arraycopy(sorted[cell], 0, cells, cell * leaves, leaves);
            }
            return new PlaceKey(draft.duty(), draft.earth(), java.nio.IntBuffer.wrap(cells));
        }
    }

    /** Whether the ways to give gathering items to cells are too many to look at each. */
    boolean tooManyWays(Draft draft, List<Cluster> clusters) {
        PlainKit kit = kit(draft.duty());
        long ways = 0;
        for (Cluster cluster : new LinkedHashSet<>(clusters)) {
            long own = Math.min(cluster.size(), scene.jackCount() - clusters.size() + 1);
            int further = cluster.size() - 1;
            for (PlainKit.Fan fan : kit.fans()) {
                own *= 1 + Math.min(fan.stock(), (further + fan.gain() - 1) / Math.max(1, fan.gain()));
            }
            for (PlainKit.Comb comb : kit.combs()) {
                int wires = counts(cluster)[comb.leaf()];
                own *= 1 + Math.min(comb.stock(), (wires + comb.branches() - 1) / comb.branches());
            }
            // Which kind of wire takes which of the places at different depths.
            int widest = cluster.groups().stream()
                    .mapToInt(Cluster.Group::count)
                    .max()
                    .orElse(0);
            boolean first = true;
            for (Cluster.Group group : cluster.groups()) {
                if (first && group.count() == widest) {
                    first = false;
                } else {
                    own = Math.min(MOST_WAYS + 1, own * (1 + group.count()));
                }
            }
            ways = Math.min(MOST_WAYS + 1, ways + Math.min(MOST_WAYS + 1, own));
        }
        return ways > MOST_WAYS;
    }

    private int[] counts(Cluster cluster) {
        int[] counts = new int[leaves.size()];
        cluster.groups().forEach(group -> counts[leaves.indexOf(group.leaf())] += group.count());
        return counts;
    }

    /** A fitting in items; cells stand in the row in this order. */
    Found find(Draft draft, int[][] counts, List<Integer> row) {
        Optional<List<int[]>> earth = earthOf(draft);
        if (earth.isEmpty()) {
            return new Found(Verdict.NO, Optional.empty());
        }
        Places places = places(draft, counts);
        Verdict verdict = places.verdict(earth.get());
        if (verdict != Verdict.YES) {
            return new Found(verdict, Optional.empty());
        }
        Plainly plainly = new Plainly(
                trays.apply(draft.duty()), kit(draft.duty()), leaves, counts, scene.jackSocket(), scene.jackCount());
        return new Found(verdict, Optional.of(plainly.fitting(places.answer().orElseThrow(), row)));
    }

    private Places places(Draft draft, int[][] counts) {
        return new Places(kit(draft.duty()), counts, scene.jackCount());
    }

    /** Scarce pieces of each choice of earth lead: none where none is asked for, empty where there is no choice. */
    private Optional<List<int[]>> earthOf(Draft draft) {
        if (!draft.earth()) {
            return Optional.of(List.of());
        }
        Tray tray = trays.apply(draft.duty());
        List<int[]> earth = new ArrayList<>();
        for (EarthLead.Choice choice : tray.earth()) {
            int[] use = tray.stock().of(choice.use());
            earth.add(Arrays.copyOf(use, use.length - 1));
        }
        return earth.isEmpty() ? Optional.empty() : Optional.of(earth);
    }
}
