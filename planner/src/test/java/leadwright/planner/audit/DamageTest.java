package leadwright.planner.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.PartType;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.EarthJack;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.Tester;
import leadwright.catalog.kit.Ties;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.planner.Plan;
import leadwright.planner.SamplePlans;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.MainsState.Fault;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;
import leadwright.planner.plan.TimeSplit;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Breaks good plans on purpose, one invariant at a time, and holds the audit to naming what was broken. */
class DamageTest {

    private static final SamplePlans.Sample WARD = SamplePlans.brindlewickTypeTest();
    private static final SamplePlans.Sample RESCUE = SamplePlans.oddlebar();

    private record Deliberate(Invariant named, String what, SamplePlans.Sample sample, UnaryOperator<Plan> damage) {}

    private static final List<Deliberate> ALL = new ArrayList<>();

    private static void ward(Invariant named, String what, UnaryOperator<Plan> damage) {
        ALL.add(new Deliberate(named, what, WARD, damage));
    }

    private static void rescue(Invariant named, String what, UnaryOperator<Plan> damage) {
        ALL.add(new Deliberate(named, what, RESCUE, damage));
    }

    static {
        wiring();
        readings();
        steps();
        figures();
    }

    private static void wiring() {
        ward(
                Invariant.JACK_CROWDED,
                "two plugs in one jack",
                plan -> Damage.firstHookup(plan, hookup -> single(hookup).size() > 1, hookup -> {
                    List<Chain> single = single(hookup);
                    return new Hookup(
                            hookup.id(),
                            hookup.bundles(),
                            hookup.chains().stream()
                                    .map(chain -> chain.equals(single.get(1))
                                            ? new Chain(
                                                    chain.connection(),
                                                    chain.items(),
                                                    single.get(0).jack(),
                                                    chain.contacts())
                                            : chain)
                                    .toList(),
                            hookup.earth());
                }));
        ward(
                Invariant.UNSHROUDED,
                "bare plugs under mains on a part",
                plan -> items(
                        plan,
                        item -> new KitItem(
                                item.id(),
                                item.kind(),
                                item.ends().stream()
                                        .map(end -> end.equals("lab-4mm-plug-shrouded") ? "lab-4mm-plug" : end)
                                        .toList(),
                                item.branches(),
                                item.also(),
                                item.length(),
                                item.conductor(),
                                item.current(),
                                item.voltage(),
                                item.capacitance(),
                                item.stock(),
                                item.price())));
        ward(
                Invariant.ITEM_KNOWN,
                "an item the kit does not have",
                plan -> Damage.chain(plan, 0, chain -> Damage.items(chain, first(chain.items(), "phantom/1"))));
        ward(
                Invariant.STOCK,
                "an instance beyond the stock",
                plan -> Damage.chain(
                        plan,
                        0,
                        chain -> Damage.items(
                                chain, first(chain.items(), kind(chain.items().get(0)) + "/999"))));
        ward(
                Invariant.ITEM_ONCE,
                "an item used twice",
                plan -> Damage.chain(
                        plan,
                        1,
                        chain -> Damage.items(
                                chain,
                                first(
                                        chain.items(),
                                        plan.hookups().stream()
                                                .filter(hookup ->
                                                        hookup.chains().size() > 1)
                                                .findFirst()
                                                .orElseThrow()
                                                .chains()
                                                .get(0)
                                                .items()
                                                .get(0)))));
        ward(
                Invariant.MATING,
                "a chain without its adapter",
                plan -> Damage.firstHookup(
                        plan,
                        hookup -> hookup.chains().stream().anyMatch(DamageTest::adapted),
                        hookup -> new Hookup(
                                hookup.id(),
                                hookup.bundles(),
                                hookup.chains().stream()
                                        .map(chain -> adapted(chain)
                                                ? new Chain(
                                                        chain.connection(),
                                                        chain.items()
                                                                .subList(
                                                                        1,
                                                                        chain.items()
                                                                                .size()),
                                                        chain.jack(),
                                                        chain.contacts() - 1)
                                                : chain)
                                        .toList(),
                                hookup.earth())));
        ward(
                Invariant.CONTACTS,
                "a wrong count of contacts",
                plan -> Damage.chain(
                        plan,
                        0,
                        chain -> new Chain(chain.connection(), chain.items(), chain.jack(), chain.contacts() + 1)));
        ward(
                Invariant.JACK_KNOWN,
                "a jack the tester does not have",
                plan -> Damage.chain(
                        plan, 0, chain -> new Chain(chain.connection(), chain.items(), 99, chain.contacts())));
        ward(
                Invariant.BUNDLE_JOINED,
                "a lead moved to another jack",
                plan -> Damage.chain(
                        plan,
                        0,
                        chain -> new Chain(
                                chain.connection(), chain.items(), chain.jack() == 1 ? 2 : 1, chain.contacts())));
        ward(
                Invariant.BUNDLE_JOINED,
                "a connection left out of its bundle",
                plan -> Damage.bundle(
                        plan,
                        bundle -> bundle.connections().size() > 1,
                        bundle -> new Bundle(
                                bundle.id(),
                                bundle.connections()
                                        .subList(1, bundle.connections().size()),
                                bundle.jacks(),
                                bundle.links())));
        ward(
                Invariant.JACK_SHARED,
                "two bundles on one jack",
                plan -> Damage.firstHookup(plan, hookup -> hookup.bundles().size() > 1, hookup -> {
                    List<Bundle> bundles = new ArrayList<>(hookup.bundles());
                    Bundle second = bundles.get(1);
                    bundles.set(
                            1,
                            new Bundle(
                                    second.id(),
                                    second.connections(),
                                    bundles.get(0).jacks(),
                                    second.links()));
                    return new Hookup(hookup.id(), bundles, hookup.chains(), hookup.earth());
                }));
        ward(
                Invariant.CONNECTION_KNOWN,
                "a connection the device does not have",
                plan -> Damage.chain(
                        plan, 0, chain -> new Chain("ecg.phantom", chain.items(), chain.jack(), chain.contacts())));
        ward(
                Invariant.COVERAGE,
                "a connection taken away",
                plan -> Damage.firstHookup(
                        plan,
                        hookup -> !hookup.chains().isEmpty(),
                        hookup -> without(hookup, hookup.chains().get(0).connection())));
        ward(
                Invariant.BRANCHES,
                "a fan-out with fewer branches than wires",
                plan -> items(
                        plan,
                        item -> item.branches() > 0
                                ? new KitItem(
                                        item.id(),
                                        item.kind(),
                                        item.ends(),
                                        1,
                                        item.also(),
                                        item.length(),
                                        item.conductor(),
                                        item.current(),
                                        item.voltage(),
                                        item.capacitance(),
                                        item.stock(),
                                        item.price())
                                : item));
        ward(
                Invariant.RATING,
                "items without a stated voltage under mains on a part",
                plan -> items(
                        plan,
                        item -> new KitItem(
                                item.id(),
                                item.kind(),
                                item.ends(),
                                item.branches(),
                                item.also(),
                                item.length(),
                                item.conductor(),
                                item.current(),
                                Optional.empty(),
                                item.capacitance(),
                                item.stock(),
                                item.price())));
        ward(
                Invariant.REACH,
                "an earthed part too far away",
                plan -> Damage.device(
                        plan,
                        points(
                                plan.device(),
                                point -> new leadwright.catalog.device.TouchPoint(
                                        point.id(),
                                        point.name(),
                                        point.earthed(),
                                        point.surface(),
                                        Optional.of(Quantity.millimetres(90_000)),
                                        Optional.empty()))));
        ward(
                Invariant.EARTH_PATH,
                "an earth lead without its clip",
                plan -> Damage.firstHookup(
                        plan,
                        hookup -> hookup.earth().stream()
                                .anyMatch(path -> path.pole().equals("part")),
                        hookup -> new Hookup(
                                hookup.id(),
                                hookup.bundles(),
                                hookup.chains(),
                                hookup.earth().stream()
                                        .map(path -> path.pole().equals("part")
                                                ? new EarthPath(
                                                        path.pole(),
                                                        path.point(),
                                                        path.socket(),
                                                        path.items()
                                                                .subList(
                                                                        0,
                                                                        path.items()
                                                                                        .size()
                                                                                - 1))
                                                : path)
                                        .toList())));
        ward(
                Invariant.TIES,
                "a tester that ties neighbours only",
                plan -> jacks(
                        scattered(plan), jacks -> new Jacks(jacks.count(), jacks.socket(), Ties.RUNS, jacks.atRest())));
        ward(
                Invariant.IDLE_JACKS,
                "a tester that earths idle jacks",
                plan -> jacks(plan, jacks -> new Jacks(jacks.count(), jacks.socket(), jacks.ties(), AtRest.EARTHED)));
        rescue(
                Invariant.THERAPY_ALONE,
                "a therapy output beside other parts",
                plan -> Damage.firstHookup(
                        Damage.device(plan, noSharing(plan.device())),
                        hookup -> therapy(plan, hookup) && hookup.chains().size() > 0,
                        hookup -> {
                            List<Chain> chains = new ArrayList<>(hookup.chains());
                            String other = plan.device().patientConnections().stream()
                                    .map(connection -> connection.name())
                                    .filter(name ->
                                            !Therapy.connections(plan.device()).contains(name))
                                    .findFirst()
                                    .orElseThrow();
                            Chain chain = chains.get(0);
                            chains.add(new Chain(other, chain.items(), chain.jack(), chain.contacts()));
                            return new Hookup(hookup.id(), hookup.bundles(), chains, hookup.earth());
                        }));
    }

    private static void readings() {
        ward(
                Invariant.LIMIT,
                "a limit made looser",
                plan -> Damage.reading(
                        plan,
                        what -> what.limit().isPresent(),
                        reading -> limit(
                                reading,
                                limit -> new Limit(
                                        limit.id(),
                                        limit.bound(),
                                        limit.value().times(2),
                                        limit.clause(),
                                        limit.mark(),
                                        limit.sources(),
                                        limit.confirmed()))));
        ward(
                Invariant.MAINS_ON_B,
                "mains on a part of type B",
                plan -> Damage.device(
                        plan,
                        parts(
                                plan.device(),
                                part -> new AppliedPart(
                                        part.id(),
                                        part.name(),
                                        PartType.B,
                                        part.defibrillationProof(),
                                        part.functions(),
                                        part.namedFunctions(),
                                        part.set(),
                                        part.distance(),
                                        part.cable()))));
        ward(
                Invariant.PAIRED,
                "one polarity left out",
                plan -> dropReading(
                        plan, what -> what.state() == MainsState.REVERSED && what.phase() == Phase.ORDINARY));
        ward(
                Invariant.PAIRED,
                "one polarity of the source left out",
                plan -> dropReading(plan, what -> what.sourcePolarity().isPresent()));
        ward(
                Invariant.MEANING,
                "a reading called a total that is of one part",
                plan -> Damage.reading(
                        plan,
                        what -> what.quantity() == leadwright.catalog.rules.QuantityKind.TOTAL_PATIENT_LEAKAGE,
                        reading -> quantity(reading, leadwright.catalog.rules.QuantityKind.PATIENT_LEAKAGE)));
        ward(
                Invariant.DOUBLE_FAULT,
                "mains on a part under a fault",
                plan -> Damage.reading(
                        plan,
                        what -> what.phase() == Phase.MAINS_ON_PART,
                        reading -> state(reading, MainsState.NORMAL_EARTH_OPEN)));
    }

    private static void steps() {
        ward(Invariant.INSULATION_FIRST, "insulation after leakage", plan -> {
            Reading last = plan.readings().stream()
                    .filter(reading -> reading.obligation().phase() == Phase.ORDINARY)
                    .reduce((before, after) -> after)
                    .orElseThrow();
            return Damage.reading(
                    plan,
                    what -> what.equals(last.obligation()),
                    reading -> quantity(reading, leadwright.catalog.rules.QuantityKind.INSULATION_RESISTANCE));
        });
        Function<Plan, Function<Step, Optional<Obligation>>> of = Damage::obligationOf;
        ward(
                Invariant.STEP_NUMBERS,
                "a gap in the numbers",
                plan -> Damage.step(plan, step -> step.number() == 5, step -> Damage.number(step, 500)));
        ward(
                Invariant.READ_ONCE,
                "a reading that no step takes",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.READ));
        ward(Invariant.READ_ONCE, "a reading taken twice", plan -> {
            List<Step> steps = new ArrayList<>(plan.steps());
            int index = Damage.index(steps, step -> step.does() == Act.READ);
            steps.add(index, steps.get(index));
            return Damage.steps(plan, Damage.renumber(steps));
        });
        ward(
                Invariant.LOOK_FIRST,
                "the look over comes later",
                plan -> Damage.moveStep(plan, step -> step.does() == Act.LOOK, step -> step.does() == Act.READ, true));
        ward(
                Invariant.PUT_BACK_LAST,
                "put back in the middle",
                plan -> Damage.moveStep(
                        plan, step -> step.does() == Act.RESTORE, step -> step.does() == Act.START, true));
        ward(
                Invariant.EARTH_FIRST,
                "an earth reading after leakage",
                plan -> Damage.moveStep(
                        plan,
                        step -> phase(of.apply(plan).apply(step), Phase.EARTH),
                        step -> phase(of.apply(plan).apply(step), Phase.ORDINARY),
                        true));
        ward(
                Invariant.TOUCH_BEFORE_FAULT,
                "a touch reading after a fault of its polarity",
                plan -> Damage.moveStep(
                        plan,
                        step -> of.apply(plan)
                                .apply(step)
                                .filter(what -> what.isTouch() && what.state() == MainsState.NORMAL)
                                .isPresent(),
                        step -> of.apply(plan)
                                .apply(step)
                                .filter(what -> what.state() == MainsState.NORMAL_SUPPLY_OPEN
                                        || what.state() == MainsState.NORMAL_EARTH_OPEN)
                                .isPresent(),
                        true));
        ward(Invariant.NO_FAULT_FIRST, "a subject read under a fault first", plan -> {
            Obligation fault = plan.readings().stream()
                    .map(Reading::obligation)
                    .filter(what -> what.state().fault() == Fault.EARTH_OPEN
                            && what.quantity() == leadwright.catalog.rules.QuantityKind.PATIENT_LEAKAGE)
                    .findFirst()
                    .orElseThrow();
            return Damage.moveStep(
                    plan,
                    step -> of.apply(plan).apply(step).filter(fault::equals).isPresent(),
                    step -> of.apply(plan)
                            .apply(step)
                            .filter(what -> what.quantity() == fault.quantity()
                                    && what.demand().equals(fault.demand())
                                    && what.component().equals(fault.component())
                                    && what.state().polarity() == fault.state().polarity()
                                    && what.state().fault() == Fault.NONE)
                            .isPresent(),
                    false);
        });
        ward(
                Invariant.MAINS_ON_PART_LAST,
                "mains on a part before its ordinary reading",
                plan -> Damage.moveStep(
                        plan,
                        step -> phase(of.apply(plan).apply(step), Phase.MAINS_ON_PART),
                        step -> phase(of.apply(plan).apply(step), Phase.ORDINARY),
                        false));
        ward(Invariant.NULLING, "the nulling dropped", plan -> Damage.dropStep(plan, step -> step.does() == Act.NULL));
        ward(Invariant.NULLING, "the nulling at the end dropped", plan -> {
            List<Step> steps = new ArrayList<>(plan.steps());
            for (int i = steps.size() - 1; i >= 0; i--) {
                if (steps.get(i).does() == Act.NULL) {
                    steps.remove(i);
                    break;
                }
            }
            return Damage.steps(plan, Damage.renumber(steps));
        });
        ward(
                Invariant.CLIP_PLACE,
                "a clip that is not moved",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.CLIP));
        ward(
                Invariant.TOUCH_PLACE,
                "a place that is not touched",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.TOUCH));
        ward(
                Invariant.TIE_SELECTED,
                "a selection dropped",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.TIE));
        ward(
                Invariant.HOOKUP_COMPLETE,
                "a lead never joined",
                plan -> Damage.dropStep(
                        plan, step -> step.does() == Act.JOIN && step.account() == Step.Account.REPLUG));
        ward(
                Invariant.JOINT,
                "a lead parted that is not joined",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.JOIN && joinedThenParted(plan, step)));
        ward(
                Invariant.HANDLING,
                "a lead joined in a live state",
                plan -> Damage.moveStep(
                        plan,
                        step -> step.does() == Act.JOIN && step.account() == Step.Account.REPLUG,
                        step -> step.does() == Act.START,
                        true));
        ward(Invariant.DEVICE_ON, "a start left out", plan -> Damage.dropStep(plan, step -> step.does() == Act.START));
        ward(
                Invariant.STATE_CHANGE,
                "the shut-down left out",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.SHUT_DOWN));
        ward(
                Invariant.STATE_HELD,
                "a reading in another state",
                plan -> Damage.step(
                        plan,
                        step -> phase(of.apply(plan).apply(step), Phase.ORDINARY),
                        step -> Damage.with(
                                step,
                                step.number(),
                                MainsState.REVERSED_EARTH_OPEN,
                                step.seconds(),
                                step.caution(),
                                step.onFail())));
        ward(
                Invariant.DOUBLE_FAULT,
                "one conductor opened before the other is closed",
                plan -> Damage.dropStep(plan, step -> step.does() == Act.SWITCH && closesBetweenFaults(plan, step)));
        ward(
                Invariant.STOP_RULE,
                "a stop rule left out",
                plan -> Damage.step(
                        plan,
                        step -> of.apply(plan)
                                        .apply(step)
                                        .filter(Obligation::isTouch)
                                        .isPresent()
                                && step.onFail().isPresent(),
                        step -> Damage.with(
                                step, step.number(), step.state(), step.seconds(), step.caution(), Optional.empty())));
        ward(
                Invariant.CAUTION,
                "supply open without its caution",
                plan -> Damage.step(
                        plan,
                        step -> step.does() == Act.SWITCH && step.state().fault() == Fault.SUPPLY_OPEN,
                        step -> Damage.with(
                                step, step.number(), step.state(), step.seconds(), Optional.empty(), step.onFail())));
        ward(
                Invariant.EARTH_LEAD_PARTED,
                "an earth lead left on a jack that rests earthed",
                plan -> Damage.tester(
                        plan,
                        tester -> new Tester(
                                tester.name(),
                                tester.jacks(),
                                tester.earthJack()
                                        .map(jack -> new EarthJack(jack.socket(), Optional.of(AtRest.EARTHED))),
                                tester.touchThrough(),
                                tester.inlet(),
                                tester.outlets(),
                                tester.switches(),
                                tester.networks(),
                                tester.methods(),
                                tester.components(),
                                tester.earthTest(),
                                tester.insulation(),
                                tester.partSource(),
                                tester.accuracy(),
                                tester.calibratedUntil())));
        rescue(Invariant.MAKE_SAFE, "a therapy output that is not made safe", plan -> {
            List<Step> steps = new ArrayList<>(plan.steps());
            steps.removeIf(step -> step.does() == Act.MAKE_SAFE);
            return Damage.steps(plan, Damage.renumber(steps));
        });
    }

    private static void figures() {
        ward(
                Invariant.SECONDS,
                "a step that takes less",
                plan -> Damage.step(
                        plan,
                        step -> step.does() == Act.TIE,
                        step -> Damage.with(
                                step, step.number(), step.state(), step.seconds() - 1, step.caution(), step.onFail())));
        ward(
                Invariant.START_UPS,
                "one start too few in the sum",
                plan -> Damage.time(
                        plan,
                        new TimeSplit(
                                plan.time().total(),
                                plan.time().parts(),
                                plan.time().plainOrder(),
                                plan.time().startUps() - 1)));
        ward(
                Invariant.PROOF,
                "a bound above the answer",
                plan -> Damage.proof(
                        plan, new Proof(plan.hookups().size(), plan.hookups().size() + 1L, "damaged")));
        ward(Invariant.PARTIAL, "a whole plan called partial", plan -> Damage.partial(plan, !plan.partial()));
    }

    @TestFactory
    Stream<DynamicTest> everyDamageIsNamed() {
        return ALL.stream()
                .map(each -> DynamicTest.dynamicTest(each.named().word() + ": " + each.what(), () -> {
                    Plan damaged = each.damage().apply(each.sample().plan());
                    assertThat(Audit.audit(
                                    damaged,
                                    each.sample().rules(),
                                    each.sample().connectors()))
                            .extracting(Breach::invariant)
                            .contains(each.named());
                }));
    }

    @Test
    void theUndamagedPlansAreAccepted() {
        for (SamplePlans.Sample sample : List.of(WARD, RESCUE)) {
            assertThat(Audit.audit(sample.plan(), sample.rules(), sample.connectors()))
                    .isEmpty();
        }
    }

    @Test
    void everyInvariantIsDamagedSomewhere() {
        Set<Invariant> damaged = EnumSet.noneOf(Invariant.class);
        ALL.forEach(each -> damaged.add(each.named()));
        assertThat(damaged).containsExactlyInAnyOrderElementsOf(EnumSet.allOf(Invariant.class));
    }

    // ---- small helpers

    private static List<String> first(List<String> list, String replacement) {
        List<String> changed = new ArrayList<>(list);
        changed.set(0, replacement);
        return changed;
    }

    private static String kind(String instance) {
        return instance.substring(0, instance.lastIndexOf('/'));
    }

    private static boolean adapted(Chain chain) {
        return chain.connection().startsWith("ecg.") && chain.items().size() > 1;
    }

    /** Chains that reach their jack without a fan-out. */
    private static List<Chain> single(Hookup hookup) {
        return hookup.chains().stream()
                .filter(chain -> hookup.chains().stream()
                                .filter(other -> other.jack() == chain.jack())
                                .count()
                        == 1)
                .toList();
    }

    private static Hookup without(Hookup hookup, String connection) {
        return new Hookup(
                hookup.id(),
                hookup.bundles().stream()
                        .map(bundle -> new Bundle(
                                bundle.id(),
                                bundle.connections().stream()
                                        .filter(each -> !each.equals(connection))
                                        .toList(),
                                bundle.jacks(),
                                bundle.links()))
                        .toList(),
                hookup.chains().stream()
                        .filter(chain -> !chain.connection().equals(connection))
                        .toList(),
                hookup.earth());
    }

    private static Plan items(Plan plan, UnaryOperator<KitItem> change) {
        Kit kit = plan.kit();
        return Damage.kit(
                plan,
                new Kit(
                        kit.name(),
                        kit.tester(),
                        kit.items().stream().map(change).toList(),
                        kit.checks(),
                        kit.connectors()));
    }

    private static Plan jacks(Plan plan, UnaryOperator<Jacks> change) {
        return Damage.tester(
                plan,
                tester -> new Tester(
                        tester.name(),
                        tester.jacks().map(change),
                        tester.earthJack(),
                        tester.touchThrough(),
                        tester.inlet(),
                        tester.outlets(),
                        tester.switches(),
                        tester.networks(),
                        tester.methods(),
                        tester.components(),
                        tester.earthTest(),
                        tester.insulation(),
                        tester.partSource(),
                        tester.accuracy(),
                        tester.calibratedUntil()));
    }

    /** The plan with the bundles of a tied set on jacks that are no neighbours. */
    private static Plan scattered(Plan plan) {
        return Damage.hookups(
                plan,
                plan.hookups().stream()
                        .map(hookup -> {
                            int count =
                                    plan.kit().tester().jacks().orElseThrow().count();
                            return new Hookup(
                                    hookup.id(),
                                    hookup.bundles().stream()
                                            .map(bundle -> new Bundle(
                                                    bundle.id(),
                                                    bundle.connections(),
                                                    bundle.jacks().stream()
                                                            .map(jack -> scatter(jack, count))
                                                            .toList(),
                                                    bundle.links()))
                                            .toList(),
                                    hookup.chains().stream()
                                            .map(chain -> new Chain(
                                                    chain.connection(),
                                                    chain.items(),
                                                    scatter(chain.jack(), count),
                                                    chain.contacts()))
                                            .toList(),
                                    hookup.earth());
                        })
                        .toList());
    }

    /** Odd places first: neighbours come apart. */
    private static int scatter(int jack, int count) {
        int half = (count + 1) / 2;
        return jack <= half ? 2 * jack - 1 : 2 * (jack - half);
    }

    private static Device parts(Device device, UnaryOperator<AppliedPart> change) {
        return device(
                device, device.appliedParts().stream().map(change).toList(), device.outputs(), device.touchPoints());
    }

    private static Device points(Device device, UnaryOperator<leadwright.catalog.device.TouchPoint> change) {
        return device(
                device,
                device.appliedParts(),
                device.outputs(),
                device.touchPoints().stream().map(change).toList());
    }

    private static Device noSharing(Device device) {
        List<Output> outputs = device.outputs().stream()
                .map(output -> new Output(
                        output.id(),
                        output.appliedPart(),
                        output.functions(),
                        output.kind(),
                        output.madeSafeBy(),
                        output.waitTime(),
                        Optional.empty()))
                .toList();
        return device(device, device.appliedParts(), outputs, device.touchPoints());
    }

    private static Device device(
            Device device,
            List<AppliedPart> parts,
            List<Output> outputs,
            List<leadwright.catalog.device.TouchPoint> points) {
        return new Device(
                device.name(),
                device.supply(),
                device.protection(),
                device.functionalEarth(),
                device.battery(),
                device.mainsSwitch(),
                device.startUp(),
                device.shutDown(),
                device.startUpStated(),
                device.toleratesPowerCut(),
                device.builtTo(),
                device.forbids(),
                parts,
                device.ports(),
                outputs,
                points,
                device.earthPoints(),
                device.panel(),
                device.limits(),
                device.electrical(),
                device.modes(),
                device.adapter(),
                device.connectors());
    }

    private static boolean therapy(Plan plan, Hookup hookup) {
        return hookup.chains().stream()
                .anyMatch(chain -> Therapy.connections(plan.device()).contains(chain.connection()));
    }

    private static boolean phase(Optional<Obligation> what, Phase phase) {
        return what.map(Obligation::phase).equals(Optional.of(phase));
    }

    private static Plan dropReading(Plan plan, Predicate<Obligation> which) {
        Reading dropped = plan.readings().stream()
                .filter(reading -> which.test(reading.obligation()))
                .findFirst()
                .orElseThrow();
        Plan without = Damage.dropStep(
                plan, step -> step.reading().equals(Optional.of(dropped.id())) && step.does() == Act.READ);
        return Damage.readings(
                without,
                plan.readings().stream()
                        .filter(reading -> !reading.equals(dropped))
                        .toList());
    }

    private static boolean joinedThenParted(Plan plan, Step join) {
        return plan.steps().stream()
                .anyMatch(step -> step.does() == Act.PART && step.joint().equals(join.joint()));
    }

    private static boolean closesBetweenFaults(Plan plan, Step step) {
        int index = plan.steps().indexOf(step);
        return step.state().fault() == Fault.NONE
                && step.state().polarity() != MainsState.Polarity.NONE
                && before(plan, index).fault() != Fault.NONE
                && after(plan, index)
                        .filter(next -> next.polarity() == step.state().polarity()
                                && next.fault() != Fault.NONE
                                && next.fault() != before(plan, index).fault())
                        .isPresent();
    }

    private static MainsState before(Plan plan, int index) {
        return index == 0 ? MainsState.OFF : plan.steps().get(index - 1).state();
    }

    private static Optional<MainsState> after(Plan plan, int index) {
        return plan.steps().stream()
                .skip(index + 1L)
                .filter(step -> step.does() == Act.SWITCH)
                .map(Step::state)
                .findFirst();
    }

    private static Reading limit(Reading reading, UnaryOperator<Limit> change) {
        Obligation what = reading.obligation();
        return with(reading, what.quantity(), what.state(), what.limit().map(change));
    }

    private static Reading quantity(Reading reading, leadwright.catalog.rules.QuantityKind quantity) {
        Obligation what = reading.obligation();
        return with(reading, quantity, what.state(), what.limit());
    }

    private static Reading state(Reading reading, MainsState state) {
        Obligation what = reading.obligation();
        return with(reading, what.quantity(), state, what.limit());
    }

    private static Reading with(
            Reading reading, leadwright.catalog.rules.QuantityKind quantity, MainsState state, Optional<Limit> limit) {
        Obligation what = reading.obligation();
        return new Reading(
                reading.id(),
                new Obligation(
                        what.key(),
                        quantity,
                        what.clause(),
                        what.of(),
                        what.demand(),
                        what.place(),
                        what.earthSubject(),
                        state,
                        what.mode(),
                        what.sourcePolarity(),
                        what.method(),
                        what.component(),
                        what.network(),
                        limit,
                        what.note()),
                reading.hookup());
    }
}
