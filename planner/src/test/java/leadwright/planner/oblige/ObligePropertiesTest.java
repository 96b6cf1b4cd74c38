package leadwright.planner.oblige;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import leadwright.catalog.device.Connection;
import leadwright.catalog.device.Device;
import leadwright.catalog.device.Output;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.planner.RandomCases;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Occasion;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** What holds for whatever device: seeds 1 to 400 with any kit, in both rule sets. */
class ObligePropertiesTest {
    private static final int CASES = 400;

    private record Due(RandomCases.Case of, Obligations obligations) {}

    private static final Map<String, List<Due>> DUE = new TreeMap<>();

    @BeforeAll
    static void work_out_what_is_due() {
        for (String rules : List.of(Bench.RECURRENT, Bench.THIRD)) {
            DUE.put(
                    rules,
                    RandomCases.any(1, CASES)
                            .map(each -> new Due(each, due(each, rules)))
                            .toList());
        }
    }

    private static Stream<DynamicTest> always(BiConsumer<RandomCases.Case, Obligations> holds) {
        return DUE.entrySet().stream()
                .map(rules -> DynamicTest.dynamicTest(
                        rules.getKey() + ", seeds 1 to " + CASES,
                        () -> rules.getValue().forEach(each -> holds.accept(each.of(), each.obligations()))));
    }

    private static Obligations due(RandomCases.Case each, String rules) {
        return Oblige.oblige(each.device(), each.kit(), Bench.rules(rules), each.house(), Occasion.RECURRENT);
    }

    private static Set<String> names(Device device, PartType type) {
        Set<String> names = new HashSet<>();
        device.appliedParts().stream()
                .filter(part -> part.type() == type)
                .forEach(part -> part.connections().forEach(connection -> names.add(connection.name())));
        return names;
    }

    @TestFactory
    Stream<DynamicTest> the_cases_reach_every_quantity() {
        return Stream.of(Bench.RECURRENT, Bench.THIRD)
                .map(rules -> DynamicTest.dynamicTest(rules, () -> {
                    Set<QuantityKind> reached = new HashSet<>();
                    DUE.get(rules)
                            .forEach(each ->
                                    each.obligations().wanted().forEach(reading -> reached.add(reading.quantity())));
                    Set<QuantityKind> asked = new HashSet<>();
                    Bench.rules(rules).tests().forEach(row -> asked.add(row.quantity()));
                    asked.remove(QuantityKind.INSULATION_RESISTANCE);
                    assertThat(reached).containsAll(asked);
                }));
    }

    @TestFactory
    Stream<DynamicTest> keys_are_unique() {
        return always(
                (each, due) -> assertThat(Bench.keys(due)).as(each.toString()).doesNotHaveDuplicates());
    }

    @TestFactory
    Stream<DynamicTest> the_same_case_gives_the_same_answer() {
        return Stream.of(Bench.RECURRENT, Bench.THIRD)
                .map(rules -> DynamicTest.dynamicTest(
                        rules,
                        () -> RandomCases.any(1, 50)
                                .forEach(each -> assertThat(due(RandomCases.any(each.seed()), rules))
                                        .as(each.toString())
                                        .isEqualTo(due(each, rules)))));
    }

    @TestFactory
    Stream<DynamicTest> mains_is_never_put_on_a_type_b_connection() {
        return always((each, due) -> {
            Set<String> typeB = names(each.device(), PartType.B);
            for (Obligation reading : due.wanted()) {
                switch (reading.quantity()) {
                    case APPLIED_PART_LEAKAGE, MAINS_ON_APPLIED_PART, TOTAL_MAINS_ON_APPLIED_PART ->
                        assertThat(reading.demand().measured())
                                .as(each + " " + reading.key())
                                .isNotEmpty()
                                .noneMatch(typeB::contains);
                    // The source is on the housing; what is tied to it is no patient connection.
                    case MAINS_ON_UNEARTHED_METAL ->
                        assertThat(reading.demand().against())
                                .as(each + " " + reading.key())
                                .isNotEmpty()
                                .allMatch(name -> name.startsWith("housing."));
                    default ->
                        assertThat(reading.sourcePolarity())
                                .as(each + " " + reading.key())
                                .isEmpty();
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> mains_on_a_part_is_never_combined_with_a_fault() {
        return always((each, due) -> due.wanted().stream()
                .filter(reading -> reading.sourcePolarity().isPresent())
                .forEach(reading -> assertThat(reading.state().fault())
                        .as(each + " " + reading.key())
                        .isEqualTo(MainsState.Fault.NONE)));
    }

    @TestFactory
    Stream<DynamicTest> faults_only_where_there_is_a_conductor_to_open() {
        return always((each, due) -> {
            Device device = each.device();
            boolean functional = DeviceFacts.of(device).functionalEarthInCord();
            for (Obligation reading : due.wanted()) {
                MainsState state = reading.state();
                if (device.supply().connection() == SupplyConnection.PERMANENT) {
                    assertThat(state)
                            .as(each + " " + reading.key())
                            .isIn(MainsState.INSTALLED_ON, MainsState.ISOLATED, MainsState.OFF);
                    assertThat(state == MainsState.OFF).isEqualTo(reading.quantity() == QuantityKind.TESTER_CHECK);
                } else {
                    assertThat(state)
                            .as(each + " " + reading.key())
                            .isNotIn(MainsState.INSTALLED_ON, MainsState.ISOLATED);
                }
                if (device.supply().connection() == SupplyConnection.NONE) {
                    assertThat(state).as(each + " " + reading.key()).isEqualTo(MainsState.OFF);
                }
                if (state.fault() == MainsState.Fault.EARTH_OPEN) {
                    assertThat(device.protection() == Protection.CLASS_1 || functional)
                            .as(each + " " + reading.key())
                            .isTrue();
                    assertThat(reading.quantity())
                            .isNotIn(QuantityKind.EARTH_LEAKAGE, QuantityKind.FUNCTIONAL_EARTH_LEAKAGE);
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> demands_name_connections_of_the_device_and_ask_no_wiring_of_earth_readings() {
        return always((each, due) -> {
            Set<String> known = new HashSet<>(
                    each.device().connections().stream().map(Connection::name).toList());
            known.add(Device.TOUCH_PROBE);
            Set<String> points = new HashSet<>();
            each.device().touchPoints().forEach(point -> points.add(point.id()));
            each.device().ports().forEach(port -> points.add(port.id()));
            points.add(EarthReadings.CORD_EARTH);
            for (Obligation reading : due.wanted()) {
                assertThat(known)
                        .as(each + " " + reading.key())
                        .containsAll(reading.demand().all());
                reading.place().ifPresent(place -> assertThat(points).contains(place));
                boolean earth = reading.quantity() == QuantityKind.EARTH_RESISTANCE;
                assertThat(reading.earthSubject().isPresent())
                        .as(each + " " + reading.key())
                        .isEqualTo(earth);
                if (earth) {
                    assertThat(reading.demand()).isEqualTo(Demand.NOTHING);
                    assertThat(reading.place()).isPresent();
                }
                if (reading.demand().all().contains(Device.TOUCH_PROBE)) {
                    assertThat(reading.demand()).isEqualTo(Demand.of(List.of(Device.TOUCH_PROBE)));
                    assertThat(reading.place()).isPresent();
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> a_therapy_output_shares_no_demand_with_other_parts() {
        return always((each, due) -> {
            for (Output output : each.device().outputs()) {
                if (output.mayShare().isPresent()) {
                    continue;
                }
                Set<String> own = new HashSet<>();
                each.device().part(output.appliedPart()).orElseThrow().connections().stream()
                        .filter(connection -> output.functions().isEmpty()
                                || output.functions().stream()
                                        .anyMatch(function ->
                                                connection.function().endsWith("." + function)))
                        .forEach(connection -> own.add(connection.name()));
                Set<String> others = new HashSet<>(each.device().patientConnections().stream()
                        .map(Connection::name)
                        .toList());
                others.removeAll(own);
                for (Obligation reading : due.wanted()) {
                    Set<String> all = reading.demand().all();
                    assertThat(all.stream().anyMatch(own::contains)
                                    && all.stream().anyMatch(others::contains))
                            .as(each + " " + reading.key())
                            .isFalse();
                }
            }
        });
    }

    @TestFactory
    Stream<DynamicTest> no_limit_is_looser_than_the_rule_sets() {
        return Stream.of(Bench.RECURRENT, Bench.THIRD)
                .map(id -> DynamicTest.dynamicTest(id, () -> {
                    RuleSet rules = Bench.rules(id);
                    DUE.get(id)
                            .forEach(each -> each.obligations().wanted().stream()
                                    .flatMap(reading -> reading.limit().stream())
                                    .forEach(limit -> {
                                        Limit ruled = rules.limit(limit.id())
                                                .or(() ->
                                                        Bench.rules(Bench.THIRD).limit(limit.id()))
                                                .orElseThrow()
                                                .limit(false);
                                        assertThat(limit.bound()).isEqualTo(ruled.bound());
                                        assertThat(limit.value().atMost(ruled.value()))
                                                .isTrue();
                                        assertThat(limit.mark().compareTo(ruled.mark()) >= 0)
                                                .isTrue();
                                    }));
                }));
    }

    @TestFactory
    Stream<DynamicTest> what_has_no_limit_says_why() {
        return always((each, due) -> due.wanted().stream()
                .filter(reading -> reading.limit().isEmpty())
                .forEach(reading -> assertThat(reading.note())
                        .as(each + " " + reading.key())
                        .hasValueSatisfying(note -> assertThat(note)
                                .containsAnyOf("no limit in this rule set", "continuity look", "expected"))));
    }

    /** Every quantity that the rule set knows is read, or listed as not done, or missing. */
    @TestFactory
    Stream<DynamicTest> nothing_is_left_out_in_silence() {
        return Stream.of(Bench.RECURRENT, Bench.THIRD)
                .map(id -> DynamicTest.dynamicTest(id, () -> {
                    Set<String> quantities = new TreeSet<>();
                    Bench.rules(id)
                            .tests()
                            .forEach(row -> quantities.add(row.quantity().word()));
                    DUE.get(id).forEach(each -> {
                        Obligations due = each.obligations();
                        if (due.refusal().isPresent()) {
                            assertThat(due.wanted()).isEmpty();
                            return;
                        }
                        List<String> said = new ArrayList<>();
                        due.wanted()
                                .forEach(reading -> said.add(reading.quantity().word()));
                        due.notApplicable().stream()
                                .map(NotApplicable::test)
                                .forEach(test -> said.addAll(List.of(test.split("[^a-z-]+"))));
                        due.shortfalls()
                                .forEach(missing ->
                                        said.addAll(List.of(missing.because().split("[^a-z-]+"))));
                        assertThat(said).as(each.of().toString()).containsAll(quantities);
                        due.notApplicable().forEach(row -> {
                            assertThat(row.because()).isNotBlank();
                            assertThat(row.clause()).isNotBlank();
                        });
                    });
                }));
    }

    /** No fault reading of a subject without its reading with no fault in the same polarity, but for earthed parts. */
    @TestFactory
    Stream<DynamicTest> a_fault_reading_has_its_reading_without_fault() {
        return always((each, due) -> {
            Set<String> keys = new HashSet<>(Bench.keys(due));
            for (Obligation reading : due.wanted()) {
                boolean earthed = reading.quantity() == QuantityKind.TOUCH_CURRENT
                        && each.device().touchPoints().stream()
                                .anyMatch(point -> Optional.of(point.id()).equals(reading.place())
                                        && DeviceFacts.of(each.device())
                                                .earthed()
                                                .contains(point));
                if (reading.state().fault() != MainsState.Fault.NONE && !earthed) {
                    String prefix =
                            reading.quantity().word() + "/" + reading.key().split("/")[1] + "/"
                                    + MainsState.of(reading.state().polarity(), MainsState.Fault.NONE)
                                            .word();
                    assertThat(keys).as(each + " " + reading.key()).anyMatch(key -> key.startsWith(prefix + "/"));
                }
            }
        });
    }
}
