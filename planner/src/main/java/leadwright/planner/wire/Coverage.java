package leadwright.planner.wire;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Hookup;

/** Whether a hookup, as it is wired, lets a demand be selected. */
public final class Coverage {
    private Coverage() {}

    /**
     * A hookup covers a demand when all its connections are present, no bundle holds a member of one of its sets together
     * with a non-member, and the tester can tie the bundles of each set. Where idle jacks are earthed nothing else may be
     * present, the touch probe apart.
     *
     * <p>Bundles are tied in a row of neighbours when some run of jacks, all of them theirs, has a jack of each: a bundle
     * whose jacks the kit joins is reached through any of them.
     */
    public static boolean covers(Hookup hookup, Demand demand, Jacks jacks) {
        if (jacks.atRest() == AtRest.EARTHED && !onlyPresent(hookup, demand.all())) {
            return false;
        }
        return bundled(hookup, demand.measured(), jacks)
                && bundled(hookup, demand.against(), jacks)
                && bundled(hookup, demand.earthed(), jacks);
    }

    /** Whether the wiring joins connections that the demand leaves floating; one that asks nothing is not concerned. */
    static boolean floatsJoined(Hookup hookup, Demand demand) {
        return !demand.isNothing()
                && hookup.bundles().stream()
                        .anyMatch(bundle -> bundle.connections().size() > 1
                                && bundle.connections().stream().noneMatch(demand.all()::contains));
    }

    private static boolean onlyPresent(Hookup hookup, Set<String> wanted) {
        return hookup.bundles().stream()
                .flatMap(bundle -> bundle.connections().stream())
                .allMatch(name -> wanted.contains(name) || name.equals(Device.TOUCH_PROBE));
    }

    private static boolean bundled(Hookup hookup, Collection<String> set, Jacks jacks) {
        Set<Bundle> bundles = new HashSet<>();
        Set<String> missing = new HashSet<>(set);
        for (Bundle bundle : hookup.bundles()) {
            boolean some = bundle.connections().stream().anyMatch(set::contains);
            if (some && !set.containsAll(bundle.connections())) {
                return false;
            }
            if (some) {
                bundles.add(bundle);
                bundle.connections().forEach(missing::remove);
            }
        }
        return missing.isEmpty() && (jacks.ties() == Ties.ANY || bundles.size() <= 1 || inOneRun(bundles, jacks));
    }

    private static boolean inOneRun(Set<Bundle> bundles, Jacks jacks) {
        Map<Integer, Bundle> byJack = new HashMap<>();
        bundles.forEach(bundle -> bundle.jacks().forEach(jack -> byJack.put(jack, bundle)));
        Set<Bundle> run = new HashSet<>();
        for (int jack = 1; jack <= jacks.count(); jack++) {
            if (byJack.containsKey(jack)) {
                run.add(byJack.get(jack));
            } else {
                run.clear();
            }
            if (run.size() == bundles.size()) {
                return true;
            }
        }
        return false;
    }
}
