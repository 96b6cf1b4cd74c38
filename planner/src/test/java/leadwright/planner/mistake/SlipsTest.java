package leadwright.planner.mistake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.catalog.kit.Component;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every slip of every plan of the samples: found once, told once, and either shown or said to stay unseen. */
class SlipsTest {

    @TestFactory
    Stream<DynamicTest> each_slip_has_one_finding_and_none_is_lost() {
        return WatchedPlans.all().stream()
                .map(each -> DynamicTest.dynamicTest(each.name(), () -> {
                    Watch watch = each.plan().foresight().watch();
                    List<String> ids = watch.findings().stream()
                            .map(finding -> finding.slip().id())
                            .toList();
                    assertThat(ids).doesNotHaveDuplicates();
                    assertThat(ids)
                            .isEqualTo(
                                    Slips.of(each.plan()).stream().map(Slip::id).toList());
                    Set<String> silent = watch.findings().stream()
                            .filter(finding -> finding.exposure() == Exposure.SILENT)
                            .map(finding -> finding.slip().id())
                            .collect(Collectors.toCollection(LinkedHashSet::new));
                    Set<String> shown = Cover.shown(watch.proofs());
                    assertThat(silent).containsAll(shown);
                    silent.removeAll(shown);
                    assertThat(watch.remaining()).containsExactlyElementsOf(silent);
                }));
    }

    /** Counted by hand from the hookups, not by the program that makes them. */
    @TestFactory
    Stream<DynamicTest> every_wire_and_every_earth_reading_has_its_slips() {
        return WatchedPlans.all().stream()
                .map(each -> DynamicTest.dynamicTest(each.name(), () -> {
                    List<Slip> slips = Slips.of(each.plan());
                    for (Hookup hookup : each.plan().hookups()) {
                        Optional<String> id = Optional.of(hookup.id());
                        boolean leaks = each.plan().readings().stream()
                                .anyMatch(reading -> reading.hookup().equals(id)
                                        && !reading.obligation()
                                                .demand()
                                                .measured()
                                                .isEmpty());
                        long wires = leaks ? hookup.chains().size() : 0;
                        assertThat(of(slips, id, SlipKind.WIRE_OFF)).hasSize((int) wires);
                        long jacks = hookup.chains().stream()
                                .map(chain -> chain.jack())
                                .distinct()
                                .count();
                        assertThat(of(slips, id, SlipKind.BUNDLES_SWAPPED))
                                .hasSize((int) (leaks ? jacks * (jacks - 1) / 2 : 0));
                        List<String> earth = each.plan().readings().stream()
                                .filter(reading -> reading.hookup().equals(id))
                                .filter(reading -> reading.obligation().quantity() == QuantityKind.EARTH_RESISTANCE)
                                .map(Reading::id)
                                .toList();
                        for (SlipKind kind :
                                List.of(SlipKind.CLIP_ON_PAINT, SlipKind.CLIP_ELSEWHERE, SlipKind.TOOL_IN_JAWS)) {
                            assertThat(of(slips, id, kind))
                                    .extracting(slip -> slip.things().get(0))
                                    .isEqualTo(earth);
                        }
                    }
                    boolean direct = each.plan().readings().stream()
                            .anyMatch(
                                    reading -> reading.obligation().component().equals(Optional.of(Component.DC)));
                    assertThat(of(slips, Optional.empty(), SlipKind.AC_FOR_DC)).hasSize(direct ? 1 : 0);
                }));
    }

    private static List<Slip> of(List<Slip> slips, Optional<String> hookup, SlipKind kind) {
        return slips.stream()
                .filter(slip -> slip.kind() == kind && slip.hookup().equals(hookup))
                .toList();
    }

    @Test
    void every_kind_of_slip_occurs_in_some_plan_and_every_kind_of_proof_step_is_offered() {
        Set<SlipKind> kinds = EnumSet.noneOf(SlipKind.class);
        Set<ProofKind> proofs = EnumSet.noneOf(ProofKind.class);
        for (WatchedPlans.Named each : WatchedPlans.all()) {
            List<Finding> findings = each.plan().foresight().watch().findings();
            findings.forEach(finding -> kinds.add(finding.slip().kind()));
            Proofs.of(each.plan(), findings).forEach(step -> proofs.add(step.kind()));
        }
        assertThat(kinds).containsExactlyInAnyOrder(SlipKind.values());
        assertThat(proofs).containsExactlyInAnyOrder(ProofKind.values());
    }

    @TestFactory
    Stream<DynamicTest> the_band_shows_a_slip_only_where_the_device_file_states_values() {
        return WatchedPlans.all().stream()
                .filter(each -> each.plan().device().electrical().isEmpty())
                .map(each -> DynamicTest.dynamicTest(
                        each.name(),
                        () -> assertThat(each.plan().foresight().watch().findings())
                                .extracting(Finding::exposure)
                                .doesNotContain(Exposure.BAND)));
    }

    @Test
    void with_values_in_the_device_file_the_band_shows_some() {
        assertThat(WatchedPlans.ward("iec-62353-2014").foresight().watch().findings())
                .filteredOn(finding -> finding.exposure() == Exposure.BAND)
                .isNotEmpty();
    }

    @TestFactory
    Stream<DynamicTest> proof_steps_stand_among_the_steps_with_their_seconds() {
        return WatchedPlans.all().stream()
                .map(each -> DynamicTest.dynamicTest(each.name(), () -> {
                    List<Step> steps = each.plan().steps().stream()
                            .filter(step -> step.place()
                                    .filter(place -> place.startsWith(Step.PROOF))
                                    .isPresent())
                            .toList();
                    int seconds = steps.stream().mapToInt(Step::seconds).sum();
                    assertThat(seconds)
                            .isEqualTo(each.plan().foresight().watch().seconds());
                }));
    }
}
