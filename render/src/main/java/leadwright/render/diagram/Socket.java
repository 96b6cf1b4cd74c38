package leadwright.render.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Jacks;
import leadwright.catalog.kit.TouchThrough;
import leadwright.planner.Plan;

/**
 * A socket of the tester, in the order of the strip.
 *
 * @param id {@code jack-1} …, {@code earth-jack}, {@code second-jack}, {@code touch}, {@code outlet}
 * @param jack number of a jack; 0 for the others
 * @param name what stands in its box
 */
record Socket(String id, int jack, String name) {
    static final String TOUCH = "touch";
    static final String OUTLET = "outlet";

    static List<Socket> of(Plan plan) {
        List<Socket> all = new ArrayList<>();
        int jacks = plan.kit().tester().jacks().map(Jacks::count).orElse(0);
        for (int jack = 1; jack <= jacks; jack++) {
            all.add(new Socket("jack-" + jack, jack, String.valueOf(jack)));
        }
        if (plan.kit().tester().earthJack().isPresent()) {
            all.add(new Socket("earth-jack", 0, Panel.say(plan, "Earth lead")));
        }
        boolean second = plan.hookups().stream()
                .flatMap(hookup -> hookup.earth().stream())
                .anyMatch(path -> path.socket().equals("second-jack"));
        boolean listed = plan.kit().tester().earthTest().stream()
                .anyMatch(test -> test.sockets().contains("second-jack"));
        if (second || listed) {
            all.add(new Socket("second-jack", 0, "Second lead"));
        }
        if (plan.kit().tester().touchThrough().equals(Optional.of(TouchThrough.OWN))) {
            all.add(new Socket(TOUCH, 0, "Touch probe"));
        }
        if (!plan.kit().tester().outlets().isEmpty()) {
            all.add(new Socket(OUTLET, 0, "Outlet"));
        }
        return List.copyOf(all);
    }

    /** Whether the device is fed from the tester's outlet. */
    static boolean outlet(Plan plan) {
        SupplyConnection how = plan.device().supply().connection();
        return !plan.kit().tester().outlets().isEmpty()
                && how != SupplyConnection.NONE
                && how != SupplyConnection.PERMANENT;
    }
}
