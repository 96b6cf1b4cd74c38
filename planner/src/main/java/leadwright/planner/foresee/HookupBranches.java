package leadwright.planner.foresee;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.table.Conductor;
import leadwright.catalog.table.Conductors;
import leadwright.planner.circuit.Circuit;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Hookup;

/**
 * The branches of a hookup: what leads from each connection to its jack, with the resistance of conductors and contacts, and
 * the capacitance of what has a length to the room.
 *
 * <p>An item that several chains share is a node, so that it can be left out as one.
 */
final class HookupBranches {
    private final Kit kit;
    private final Hookup hookup;
    private final double warming;
    private final List<Template.Branch> branches = new ArrayList<>();
    private final Set<String> done = new HashSet<>();

    private HookupBranches(Kit kit, Hookup hookup, double warming) {
        this.kit = kit;
        this.hookup = hookup;
        this.warming = warming;
    }

    /** @param warming by what copper has more resistance than at 20 °C */
    static List<Template.Branch> of(Kit kit, Hookup hookup, double warming) {
        return new HookupBranches(kit, hookup, warming).all();
    }

    private List<Template.Branch> all() {
        Stretch.of(hookup).forEach(this::stretch);
        links();
        hookup.chains().stream()
                .map(chain -> Nodes.jack(chain.jack()))
                .distinct()
                .forEach(jack -> branches.add(
                        Template.Branch.capacitance("C:" + jack, jack, Circuit.EARTH, Assumed.JACK.parameter("jack"))));
        return branches;
    }

    /** Its contacts, and the conductors of its items; what they have to the room hangs at the far end. */
    private void stretch(Stretch stretch) {
        List<Template.Term> ohms = new ArrayList<>();
        ohms.add(new Template.Term(
                Assumed.CONTACT.parameter("contact"), stretch.items().size() + 1));
        List<Template.Term> farads = new ArrayList<>();
        for (String instance : stretch.items()) {
            item(kit, instance).ifPresent(item -> ohms.addAll(conductor(item, warming)));
            item(kit, instance).flatMap(HookupBranches::room).ifPresent(farads::add);
        }
        String to = stretch.to();
        branches.add(new Template.Branch(stretch.resistance(), stretch.from(), to, Template.Kind.RESISTANCE, ohms));
        if (!farads.isEmpty()) {
            branches.add(new Template.Branch(
                    "C:" + stretch.from() + "/" + to, to, Circuit.EARTH, Template.Kind.CAPACITANCE, farads));
        }
    }

    private void links() {
        for (Bundle bundle : hookup.bundles()) {
            for (int i = 1; i < bundle.jacks().size(); i++) {
                String from = Nodes.jack(bundle.jacks().get(0));
                String to = Nodes.jack(bundle.jacks().get(i));
                if (done.add(from + " " + to)) {
                    branches.add(new Template.Branch(
                            "R:" + from + "/" + to,
                            from,
                            to,
                            Template.Kind.RESISTANCE,
                            Template.terms(Assumed.CONTACT.parameter("contact"), 4)));
                }
            }
        }
    }

    static Optional<KitItem> item(Kit kit, String instance) {
        int slash = instance.lastIndexOf('/');
        return kit.item(slash < 0 ? instance : instance.substring(0, slash));
    }

    /** The resistance of an item's own conductor; nothing for one without length. */
    static List<Template.Term> conductor(KitItem item, double warming) {
        if (item.length().isEmpty()) {
            return List.of();
        }
        Optional<Conductor> stated = item.conductor().flatMap(Conductors.builtIn()::find);
        if (stated.isEmpty()) {
            return Template.terms(
                    Assumed.LEAD_RESISTANCE.parameter("lead-resistance"),
                    item.length().get().inSi() * warming);
        }
        // The table gives the most that the standard allows; what a lead has is usually 3 to 10 % less (from memory).
        Parameter copper = new Parameter("copper", 0.95, 0.88, 1.0, Basis.KIT);
        Quantity most = stated.get().resistance(item.length().get());
        return Template.terms(copper, most.inSi() * warming);
    }

    private static Optional<Template.Term> room(KitItem item) {
        if (item.length().isEmpty()) {
            return Optional.empty();
        }
        double metres = item.length().get().inSi();
        return Optional.of(item.capacitance()
                .map(stated ->
                        new Template.Term(Parameter.within("lead/" + item.id(), stated.inSi(), 0.3, Basis.KIT), metres))
                .orElseGet(() -> new Template.Term(Assumed.LEAD.parameter("lead"), metres)));
    }
}
