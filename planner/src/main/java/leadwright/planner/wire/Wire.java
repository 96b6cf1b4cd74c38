package leadwright.planner.wire;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.Device;
import leadwright.catalog.house.House;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Connectors;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Remedy;
import leadwright.planner.plan.Shortfall;

/**
 * From obligations and kit to the fewest hookups, with the proof.
 *
 * <p>The phases: 1 {@link Scene} numbers the problem, 2 {@link Bench} the kit as a duty allows it, 3 {@link Routes} and
 * {@link EarthLead} ways through items, 4 {@link Gather} menus of single cells, 5 {@link Row} the row of jacks, 6 {@link Fit}
 * whether a set of requirements fits one hookup, 7 {@link Followers} and {@link Twins} what need not be looked at twice, 8
 * {@link Bounds}, 9 {@link Cover} the fewest hookups, 10 {@link Build} items and jacks, 11 {@link Service}
 * what may be read where, 12 {@link Ranking} the first in rank of equally few hookups, 13 {@link Shortage} what is missing,
 * 14 {@link Whole} what would make everything possible. None knows a
 * later one.
 */
public final class Wire {
    private final Scene scene;
    private final EarthLead earthLead;
    private final Fit fit;
    private final Service service;
    private final List<Shortfall> shortfalls = new ArrayList<>();
    private final List<String> uncovered = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();

    private Wire(Scene scene, EarthLead earthLead) {
        this.scene = scene;
        this.earthLead = earthLead;
        this.fit = new Fit(scene, earthLead);
        this.service = new Service(scene, fit);
    }

    /**
     * Wires a device.
     *
     * @param connectors the catalog's table; what device and kit define is added here
     * @param obligations every reading wanted; keys are unique
     * @return hookups H1, H2 …; where the kit falls short those for what it can do, with what is missing
     * @throws IllegalArgumentException when a demand names a connection that the device does not have
     */
    public static Wiring wire(
            Device device, Kit kit, House house, Connectors connectors, List<Obligation> obligations) {
        return wire(device, kit, house, connectors, obligations, Optional.empty(), true);
    }

    /**
     * As above, for earth readings with a given current.
     *
     * @param earthCurrent what is set on the tester for earth readings; empty for the smallest that it has
     * @param proposals whether the causes and additions are looked for where the kit falls short
     */
    public static Wiring wire(
            Device device,
            Kit kit,
            House house,
            Connectors connectors,
            List<Obligation> obligations,
            Optional<Quantity> earthCurrent,
            boolean proposals) {
        List<Obligation> earth = obligations.stream()
                .filter(each -> each.phase() == Obligation.Phase.EARTH)
                .toList();
        Connectors all = Scene.connectors(device, kit, connectors);
        EarthShortage earthShortage = new EarthShortage(device, kit, all, earth, earthCurrent);
        List<Obligation> rest = obligations.stream()
                .filter(each -> !earthShortage.uncovered().contains(each.key()))
                .toList();
        Scene scene = Scene.of(device, kit, house, all, rest);
        Wire wire = new Wire(scene, new EarthLead(device, kit, all, earthShortage.served(), earthCurrent));
        wire.shortfalls.addAll(earthShortage.shortfalls());
        wire.uncovered.addAll(earthShortage.uncovered());
        return wire.wiring(earthShortage, proposals);
    }

    private Wiring wiring(EarthShortage earth, boolean proposals) {
        List<Requirement> possible = new ArrayList<>();
        List<Requirement> unfit = new ArrayList<>();
        for (Requirement each : scene.requirements()) {
            Verdict alone = fit.fits(Draft.empty(scene).with(each));
            (alone == Verdict.YES ? possible : unfit).add(each);
        }
        unfit.forEach(each -> uncovered.addAll(each.keys()));
        Optional<Remedy> remedy = proposals ? proposed(unfit, earth) : unexplained(unfit);
        Cover.Covering covering = new Cover(scene, fit).cover(possible);
        List<Hookup> hookups = new ArrayList<>();
        List<Draft> drafts = sorted(covering.hookups());
        for (Draft draft : drafts) {
            hookups.add(Build.hookup(scene, fit, withEarth(draft, possible), "H" + (hookups.size() + 1)));
        }
        if (hookups.isEmpty()) {
            hookups.add(new Hookup("H1", List.of(), List.of(), List.of()));
        }
        Ranking.Ranked ranked = new Ranking(scene, fit, earthLead, service, possible).settle(hookups);
        Map<String, List<String>> takenIn = takenIn(ranked.hookups());
        warnings.addAll(Loading.warnings(scene, service, ranked.hookups(), takenIn));
        return new Wiring(ranked.hookups(), takenIn, proof(covering, ranked), shortfalls, remedy, uncovered, warnings);
    }

    private Optional<Remedy> proposed(List<Requirement> unfit, EarthShortage earth) {
        Shortage shortage = new Shortage(scene, unfit);
        shortfalls.addAll(shortage.shortfalls());
        return shortfalls.isEmpty() ? Optional.empty() : Whole.of(shortage, earth);
    }

    private Optional<Remedy> unexplained(List<Requirement> unfit) {
        if (!unfit.isEmpty()) {
            List<String> keys =
                    unfit.stream().flatMap(each -> each.keys().stream()).toList();
            shortfalls.add(new Shortfall(
                    "kit", List.of(), "the cause and additions were not asked for", List.of(), List.of(), keys));
        }
        return Optional.empty();
    }

    private static List<Draft> sorted(List<Draft> drafts) {
        return drafts.stream()
                .sorted(Comparator.comparingInt((Draft draft) -> draft.members().stream()
                        .mapToInt(Requirement::index)
                        .min()
                        .orElse(0)))
                .toList();
    }

    /** The earth lead in every hookup that has room for it: the order of hookups is then free. */
    private Draft withEarth(Draft draft, List<Requirement> possible) {
        for (Requirement each : possible) {
            if (each.earth() && !draft.earth() && fit.fits(draft, each) == Verdict.YES) {
                return draft.with(each);
            }
        }
        return draft;
    }

    private Proof proof(Cover.Covering covering, Ranking.Ranked ranked) {
        int hookups = ranked.hookups().size();
        String rest = uncovered.isEmpty() ? "" : " For what this kit can wire; what it cannot is listed.";
        if (covering.hookups().isEmpty()) {
            return new Proof(1, 1, "No reading asks for wiring: one hookup in which nothing is plugged in." + rest);
        }
        String met = covering.lowerBound() == hookups && hookups == 1 ? "One hookup serves all demands. " : "";
        return new Proof(hookups, covering.lowerBound(), met + covering.argument() + rest + " " + ranked.argument());
    }

    private Map<String, List<String>> takenIn(List<Hookup> hookups) {
        Map<String, List<String>> takenIn = new LinkedHashMap<>();
        List<String> all = hookups.stream().map(Hookup::id).toList();
        scene.obligations().forEach(each -> takenIn.put(each.key(), all));
        uncovered.forEach(key -> takenIn.put(key, List.of()));
        for (Requirement requirement : scene.requirements()) {
            List<String> ids = new ArrayList<>();
            for (Hookup hookup : hookups) {
                if (service.serves(hookup, requirement)) {
                    ids.add(hookup.id());
                }
            }
            requirement.keys().forEach(key -> takenIn.put(key, List.copyOf(ids)));
        }
        return takenIn;
    }
}
