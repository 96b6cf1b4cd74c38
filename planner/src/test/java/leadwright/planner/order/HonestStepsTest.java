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
                .anyMatch(text -> text.contains("see that pacing, pads read back disarmed, not charged"))
                .anyMatch(text -> text.contains("see that spoons read back disarmed, not charged"));
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
}
