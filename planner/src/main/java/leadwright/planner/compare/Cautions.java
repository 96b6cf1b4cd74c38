package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Step;

/**
 * What changed in the cautions. One that only one plan has is one change, with the number of its steps. One that both have
 * is compared where both have the same reading, or the same other step: a reading that came brings its caution along, which
 * is no change of its own.
 */
record Cautions(Side a, Side b, Names names, Pairs readings) {

    private static final Set<Step.Act> PREPARING = EnumSet.of(Step.Act.TIE, Step.Act.TOUCH, Step.Act.CLIP);

    /** A step that takes no reading, with the caution of the reading that it prepares. */
    private record Place(String text, MainsState state, String next) {}

    List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        Map<String, Integer> before = texts(a);
        Map<String, Integer> after = texts(b);
        Set<String> all = new TreeSet<>(before.keySet());
        all.addAll(after.keySet());
        for (String text : all) {
            if (!before.containsKey(text) || !after.containsKey(text)) {
                changes.add(Change.of(Kind.CAUTION, text, steps(before.get(text)), steps(after.get(text))));
            }
        }
        Set<String> shared = new TreeSet<>(before.keySet());
        shared.retainAll(after.keySet());
        for (Pairs.Pair each : readings.both()) {
            at(
                    names.reading(each),
                    a.taking(each.a()).flatMap(Step::caution).map(a::inWords),
                    b.taking(each.b()).flatMap(Step::caution).map(b::inWords),
                    shared,
                    List.of(each.a().id()),
                    List.of(each.b().id()),
                    changes);
        }
        others(shared, changes);
        return changes;
    }

    private static Optional<String> steps(Integer count) {
        return Optional.ofNullable(count).map(number -> Names.count(number, "step"));
    }

    private static Map<String, Integer> texts(Side side) {
        Map<String, Integer> texts = new TreeMap<>();
        for (Step step : side.steps()) {
            step.caution().ifPresent(text -> texts.merge(side.inWords(text), 1, Integer::sum));
        }
        return texts;
    }

    private static void at(
            String subject,
            Optional<String> before,
            Optional<String> after,
            Set<String> shared,
            List<String> inA,
            List<String> inB,
            List<Change> changes) {
        if (before.equals(after)) {
            return;
        }
        before.filter(shared::contains)
                .ifPresent(text -> changes.add(new Change(
                        Kind.CAUTION, Trend.WENT, text, subject, Optional.of("stands"), Optional.empty(), inA, inB)));
        after.filter(shared::contains)
                .ifPresent(text -> changes.add(new Change(
                        Kind.CAUTION, Trend.CAME, text, subject, Optional.empty(), Optional.of("stands"), inA, inB)));
    }

    /** Steps that take no reading, by what they say: the same step, of which one lost its caution. */
    private void others(Set<String> shared, List<Change> changes) {
        Map<Place, Set<Optional<String>>> before = others(a);
        Map<Place, Set<Optional<String>>> after = others(b);
        before.forEach((step, mine) -> {
            Set<Optional<String>> theirs = after.getOrDefault(step, mine);
            for (String text : shared) {
                int standing = standing(mine, text);
                int left = standing(theirs, text);
                if (standing != left) {
                    Optional<String> stands = Optional.of(text);
                    at(
                            step.text(),
                            standing > left ? stands : Optional.empty(),
                            standing > left ? Optional.empty() : stands,
                            shared,
                            List.of(),
                            List.of(),
                            changes);
                }
            }
        });
    }

    /** Nowhere, at some, or at all of the steps that say the same. */
    private static int standing(Set<Optional<String>> cautions, String text) {
        return !cautions.contains(Optional.of(text)) ? 0 : cautions.size() > 1 ? 1 : 2;
    }

    /**
     * A step that prepares a reading warns of that reading: the same step before a reading with another caution is another
     * step.
     */
    private static Map<Place, Set<Optional<String>>> others(Side side) {
        Map<Place, Set<Optional<String>>> cautions = new LinkedHashMap<>();
        Optional<String> next = Optional.empty();
        for (int i = side.steps().size() - 1; i >= 0; i--) {
            Step step = side.steps().get(i);
            if (step.reading().isPresent()) {
                next = step.caution();
            } else {
                String before = PREPARING.contains(step.does()) ? next.orElse("") : "";
                cautions.computeIfAbsent(
                                new Place(side.inWords(step.text()), step.state(), side.inWords(before)),
                                absent -> new HashSet<>())
                        .add(step.caution().map(side::inWords));
            }
        }
        return cautions;
    }
}
