package leadwright.planner.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import leadwright.planner.Plan;
import leadwright.planner.SamplePlans;
import leadwright.planner.plan.Step;
import leadwright.planner.plan.Step.Act;
import org.junit.jupiter.api.Test;

/** What the steps say about a device that is on, or starts, while leads hang on it. */
class HonestStepsTest {

    @Test
    void leads_moved_while_the_device_runs_on_its_battery_are_not_said_to_be_moved_with_everything_off() {
        Plan plan = SamplePlans.brindlewickTypeTest().plan();
        List<Step> running = new ArrayList<>();
        boolean on = false;
        for (Step step : plan.steps()) {
            on = step.does() == Act.START || on && step.does() != Act.SHUT_DOWN;
            boolean moves = step.does() == Act.JOIN || step.does() == Act.PART;
            if (moves && step.account() == Step.Account.REPLUG) {
                assertThat(step.because().contains("everything off"))
                        .as("step %d", step.number())
                        .isEqualTo(!on);
                assertThat(step.because().contains("mains off; the device still runs on its battery"))
                        .as("step %d", step.number())
                        .isEqualTo(on);
                if (on) {
                    running.add(step);
                }
            }
        }
        assertThat(running).isNotEmpty();
    }

    @Test
    void a_start_with_a_therapy_output_plugged_looks_at_that_output_first() {
        Plan plan = SamplePlans.oddlebar().plan();
        List<String> starts = plan.steps().stream()
                .filter(step -> step.does() == Act.START)
                .map(Step::text)
                .toList();
        assertThat(starts)
                .anyMatch(
                        text -> text.contains(
                                "see that pacing reads back disarmed, giving no output, that pads reads back disarmed, not charged;"))
                .anyMatch(text -> text.contains("see that spoons reads back disarmed, not charged;"));
        assertThat(SamplePlans.brindlewickTypeTest().plan().steps())
                .filteredOn(step -> step.does() == Act.START)
                .noneMatch(step -> step.text().contains("disarmed"));
    }

    @Test
    void what_makes_a_sample_safe_holds_while_it_runs() {
        assertThat(SamplePlans.device("oddlebar-rescue-set.yaml").outputs())
                .allSatisfy(output -> assertThat(output.madeSafeBy().orElseThrow())
                        .containsPattern("holds? when it is started")
                        .doesNotContain("battery taken out"));
    }

    private static Step cordIn(Plan plan) {
        return plan.steps().stream()
                .filter(step -> step.place().filter(Step.CORD_IN::equals).isPresent())
                .findFirst()
                .orElseThrow();
    }

    @Test
    void the_cord_is_freed_of_lead_ends_before_it_is_fitted() {
        assertThat(SamplePlans.brindlewickTypeTest().plan().steps())
                .anyMatch(step -> step.place().filter("cord-plug-earth"::equals).isPresent());
        Step after = cordIn(SamplePlans.brindlewickTypeTest().plan());
        assertThat(after.text()).startsWith("Take both lead ends off the cord, its plug and the inlet, then fit");
        assertThat(after.caution().orElseThrow()).contains("No lead end stays");
        Step never = cordIn(SamplePlans.oddlebar().plan());
        assertThat(never.text()).startsWith("Fit the supply cord");
        assertThat(never.caution()).isEmpty();
    }

    private static List<Step> staying(Plan plan) {
        return plan.steps().stream()
                .filter(step -> step.text().contains("lead stays on while leakage is read: the earth jack rests open"))
                .toList();
    }

    @Test
    void an_earth_lead_that_stays_on_is_said_to_stay_before_leakage_is_read() {
        assertThat(staying(SamplePlans.oddlebar().plan())).hasSize(1).allMatch(step -> step.does() == Act.NULL);
        String open = "earth-jack: {socket: lab-4mm-socket-recessed, at-rest: open}";
        Plan parted = SamplePlans.plan(
                        SamplePlans.device("brindlewick-ward-monitor.yaml"),
                        SamplePlans.kitWith("k1-marrowgate-bench.yaml", open, open.replace("open}", "earthed}")),
                        "iec-62353-2014",
                        leadwright.catalog.house.House.defaults())
                .plan();
        assertThat(parted.steps()).anyMatch(step -> step.does() == Act.NULL);
        assertThat(staying(parted)).isEmpty();
    }
}
