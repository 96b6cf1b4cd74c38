package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToIntFunction;

/**
 * The order of blocks of lines with the fewest crossings, where the lines stand in a given order before. Blocks of one line
 * never cross each other in the order in which they stand; larger blocks are placed among them exactly for up to
 * {@value #EXACT} of these, by their mean place and exchanges of neighbours beyond.
 */
final class BlockOrder {
    private static final int EXACT = 6;

    /** Most blocks that {@link #leastInAll} orders. */
    static final int SETS = 16;

    private BlockOrder() {}

    static List<String> fewest(List<List<String>> blocks, ToIntFunction<String> place) {
        List<List<String>> sorted = new ArrayList<>(blocks);
        sorted.removeIf(List::isEmpty);
        sorted.sort(Comparator.comparingDouble((List<String> block) ->
                        block.stream().mapToInt(place).average().orElse(0))
                .thenComparing(block -> place.applyAsInt(block.get(0))));
        List<List<String>> large =
                sorted.stream().filter(block -> block.size() > 1).toList();
        if (large.size() <= EXACT) {
            List<List<String>> single =
                    sorted.stream().filter(block -> block.size() == 1).toList();
            sorted = insertedBest(single, large, place);
        } else {
            exchange(sorted, place);
        }
        return sorted.stream().flatMap(List::stream).toList();
    }

    /**
     * The order of whole bundles with the fewest crossings in all: those of their lines now, and later one for each pair of
     * trunks that is then in another order than given. Exact, by dynamic programming over sets of bundles.
     *
     * @param blocks lines of each bundle, bundles in the order in which their trunks must end
     * @param outs number of trunks of each
     */
    static List<String> leastInAll(List<List<String>> blocks, List<Integer> outs, ToIntFunction<String> place) {
        int n = blocks.size();
        long[][] cost = new long[n][n];
        for (int a = 0; a < n; a++) {
            for (int b = 0; b < n; b++) {
                long later = a > b ? (long) outs.get(a) * outs.get(b) : 0;
                // A later exchange counts a little more, so that one alone is preferred where both cross alike.
                cost[a][b] = a == b ? 0 : 1000 * (crossings(blocks.get(a), blocks.get(b), place) + later) + later;
            }
        }
        List<String> order = new ArrayList<>();
        for (int block : RowOrder.exact(cost)) {
            order.addAll(blocks.get(block));
        }
        return order;
    }

    /** The place among blocks in their order at which one more crosses least, the upper one of equals. */
    static int leastCrossedPlace(List<List<String>> blocks, List<String> block, ToIntFunction<String> place) {
        int best = 0;
        long fewest = Long.MAX_VALUE;
        for (int at = 0; at <= blocks.size(); at++) {
            long crossings = 0;
            for (int i = 0; i < blocks.size(); i++) {
                crossings += i < at ? crossings(blocks.get(i), block, place) : crossings(block, blocks.get(i), place);
            }
            if (crossings < fewest) {
                fewest = crossings;
                best = at;
            }
        }
        return best;
    }

    /** Tries every order of the large blocks; among the single ones each then has one best gap, sought from the top. */
    private static List<List<String>> insertedBest(
            List<List<String>> single, List<List<String>> large, ToIntFunction<String> place) {
        return orders(large).stream()
                .map(order -> merged(single, order, place))
                .min(Comparator.comparing(order -> crossings(order, place)))
                .orElseThrow();
    }

    /** Merges two sequences of blocks that keep their order, with the fewest crossings between them. */
    private static List<List<String>> merged(
            List<List<String>> single, List<List<String>> large, ToIntFunction<String> place) {
        int n = single.size();
        int m = large.size();
        long[][] cost = new long[n + 1][m + 1];
        boolean[][] takeLarge = new boolean[n + 1][m + 1];
        for (int i = n; i >= 0; i--) {
            for (int j = m; j >= 0; j--) {
                if (i == n && j == m) {
                    continue;
                }
                long bySingle = Long.MAX_VALUE;
                if (i < n) {
                    bySingle = cost[i + 1][j];
                    for (int k = j; k < m; k++) {
                        bySingle += crossings(single.get(i), large.get(k), place);
                    }
                }
                long byLarge = Long.MAX_VALUE;
                if (j < m) {
                    byLarge = cost[i][j + 1];
                    for (int k = i; k < n; k++) {
                        byLarge += crossings(large.get(j), single.get(k), place);
                    }
                }
                takeLarge[i][j] = byLarge < bySingle;
                cost[i][j] = Math.min(byLarge, bySingle);
            }
        }
        List<List<String>> all = new ArrayList<>();
        int i = 0;
        int j = 0;
        while (i < n || j < m) {
            all.add(takeLarge[i][j] ? large.get(j++) : single.get(i++));
        }
        return all;
    }

    private static List<List<List<String>>> orders(List<List<String>> blocks) {
        if (blocks.isEmpty()) {
            return List.of(List.of());
        }
        List<List<List<String>>> all = new ArrayList<>();
        for (int i = 0; i < blocks.size(); i++) {
            List<List<String>> rest = new ArrayList<>(blocks);
            List<String> first = rest.remove(i);
            for (List<List<String>> order : orders(rest)) {
                List<List<String>> longer = new ArrayList<>(List.of(first));
                longer.addAll(order);
                all.add(longer);
            }
        }
        return all;
    }

    private static void exchange(List<List<String>> blocks, ToIntFunction<String> place) {
        boolean better = true;
        while (better) {
            better = false;
            for (int i = 0; i + 1 < blocks.size(); i++) {
                List<String> a = blocks.get(i);
                List<String> b = blocks.get(i + 1);
                if (crossings(b, a, place) < crossings(a, b, place)) {
                    blocks.set(i, b);
                    blocks.set(i + 1, a);
                    better = true;
                }
            }
        }
    }

    private static long crossings(List<List<String>> order, ToIntFunction<String> place) {
        long sum = 0;
        for (int i = 0; i < order.size(); i++) {
            for (int j = i + 1; j < order.size(); j++) {
                sum += crossings(order.get(i), order.get(j), place);
            }
        }
        return sum;
    }

    /** Crossings between two blocks when the first is put above the second. */
    private static long crossings(List<String> above, List<String> below, ToIntFunction<String> place) {
        long sum = 0;
        for (String a : above) {
            for (String b : below) {
                sum += place.applyAsInt(a) > place.applyAsInt(b) ? 1 : 0;
            }
        }
        return sum;
    }
}
