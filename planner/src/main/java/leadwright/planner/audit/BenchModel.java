package leadwright.planner.audit;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.SupplyConnection;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;

/** Where the bench stands at one step of the replay: what all its checks look at. Only the replay changes it. */
final class BenchModel {
    final Plan plan;
    final Device device;
    /** Fixed plant, and what is planned as such: nobody switches its mains from the tester. */
    final boolean permanent;
    /** Joints of the earth leads of all hookups. */
    final Set<Joint> earthJoints = new HashSet<>();

    private final Set<String> links = new HashSet<>();
    private final Map<String, Set<Joint>> joints = new HashMap<>();

    final Set<Joint> made = new LinkedHashSet<>();
    /** Ids of the readings taken so far. */
    final Set<String> taken = new HashSet<>();

    MainsState state;
    boolean on;

    BenchModel(Plan plan) {
        this.plan = plan;
        this.device = plan.device();
        this.permanent = plan.readings().stream()
                        .map(reading -> reading.obligation().state())
                        .anyMatch(each -> each == MainsState.INSTALLED_ON || each == MainsState.ISOLATED)
                || device.supply().connection() == SupplyConnection.PERMANENT;
        this.state = permanent ? MainsState.INSTALLED_ON : MainsState.OFF;
        for (Hookup hookup : plan.hookups()) {
            earthJoints.addAll(Joints.ofEarth(hookup));
            hookup.bundles().forEach(bundle -> links.addAll(bundle.links()));
        }
    }

    /** Whether the joint is one of the hookup, its earth lead's included. */
    boolean belongs(Joint joint, Hookup hookup) {
        return joints.computeIfAbsent(hookup.id(), id -> {
                    Set<Joint> all = Joints.ofLeads(hookup, plan.kit());
                    all.addAll(Joints.ofEarth(hookup));
                    return all;
                })
                .contains(joint);
    }

    /** Whether the end nearer the device is not plugged in elsewhere; a link has an end in a branch and one in a jack. */
    boolean free(Joint joint) {
        return links.contains(joint.from())
                || made.stream().noneMatch(each -> each.from().equals(joint.from()) && !each.equals(joint));
    }
}
