package leadwright.planner.audit;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import leadwright.planner.Plan;

/**
 * A kind of damage, at a place drawn by the dice.
 *
 * @param named the invariant that it is built to break
 * @param also what else it may break, because it cannot be done without
 * @param damage empty where the plan has no place for it
 */
record Kind(Invariant named, String what, Set<Invariant> also, BiFunction<Plan, Dice, Optional<Plan>> damage) {

    /** Every kind, chapter by chapter. */
    static List<Kind> all() {
        return Stream.of(
                        WiringKinds.all(),
                        RatingKinds.all(),
                        ReadingKinds.all(),
                        MissingKinds.all(),
                        LimitKinds.all(),
                        StepKinds.all(),
                        PrecedenceKinds.all(),
                        HandKinds.all(),
                        EarthLeadKinds.all(),
                        ProofKinds.all(),
                        FigureKinds.all())
                .flatMap(List::stream)
                .toList();
    }

    static Kind of(Invariant named, String what, BiFunction<Plan, Dice, Optional<Plan>> damage, Invariant... also) {
        Set<Invariant> others = EnumSet.noneOf(Invariant.class);
        others.addAll(java.util.Arrays.asList(also));
        return new Kind(named, what, Set.copyOf(others), damage);
    }

    @Override
    public String toString() {
        return named.word() + ": " + what;
    }
}
