package leadwright.planner.wire;

import java.util.Arrays;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import leadwright.catalog.kit.AtRest;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.Ties;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Hookup;

/**
 * Phase 11: which requirements a hookup serves, as it is wired.
 *
 * <p>Needs: scene, fitting test. Gives: yes or no. Method: {@link Coverage} and {@link Rated}; what depends on the hookup and
 * the duty alone is kept. Where any jacks are tied and idle ones are not earthed, coverage is a look at the numbers of
 * connections: all present, and no bundle with members of two sets. Cost: linear in the connections.
 */
final class Service {
    private static final int ABSENT = -1;

    private final Scene scene;
    private final Fit fit;
    private final boolean byNumbers;
    private final Map<String, Integer> numbers = new HashMap<>();
    private final Map<Hookup, int[]> bundles = new IdentityHashMap<>();
    private final Map<Hookup, Map<Duty, Rated>> rated = new IdentityHashMap<>();

    Service(Scene scene, Fit fit) {
        this.scene = scene;
        this.fit = fit;
        this.byNumbers = scene.kit()
                .tester()
                .jacks()
                .map(jacks -> jacks.ties() == Ties.ANY && jacks.atRest() != AtRest.EARTHED)
                .orElse(false);
        scene.connections().forEach(each -> numbers.put(each.name(), numbers.size()));
    }

    boolean serves(Hookup hookup, Requirement requirement) {
        if (requirement.earth()) {
            return !hookup.earth().isEmpty();
        }
        return covers(hookup, requirement)
                && !(scene.floatApart() && Coverage.floatsJoined(hookup, requirement.demand()))
                && rated(hookup, requirement.duty()).carries(requirement);
    }

    /** The hookup's items against a duty. */
    Rated rated(Hookup hookup, Duty duty) {
        return rated.computeIfAbsent(hookup, key -> new HashMap<>())
                .computeIfAbsent(duty, key -> new Rated(scene, fit.tray(key).bench(), hookup));
    }

    private boolean covers(Hookup hookup, Requirement requirement) {
        if (byNumbers) {
            return pure(bundles.computeIfAbsent(hookup, this::bundleOf), requirement);
        }
        Jacks jacks = scene.kit().tester().jacks().orElse(null);
        return jacks != null && Coverage.covers(hookup, requirement.demand(), jacks);
    }

    private int[] bundleOf(Hookup hookup) {
        int[] bundleOf = new int[numbers.size()];
        Arrays.fill(bundleOf, ABSENT);
        for (int b = 0; b < hookup.bundles().size(); b++) {
            Bundle bundle = hookup.bundles().get(b);
            for (String name : bundle.connections()) {
                bundleOf[numbers.get(name)] = b;
            }
        }
        return bundleOf;
    }

    private static boolean pure(int[] bundleOf, Requirement requirement) {
        int[] role = new int[bundleOf.length];
        Arrays.fill(role, ABSENT);
        for (int e = 0; e < bundleOf.length; e++) {
            int bundle = bundleOf[e];
            int own = requirement.role()[e];
            if (bundle == ABSENT) {
                if (own != 0) {
                    return false;
                }
            } else if (role[bundle] == ABSENT) {
                role[bundle] = own;
            } else if (role[bundle] != own) {
                return false;
            }
        }
        return true;
    }
}
