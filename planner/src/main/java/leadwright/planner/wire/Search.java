package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Shortfall;

/**
 * Phase 13d: the additions for the readings of one cause.
 *
 * <p>Needs: the readings, each without what other causes keep away. Gives: additions that make all of them possible. Method:
 * first with the kit's own kinds alone, then with new kinds, then with leads, then with a fan-out: the first group of kinds of
 * which any number does is searched. Cost: that of {@link Additions}.
 */
final class Search {
    private final Scene scene;
    private final Trial trial;
    private final Offers offers;
    /** Every kind that some cause's additions were chosen from. */
    private List<Offer> used = List.of();

    Search(Scene scene, Trial trial, Offers offers) {
        this.scene = scene;
        this.trial = trial;
        this.offers = offers;
    }

    Shortfall shortfall(Cause cause) {
        List<Want> wants = cause.wants();
        if (wants.isEmpty()) {
            return cause.shortfall(List.of(), true);
        }
        Optional<Additions> additions = additions(wants, false);
        List<Proposal> proposals = additions.map(Additions::smallest).orElse(List.of());
        return cause.shortfall(proposals, additions.map(Additions::settled).orElse(true));
    }

    /** @param far whether distance is the cause, so that leads come before fan-outs in a row */
    Optional<Additions> additions(List<Want> wants, boolean far) {
        List<Want> shapes = shapes(wants);
        List<Predicate<Kit>> tests = tests(shapes);
        for (List<Offer> fresh : groups(shapes, far)) {
            // Fan-outs in a row also make a chain longer, at a price that nobody would pay.
            List<Offer> own = offers.own(shapes, fresh).stream()
                    .filter(each -> !far || each.item().kind() != ItemKind.FAN_OUT)
                    .toList();
            List<Offer> kinds = Offers.joined(own, fresh);
            Additions additions = over(kinds, tests);
            if (additions.possible()) {
                used = Offers.joined(used, kinds);
                return Optional.of(additions);
            }
        }
        return Optional.empty();
    }

    Additions over(List<Offer> kinds, List<Predicate<Kit>> tests) {
        // Two of a kind for each chain and jack: what takes more only lengthens chains.
        int most = 2 * (scene.leaves().size() + scene.jackCount());
        return new Additions(scene.kit(), kinds, most, tests, trial::ended);
    }

    /** One of those that ask the same of a kit. */
    List<Want> shapes(List<Want> wants) {
        Map<String, Want> shapes = new LinkedHashMap<>();
        wants.forEach(want -> shapes.putIfAbsent(trial.shape(want.reading()), want));
        return List.copyOf(shapes.values());
    }

    List<Predicate<Kit>> tests(List<Want> wants) {
        List<Predicate<Kit>> tests = new ArrayList<>();
        wants.forEach(want -> tests.add(kit -> trial.fits(kit, want.reading())));
        return tests;
    }

    /** Kinds to choose from, the nearest at hand first. */
    private List<List<Offer>> groups(List<Want> wants, boolean far) {
        List<Offer> like = offers.fresh(wants, false);
        List<Offer> fresh = offers.fresh(wants, true);
        List<Offer> leads = offers.leads(wants);
        List<Offer> fanOut = offers.fanOut();
        List<List<Offer>> groups = new ArrayList<>();
        if (!far) {
            groups.add(List.of());
            groups.add(like);
            groups.add(fresh);
        }
        groups.add(Offers.joined(like, leads));
        groups.add(Offers.joined(fresh, leads));
        if (!far) {
            groups.add(Offers.joined(fresh, fanOut));
        }
        groups.add(Offers.joined(Offers.joined(fresh, leads), fanOut));
        return groups.stream().distinct().toList();
    }

    /** Kinds that make all these readings possible together, as far as any do. */
    List<Offer> together(List<Want> wants) {
        if (over(used, tests(wants)).possible()) {
            return used;
        }
        List<Offer> more = Offers.joined(Offers.joined(used, offers.leads(wants)), offers.fanOut());
        return Offers.joined(more, offers.own(wants, more));
    }
}
