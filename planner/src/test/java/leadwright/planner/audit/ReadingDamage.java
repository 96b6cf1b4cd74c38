package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;
import static leadwright.planner.audit.Undamaged.WARD;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import leadwright.catalog.device.PartType;
import leadwright.catalog.house.FloatJoined;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation.Phase;

/** Damages to what is read, and to whether its hookup lets it be read. */
final class ReadingDamage {
    private final List<Deliberate> all = new ArrayList<>();

    private ReadingDamage() {}

    static List<Deliberate> all() {
        ReadingDamage damage = new ReadingDamage();
        damage.wiring();
        damage.meaning();
        return List.copyOf(damage.all);
    }

    private void ward(Invariant named, String what, UnaryOperator<Plan> damage) {
        all.add(new Deliberate(named, what, WARD, damage));
    }

    private void wiring() {
        ward(
                Invariant.COVERAGE,
                "a connection taken away",
                plan -> Damage.hookup(
                        plan,
                        hookup -> !hookup.chains().isEmpty(),
                        hookup -> without(hookup, hookup.chains().get(0).connection())));
        ward(
                Invariant.TIES,
                "a tester that ties neighbours only",
                plan -> Damage.jacks(scattered(plan), jacks -> with(jacks, "ties", Ties.RUNS)));
        ward(
                Invariant.IDLE_JACKS,
                "a tester that earths idle jacks",
                plan -> Damage.jacks(plan, jacks -> with(jacks, "atRest", AtRest.EARTHED)));
        ward(
                Invariant.FLOATING_JOINED,
                "what floats joined is not noted",
                plan -> Damage.obligation(
                        plan,
                        what -> what.note()
                                .filter(note -> note.contains("joined while they float"))
                                .isPresent(),
                        what -> with(what, "note", Optional.empty())));
        ward(
                Invariant.FLOATING_JOINED,
                "something floats joined where the house lets nothing",
                ReadingDamage::forbidden);
        ward(
                Invariant.FLOATING_JOINED,
                "a note of something that does not float",
                plan -> Damage.obligation(
                        plan,
                        what -> what.phase() == Phase.ORDINARY
                                && what.note()
                                        .filter(note -> note.contains("joined while they float"))
                                        .isEmpty(),
                        what -> what.noting("joined while they float: 2 connections on jack 1")));
    }

    /** The house of a plan in which something floats joined forbids it. */
    private static Plan forbidden(Plan plan) {
        return with(plan, "house", with(plan.house(), "floatJoined", FloatJoined.NEVER));
    }

    private void meaning() {
        ward(
                Invariant.MAINS_ON_B,
                "mains on a part of type B",
                plan -> Damage.device(
                        plan,
                        device -> with(
                                device,
                                "appliedParts",
                                device.appliedParts().stream()
                                        .map(part -> with(part, "type", PartType.B))
                                        .toList())));
        ward(
                Invariant.MEANING,
                "a reading called a total that is of one part",
                plan -> Damage.obligation(
                        plan,
                        what -> what.quantity() == QuantityKind.TOTAL_PATIENT_LEAKAGE,
                        what -> with(what, "quantity", QuantityKind.PATIENT_LEAKAGE)));
        ward(
                Invariant.DOUBLE_FAULT,
                "mains on a part under a fault",
                plan -> Damage.obligation(
                        plan,
                        what -> what.phase() == Phase.MAINS_ON_PART,
                        what -> with(what, "state", MainsState.NORMAL_EARTH_OPEN)));
        ward(
                Invariant.LIMIT,
                "a limit made looser",
                plan -> Damage.obligation(
                        plan,
                        what -> what.limit().isPresent(),
                        what -> with(
                                what,
                                "limit",
                                what.limit()
                                        .map(limit -> with(
                                                limit, "value", limit.value().times(2))))));
        ward(
                Invariant.PAIRED,
                "one polarity left out",
                plan -> Damage.dropReading(
                        plan, what -> what.state() == MainsState.REVERSED && what.phase() == Phase.ORDINARY));
        ward(
                Invariant.PAIRED,
                "one polarity of the source left out",
                plan -> Damage.dropReading(plan, what -> what.sourcePolarity().isPresent()));
    }

    private static Hookup without(Hookup hookup, String connection) {
        List<Bundle> bundles = hookup.bundles().stream()
                .map(bundle -> with(
                        bundle,
                        "connections",
                        bundle.connections().stream()
                                .filter(each -> !each.equals(connection))
                                .toList()))
                .toList();
        List<Chain> chains = hookup.chains().stream()
                .filter(chain -> !chain.connection().equals(connection))
                .toList();
        return with(with(hookup, "bundles", bundles), "chains", chains);
    }

    /** The plan with the bundles of a tied set on jacks that are no neighbours. */
    private static Plan scattered(Plan plan) {
        int count = plan.kit().tester().jacks().orElseThrow().count();
        return with(
                plan,
                "hookups",
                plan.hookups().stream().map(hookup -> scattered(hookup, count)).toList());
    }

    private static Hookup scattered(Hookup hookup, int count) {
        List<Bundle> bundles = hookup.bundles().stream()
                .map(bundle -> with(
                        bundle,
                        "jacks",
                        bundle.jacks().stream()
                                .map(jack -> scatter(jack, count))
                                .toList()))
                .toList();
        List<Chain> chains = hookup.chains().stream()
                .map(chain -> with(chain, "jack", scatter(chain.jack(), count)))
                .toList();
        return with(with(hookup, "bundles", bundles), "chains", chains);
    }

    /** Odd places first: neighbours come apart. */
    private static int scatter(int jack, int count) {
        int half = (count + 1) / 2;
        return jack <= half ? 2 * jack - 1 : 2 * (jack - half);
    }
}
