package leadwright.planner;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import leadwright.catalog.table.RuleSets;
import leadwright.planner.plan.Reading;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The figures of the page on rule sets are those of the plans it speaks of. */
class RuleSetsPageTest {
    private static final String ALL = "readings in all";
    private static final String HOOKUPS = "hookups";

    private static String page() {
        try {
            return Files.readString(Path.of("..", "docs", "rule-sets.md"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The table's columns, by rule set. */
    private static Map<String, Map<String, Integer>> table() {
        Map<String, Map<String, Integer>> columns = new LinkedHashMap<>();
        List<String> ids = new ArrayList<>();
        for (String line : page().lines().toList()) {
            String[] cells = line.split("\\|");
            if (line.startsWith("| quantity |")) {
                for (int i = 2; i < cells.length; i++) {
                    ids.add(cells[i].trim());
                    columns.put(cells[i].trim(), new LinkedHashMap<>());
                }
            } else if (line.startsWith("| ")
                    && cells.length == ids.size() + 2
                    && cells[2].trim().matches("\\d+")) {
                for (int i = 0; i < ids.size(); i++) {
                    columns.get(ids.get(i)).put(cells[1].trim(), Integer.parseInt(cells[i + 2].trim()));
                }
            }
        }
        return columns;
    }

    @TestFactory
    Stream<DynamicTest> the_monitors_readings_and_hookups_are_as_printed() {
        Map<String, Map<String, Integer>> printed = table();
        assertThat(printed.keySet()).containsExactly("iec-62353-2014", "iec-60601-1-ed3", "nfpa-99-2012");
        return printed.entrySet().stream()
                .map(each -> DynamicTest.dynamicTest(each.getKey(), () -> {
                    Plan plan = SamplePlans.plan(
                                    "brindlewick-ward-monitor.yaml", "k1-marrowgate-bench.yaml", each.getKey())
                            .plan();
                    Map<String, Integer> counted = new LinkedHashMap<>();
                    each.getValue().keySet().forEach(quantity -> counted.put(quantity, 0));
                    for (Reading reading : plan.readings()) {
                        counted.merge(reading.obligation().quantity().word(), 1, Integer::sum);
                    }
                    counted.put(ALL, plan.readings().size());
                    counted.put(HOOKUPS, plan.hookups().size());
                    assertThat(counted).isEqualTo(each.getValue());
                    assertThat(plan.shortfalls()).isEmpty();
                }));
    }

    @Test
    void the_page_lists_every_rule_set_and_its_network() {
        Set<String> listed = new TreeSet<>();
        for (String line : page().lines().toList()) {
            if (line.startsWith("| `")) {
                listed.add(line.substring(3, line.indexOf('`', 3)));
            }
        }
        assertThat(listed)
                .containsExactlyInAnyOrderElementsOf(RuleSets.builtIn().ids());
        RuleSets.builtIn()
                .all()
                .forEach(rules -> assertThat(page().lines())
                        .anyMatch(line -> line.startsWith("| `" + rules.id() + "`")
                                && line.endsWith(
                                        " " + rules.network().orElseThrow().word() + " |")));
    }
}
