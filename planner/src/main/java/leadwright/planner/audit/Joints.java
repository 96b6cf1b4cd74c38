package leadwright.planner.audit;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import leadwright.catalog.device.Device;
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
    static Set<Joint> ofLeads(Hookup hookup) {
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
            joints.addAll(ofLinks(bundle, hookup));
        }
        return joints;
    }

    private static Set<Joint> ofLinks(Bundle bundle, Hookup hookup) {
        Set<Joint> joints = new LinkedHashSet<>();
        List<Integer> reached = hookup.chains().stream()
                .filter(chain -> bundle.connections().contains(chain.connection()))
                .map(Chain::jack)
                .distinct()
                .toList();
        List<Integer> linked =
                bundle.jacks().stream().filter(jack -> !reached.contains(jack)).toList();
        for (int i = 0; i < bundle.links().size() && i < linked.size(); i++) {
            joints.add(new Joint(bundle.links().get(i), "jack-" + linked.get(i)));
        }
        return joints;
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
