package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/**
 * Readings of two plans, matched by what they mean.
 *
 * <p>Needs: the readings of both. Gives: each reading of either in exactly one pair or alone. Method: three passes, each
 * over what the last one left: the same meaning and the same key; the same meaning (twins in the order of their keys); the
 * same key, for a reading that is taken otherwise. Cost: n log n. Proof: pairs do not depend on which plan is the first,
 * since every pass looks at both alike.
 *
 * @param both in the order of the first plan
 * @param onlyA in the order of the first plan
 * @param onlyB in the order of the second plan
 */
record Pairs(List<Pair> both, List<Reading> onlyA, List<Reading> onlyB) {
    Pairs {
        both = List.copyOf(both);
        onlyA = List.copyOf(onlyA);
        onlyB = List.copyOf(onlyB);
    }

    /** One reading as each plan has it. */
    record Pair(Reading a, Reading b) {
        Obligation inA() {
            return a.obligation();
        }

        Obligation inB() {
            return b.obligation();
        }

        boolean alike() {
            return meaning(inA()).equals(meaning(inB()));
        }
    }

    static Pairs of(List<Reading> a, List<Reading> b) {
        Map<Reading, Reading> found = new LinkedHashMap<>();
        List<Reading> leftA = new ArrayList<>(a);
        List<Reading> leftB = new ArrayList<>(b);
        List<Function<Obligation, String>> passes =
                List.of(what -> meaning(what) + "\n" + what.key(), Pairs::meaning, Obligation::key);
        for (Function<Obligation, String> pass : passes) {
            pair(leftA, leftB, pass, found);
        }
        List<Pair> both = a.stream()
                .filter(found::containsKey)
                .map(each -> new Pair(each, found.get(each)))
                .toList();
        return new Pairs(both, leftA, leftB);
    }

    private static void pair(
            List<Reading> leftA, List<Reading> leftB, Function<Obligation, String> pass, Map<Reading, Reading> found) {
        Map<String, List<Reading>> inA = grouped(leftA, pass);
        Map<String, List<Reading>> inB = grouped(leftB, pass);
        inA.forEach((name, mine) -> {
            List<Reading> theirs = inB.getOrDefault(name, List.of());
            for (int i = 0; i < Math.min(mine.size(), theirs.size()); i++) {
                found.put(mine.get(i), theirs.get(i));
            }
        });
        leftA.removeAll(found.keySet());
        leftB.removeAll(List.copyOf(found.values()));
    }

    private static Map<String, List<Reading>> grouped(List<Reading> readings, Function<Obligation, String> pass) {
        Map<String, List<Reading>> groups = new TreeMap<>();
        for (Reading each : readings) {
            groups.computeIfAbsent(pass.apply(each.obligation()), absent -> new ArrayList<>())
                    .add(each);
        }
        Comparator<Reading> byKey =
                Comparator.comparing(each -> each.obligation().key(), NaturalOrder.IDS);
        groups.values().forEach(group -> group.sort(byKey));
        return groups;
    }

    /** What a reading is of and in which conditions it is taken: all that makes it the same reading in another plan. */
    static String meaning(Obligation what) {
        return String.join(
                "\n",
                what.quantity().word(),
                String.join(",", what.of()),
                what.demand().key(),
                what.place().orElse("-"),
                what.earthSubject().map(Obligation.EarthSubject::word).orElse("-"),
                what.state().word(),
                what.mode(),
                what.sourcePolarity().map(Obligation.SourcePolarity::word).orElse("-"),
                what.method().map(Enum::name).orElse("-"),
                what.component().map(Enum::name).orElse("-"));
    }
}
