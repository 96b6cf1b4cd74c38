package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import leadwright.catalog.device.PartType;
import leadwright.catalog.house.FloatJoined;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;

/** Kinds of damage to what is read, and to whether its hookup lets it be read. */
final class ReadingKinds {
    private static final String NOTE = "joined while they float: ";

    private ReadingKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(
                        Invariant.COVERAGE,
                        "a connection that a reading needs is not wired",
                        ReadingKinds::unwired,
                        Invariant.TIES,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.FLOATING_JOINED,
                        Invariant.JOINT,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.COVERAGE,
                        "a reading that leaves out one of what its bundle joins",
                        ReadingKinds::half,
                        Invariant.MEANING,
                        Invariant.PAIRED,
                        Invariant.TIE_SELECTED,
                        Invariant.IDLE_JACKS,
                        Invariant.EVEN),
                Kind.of(
                        Invariant.HOOKUP_COMPLETE,
                        "a reading said to be of another hookup",
                        ReadingKinds::elsewhere,
                        Invariant.COVERAGE,
                        Invariant.IDLE_JACKS,
                        Invariant.FLOATING_JOINED,
                        Invariant.TIE_SELECTED,
                        Invariant.MAINS_ON_PART_LAST,
                        Invariant.SELECTION_SAID,
                        Invariant.PROOF_STEP),
                Kind.of(
                        Invariant.TIES,
                        "a set on jacks that are no neighbours",
                        ReadingKinds::scattered,
                        Invariant.FLOATING_JOINED,
                        Invariant.JOINT,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.IDLE_JACKS,
                        "a tester that earths idle jacks where others must float",
                        (plan, dice) -> others(plan)
                                ? Optional.of(Damage.jacks(plan, jacks -> with(jacks, "atRest", AtRest.EARTHED)))
                                        .filter(each -> dice.below(1000) >= 0)
                                : Optional.empty()),
                Kind.of(
                        Invariant.FLOATING_JOINED,
                        "what floats joined is not noted",
                        (plan, dice) -> obligation(
                                plan, dice, ReadingKinds::noted, what -> with(what, "note", Optional.empty()))),
                Kind.of(
                        Invariant.FLOATING_JOINED,
                        "a note of something that does not float",
                        (plan, dice) -> obligation(
                                plan,
                                dice,
                                what -> what.phase() == Phase.ORDINARY && !noted(what),
                                what -> what.noting(NOTE + (2 + dice.below(3)) + " connections on jack 1"))),
                Kind.of(
                        Invariant.FLOATING_JOINED,
                        "something floats joined where the house lets nothing",
                        (plan, dice) -> dice.pick(plan.readings(), reading -> noted(reading.obligation()))
                                .map(reading ->
                                        with(plan, "house", with(plan.house(), "floatJoined", FloatJoined.NEVER)))),
                Kind.of(
                        Invariant.MAINS_ON_B,
                        "mains on a part of type B",
                        ReadingKinds::typeB,
                        Invariant.MEANING,
                        Invariant.LIMIT),
                Kind.of(
                        Invariant.MEANING,
                        "connections of two parts read as one part",
                        ReadingKinds::twoParts,
                        Invariant.COVERAGE,
                        Invariant.TIES,
                        Invariant.FLOATING_JOINED,
                        Invariant.MAINS_ON_B,
                        Invariant.LIMIT,
                        Invariant.PAIRED,
                        Invariant.TIE_SELECTED,
                        Invariant.MAINS_ON_PART_LAST,
                        Invariant.EVEN,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.MEANING,
                        "an auxiliary current against nothing",
                        (plan, dice) -> obligation(
                                plan,
                                dice,
                                what -> (what.quantity() == QuantityKind.PATIENT_AUXILIARY
                                                || what.quantity() == QuantityKind.LEAD_TO_LEAD)
                                        && !what.demand().against().isEmpty(),
                                what -> with(
                                        what,
                                        "demand",
                                        Demand.of(
                                                what.demand().measured(),
                                                List.of(),
                                                what.demand().earthed()))),
                        Invariant.IDLE_JACKS,
                        Invariant.FLOATING_JOINED,
                        Invariant.PAIRED,
                        Invariant.TIE_SELECTED,
                        Invariant.EVEN,
                        Invariant.SELECTION_SAID));
    }

    static boolean noted(Obligation what) {
        return what.note().filter(note -> note.contains(NOTE)).isPresent();
    }

    static Plan reading(Plan plan, Reading reading, UnaryOperator<Obligation> change) {
        return Damage.obligation(plan, reading.obligation()::equals, change);
    }

    static Optional<Plan> obligation(
            Plan plan, Dice dice, Predicate<Obligation> which, UnaryOperator<Obligation> change) {
        return dice.pick(plan.readings(), reading -> which.test(reading.obligation()))
                .map(reading -> reading(plan, reading, change));
    }

    /** Neither listed nor taken. */
    static Plan unread(Plan plan, Reading reading) {
        return unread(plan, List.of(reading));
    }

    /** Neither listed nor taken. */
    static Plan unread(Plan plan, List<Reading> gone) {
        Set<String> ids = gone.stream().map(Reading::id).collect(Collectors.toSet());
        List<Step> steps = plan.steps().stream()
                .filter(step -> step.reading().filter(ids::contains).isEmpty())
                .toList();
        List<Reading> left = plan.readings().stream()
                .filter(reading -> !ids.contains(reading.id()))
                .toList();
        return with(Mend.figures(Damage.steps(plan, steps)), "readings", left);
    }

    private static Optional<Hookup> hookup(Plan plan, Reading reading) {
        return reading.hookup().flatMap(plan::hookup);
    }

    /** Its chain, its joints and its place in a bundle are all gone. */
    private static Optional<Plan> unwired(Plan plan, Dice dice) {
        return dice.pick(
                        plan.readings(),
                        reading -> !reading.obligation().demand().isNothing())
                .flatMap(reading -> hookup(plan, reading)
                        .map(hookup -> without(
                                plan,
                                hookup,
                                dice.pick(List.copyOf(
                                                reading.obligation().demand().all()))
                                        .orElseThrow())));
    }

    private static Plan without(Plan plan, Hookup hookup, String name) {
        Chain gone = hookup.chainOf(name).orElseThrow();
        List<Chain> chains = new ArrayList<>(hookup.chains());
        chains.remove(gone);
        List<Bundle> bundles = new ArrayList<>();
        for (Bundle bundle : hookup.bundles()) {
            List<String> left = new ArrayList<>(bundle.connections());
            left.remove(name);
            if (!left.isEmpty()) {
                bundles.add(with(bundle, "connections", left));
            }
        }
        return WiringKinds.hookup(plan, hookup, with(with(hookup, "chains", chains), "bundles", bundles));
    }

    private static Optional<Plan> half(Plan plan, Dice dice) {
        return dice.pick(plan.readings(), reading -> !joined(plan, reading).isEmpty())
                .map(reading -> {
                    String dropped = dice.pick(joined(plan, reading)).orElseThrow();
                    return reading(plan, reading, what -> {
                        List<String> measured = new ArrayList<>(what.demand().measured());
                        measured.remove(dropped);
                        return with(
                                what,
                                "demand",
                                Demand.of(
                                        measured,
                                        what.demand().against(),
                                        what.demand().earthed()));
                    });
                });
    }

    /** What a reading measures on a jack together with something else that it measures. */
    private static List<String> joined(Plan plan, Reading reading) {
        SortedSet<String> measured = reading.obligation().demand().measured();
        return hookup(plan, reading).stream()
                .flatMap(hookup -> hookup.bundles().stream())
                .filter(bundle ->
                        bundle.connections().stream().filter(measured::contains).count() > 1)
                .flatMap(bundle -> bundle.connections().stream())
                .filter(measured::contains)
                .toList();
    }

    private static Optional<Plan> elsewhere(Plan plan, Dice dice) {
        return plan.hookups().size() < 2
                ? Optional.empty()
                : dice.pick(
                                plan.readings(),
                                reading -> reading.obligation().phase() == Phase.ORDINARY
                                        || reading.obligation().phase() == Phase.MAINS_ON_PART)
                        .flatMap(reading -> dice.pick(
                                        plan.hookups(),
                                        hookup -> !reading.hookup().equals(Optional.of(hookup.id())))
                                .map(other -> with(
                                        plan,
                                        "readings",
                                        Damage.first(
                                                plan.readings(),
                                                reading::equals,
                                                each -> with(each, "hookup", Optional.of(other.id()))))));
    }

    /** The hookup's jacks exchanged, the steps too, until a set of a reading is no run; and the tester ties runs only. */
    private static Optional<Plan> scattered(Plan plan, Dice dice) {
        return dice.pick(plan.readings(), reading -> tied(plan, reading).size() > 1)
                .flatMap(reading -> {
                    TreeSet<Integer> own = tied(plan, reading);
                    int from = dice.below(2) == 0 ? own.first() : own.last();
                    int to = 1 + dice.below(WiringKinds.count(plan));
                    TreeSet<Integer> after = new TreeSet<>(own);
                    after.remove(from);
                    if (own.contains(to) || !after.add(to) || after.last() - after.first() == after.size() - 1) {
                        return Optional.empty();
                    }
                    Plan runs = Damage.jacks(plan, jacks -> with(jacks, "ties", Ties.RUNS));
                    return Optional.of(
                            Mend.exchanged(runs, reading.hookup().orElseThrow(), "jack-" + from, "jack-" + to));
                });
    }

    /** Jacks of what is measured where each bundle has one jack. */
    private static TreeSet<Integer> tied(Plan plan, Reading reading) {
        TreeSet<Integer> jacks = new TreeSet<>();
        for (Bundle bundle : hookup(plan, reading).map(Hookup::bundles).orElse(List.of())) {
            if (bundle.connections().stream()
                    .anyMatch(reading.obligation().demand().measured()::contains)) {
                if (bundle.jacks().size() > 1) {
                    return new TreeSet<>();
                }
                jacks.addAll(bundle.jacks());
            }
        }
        return jacks;
    }

    private static boolean others(Plan plan) {
        return plan.kit()
                        .tester()
                        .jacks()
                        .filter(jacks -> jacks.atRest() != AtRest.EARTHED)
                        .isPresent()
                && plan.readings().stream()
                        .anyMatch(reading -> !reading.obligation().demand().isNothing()
                                && hookup(plan, reading).stream()
                                        .flatMap(hookup -> hookup.chains().stream())
                                        .map(Chain::connection)
                                        .anyMatch(name -> !name.equals("touch-probe")
                                                && !reading.obligation()
                                                        .demand()
                                                        .all()
                                                        .contains(name)));
    }

    private static Optional<Plan> typeB(Plan plan, Dice dice) {
        return dice.pick(
                        plan.readings(),
                        reading -> reading.obligation().phase() == Phase.MAINS_ON_PART
                                && reading.obligation().demand().against().stream()
                                        .noneMatch(name -> name.startsWith("housing.")))
                .flatMap(reading ->
                        dice.pick(List.copyOf(reading.obligation().demand().measured())))
                .flatMap(name -> plan.device().appliedParts().stream()
                        .filter(part -> part.type() != PartType.B)
                        .filter(part -> part.connections().stream()
                                .anyMatch(each -> each.name().equals(name)))
                        .findFirst())
                .map(part -> Damage.device(
                        plan,
                        device -> with(
                                device,
                                "appliedParts",
                                Damage.first(
                                        device.appliedParts(), part::equals, each -> with(each, "type", PartType.B)))));
    }

    private static Optional<Plan> twoParts(Plan plan, Dice dice) {
        return dice.pick(
                        plan.readings(),
                        reading -> reading.obligation().quantity() == QuantityKind.PATIENT_LEAKAGE
                                || reading.obligation().quantity() == QuantityKind.MAINS_ON_APPLIED_PART
                                || reading.obligation().quantity() == QuantityKind.APPLIED_PART_LEAKAGE)
                .flatMap(reading -> {
                    SortedSet<String> own = reading.obligation().demand().all();
                    String first = reading.obligation().demand().measured().first();
                    String part = first.substring(0, first.indexOf('.') + 1);
                    // One rule set joins all leads of a device: then no lead is one too many.
                    return dice.pick(
                                    plan.device().patientConnections(),
                                    each -> !own.contains(each.name())
                                            && !each.name().startsWith(part)
                                            && own.size() + 1
                                                    < plan.device()
                                                            .patientConnections()
                                                            .size())
                            .map(more -> reading(plan, reading, what -> {
                                SortedSet<String> measured = new TreeSet<>(NaturalOrder.IDS);
                                measured.addAll(what.demand().measured());
                                measured.add(more.name());
                                return with(
                                        what,
                                        "demand",
                                        Demand.of(
                                                measured,
                                                what.demand().against(),
                                                what.demand().earthed()));
                            }));
                });
    }
}
