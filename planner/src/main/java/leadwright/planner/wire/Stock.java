package leadwright.planner.wire;

import java.util.Arrays;
import java.util.List;

/**
 * Which pieces can run short at all. A piece whose stock covers every use that any hookup could make of it is left out
 * of all further counting.
 *
 * @param scarce piece numbers that must be counted
 * @param limits their stock; the last entry is the number of jacks
 */
record Stock(int[] scarce, int[] limits) {

    static Stock of(Scene scene, Bench bench, Routes routes, int[] earthUse) {
        int pieces = bench.items().size();
        long[] most = new long[pieces];
        for (Leaf leaf : scene.leaves()) {
            add(most, mostUse(routes, leaf, pieces), 1);
        }
        if (scene.linksHelp()) {
            add(most, mostUse(routes, Leaf.link(scene.jackSocket()), pieces), scene.jackCount());
        }
        int chains = scene.leaves().size() + (scene.linksHelp() ? scene.jackCount() : 0);
        for (Part part : bench.parts()) {
            if (part.gathers()) {
                // Each has two inlets in use or more, so there are fewer of them than chains.
                most[part.piece()] += chains;
                int trunks = Math.min(chains, part.item().stock());
                add(most, mostUse(routes, Leaf.trunk(part.out()), pieces), trunks);
            }
        }
        add(most, earthUse, 1);
        int[] stock = bench.stock();
        int[] scarce = java.util.stream.IntStream.range(0, pieces)
                .filter(piece -> most[piece] > stock[piece])
                .toArray();
        int[] limits = Arrays.stream(scarce).map(piece -> stock[piece]).toArray();
        limits = Arrays.copyOf(limits, scarce.length + 1);
        limits[scarce.length] = scene.jackCount();
        return new Stock(scarce, limits);
    }

    private static int[] mostUse(Routes routes, Leaf leaf, int pieces) {
        int[] most = new int[pieces];
        List<Routes.Label> labels = routes.from(leaf);
        for (Routes.Label label : labels) {
            for (int piece = 0; piece < pieces; piece++) {
                most[piece] = Math.max(most[piece], label.route().use()[piece]);
            }
        }
        return most;
    }

    private static void add(long[] sum, int[] use, long times) {
        for (int piece = 0; piece < use.length; piece++) {
            sum[piece] += use[piece] * times;
        }
    }

    /** Scarce pieces among those used, with a place for the jacks. */
    int[] of(int[] use) {
        int[] counted = new int[scarce.length + 1];
        for (int i = 0; i < scarce.length; i++) {
            counted[i] = use[scarce[i]];
        }
        return counted;
    }

    boolean holds(int[] use) {
        return Routes.atMost(use, limits);
    }
}
