package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.OptionalInt;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import org.junit.jupiter.api.Test;

/** The two searches for the fewest crossings against each other. */
class FewestOnceTest {

    /** One asks neighbours to change places, the other single lines to leap once: that no wire bends more than twice costs nothing. */
    @Test
    void both_find_the_same_in_small_random_hookups() {
        int crossing = 0;
        for (int seed = 1; seed <= 120; seed++) {
            Plan plan = RandomSketch.plan(seed, 3, 4, true);
            Panel panel = Panel.of(plan);
            for (Hookup hookup : plan.hookups()) {
                OptionalInt least = FewestCrossings.of(plan, panel, hookup, Bars.ORDERS);
                FewestOnce.Answer once =
                        FewestOnce.fewerThan(least.orElseThrow() + 1, plan, panel, hookup, Bars.ORDERS);
                assertThat(once).as("seed %s, %s", seed, hookup.id()).isEqualTo(new FewestOnce.Answer(least, true));
                assertThat(FewestOnce.fewerThan(least.getAsInt(), plan, panel, hookup, Bars.ORDERS)
                                .found())
                        .isEmpty();
                crossing += least.getAsInt() > 1 ? 1 : 0;
            }
        }
        assertThat(crossing).isGreaterThan(30);
    }
}
