package leadwright.planner.foresee;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import leadwright.catalog.kit.KitItem;
import leadwright.planner.Plan;
import leadwright.planner.SamplePlans;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation.Phase;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.api.Test;

/** What leads alone draw, against the current of their capacitances added up by hand. */
class LeadDrawTest {
    private static final Plan WARD = SamplePlans.plan(
                    "brindlewick-ward-monitor.yaml", "k1-marrowgate-bench.yaml", "iec-62353-2014")
            .plan();

    @Test
    void is_the_current_of_all_capacitances_of_what_is_measured() {
        List<Reading> readings = WARD.readings().stream()
                .filter(each -> each.obligation().phase() == Phase.MAINS_ON_PART)
                .toList();
        assertThat(readings).hasSizeGreaterThan(5);
        for (Reading reading : readings) {
            LeadDraw draw = LeadDraw.of(WARD, reading, Situation.ORDINARY).orElseThrow();
            double farads = farads(reading);
            double expected = 2 * Math.PI * 50 * farads * 230;
            assertThat(draw.nominal().inSi()).as(reading.id()).isCloseTo(expected, within(0.01 * expected + 2e-9));
            assertThat(draw.low().inSi()).isLessThan(expected);
            assertThat(draw.high().inSi()).isGreaterThan(expected);
            double limit = reading.obligation().limit().orElseThrow().value().inSi();
            assertThat(draw.share().orElseThrow()).isCloseTo(expected / limit, within(0.02 * expected / limit + 1e-4));
        }
    }

    /** Each item once, however many chains share it, and each jack. */
    private static double farads(Reading reading) {
        Hookup hookup = reading.hookup().flatMap(WARD::hookup).orElseThrow();
        Set<String> items = new LinkedHashSet<>();
        Set<Integer> jacks = new LinkedHashSet<>();
        for (String connection : reading.obligation().demand().measured()) {
            Chain chain = hookup.chainOf(connection).orElseThrow();
            items.addAll(chain.items());
            jacks.add(chain.jack());
        }
        double farads = jacks.size() * Assumed.JACK.nominal();
        for (String instance : items) {
            KitItem item = WARD.kit()
                    .item(instance.substring(0, instance.lastIndexOf('/')))
                    .orElseThrow();
            double metres = item.length().map(length -> length.inSi()).orElse(0.0);
            farads += metres * item.capacitance().map(each -> each.inSi()).orElse(Assumed.LEAD.nominal());
        }
        return farads;
    }

    @Test
    void other_readings_have_no_background() {
        WARD.readings().stream()
                .filter(each -> each.obligation().phase() != Phase.MAINS_ON_PART)
                .forEach(each ->
                        assertThat(LeadDraw.of(WARD, each, Situation.ORDINARY)).isEmpty());
    }
}
