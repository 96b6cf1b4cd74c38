package leadwright.planner.order;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.table.Connector;
import leadwright.catalog.table.ContactKind;
import leadwright.catalog.table.Mating;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.NaturalOrder;

/**
 * Phase 1: the joints of each hookup.
 *
 * <p>Needs hookups whose items are in the kit. Gives every mated joint once, in the order in which they are made: jack by
 * jack, from the tester to the device. The touch probe's place and the earth clip's are not joints: they are touched.
 */
final class Arrangement {
    private final Scene scene;
    private final Map<Joint, Contact> contacts = new LinkedHashMap<>();

    private Arrangement(Scene scene) {
        this.scene = scene;
    }

    /** Joints of the chains and links. */
    static List<Contact> ofLeads(Hookup hookup, Scene scene) {
        Arrangement arrangement = new Arrangement(scene);
        List<Chain> chains = new ArrayList<>(hookup.chains());
        chains.sort(Comparator.comparingInt(Chain::jack));
        for (Chain chain : chains) {
            arrangement.add(chain);
        }
        for (Bundle bundle : hookup.bundles()) {
            arrangement.addLinks(bundle, chains);
        }
        return List.copyOf(arrangement.contacts.values());
    }

    /** Joints of the earth lead or leads, from the tester's socket outwards. */
    static List<Contact> ofEarth(Hookup hookup, Scene scene) {
        Arrangement arrangement = new Arrangement(scene);
        for (EarthPath path : hookup.earth()) {
            String to = path.socket();
            for (String item : path.items()) {
                arrangement.put(item, to, false, ContactKind.LAB_4MM, false, List.of());
                to = item;
            }
        }
        return List.copyOf(arrangement.contacts.values());
    }

    private void add(Chain chain) {
        String to = "jack-" + chain.jack();
        for (int i = chain.items().size() - 1; i >= 0; i--) {
            String from = chain.items().get(i);
            String target = to;
            // A second plug at a jack without a fan-out stands in the back of the first.
            boolean rear = !Scene.isItem(to)
                    && contacts.values().stream()
                            .anyMatch(each ->
                                    each.to().equals(target) && !each.from().equals(from));
            put(from, to, rear, ContactKind.LAB_4MM, movable(chain.connection(), from), List.of(chain.connection()));
            to = from;
        }
        if (!chain.connection().equals(Device.TOUCH_PROBE)) {
            ContactKind kind = deviceJoint(chain.connection(), to);
            boolean insulated = movable(chain.connection(), to)
                    && switch (kind) {
                        case SNAP, TOUCH_PROOF, PINCH, LAB_4MM -> true;
                        default -> false;
                    };
            put(chain.connection(), to, false, kind, insulated, List.of(chain.connection()));
        }
    }

    private void addLinks(Bundle bundle, List<Chain> chains) {
        List<Chain> own = chains.stream()
                .filter(chain -> bundle.connections().contains(chain.connection()))
                .toList();
        List<Integer> far = bundle.jacks().stream()
                .filter(jack -> own.stream().noneMatch(chain -> chain.jack() == jack))
                .toList();
        if (far.isEmpty() || bundle.links().isEmpty()) {
            return;
        }
        // Equal shares: each far jack is reached through as many link items.
        int share = bundle.links().size() / far.size();
        // The stage nearest to the jack has the branch that the link takes.
        List<String> gathering = own.stream()
                .map(chain -> chain.items().stream().filter(this::isFanOut).toList())
                .filter(stages -> !stages.isEmpty())
                .findFirst()
                .orElse(List.of());
        for (int i = 0; i < far.size(); i++) {
            String to = "jack-" + far.get(i);
            for (String link : bundle.links().subList(i * share, (i + 1) * share)) {
                put(link, to, false, ContactKind.LAB_4MM, movable(bundle, link), bundle.connections());
                to = link;
            }
            if (!gathering.isEmpty()) {
                String stage = gathering.get(gathering.size() - 1);
                put(to, stage, false, ContactKind.LAB_4MM, movable(bundle, to), bundle.connections());
            }
        }
    }

    private boolean movable(Bundle bundle, String item) {
        return bundle.connections().stream().allMatch(connection -> movable(connection, item));
    }

    /** Insulated ends of patient parts that deliver no therapy; never bare plugs, clips, foil or liquids. */
    private boolean movable(String connection, String instance) {
        Connection known = scene.connections().get(connection);
        return known != null
                && known.kind() == Connection.Kind.PATIENT
                && !scene.therapy().containsKey(connection)
                && scene.item(instance)
                        .filter(item -> item.ends().stream()
                                .noneMatch(end -> scene.connectors()
                                        .find(end)
                                        .map(Connector::unshrouded)
                                        .orElse(false)))
                        .isPresent();
    }

    /** The patient end's kind; a surface takes the kind of what is put on it. */
    private ContactKind deviceJoint(String connection, String instance) {
        Connection known = scene.connections().get(connection);
        if (known == null) {
            return ContactKind.LAB_4MM;
        }
        List<String> ends = scene.item(instance).map(KitItem::ends).orElse(List.of());
        return ends.stream()
                .filter(end -> scene.connectors().mates(known.terminal(), end) != Mating.NO)
                .map(end -> scene.connectors().joint(known.terminal(), end))
                .findFirst()
                .orElseGet(() -> ends.isEmpty()
                        ? ContactKind.LAB_4MM
                        : scene.connectors().joint(known.terminal(), ends.get(0)));
    }

    private boolean isFanOut(String name) {
        return scene.item(name).filter(item -> item.kind() == ItemKind.FAN_OUT).isPresent();
    }

    private void put(
            String from, String to, boolean rear, ContactKind kind, boolean insulated, List<String> connections) {
        Joint joint = new Joint(from, to);
        Contact present = contacts.get(joint);
        boolean branch = isFanOut(to);
        if (present == null) {
            contacts.put(
                    joint,
                    new Contact(
                            from,
                            to,
                            branch,
                            rear,
                            scene.times().join(kind),
                            scene.times().part(kind),
                            insulated,
                            connections));
            return;
        }
        List<String> all = new ArrayList<>(present.connections());
        connections.stream().filter(each -> !all.contains(each)).forEach(all::add);
        all.sort(NaturalOrder.IDS);
        contacts.put(
                joint,
                new Contact(
                        from,
                        to,
                        branch,
                        present.rear(),
                        present.join(),
                        present.part(),
                        present.insulated() && insulated,
                        all));
    }
}
