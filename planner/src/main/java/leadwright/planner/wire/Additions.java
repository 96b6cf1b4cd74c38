package leadwright.planner.wire;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.planner.plan.NaturalOrder;

/**
 * Phase 13b: the smallest additions to a kit that would do, of items that it already lists.
 *
 * <p>Needs: a kit, a test that more of everything would pass. Gives: additions, fewest pieces first, then the lower price.
 * Method: first what is needed of each kind however much there is of the others; then what one kind alone must add to that;
 * then every way with fewer pieces, from the fewest up, branches cut that the remaining kinds cannot save. Cost: in the
 * tests; a search whose budget ends says so. Proof: more never hurts, so every addition that does holds the needed pieces,
 * and all of fewer pieces than the first have been tried.
 */
final class Additions {
    private static final int MOST_LISTED = 4;
    private static final Pattern PRICE = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(\\S+)");

    private final Kit kit;
    private final List<String> kinds;
    private final int most;
    private final Predicate<Kit> enough;
    private final BooleanSupplier ended;
    private final Map<List<Integer>, Boolean> known = new HashMap<>();
    private boolean settled = true;

    /**
     * @param kinds ids of the items of which more can help
     * @param most so many more of every kind pass the test
     * @param ended whether the budget of tests has ended
     */
    Additions(Kit kit, List<String> kinds, int most, Predicate<Kit> enough, BooleanSupplier ended) {
        this.kit = kit;
        this.kinds = kinds;
        this.most = most;
        this.enough = enough;
        this.ended = ended;
    }

    /** Each a number of pieces by item id, the best first; none where more of these kinds does not do. */
    List<Map<String, Integer>> smallest() {
        int[] all = new int[kinds.size()];
        java.util.Arrays.fill(all, most);
        if (!does(all)) {
            return List.of();
        }
        int[] needed = new int[kinds.size()];
        for (int kind = 0; kind < needed.length; kind++) {
            needed[kind] = least(all, kind, true);
        }
        List<int[]> found = new ArrayList<>();
        if (does(needed)) {
            found.add(needed);
        } else {
            for (int kind = 0; kind < needed.length; kind++) {
                alone(needed, kind).ifPresent(found::add);
            }
            if (found.isEmpty()) {
                found.add(withoutWaste(all));
            }
            fewer(needed, found);
        }
        List<Map<String, Integer>> additions = new ArrayList<>();
        found.forEach(each -> additions.add(named(each)));
        additions.sort(Comparator.comparingInt(Additions::pieces)
                .thenComparing(this::price)
                .thenComparingInt(Map::size)
                .thenComparing(this::text, NaturalOrder.IDS));
        // One of those that differ in numbers alone.
        Map<Set<String>, Map<String, Integer>> byKinds = new LinkedHashMap<>();
        additions.forEach(each -> byKinds.putIfAbsent(each.keySet(), each));
        return byKinds.values().stream().limit(MOST_LISTED).toList();
    }

    /** Whether no addition of fewer pieces than the first was left untried. */
    boolean settled() {
        return settled;
    }

    private void fewer(int[] needed, List<int[]> found) {
        int fewest = found.stream().mapToInt(Additions::sum).min().orElseThrow();
        for (int pieces = sum(needed) + 1; pieces <= fewest; pieces++) {
            List<int[]> here = new ArrayList<>();
            spread(needed.clone(), 0, pieces - sum(needed), here);
            for (int[] each : here) {
                if (found.stream().noneMatch(other -> java.util.Arrays.equals(other, each))) {
                    found.add(each);
                }
            }
            if (!here.isEmpty() || !settled) {
                return;
            }
        }
    }

    /** Every way to add so many pieces of the kinds from this one on. */
    private void spread(int[] addition, int kind, int pieces, List<int[]> found) {
        if (ended.getAsBoolean()) {
            settled = false;
            return;
        }
        if (pieces == 0) {
            if (does(addition)) {
                found.add(addition.clone());
            }
            return;
        }
        if (kind == kinds.size()) {
            return;
        }
        int[] hope = addition.clone();
        for (int later = kind; later < hope.length; later++) {
            hope[later] += pieces;
        }
        if (!does(hope)) {
            return;
        }
        for (int here = pieces; here >= 0; here--) {
            addition[kind] += here;
            spread(addition, kind + 1, pieces - here, found);
            addition[kind] -= here;
        }
    }

    /** How many of one kind alone, beside what is needed, would do. */
    private Optional<int[]> alone(int[] needed, int kind) {
        int[] addition = needed.clone();
        addition[kind] = most;
        if (!does(addition)) {
            return Optional.empty();
        }
        addition[kind] = least(addition, kind, false);
        return Optional.of(addition);
    }

    /**
     * The least of one kind while the others stay.
     *
     * @param lower where the budget ends first: whether a number that may be too small is wanted, or one that does
     */
    private int least(int[] addition, int kind, boolean lower) {
        int[] trial = addition.clone();
        trial[kind] = 0;
        if (does(trial)) {
            return 0;
        }
        int low = 1;
        int high = addition[kind];
        while (low < high) {
            if (ended.getAsBoolean()) {
                settled = false;
                return lower ? low : high;
            }
            trial[kind] = (low + high) / 2;
            if (does(trial)) {
                high = trial[kind];
            } else {
                low = trial[kind] + 1;
            }
        }
        return low;
    }

    private int[] withoutWaste(int[] all) {
        int[] addition = all.clone();
        for (int kind = 0; kind < addition.length; kind++) {
            addition[kind] = least(addition, kind, false);
        }
        return addition;
    }

    private boolean does(int[] addition) {
        List<Integer> key = java.util.Arrays.stream(addition).boxed().toList();
        Boolean was = known.get(key);
        if (was != null) {
            return was;
        }
        boolean does = enough.test(WhatIf.more(kit, named(addition)));
        known.put(key, does);
        return does;
    }

    private Map<String, Integer> named(int[] addition) {
        Map<String, Integer> named = new LinkedHashMap<>();
        for (int kind = 0; kind < addition.length; kind++) {
            if (addition[kind] > 0) {
                named.put(kinds.get(kind), addition[kind]);
            }
        }
        return Collections.unmodifiableMap(named);
    }

    private static int sum(int[] addition) {
        return java.util.Arrays.stream(addition).sum();
    }

    static int pieces(Map<String, Integer> addition) {
        return addition.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** For ranking only; an item without a price counts as nothing. */
    private BigDecimal price(Map<String, Integer> addition) {
        BigDecimal sum = BigDecimal.ZERO;
        for (Map.Entry<String, Integer> each : addition.entrySet()) {
            sum = sum.add(price(item(each.getKey()))
                    .map(price -> price.multiply(BigDecimal.valueOf(each.getValue())))
                    .orElse(BigDecimal.ZERO));
        }
        return sum;
    }

    private static Optional<BigDecimal> price(KitItem item) {
        return item.price().map(PRICE::matcher).filter(Matcher::matches).map(found -> new BigDecimal(found.group(1)));
    }

    private KitItem item(String id) {
        return kit.item(id).orElseThrow();
    }

    /** {@code 2 more comb (fan-out of 8, 48 GBP each, 96 GBP together)}. */
    String text(Map<String, Integer> addition) {
        List<String> texts = new ArrayList<>();
        addition.forEach((id, count) -> {
            KitItem item = item(id);
            String kind = item.kind() == ItemKind.FAN_OUT
                    ? "fan-out of " + item.branches()
                    : item.kind().word().replace('-', ' ');
            texts.add(count + " more " + id + " (" + kind + priced(item, count) + ")");
        });
        return String.join(" and ", texts);
    }

    private static String priced(KitItem item, int count) {
        if (item.price().isEmpty()) {
            return "";
        }
        Matcher price = PRICE.matcher(item.price().get());
        if (count == 1 || !price.matches()) {
            return ", " + item.price().get() + (count == 1 ? "" : " each");
        }
        BigDecimal together = new BigDecimal(price.group(1)).multiply(BigDecimal.valueOf(count));
        return ", " + item.price().get() + " each, " + together.toPlainString() + " " + price.group(2) + " together";
    }
}
