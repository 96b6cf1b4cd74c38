package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import leadwright.catalog.house.House;
import leadwright.catalog.read.HouseReader;
import leadwright.planner.audit.Audit;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.api.Test;

/** A house that lets nothing float joined, on a device whose wiring joins five wires of one part in its first hookup. */
class FloatJoinedHouseTest {
    private static final String JOINED = "joined while they float";

    @Test
    void no_reading_leaves_anything_floating_joined_and_none_says_so() {
        SamplePlans.Sample never = plan("never");
        Plan plan = never.plan();
        List<Reading> silent = plan.readings().stream()
                .filter(each -> each.obligation().demand().isNothing() && inHookupThatJoins(plan, each))
                .toList();
        assertThat(silent)
                .as("mains to housing is read where wires are joined: it asks nothing of them")
                .extracting(each -> each.obligation().key())
                .contains("insulation-resistance/mains-to-earth/off");
        assertThat(plan.readings())
                .allSatisfy(
                        each -> assertThat(each.obligation().note().orElse("")).doesNotContain(JOINED));
        assertThat(Audit.audit(plan, never.rules(), never.connectors())).isEmpty();
    }

    @Test
    void where_it_is_noted_the_readings_that_ask_for_the_wiring_say_so() {
        Plan plan = plan("noted").plan();
        assertThat(plan.readings())
                .filteredOn(each -> each.obligation().note().orElse("").contains(JOINED))
                .isNotEmpty()
                .allSatisfy(each ->
                        assertThat(each.obligation().demand().isNothing()).isFalse());
    }

    private static boolean inHookupThatJoins(Plan plan, Reading reading) {
        for (Hookup hookup : plan.hookups()) {
            boolean joins =
                    hookup.bundles().stream().map(Bundle::connections).anyMatch(connections -> connections.size() > 1);
            if (joins && reading.hookup().equals(java.util.Optional.of(hookup.id()))) {
                return true;
            }
        }
        return false;
    }

    private static SamplePlans.Sample plan(String floatJoined) {
        String text = "leadwright: house/1\ninsulation: always\naim: time\nreplug-under-power: after-earth-and-touch\n"
                + "float-joined: " + floatJoined + "\n";
        House house =
                HouseReader.read("house", text.getBytes(StandardCharsets.UTF_8)).orThrow();
        return SamplePlans.plan(
                SamplePlans.device("brindlewick-ward-monitor.yaml"),
                SamplePlans.kit("k1-marrowgate-bench.yaml"),
                "iec-62353-2014",
                house);
    }
}
