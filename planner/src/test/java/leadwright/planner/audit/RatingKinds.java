package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.Plan;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;

/** Kinds of damage to what items bear and reach, and to the earth lead as a hookup has it. */
final class RatingKinds {
    private static final Quantity FAR = Quantity.millimetres(90_000);

    private RatingKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(Invariant.RATING, "an item not rated for the voltage on it", RatingKinds::voltage),
                Kind.of(Invariant.RATING, "an earth lead not rated for the test current", RatingKinds::current),
                Kind.of(Invariant.UNSHROUDED, "a bare plug under a voltage", RatingKinds::bare),
                Kind.of(Invariant.REACH, "an earthed part too far away", RatingKinds::farPoint, Invariant.SECONDS),
                Kind.of(Invariant.REACH, "an applied part too far away", RatingKinds::farPart),
                Kind.of(
                        Invariant.EARTH_SOURCE,
                        "a source too weak for leads and path",
                        (plan, dice) -> judged(plan)
                                ? earthTest(
                                        plan,
                                        test -> with(
                                                test,
                                                "openCircuit",
                                                Quantity.of(Dimension.VOLTAGE, 1_000L + dice.below(9_000))))
                                : Optional.empty()),
                Kind.of(
                        Invariant.EARTH_SOURCE,
                        "leads that cannot be nulled",
                        (plan, dice) -> conductor(plan)
                                ? earthTest(
                                        plan,
                                        test -> with(
                                                with(test, "wiring", "two-wire"),
                                                "nullUpTo",
                                                Optional.of(Quantity.of(Dimension.RESISTANCE, 1L + dice.below(900)))))
                                : Optional.empty()),
                Kind.of(
                        Invariant.EARTH_PATH,
                        "an earth lead without one of its items",
                        RatingKinds::shorterPath,
                        Invariant.REACH,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.JOINT),
                Kind.of(
                        Invariant.EARTH_PATH,
                        "an earth lead that is never plugged",
                        RatingKinds::unplugged,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.TOUCH_PLACE));
    }

    /** Readings with a voltage of the tester on what is wired. */
    private static List<Reading> fed(Plan plan) {
        return plan.readings().stream()
                .filter(reading -> !reading.obligation().demand().isNothing())
                .filter(reading -> reading.obligation().phase() == Phase.MAINS_ON_PART
                        || reading.obligation().phase() == Phase.INSULATION)
                .toList();
    }

    private static Optional<String> fedItem(Plan plan, Dice dice) {
        return dice.pick(fed(plan))
                .flatMap(reading -> reading.hookup())
                .flatMap(plan::hookup)
                .flatMap(hookup -> dice.pick(hookup.chains().stream()
                        .flatMap(chain -> chain.items().stream())
                        .distinct()
                        .toList()))
                .map(WiringKinds::kind);
    }

    private static Plan item(Plan plan, String id, UnaryOperator<KitItem> change) {
        return Damage.items(plan, item -> item.id().equals(id) ? change.apply(item) : item);
    }

    private static Optional<Plan> voltage(Plan plan, Dice dice) {
        return fedItem(plan, dice)
                .map(id -> item(
                        plan,
                        id,
                        item -> with(
                                item,
                                "voltage",
                                dice.below(2) == 0 ? Optional.empty() : Optional.of(Quantity.volts(24)))));
    }

    private static Optional<Plan> current(Plan plan, Dice dice) {
        return path(plan, dice)
                .flatMap(path -> dice.pick(path.items()))
                .map(instance -> item(
                        plan,
                        WiringKinds.kind(instance),
                        item -> with(
                                item,
                                "current",
                                dice.below(2) == 0
                                        ? Optional.empty()
                                        : Optional.of(Quantity.of(Dimension.CURRENT, 1_000_000L)))));
    }

    private static Optional<EarthPath> path(Plan plan, Dice dice) {
        return dice.pick(plan.hookups().stream()
                .flatMap(hookup -> hookup.earth().stream())
                .filter(path -> !path.items().isEmpty())
                .toList());
    }

    /** With a source strong enough that no bare plug is allowed. */
    private static Optional<Plan> bare(Plan plan, Dice dice) {
        return fedItem(plan, dice)
                .map(id -> {
                    Plan strong = Damage.tester(
                            plan,
                            tester -> with(
                                    tester,
                                    "partSource",
                                    tester.partSource()
                                            .map(source -> new PartSource(
                                                    source.voltage(),
                                                    Quantity.microAmperes(5_000),
                                                    source.reading()))));
                    return item(
                            strong,
                            id,
                            item -> with(
                                    item,
                                    "ends",
                                    item.ends().stream()
                                            .map(end -> end.equals("lab-4mm-plug-shrouded") ? "lab-4mm-plug" : end)
                                            .toList()));
                })
                .filter(damaged -> !damaged.kit().items().equals(plan.kit().items()));
    }

    private static Optional<Plan> farPoint(Plan plan, Dice dice) {
        List<String> clipped = plan.readings().stream()
                .map(Reading::obligation)
                .filter(what -> what.phase() == Phase.EARTH)
                .flatMap(what -> what.place().stream())
                .filter(place -> plan.device().touchPoints().stream()
                        .anyMatch(point -> point.id().equals(place)))
                .toList();
        boolean led = plan.hookups().stream()
                .flatMap(hookup -> hookup.earth().stream())
                .anyMatch(path -> path.pole().equals("part"));
        return led
                ? dice.pick(clipped)
                        .map(place -> Damage.device(
                                plan,
                                device -> with(
                                        device,
                                        "touchPoints",
                                        device.touchPoints().stream()
                                                .map(point -> point.id().equals(place)
                                                        ? with(point, "distance", Optional.of(FAR))
                                                        : point)
                                                .toList())))
                : Optional.empty();
    }

    private static Optional<Plan> farPart(Plan plan, Dice dice) {
        return WiringKinds.chainAt(plan, dice)
                .flatMap(at -> plan.device().appliedParts().stream()
                        .filter(part -> part.connections().stream()
                                .anyMatch(each -> each.name().equals(at.chain().connection())))
                        .findFirst())
                .map(far -> Damage.device(
                        plan,
                        device -> with(
                                device,
                                "appliedParts",
                                device.appliedParts().stream()
                                        .map(part -> part.id().equals(far.id())
                                                ? with(part, "distance", Optional.of(FAR))
                                                : part)
                                        .toList())));
    }

    /** Whether an earth lead that serves the clip has any copper. */
    private static boolean conductor(Plan plan) {
        return plan.hookups().stream()
                .filter(hookup ->
                        hookup.earth().stream().anyMatch(path -> path.pole().equals("part")))
                .flatMap(hookup -> hookup.earth().stream())
                .flatMap(path -> path.items().stream())
                .map(instance -> WiringKinds.item(plan, instance))
                .anyMatch(item -> item.conductor().isPresent() && item.length().isPresent());
    }

    private static boolean judged(Plan plan) {
        return plan.readings().stream()
                .map(Reading::obligation)
                .anyMatch(what -> what.phase() == Phase.EARTH && what.limit().isPresent());
    }

    private static Optional<Plan> earthTest(Plan plan, UnaryOperator<EarthTest> change) {
        boolean led = plan.hookups().stream()
                .flatMap(hookup -> hookup.earth().stream())
                .anyMatch(path -> path.pole().equals("part"));
        return led && plan.kit().tester().earthTest().isPresent()
                ? Optional.of(Damage.tester(
                        plan,
                        tester -> with(tester, "earthTest", tester.earthTest().map(change))))
                : Optional.empty();
    }

    private static Optional<Plan> shorterPath(Plan plan, Dice dice) {
        List<Hookup> led = plan.hookups().stream()
                .filter(hookup ->
                        hookup.earth().stream().anyMatch(path -> path.items().size() > 1))
                .toList();
        return dice.pick(led)
                .flatMap(hookup -> dice.pick(
                                hookup.earth(), path -> path.items().size() > 1)
                        .map(path -> {
                            List<String> left = new java.util.ArrayList<>(path.items());
                            left.remove(dice.below(left.size()));
                            return WiringKinds.hookup(
                                    plan,
                                    hookup,
                                    with(
                                            hookup,
                                            "earth",
                                            Damage.first(
                                                    hookup.earth(), path::equals, each -> with(each, "items", left))));
                        }));
    }

    /** The joint of the earth lead that a reading needs is left out, and its parting with it. */
    private static Optional<Plan> unplugged(Plan plan, Dice dice) {
        List<Step> joins = plan.steps().stream()
                .filter(step -> step.does() == Act.JOIN && step.account() == Step.Account.EARTH_LEAD)
                .toList();
        boolean read = plan.readings().stream()
                .anyMatch(reading -> reading.obligation().phase() == Phase.EARTH);
        return read
                ? dice.pick(joins).map(join -> {
                    List<Step> left = plan.steps().stream()
                            .filter(step ->
                                    !Stream.of(Act.JOIN, Act.PART).toList().contains(step.does())
                                            || !step.joint().equals(join.joint()))
                            .toList();
                    return Mend.figures(Damage.steps(plan, left));
                })
                : Optional.empty();
    }
}
