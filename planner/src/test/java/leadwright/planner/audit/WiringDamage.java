package leadwright.planner.audit;

import static leadwright.planner.audit.Damage.with;
import static leadwright.planner.audit.Undamaged.RESCUE;
import static leadwright.planner.audit.Undamaged.WARD;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.EarthTest;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.Plan;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;

/** Damages to the wiring. */
final class WiringDamage {
    private static final Quantity TEN_AMPERES = Quantity.of(Dimension.CURRENT, 10_000_000_000L);

    private final List<Deliberate> all = new ArrayList<>();

    private WiringDamage() {}

    static List<Deliberate> all() {
        WiringDamage damage = new WiringDamage();
        damage.items();
        damage.joints();
        damage.ratings();
        return List.copyOf(damage.all);
    }

    private void ward(Invariant named, String what, UnaryOperator<Plan> damage) {
        all.add(new Deliberate(named, what, WARD, damage));
    }

    private void items() {
        ward(
                Invariant.ITEM_KNOWN,
                "an item the kit does not have",
                plan -> Damage.chain(plan, 0, chain -> firstItem(chain, "phantom/1")));
        ward(
                Invariant.STOCK,
                "an instance beyond the stock",
                plan -> Damage.chain(
                        plan, 0, chain -> firstItem(chain, kind(chain.items().get(0)) + "/999")));
        ward(Invariant.ITEM_ONCE, "an item used twice", plan -> {
            Hookup many = plan.hookups().stream()
                    .filter(hookup -> hookup.chains().size() > 1)
                    .findFirst()
                    .orElseThrow();
            return Damage.chain(
                    plan,
                    1,
                    chain -> firstItem(chain, many.chains().get(0).items().get(0)));
        });
        ward(
                Invariant.BRANCHES,
                "a fan-out with fewer branches than wires",
                plan -> Damage.items(plan, item -> item.branches() > 0 ? with(item, "branches", 1) : item));
        ward(
                Invariant.MATING,
                "a chain without its adapter",
                plan -> Damage.hookup(
                        plan,
                        hookup -> hookup.chains().stream().anyMatch(WiringDamage::adapted),
                        hookup -> with(
                                hookup,
                                "chains",
                                hookup.chains().stream()
                                        .map(chain -> adapted(chain) ? withoutAdapter(chain) : chain)
                                        .toList())));
        ward(
                Invariant.CONTACTS,
                "a wrong count of contacts",
                plan -> Damage.chain(plan, 0, chain -> with(chain, "contacts", chain.contacts() + 1)));
    }

    private void joints() {
        ward(
                Invariant.JACK_KNOWN,
                "a jack the tester does not have",
                plan -> Damage.chain(plan, 0, chain -> with(chain, "jack", 99)));
        ward(
                Invariant.JACK_SHARED,
                "two bundles on one jack",
                plan -> Damage.hookup(plan, hookup -> hookup.bundles().size() > 1, hookup -> {
                    List<Bundle> bundles = new ArrayList<>(hookup.bundles());
                    bundles.set(1, with(bundles.get(1), "jacks", bundles.get(0).jacks()));
                    return with(hookup, "bundles", bundles);
                }));
        ward(
                Invariant.JACK_CROWDED,
                "two plugs in one jack",
                plan -> Damage.hookup(plan, hookup -> single(hookup).size() > 1, hookup -> {
                    List<Chain> single = single(hookup);
                    return with(
                            hookup,
                            "chains",
                            Damage.first(
                                    hookup.chains(),
                                    single.get(1)::equals,
                                    chain -> with(chain, "jack", single.get(0).jack())));
                }));
        ward(
                Invariant.BUNDLE_JOINED,
                "a lead moved to another jack",
                plan -> Damage.chain(plan, 0, chain -> with(chain, "jack", chain.jack() == 1 ? 2 : 1)));
        ward(
                Invariant.BUNDLE_JOINED,
                "a connection left out of its bundle",
                plan -> Damage.bundle(
                        plan,
                        bundle -> bundle.connections().size() > 1,
                        bundle -> with(
                                bundle,
                                "connections",
                                bundle.connections()
                                        .subList(1, bundle.connections().size()))));
        ward(
                Invariant.CONNECTION_KNOWN,
                "a connection the device does not have",
                plan -> Damage.chain(plan, 0, chain -> with(chain, "connection", "ecg.phantom")));
        all.add(new Deliberate(
                Invariant.THERAPY_ALONE, "a therapy output beside other parts", RESCUE, WiringDamage::crowded));
    }

    private void ratings() {
        ward(
                Invariant.RATING,
                "items without a stated voltage under mains on a part",
                plan -> Damage.items(plan, item -> with(item, "voltage", Optional.empty())));
        ward(
                Invariant.RATING,
                "an earth lead for less than the rule set's test current, but more than the tester's smallest",
                plan -> Damage.items(plan, item -> item.id().equals("lead-earth") ? rated(item, TEN_AMPERES) : item));
        ward(
                Invariant.RATING,
                "an earth lead that does not state what it carries",
                plan -> Damage.items(
                        plan, item -> item.id().equals("lead-earth") ? with(item, "current", Optional.empty()) : item));
        ward(
                Invariant.EARTH_SOURCE,
                "a source too weak for leads and path",
                plan -> earthTest(plan, test -> with(test, "openCircuit", Quantity.of(Dimension.VOLTAGE, 2_000_000L))));
        ward(
                Invariant.EARTH_SOURCE,
                "leads that cannot be nulled",
                plan -> earthTest(
                        plan, test -> with(test, "nullUpTo", Optional.of(Quantity.of(Dimension.RESISTANCE, 1_000L)))));
        ward(
                Invariant.UNSHROUDED,
                "bare plugs under mains on a part",
                plan -> Damage.items(
                        plan,
                        item -> with(
                                item,
                                "ends",
                                item.ends().stream()
                                        .map(end -> end.equals("lab-4mm-plug-shrouded") ? "lab-4mm-plug" : end)
                                        .toList())));
        ward(
                Invariant.REACH,
                "an earthed part too far away",
                plan -> Damage.device(
                        plan,
                        device -> with(
                                device,
                                "touchPoints",
                                device.touchPoints().stream()
                                        .map(point -> with(
                                                with(point, "distance", Optional.of(Quantity.millimetres(90_000))),
                                                "from",
                                                Optional.empty()))
                                        .toList())));
        ward(
                Invariant.EARTH_PATH,
                "an earth lead without its clip",
                plan -> Damage.hookup(
                        plan,
                        hookup -> hookup.earth().stream()
                                .anyMatch(path -> path.pole().equals("part")),
                        hookup -> with(
                                hookup,
                                "earth",
                                Damage.first(
                                        hookup.earth(),
                                        path -> path.pole().equals("part"),
                                        WiringDamage::withoutClip))));
    }

    private static Plan earthTest(Plan plan, UnaryOperator<EarthTest> change) {
        return Damage.tester(
                plan, tester -> with(tester, "earthTest", tester.earthTest().map(change)));
    }

    private static leadwright.catalog.kit.KitItem rated(leadwright.catalog.kit.KitItem item, Quantity current) {
        return with(item, "current", Optional.of(current));
    }

    private static Chain firstItem(Chain chain, String instance) {
        List<String> items = new ArrayList<>(chain.items());
        items.set(0, instance);
        return with(chain, "items", items);
    }

    private static String kind(String instance) {
        return instance.substring(0, instance.lastIndexOf('/'));
    }

    private static boolean adapted(Chain chain) {
        return chain.connection().startsWith("ecg.") && chain.items().size() > 1;
    }

    private static Chain withoutAdapter(Chain chain) {
        List<String> items = chain.items().subList(1, chain.items().size());
        return with(with(chain, "items", items), "contacts", chain.contacts() - 1);
    }

    private static EarthPath withoutClip(EarthPath path) {
        return with(path, "items", path.items().subList(0, path.items().size() - 1));
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

    /** No output may share, and one does. */
    private static Plan crowded(Plan plan) {
        Set<String> therapy = Therapy.connections(plan.device());
        String other = plan.device().patientConnections().stream()
                .map(connection -> connection.name())
                .filter(name -> !therapy.contains(name))
                .findFirst()
                .orElseThrow();
        return Damage.hookup(
                Damage.device(plan, WiringDamage::noSharing),
                hookup -> hookup.chains().stream().anyMatch(chain -> therapy.contains(chain.connection())),
                hookup -> {
                    List<Chain> chains = new ArrayList<>(hookup.chains());
                    chains.add(with(chains.get(0), "connection", other));
                    return with(hookup, "chains", chains);
                });
    }

    private static Device noSharing(Device device) {
        return with(
                device,
                "outputs",
                device.outputs().stream()
                        .map(output -> with(output, "mayShare", Optional.empty()))
                        .toList());
    }
}
