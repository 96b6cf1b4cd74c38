package leadwright.planner.mistake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import leadwright.catalog.house.House;
import leadwright.planner.Plan;
import leadwright.planner.SamplePlans;
import org.junit.jupiter.api.Test;

/** A slip is looked for only where the bench allows it, and in the direction in which it can be made. */
class SlipsThatCanBeMadeTest {
    private static final String KIT = "k1-marrowgate-bench.yaml";

    @Test
    void who_counts_on_230_V_may_be_fed_with_120_V_and_the_other_way() {
        Plan high = SamplePlans.plan("brindlewick-ward-monitor.yaml", KIT, "iec-62353-2014")
                .plan();
        assertThat(scaled(high)).isCloseTo(120.0 * 60 / (230 * 50), within(1e-12));
        Plan low = SamplePlans.plan(
                        SamplePlans.device("fenlark-scanner.yaml"),
                        SamplePlans.kitWith(
                                KIT,
                                Map.of(
                                        "inlet: {plug: bs-1363, current: 13 A}",
                                        "inlet: {plug: nema-5-20, current: 20 A}",
                                        "{socket: bs-1363, system: line-neutral, voltage: 230 V, current: 13 A}",
                                        "{socket: nema-5-20, system: line-neutral, voltage: 120 V, current: 20 A}")),
                        "iec-62353-2014",
                        House.defaults())
                .plan();
        assertThat(scaled(low)).isCloseTo(230.0 * 50 / (120 * 60), within(1e-12));
    }

    private static double scaled(Plan plan) {
        Slip slip = of(plan, SlipKind.WRONG_VOLTAGE).get(0);
        return ((Effect.Scaled) slip.effect()).factor();
    }

    @Test
    void jacks_that_rest_earthed_are_not_earthed_by_mistake() {
        Plan open = SamplePlans.plan("brindlewick-ward-monitor.yaml", KIT, "iec-62353-2014")
                .plan();
        assertThat(of(open, SlipKind.IDLE_JACKS_EARTHED)).hasSize(open.hookups().size());
        Plan earthed = SamplePlans.plan(
                        SamplePlans.device("wickling-rhythm-card.yaml"),
                        SamplePlans.kitWith(KIT, "ties: any, at-rest: open", "ties: any, at-rest: earthed"),
                        "iec-62353-2014",
                        House.defaults())
                .plan();
        assertThat(of(earthed, SlipKind.IDLE_JACKS_EARTHED)).isEmpty();
    }

    @Test
    void leads_that_are_never_nulled_are_not_nulled_with_the_cord() {
        Plan nulled = SamplePlans.plan("brindlewick-ward-monitor.yaml", KIT, "iec-62353-2014")
                .plan();
        assertThat(of(nulled, SlipKind.NULL_WITH_CORD)).isNotEmpty();
        Plan never = new Plan(
                nulled.fingerprint(),
                nulled.partial(),
                nulled.trainingCopy(),
                nulled.device(),
                nulled.kit(),
                nulled.house(),
                nulled.rules(),
                nulled.occasion(),
                nulled.on(),
                nulled.hookups(),
                nulled.readings(),
                List.of(),
                nulled.notApplicable(),
                nulled.shortfalls(),
                nulled.remedy(),
                nulled.warnings(),
                nulled.time(),
                nulled.hookupsProof(),
                nulled.timeProof(),
                nulled.foresight());
        assertThat(of(never, SlipKind.NULL_WITH_CORD)).isEmpty();
    }

    private static List<Slip> of(Plan plan, SlipKind kind) {
        return Slips.of(plan).stream().filter(slip -> slip.kind() == kind).toList();
    }
}
