package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Hookup;
import leadwright.planner.wire.Arrangements.Arrangement;

/**
 * Phase 12: of the wirings with so many hookups the first in {@link Rank}.
 *
 * <p>Needs: built hookups that serve everything. Gives: as many that serve the same, and whether they are proven to rank
 * first. Method: hookups as they were built, or made {@link Alike}, are improved by small changes ({@link Nearer}); that
 * is the start of the search of everything ({@link Exact}) where there is little enough to search. Cost: that of its parts.
 * Proof: as {@link Exact} gives it; without it the ranking is by exchange and says so.
 */
final class Ranking {
    private static final int MOST_ARRANGEMENTS = 1_500;
    /** Wires of all hookups together. */
    private static final int MOST_CHAINS = 130;

    /** Changes weighed, where there are at most {@value #LARGE} connections, and where there are more. */
    private static final int MANY = 30;

    private static final int FEW = 12;
    private static final int LARGE = 40;

    private final Scene scene;
    private final Fit fit;
    private final EarthLead earthLead;
    private final Service service;
    private final List<Requirement> requirements;
    private final Weights weights;
    private final JackOrder jackOrder;

    Ranking(Scene scene, Fit fit, EarthLead earthLead, Service service, List<Requirement> requirements) {
        this.scene = scene;
        this.fit = fit;
        this.earthLead = earthLead;
        this.service = service;
        this.requirements = requirements;
        this.weights = new Weights(scene, service, requirements);
        this.jackOrder = new JackOrder(scene, weights);
    }

    /**
     * Hookups in the order in which they are plugged, H1, H2 …
     *
     * @param argument what is known of their rank, in words and numbers
     */
    record Ranked(List<Hookup> hookups, boolean proven, String argument) {}

    Ranked settle(List<Hookup> built) {
        int chains = built.stream().mapToInt(hookup -> hookup.chains().size()).sum();
        if (built.size() > 1 && chains > MOST_CHAINS) {
            return alike(built);
        }
        List<Hookup> best = Rows.best(built, weights);
        Rank rank = rank(best);
        if (built.size() > 1) {
            List<Hookup> alike = Rows.best(
                    new Alike(scene.kit(), requirements, service::serves).settle(built, Therapy.names(scene)), weights);
            best = rank(alike).compareTo(rank) < 0 ? alike : best;
            Nearer nearer = new Nearer(
                    scene,
                    weights,
                    service,
                    requirements,
                    bareEnds(),
                    scene.connections().size() > LARGE ? FEW : MANY);
            best = Rows.best(nearer.settle(untangled(best)), weights);
        }
        best = untangled(best);
        return proven(best, rank(best));
    }

    /** Where there are too many wires to weigh every change: hookups made alike, jacks in the order of the panel. */
    private Ranked alike(List<Hookup> built) {
        List<Hookup> alike = new Alike(scene.kit(), requirements, service::serves).settle(built, Therapy.names(scene));
        return new Ranked(
                named(untangled(alike)),
                false,
                "The wirings of this number are made alike by exchange; they are not ranked.");
    }

    private Rank rank(List<Hookup> row) {
        return weights.of(row);
    }

    /** The fewest crossings that one exchange of jacks in all hookups gives, where everything is served still. */
    private List<Hookup> untangled(List<Hookup> row) {
        List<Hookup> next = jackOrder.untangled(row, requirements, service);
        for (int h = 0; h < row.size(); h++) {
            for (Requirement each : requirements) {
                if (service.serves(row.get(h), each) && !service.serves(next.get(h), each)) {
                    return row;
                }
            }
        }
        return next;
    }

    private boolean bareEnds() {
        return scene.kit().items().stream()
                .anyMatch(item ->
                        item.ends().contains("lab-4mm-plug") || item.ends().contains("lab-4mm-plug-stackable"));
    }

    private Ranked proven(List<Hookup> row, Rank rank) {
        boolean links = scene.linksHelp()
                && fit.tray(Duty.ORDINARY).mostLinks() + fit.tray(Duty.ORDINARY).unsearchedLinks() > 0;
        List<Arrangement> all = links
                ? List.of()
                : Arrangements.of(
                        scene, fit, earthLead, service, requirements, rank.seconds(), row.size(), MOST_ARRANGEMENTS);
        boolean earth = requirements.stream().noneMatch(Requirement::earth)
                || all.stream().noneMatch(each -> each.hookup().earth().isEmpty());
        if (!all.isEmpty() && earth) {
            Exact exact = new Exact(scene, weights, jackOrder, service, requirements, all);
            Optional<List<Hookup>> best = exact.best(row, rank);
            // A walk is no shorter than the best path: where it is as short for the first in rank by paths, nothing
            // ranks better.
            boolean walked =
                    best.map(each -> weights.seconds(each) == exact.seconds()).orElse(false);
            if (walked) {
                Rank as = rank(best.get());
                return new Ranked(
                        named(best.get()),
                        true,
                        argument(as, all.size(), best.get().size()));
            }
        }
        return new Ranked(
                named(row), false, "The wirings of this number are ranked by exchange, not proven least re-plugging.");
    }

    private static String argument(Rank rank, int arrangements, int hookups) {
        return String.format(
                Locale.ROOT,
                "Of all ways to wire %s this ranks first: %d s of plugging, %d contacts, %d items, %s of lead with mains on a"
                        + " part, %d crossings; arrangements of a hookup looked at: %d.",
                hookups == 1 ? "1 hookup" : hookups + " hookups",
                rank.seconds(),
                rank.contacts(),
                rank.pieces(),
                rank.micrometres() == 0
                        ? "0 m"
                        : Quantity.of(Dimension.LENGTH, rank.micrometres()).text(),
                rank.crossings(),
                arrangements);
    }

    private static List<Hookup> named(List<Hookup> row) {
        List<Hookup> named = new ArrayList<>();
        for (Hookup each : row) {
            String id = "H" + (named.size() + 1);
            List<Bundle> bundles = new ArrayList<>();
            for (Bundle bundle : each.bundles()) {
                bundles.add(new Bundle(
                        id + ".b" + (bundles.size() + 1), bundle.connections(), bundle.jacks(), bundle.links()));
            }
            named.add(new Hookup(id, bundles, each.chains(), each.earth()));
        }
        return List.copyOf(named);
    }
}
