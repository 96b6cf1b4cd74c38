package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import leadwright.catalog.kit.Kit;
import leadwright.catalog.kit.KitItem;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Occasion;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Small random devices on random benches: whatever is planned passes the audit, and the same request gives the same plan. */
class EveryPlanIsAuditedTest {

    static Stream<RandomCases.Case> recurrent() {
        return Stream.concat(RandomCases.any(10_000, 200), RandomCases.withAmpleKit(20_000, 100));
    }

    /** Seeds whose devices and benches make few hookups: the type test multiplies readings. */
    static Stream<RandomCases.Case> typeTest() {
        return RandomCases.any(10_000, 60)
                .filter(each -> each.device().patientConnections().size() <= 3);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("recurrent")
    void recurrentTestsAreAccepted(RandomCases.Case each) {
        accepted(each, "iec-62353-2014");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("typeTest")
    void typeTestsAreAccepted(RandomCases.Case each) {
        accepted(each, "iec-60601-1-ed3");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("typeTest")
    void furtherRuleSetsAreAccepted(RandomCases.Case each) {
        for (String id : List.of("iec-60601-1-ed2", "nfpa-99-2012", "us-leads-older", "iec-61010-1", "bonding")) {
            accepted(each, id);
        }
    }

    /** Nothing for painted surfaces and sockets, or nothing for electrodes: some quantities fall short in some states only. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("small")
    void typeTestsWithShortKitsAreAccepted(RandomCases.Case each) {
        for (Set<String> lacking : List.of(Set.of("wrap", "line-pin"), Set.of("snap-pin", "tp-pin"))) {
            Kit kit = each.kit();
            List<KitItem> left = kit.items().stream()
                    .filter(item -> !lacking.contains(item.id()))
                    .toList();
            Kit less = new Kit(kit.name(), kit.tester(), left, kit.checks(), kit.connectors());
            accepted(new RandomCases.Case(each.seed(), each.device(), less, each.house()), "iec-60601-1-ed3");
        }
    }

    /** Seeds with few patient connections and a bench that lacks nothing. */
    static Stream<RandomCases.Case> small() {
        return RandomCases.withAmpleKit(30_000, 60)
                .filter(each -> each.device().patientConnections().size() <= 2);
    }

    private static void accepted(RandomCases.Case each, String id) {
        RuleSet rules = RuleSets.builtIn().find(id).orElseThrow();
        Outcome outcome = Planner.plan(
                new Request(each.device(), each.kit(), rules, each.house(), Occasion.RECURRENT, Optional.empty()));
        assertThat(outcome).as("%s under %s", each, id).isNotInstanceOf(Outcome.Rejected.class);
        if (outcome instanceof Outcome.Planned planned) {
            for (Reading reading : planned.plan().readings()) {
                // The two faults have no common state in the model; a source on a part never meets a fault.
                assertThat(reading.obligation().sourcePolarity().isEmpty()
                                || reading.obligation().state().fault() == MainsState.Fault.NONE)
                        .isTrue();
            }
        }
    }
}
