package leadwright.planner.audit;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.ItemKind;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.EarthPath;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;

/** The mated joints that a hookup consists of. Which branch of a fan-out is used makes no difference here. */
final class Joints {
    private Joints() {}

    /** A joint without the branch or socket it uses. */
    static Joint plain(Joint joint) {
        return new Joint(plain(joint.from()), plain(joint.to()));
    }

    private static String plain(String end) {
        int mark = end.indexOf('#');
        return mark < 0 ? end : end.substring(0, mark);
    }

    /** Joints of the chains and links, the touch probe's place excepted: it is touched, not joined. */
    static Set<Joint> ofLeads(Hookup hookup, Kit kit) {
        Set<Joint> joints = new LinkedHashSet<>();
        for (Chain chain : hookup.chains()) {
            String from = chain.connection();
            for (String item : chain.items()) {
                if (!from.equals(Device.TOUCH_PROBE)) {
                    joints.add(new Joint(from, item));
                }
                from = item;
            }
            joints.add(new Joint(from, "jack-" + chain.jack()));
        }
        for (Bundle bundle : hookup.bundles()) {
            joints.addAll(ofLinks(bundle, hookup, kit));
        }
        return joints;
    }

    private static Set<Joint> ofLinks(Bundle bundle, Hookup hookup, Kit kit) {
        Set<Joint> joints = new LinkedHashSet<>();
        List<Integer> reached = hookup.chains().stream()
                .filter(chain -> bundle.connections().contains(chain.connection()))
                .map(Chain::jack)
                .distinct()
                .toList();
        List<Integer> linked =
                bundle.jacks().stream().filter(jack -> !reached.contains(jack)).toList();
        if (linked.isEmpty()) {
            return joints;
        }
        int share = bundle.links().size() / linked.size();
        for (int i = 0; i < linked.size(); i++) {
            String to = "jack-" + linked.get(i);
            for (String link : bundle.links().subList(i * share, (i + 1) * share)) {
                joints.add(new Joint(link, to));
                to = link;
            }
            String last = to;
            gathering(bundle, hookup, kit).ifPresent(fanOut -> joints.add(new Joint(last, fanOut)));
        }
        return joints;
    }

    /** The fan-out nearest the jack: a link starts from one of its branches. */
    private static Optional<String> gathering(Bundle bundle, Hookup hookup, Kit kit) {
        return hookup.chains().stream()
                .filter(chain -> bundle.connections().contains(chain.connection()))
                .flatMap(chain -> chain.items().stream())
                .filter(item -> kit.item(item.substring(0, Math.max(0, item.lastIndexOf('/'))))
                        .map(KitItem::kind)
                        .equals(Optional.of(ItemKind.FAN_OUT)))
                .reduce((before, after) -> after);
    }

    /** Joints of the earth lead, its clip to the device excepted: that one moves. */
    static Set<Joint> ofEarth(Hookup hookup) {
        Set<Joint> joints = new LinkedHashSet<>();
        for (EarthPath path : hookup.earth()) {
            String to = path.socket();
            for (String item : path.items()) {
                joints.add(new Joint(item, to));
                to = item;
            }
        }
        return joints;
    }
}
