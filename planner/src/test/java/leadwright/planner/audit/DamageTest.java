package leadwright.planner.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import leadwright.planner.Plan;
import leadwright.planner.SamplePlans.Sample;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Breaks good plans on purpose, one invariant at a time, and holds the audit to naming what was broken. The damages are
 * in one file for each chapter of the audit's page.
 */
class DamageTest {

    private static final List<Deliberate> ALL = Stream.of(
                    WiringDamage.all(),
                    ReadingDamage.all(),
                    StepDamage.all(),
                    HandDamage.all(),
                    ProofDamage.all(),
                    FigureDamage.all())
            .flatMap(List::stream)
            .toList();

    @TestFactory
    Stream<DynamicTest> everyDamageIsNamed() {
        return ALL.stream()
                .map(each -> DynamicTest.dynamicTest(each.named().word() + ": " + each.what(), () -> {
                    Plan damaged = each.damage().apply(each.sample().plan());
                    assertThat(Audit.audit(
                                    damaged,
                                    each.sample().rules(),
                                    each.sample().connectors()))
                            .extracting(Breach::invariant)
                            .contains(each.named());
                }));
    }

    @Test
    void theUndamagedPlansAreAccepted() {
        for (Sample sample : Undamaged.all()) {
            assertThat(Audit.audit(sample.plan(), sample.rules(), sample.connectors()))
                    .isEmpty();
        }
    }

    @Test
    void everyInvariantIsDamagedSomewhere() {
        Set<Invariant> damaged = EnumSet.noneOf(Invariant.class);
        ALL.forEach(each -> damaged.add(each.named()));
        Kind.all().forEach(each -> damaged.add(each.named()));
        assertThat(damaged).containsExactlyInAnyOrderElementsOf(EnumSet.allOf(Invariant.class));
    }
}
