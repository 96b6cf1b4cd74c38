package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import leadwright.planner.plan.Obligation;

/**
 * Phase 3d: the most earth readings that one choice of leads serves.
 *
 * <p>Needs: readings each of which is served alone, a test that never fails a part of a set that it passes. Gives: a largest set.
 * Method: readings that ask the same of the leads go together; each group is taken or left, taken first, and a branch ends
 * where the groups still to come cannot make up for those left. Cost: 2^groups tests at most, and a budget. Proof: all sets that
 * could be larger have been looked at, unless the budget ended first.
 */
final class LargestServed {
    private static final int MOST_TESTS = 4000;

    private final Predicate<List<Obligation>> serves;
    private final List<List<Obligation>> groups;
    private List<List<Obligation>> best = List.of();
    private int bestSize = -1;
    private int tests;

    /** @param alike equal for readings that ask the same of the leads */
    LargestServed(List<Obligation> readings, Function<Obligation, Object> alike, Predicate<List<Obligation>> serves) {
        this.serves = serves;
        Map<Object, List<Obligation>> byNeeds = new LinkedHashMap<>();
        readings.forEach(each -> byNeeds.computeIfAbsent(alike.apply(each), key -> new ArrayList<>())
                .add(each));
        this.groups = List.copyOf(byNeeds.values());
    }

    /** In the order in which they were given. */
    List<Obligation> of(List<Obligation> readings) {
        look(0, new ArrayList<>(), 0, readings.size());
        return readings.stream()
                .filter(each -> best.stream().anyMatch(group -> group.contains(each)))
                .toList();
    }

    boolean proven() {
        return tests < MOST_TESTS;
    }

    private void look(int at, List<List<Obligation>> taken, int size, int still) {
        if (size > bestSize) {
            best = List.copyOf(taken);
            bestSize = size;
        }
        if (at == groups.size() || size + still <= bestSize || tests >= MOST_TESTS) {
            return;
        }
        List<Obligation> group = groups.get(at);
        taken.add(group);
        tests++;
        if (serves.test(taken.stream().flatMap(List::stream).toList())) {
            look(at + 1, taken, size + group.size(), still - group.size());
        }
        taken.remove(taken.size() - 1);
        look(at + 1, taken, size, still - group.size());
    }
}
