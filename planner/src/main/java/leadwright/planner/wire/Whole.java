package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Remedy;

/**
 * Phase 14: the smallest additions that make all readings possible together that items can help.
 *
 * <p>Needs: everything that is stopped, of the earth too. Gives: nothing where no item helps. Method and proof: those of
 * {@link Additions}, over all kinds that some cause's additions were chosen from; readings that these do not help even in any
 * number stay out. Cost: a search of additions.
 */
final class Whole {
    private Whole() {}

    static Optional<Remedy> of(Shortage shortage, EarthShortage earth) {
        Search search = shortage.search();
        List<Want> wants = search.shapes(shortage.helpable());
        List<Offer> kinds = Offers.joined(wants.isEmpty() ? List.of() : search.together(wants), earth.used());
        List<Want> helped = wants.stream()
                .filter(want -> search.over(kinds, search.tests(List.of(want))).possible())
                .toList();
        List<Predicate<Kit>> tests = new ArrayList<>(search.tests(helped));
        tests.add(earth::serves);
        if (kinds.isEmpty()) {
            return Optional.empty();
        }
        Additions additions = search.over(kinds, tests);
        List<Proposal> alternatives = additions.smallest();
        if (alternatives.isEmpty() || alternatives.get(0).count() == 0) {
            return Optional.empty();
        }
        int left = wants.size() - helped.size();
        String rest = left == 0
                ? ""
                : " " + left + (left == 1 ? " reading is" : " readings are") + " not helped by items and not counted.";
        int pieces = alternatives.get(0).count();
        return Optional.of(new Remedy(
                alternatives,
                new Proof(
                        pieces,
                        additions.settled() ? pieces : additions.atLeast(),
                        (additions.settled()
                                        ? "Every addition of fewer pieces of these kinds leaves a reading stopped."
                                        : "The search for fewer pieces ended at its budget.")
                                + rest)));
    }
}
