package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.Basis;
import leadwright.catalog.rules.Condition;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.Mark;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleCase;
import leadwright.catalog.rules.RuleSet;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** What holds for every rule set that ships. */
class RuleSetsTest {

    private static final Set<String> SUBJECTS = Set.of(
            "plug-to-part",
            "inlet-to-part",
            "cord",
            "reference-to-part",
            "reference-to-socket",
            "ground-electrode",
            "system-plug-to-part",
            "mains-to-earth",
            "mains-to-housing",
            "mains-to-part",
            "part-to-housing",
            "total");

    @Test
    void the_rule_sets_are_listed_in_a_fixed_order() {
        assertThat(RuleSets.builtIn().ids()).startsWith("iec-62353-2014", "iec-60601-1-ed3");
        assertThat(RuleSets.builtIn().find("iec-62353-2014")).isPresent();
        assertThat(RuleSets.builtIn().find("no-such-set")).isEmpty();
    }

    @Test
    void limit_ids_are_unique_among_all_rule_sets_and_begin_with_their_standard() {
        List<String> ids = new ArrayList<>();
        for (RuleSet rules : RuleSets.builtIn().all()) {
            for (LimitRow row : rules.limits()) {
                ids.add(row.id());
                assertThat(row.id()).matches("[a-z0-9-]+");
            }
        }
        assertThat(ids).doesNotHaveDuplicates();
    }

    @TestFactory
    Stream<DynamicTest> every_row_says_what_it_rests_on() {
        Map<String, Basis> all = new LinkedHashMap<>();
        for (RuleSet rules : RuleSets.builtIn().all()) {
            rules.limits().forEach(row -> all.put(row.id(), row.basis()));
            for (int i = 0; i < rules.tests().size(); i++) {
                all.put(rules.id() + " test " + (i + 1), rules.tests().get(i).basis());
            }
            for (int i = 0; i < rules.joinings().size(); i++) {
                all.put(
                        rules.id() + " joining " + (i + 1),
                        rules.joinings().get(i).basis());
            }
            rules.notDone().forEach(row -> all.put(rules.id() + " " + row.test() + " " + row.when(), row.basis()));
            rules.earthTest().forEach(row -> all.put(rules.id() + " earth test", row.basis()));
            rules.methods().forEach(row -> all.put(rules.id() + " " + row.method(), row.basis()));
        }
        return all.entrySet().stream()
                .map(row -> DynamicTest.dynamicTest(row.getKey(), () -> {
                    assertThat(row.getValue().clause()).isNotBlank();
                    assertThat(Sources.builtIn().byKey().keySet())
                            .containsAll(row.getValue().sources());
                    if (row.getValue().mark() == Mark.A) {
                        assertThat(row.getValue().sources()).isNotEmpty();
                    }
                    if (row.getValue().mark() == Mark.B) {
                        assertThat(row.getValue().sources()).isNotEmpty();
                    }
                }));
    }

    @Test
    void subjects_are_known_words() {
        for (RuleSet rules : RuleSets.builtIn().all()) {
            rules.limits()
                    .forEach(row -> row.scope()
                            .subject()
                            .ifPresent(subject -> assertThat(SUBJECTS).contains(subject)));
        }
    }

    /** Asks every combination there is: no case may be covered by two rows. */
    @TestFactory
    Stream<DynamicTest> no_case_has_two_limits() {
        return RuleSets.builtIn().all().stream()
                .map(rules -> DynamicTest.dynamicTest(rules.id(), () -> {
                    Set<String> reached = new HashSet<>();
                    for (QuantityKind quantity : QuantityKind.values()) {
                        for (RuleCase asked : cases(quantity, rules)) {
                            rules.limit(asked).ifPresent(row -> reached.add(row.id()));
                        }
                    }
                    assertThat(reached)
                            .containsExactlyInAnyOrderElementsOf(
                                    rules.limits().stream().map(LimitRow::id).toList());
                }));
    }

    private static List<RuleCase> cases(QuantityKind quantity, RuleSet rules) {
        List<String> wheres = rules.limits().stream()
                .flatMap(row -> row.scope().where().stream())
                .distinct()
                .toList();
        List<RuleCase> cases = new ArrayList<>();
        for (Protection protection : Protection.values()) {
            for (SupplyConnection supply : SupplyConnection.values()) {
                for (Optional<PartType> type : options(PartType.values())) {
                    for (Condition condition : Condition.values()) {
                        for (Optional<Method> method : options(Method.values())) {
                            for (Optional<Component> component : options(Component.values())) {
                                for (Optional<String> subject : options(SUBJECTS.toArray(new String[0]))) {
                                    for (Optional<String> where : options(wheres.toArray(new String[0]))) {
                                        cases.add(new RuleCase(
                                                quantity,
                                                Optional.of(protection),
                                                Optional.of(supply),
                                                Optional.empty(),
                                                type,
                                                Optional.of(condition),
                                                method,
                                                component,
                                                subject,
                                                where));
                                    }
                                }
                            }
                        }
                    }
                }
            }
        }
        return cases;
    }

    private static <T> List<Optional<T>> options(T[] values) {
        List<Optional<T>> options = new ArrayList<>();
        options.add(Optional.empty());
        Arrays.stream(values).map(Optional::of).forEach(options::add);
        return options;
    }
}
