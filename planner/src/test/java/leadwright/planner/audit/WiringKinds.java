package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import leadwright.catalog.device.AppliedPart;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.TherapyKind;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.KitItem;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;

/** Kinds of damage to items, chains, jacks and bundles. The steps build what the damaged hookup says. */
final class WiringKinds {
    private WiringKinds() {}

    static List<Kind> all() {
        return List.of(
                Kind.of(
                        Invariant.ITEM_KNOWN,
                        "an item the kit does not have",
                        (plan, dice) ->
                                dice.pick(instances(plan)).map(instance -> Mend.renamed(plan, instance, "phantom/1")),
                        Invariant.ITEM_ONCE,
                        Invariant.EARTH_PATH,
                        Invariant.SECONDS),
                Kind.of(
                        Invariant.STOCK,
                        "an instance beyond the stock",
                        (plan, dice) -> dice.pick(instances(plan)).map(instance -> {
                            int beyond = item(plan, instance).stock() + 1 + dice.below(3);
                            return Mend.renamed(plan, instance, kind(instance) + "/" + beyond);
                        })),
                Kind.of(
                        Invariant.ITEM_ONCE,
                        "one item in two places of a hookup",
                        WiringKinds::twice,
                        Invariant.BRANCHES,
                        Invariant.BUNDLE_JOINED,
                        Invariant.MAKE_SAFE,
                        Invariant.SAFE_WAIT,
                        Invariant.JOINT,
                        Invariant.HOOKUP_COMPLETE),
                Kind.of(
                        Invariant.BRANCHES,
                        "a fan-out with fewer branches than ends on them",
                        WiringKinds::fewerBranches),
                Kind.of(
                        Invariant.MATING,
                        "an item whose end fits nothing",
                        WiringKinds::mismatched,
                        Invariant.EARTH_PATH),
                Kind.of(
                        Invariant.CONTACTS,
                        "a wrong count of contacts",
                        (plan, dice) -> chain(plan, dice, chain -> {
                            int more = dice.below(2) == 0 ? -1 : 1;
                            return with(chain, "contacts", chain.contacts() + more);
                        })),
                Kind.of(
                        Invariant.JACK_KNOWN,
                        "a bundle on a jack that the tester does not have",
                        (plan, dice) -> used(plan, dice)
                                .map(at -> Mend.renamedIn(
                                        plan,
                                        at.hookup().id(),
                                        "jack-" + at.jack(),
                                        "jack-" + (count(plan) + 1 + dice.below(9)))),
                        Invariant.TIES,
                        Invariant.FLOATING_JOINED,
                        Invariant.JOINT,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.JACK_SHARED,
                        "two bundles on one jack",
                        WiringKinds::shared,
                        Invariant.BUNDLE_JOINED,
                        Invariant.TIES,
                        Invariant.FLOATING_JOINED,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.JACK_CROWDED,
                        "two plugs in one jack",
                        WiringKinds::crowded,
                        Invariant.JACK_SHARED,
                        Invariant.BUNDLE_JOINED,
                        Invariant.TIES,
                        Invariant.FLOATING_JOINED,
                        Invariant.JOINT,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.BUNDLE_JOINED,
                        "two connections told apart wrongly",
                        WiringKinds::confused,
                        Invariant.COVERAGE,
                        Invariant.TIES,
                        Invariant.FLOATING_JOINED,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.BUNDLE_JOINED,
                        "the chains of two bundles exchanged",
                        WiringKinds::chainsExchanged,
                        Invariant.BRANCHES,
                        Invariant.MATING,
                        Invariant.REACH,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.JOINT),
                Kind.of(
                        Invariant.CONNECTION_KNOWN,
                        "a connection the device does not have",
                        (plan, dice) -> chainAt(plan, dice)
                                .map(at -> Mend.renamedIn(
                                        plan, at.hookup().id(), at.chain().connection(), "phantom.c" + dice.below(9))),
                        Invariant.BUNDLE_JOINED,
                        Invariant.COVERAGE,
                        Invariant.IDLE_JACKS,
                        Invariant.JOINT,
                        Invariant.HOOKUP_COMPLETE,
                        Invariant.SECONDS,
                        Invariant.TIES,
                        Invariant.SELECTION_SAID),
                Kind.of(
                        Invariant.THERAPY_ALONE,
                        "a therapy output beside another part",
                        WiringKinds::therapy,
                        Invariant.MEANING,
                        Invariant.HANDLING,
                        Invariant.MAKE_SAFE));
    }

    /** A chain and where it is. */
    record At(Hookup hookup, Chain chain) {}

    /** A jack in use and where it is. */
    record Jack(Hookup hookup, int jack) {}

    static int count(Plan plan) {
        return plan.kit().tester().jacks().orElseThrow().count();
    }

    static String kind(String instance) {
        return instance.substring(0, instance.lastIndexOf('/'));
    }

    static KitItem item(Plan plan, String instance) {
        return plan.kit().item(kind(instance)).orElseThrow();
    }

    /** Every item instance in use. */
    static List<String> instances(Plan plan) {
        return plan.hookups().stream()
                .flatMap(hookup -> Stream.of(
                                hookup.chains().stream().flatMap(chain -> chain.items().stream()),
                                hookup.bundles().stream().flatMap(bundle -> bundle.links().stream()),
                                hookup.earth().stream().flatMap(path -> path.items().stream()))
                        .flatMap(each -> each))
                .distinct()
                .toList();
    }

    static Optional<At> chainAt(Plan plan, Dice dice) {
        return dice.pick(plan.hookups().stream()
                .flatMap(hookup -> hookup.chains().stream().map(chain -> new At(hookup, chain)))
                .toList());
    }

    private static Optional<Plan> chain(Plan plan, Dice dice, UnaryOperator<Chain> change) {
        return chainAt(plan, dice)
                .map(at -> hookup(
                        plan,
                        at.hookup(),
                        with(at.hookup(), "chains", Damage.first(at.hookup().chains(), at.chain()::equals, change))));
    }

    static Plan hookup(Plan plan, Hookup hookup, Hookup by) {
        return Damage.hookup(plan, hookup::equals, each -> by);
    }

    private static Optional<Jack> used(Plan plan, Dice dice) {
        return dice.pick(plan.hookups().stream()
                .flatMap(hookup -> hookup.bundles().stream()
                        .flatMap(bundle -> bundle.jacks().stream())
                        .map(jack -> new Jack(hookup, jack)))
                .toList());
    }

    private static Optional<Plan> twice(Plan plan, Dice dice) {
        return dice.pick(plan.hookups(), hookup -> hookup.chains().size() > 1).flatMap(hookup -> {
            List<String> single = hookup.chains().stream()
                    .flatMap(chain -> chain.items().stream())
                    .filter(instance -> item(plan, instance).kind() != ItemKind.FAN_OUT)
                    .distinct()
                    .toList();
            return dice.pick(single)
                    .flatMap(one -> dice.pick(
                                    single,
                                    other -> !other.equals(one) && kind(other).equals(kind(one)))
                            .map(other -> Mend.renamedIn(plan, hookup.id(), other, one)));
        });
    }

    private static Optional<Plan> fewerBranches(Plan plan, Dice dice) {
        return dice.pick(plan.hookups()).flatMap(hookup -> {
            List<String> crowded = hookup.chains().stream()
                    .flatMap(chain -> chain.items().stream())
                    .filter(instance -> item(plan, instance).kind() == ItemKind.FAN_OUT)
                    .distinct()
                    .filter(instance -> ends(plan, hookup, instance) > 1)
                    .toList();
            return dice.pick(crowded).map(instance -> {
                int left = 1 + dice.below((int) ends(plan, hookup, instance) - 1);
                return Damage.items(
                        plan, item -> item.id().equals(kind(instance)) ? with(item, "branches", left) : item);
            });
        });
    }

    private static long ends(Plan plan, Hookup hookup, String instance) {
        return Joints.ofLeads(hookup, plan.kit()).stream()
                .filter(joint -> joint.to().equals(instance))
                .count();
    }

    private static Optional<Plan> mismatched(Plan plan, Dice dice) {
        return chainAt(plan, dice)
                .flatMap(at -> dice.pick(at.chain().items()).map(instance -> {
                    int end = dice.below(2);
                    return Damage.items(plan, item -> {
                        if (!item.id().equals(kind(instance))) {
                            return item;
                        }
                        List<String> ends = new ArrayList<>(item.ends());
                        ends.set(end, "din-42801-stud");
                        return with(with(item, "ends", ends), "also", List.of());
                    });
                }));
    }

    private static Optional<Plan> shared(Plan plan, Dice dice) {
        return dice.pick(plan.hookups(), hookup -> hookup.bundles().size() > 1)
                .flatMap(hookup -> dice.pick(hookup.bundles())
                        .flatMap(one -> dice.pick(hookup.bundles(), other -> other != one)
                                .map(other -> hookup(
                                        plan,
                                        hookup,
                                        with(
                                                hookup,
                                                "bundles",
                                                Damage.first(
                                                        hookup.bundles(),
                                                        other::equals,
                                                        bundle -> with(bundle, "jacks", one.jacks())))))));
    }

    private static Optional<Plan> crowded(Plan plan, Dice dice) {
        return dice.pick(plan.hookups(), hookup -> hookup.bundles().size() > 1)
                .flatMap(hookup -> dice.pick(hookup.bundles())
                        .flatMap(one -> dice.pick(hookup.bundles(), other -> other != one)
                                .map(other -> Mend.renamedIn(
                                        plan,
                                        hookup.id(),
                                        "jack-" + other.jacks().get(0),
                                        "jack-" + one.jacks().get(0)))));
    }

    /** One connection listed with another bundle, or two exchanged between the lists of two bundles. */
    private static Optional<Plan> confused(Plan plan, Dice dice) {
        return dice.pick(plan.hookups(), hookup -> hookup.bundles().size() > 1)
                .flatMap(hookup -> dice.pick(hookup.bundles())
                        .flatMap(one -> dice.pick(hookup.bundles(), other -> other != one)
                                .map(other -> {
                                    String moved = dice.pick(one.connections()).orElseThrow();
                                    String back = dice.pick(other.connections()).orElseThrow();
                                    boolean exchanged = dice.below(2) == 0;
                                    List<Bundle> bundles = new ArrayList<>();
                                    for (Bundle bundle : hookup.bundles()) {
                                        List<String> names = new ArrayList<>(bundle.connections());
                                        if (bundle == one) {
                                            names.remove(moved);
                                        }
                                        if (bundle == other && exchanged) {
                                            names.remove(back);
                                        }
                                        if (bundle == other) {
                                            names.add(moved);
                                        }
                                        if (bundle == one && exchanged) {
                                            names.add(back);
                                        }
                                        bundles.add(with(bundle, "connections", names));
                                    }
                                    return hookup(plan, hookup, with(hookup, "bundles", bundles));
                                })));
    }

    private static Optional<Plan> chainsExchanged(Plan plan, Dice dice) {
        return dice.pick(plan.hookups(), hookup -> hookup.bundles().size() > 1)
                .flatMap(hookup -> dice.pick(hookup.chains())
                        .flatMap(one -> dice.pick(hookup.chains(), other -> other.jack() != one.jack())
                                .map(other -> hookup(
                                        plan,
                                        hookup,
                                        with(
                                                hookup,
                                                "chains",
                                                hookup.chains().stream()
                                                        .map(chain -> chain == one
                                                                ? with(chain, "connection", other.connection())
                                                                : chain == other
                                                                        ? with(chain, "connection", one.connection())
                                                                        : chain)
                                                        .toList())))));
    }

    /** One of two applied parts of a hookup is said to be a therapy output that shares with nobody. */
    private static Optional<Plan> therapy(Plan plan, Dice dice) {
        return dice.pick(plan.hookups()).flatMap(hookup -> {
            List<AppliedPart> present = plan.device().appliedParts().stream()
                    .filter(part -> part.connections().stream()
                            .anyMatch(each -> hookup.chainOf(each.name()).isPresent()))
                    .toList();
            Optional<AppliedPart> part = present.size() < 2 ? Optional.empty() : dice.pick(present);
            Set<String> outputs = Therapy.connections(plan.device());
            return part.filter(each -> each.connections().stream().noneMatch(one -> outputs.contains(one.name())))
                    .map(each -> Damage.device(plan, device -> {
                        List<Output> more = new ArrayList<>(device.outputs());
                        more.add(new Output(
                                "phantom",
                                each.id(),
                                List.of(),
                                TherapyKind.PACING,
                                Optional.empty(),
                                Optional.empty(),
                                Optional.empty()));
                        return with(device, "outputs", more);
                    }));
        });
    }
}
