package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class BlockOrderTest {

    static IntStream seeds() {
        return IntStream.rangeClosed(1, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void no_other_order_of_blocks_crosses_less(long seed) {
        Random random = new Random(seed);
        List<List<String>> blocks = blocks(random, 2 + random.nextInt(5));
        Map<String, Integer> place = shuffled(blocks, random);
        long fewest = Long.MAX_VALUE;
        for (List<List<String>> order : orders(blocks)) {
            fewest = Math.min(fewest, crossings(order, place));
        }
        List<String> found = BlockOrder.fewest(blocks, place::get);
        assertThat(found).containsExactlyInAnyOrderElementsOf(place.keySet());
        assertThat(crossingsOfLines(found, blocks, place)).isEqualTo(fewest);
    }

    /** Counts what is crossed at once and what the trunks cross later. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void no_other_parting_of_bundles_crosses_less_in_all(long seed) {
        Random random = new Random(seed);
        List<List<String>> blocks = blocks(random, 2 + random.nextInt(5));
        Map<String, Integer> place = shuffled(blocks, random);
        List<Integer> outs =
                blocks.stream().map(block -> block.size() > 2 ? 2 : 1).toList();
        long fewest = Long.MAX_VALUE;
        for (List<List<String>> order : orders(blocks)) {
            fewest = Math.min(fewest, crossings(order, place) + later(order, blocks, outs));
        }
        List<String> found = BlockOrder.leastInAll(blocks, outs, place::get);
        List<List<String>> order = new ArrayList<>(blocks);
        order.sort(java.util.Comparator.comparing(block -> found.indexOf(block.get(0))));
        assertThat(crossings(order, place) + later(order, blocks, outs)).isEqualTo(fewest);
    }

    private static long later(List<List<String>> order, List<List<String>> wanted, List<Integer> outs) {
        long later = 0;
        for (int i = 0; i < order.size(); i++) {
            for (int j = i + 1; j < order.size(); j++) {
                int a = wanted.indexOf(order.get(i));
                int b = wanted.indexOf(order.get(j));
                later += a > b ? (long) outs.get(a) * outs.get(b) : 0;
            }
        }
        return later;
    }

    private static List<List<String>> blocks(Random random, int count) {
        List<List<String>> blocks = new ArrayList<>();
        for (int b = 0; b < count; b++) {
            List<String> block = new ArrayList<>();
            int lines = random.nextInt(3) == 0 ? 1 : 1 + random.nextInt(4);
            for (int i = 0; i < lines; i++) {
                block.add("b" + b + "." + i);
            }
            blocks.add(block);
        }
        return blocks;
    }

    /** A place for each line; lines of one block keep their order, as they do where they come from pins. */
    private static Map<String, Integer> shuffled(List<List<String>> blocks, Random random) {
        List<Integer> owners = new ArrayList<>();
        for (int b = 0; b < blocks.size(); b++) {
            owners.addAll(Collections.nCopies(blocks.get(b).size(), b));
        }
        Collections.shuffle(owners, random);
        Map<String, Integer> place = new HashMap<>();
        int[] next = new int[blocks.size()];
        for (int at = 0; at < owners.size(); at++) {
            int owner = owners.get(at);
            place.put(blocks.get(owner).get(next[owner]++), at);
        }
        return place;
    }

    private static long crossings(List<List<String>> order, Map<String, Integer> place) {
        long crossings = 0;
        for (int i = 0; i < order.size(); i++) {
            for (int j = i + 1; j < order.size(); j++) {
                for (String a : order.get(i)) {
                    for (String b : order.get(j)) {
                        crossings += place.get(a) > place.get(b) ? 1 : 0;
                    }
                }
            }
        }
        return crossings;
    }

    private static long crossingsOfLines(List<String> lines, List<List<String>> blocks, Map<String, Integer> place) {
        List<List<String>> order = new ArrayList<>(blocks);
        order.sort(java.util.Comparator.comparing(block -> lines.indexOf(block.get(0))));
        return crossings(order, place);
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
}
