package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import leadwright.catalog.house.House;
import leadwright.catalog.read.HouseReader;
import leadwright.planner.plan.Step;
import org.junit.jupiter.api.Test;

/** What a house aims at. */
class AimsTest {
    private static final String DEVICE = "oddlebar-rescue-set.yaml";
    private static final String KIT = "k1-marrowgate-bench.yaml";
    private static final String RULES = "us-leads-older";

    private static Plan plan(String aim) {
        String text = "leadwright: house/1\naim: " + aim + "\n";
        House house =
                HouseReader.read("house", text.getBytes(StandardCharsets.UTF_8)).orThrow();
        return SamplePlans.plan(SamplePlans.device(DEVICE), SamplePlans.kit(KIT), RULES, house)
                .plan();
    }

    private static int plugging(Plan plan) {
        return plan.time().parts().get(Step.Account.REPLUG);
    }

    @Test
    void bench_time_is_no_more_than_with_the_fewest_hookups_and_its_proof_is_joint() {
        Plan fewest = plan("hookups");
        Plan quick = plan("time");

        assertThat(quick.time().total()).isLessThanOrEqualTo(fewest.time().total());
        assertThat(quick.hookups().size())
                .isGreaterThanOrEqualTo(fewest.hookups().size());
        assertThat(quick.timeProof().argument()).startsWith("Whatever the hookups");
        assertThat(quick.timeProof().lowerBound())
                .isPositive()
                .isLessThan(fewest.time().total());
        assertThat(quick.timeProof().optimal()).isFalse();
        assertThat(quick.hookupsProof().argument()).contains("aims at the least bench time");
        assertThat(quick.hookupsProof().lowerBound())
                .isEqualTo(fewest.hookupsProof().lowerBound());
    }

    @Test
    void hands_are_on_connections_no_longer_than_with_the_fewest_hookups() {
        Plan fewest = plan("hookups");
        Plan easy = plan("hand-work");

        assertThat(plugging(easy)).isLessThanOrEqualTo(plugging(fewest));
        assertThat(easy.hookupsProof().argument()).contains("aims at the least time of plugging");
    }
}
