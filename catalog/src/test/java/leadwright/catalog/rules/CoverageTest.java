package leadwright.catalog.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import leadwright.catalog.table.RuleSets;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The page on coverage is held to the rule sets both ways: a fact without a row, a limit in no row, a row that names what is
 * not there, and a waiver that has become needless all fail.
 */
class CoverageTest {
    private static final Pattern NAMED = Pattern.compile("`([^`]+)`");
    private static final Set<String> HELD = Set.of("limit", "rule", "said", "practice", "out");

    private record Row(String heading, String fact, String held, String where) {
        List<String> named() {
            List<String> names = new ArrayList<>();
            Matcher matcher = NAMED.matcher(where);
            while (matcher.find()) {
                names.add(matcher.group(1));
            }
            return names;
        }

        @Override
        public String toString() {
            return heading + " | " + fact;
        }
    }

    private static List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        String heading = "";
        for (String line : page().lines().toList()) {
            if (line.startsWith("## ")) {
                heading = line.substring(3);
            } else if (line.startsWith("| ") && !line.startsWith("| fact |") && !line.startsWith("| --- |")) {
                String[] cells = line.substring(2, line.length() - 2).split(" \\| ", -1);
                rows.add(new Row(heading, cells[0], cells[2], cells[3]));
            }
        }
        return rows;
    }

    private static String page() {
        try {
            return Files.readString(Path.of("..", "docs", "coverage.md"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What has to have a row, written down apart from the page. */
    private static List<String> facts() throws IOException {
        try (InputStream in = CoverageTest.class.getResourceAsStream("coverage-facts.txt")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
        }
    }

    @Test
    void every_fact_has_its_row() throws IOException {
        assertThat(rows().stream().map(Row::toString)).containsExactlyInAnyOrderElementsOf(facts());
    }

    @Test
    void every_limit_stands_in_a_row() {
        Set<String> missing = new TreeSet<>();
        RuleSets.builtIn().all().forEach(rules -> rules.limits().forEach(limit -> missing.add(limit.id())));
        rows().stream()
                .filter(row -> row.held().equals("limit"))
                .flatMap(row -> row.named().stream())
                .forEach(name -> missing.removeIf(id -> matches(name, id)));
        assertThat(missing).isEmpty();
    }

    @TestFactory
    Stream<DynamicTest> every_row_names_what_there_is() {
        return rows().stream()
                .map(row -> DynamicTest.dynamicTest(row.toString(), () -> {
                    assertThat(HELD).contains(row.held());
                    assertThat(row.where()).isNotBlank();
                    switch (row.held()) {
                        case "limit" -> {
                            assertThat(row.named()).isNotEmpty();
                            row.named()
                                    .forEach(name ->
                                            assertThat(limits(name)).as(name).isNotEmpty());
                        }
                        case "rule" -> assertThat(holds(row.named().get(0))).isTrue();
                        case "said" -> assertThat(said(row.named().get(0))).isTrue();
                        case "out" -> {
                            String name = row.named().get(0);
                            assertThat(name).startsWith("would be ");
                            assertThat(limits(name.substring("would be ".length())))
                                    .as("the waiver has become needless")
                                    .isEmpty();
                        }
                        default -> {}
                    }
                }));
    }

    private static boolean matches(String name, String id) {
        return name.endsWith("*") ? id.startsWith(name.substring(0, name.length() - 1)) : id.equals(name);
    }

    private static List<String> limits(String name) {
        return RuleSets.builtIn().all().stream()
                .flatMap(rules -> rules.limits().stream())
                .map(LimitRow::id)
                .filter(id -> matches(name, id))
                .toList();
    }

    /** {@code iec-62353-2014 joinings equipment-leakage}. */
    private static boolean holds(String name) {
        String[] words = name.split(" ");
        RuleSet rules = RuleSets.builtIn().find(words[0]).orElseThrow();
        return switch (words[1]) {
            case "tests" ->
                rules.tests().stream().anyMatch(row -> row.quantity().word().equals(words[2]));
            case "joinings" ->
                rules.joinings().stream().anyMatch(row -> row.quantity().word().equals(words[2]));
            case "earth-test" -> !rules.earthTest().isEmpty();
            case "methods" -> !rules.methods().isEmpty();
            case "editions" -> rules.editions().isPresent();
            default -> false;
        };
    }

    /** {@code iec-62353-2014: d.c. component}. */
    private static boolean said(String name) {
        String[] words = name.split(": ", 2);
        return RuleSets.builtIn().find(words[0]).orElseThrow().notDone().stream()
                .anyMatch(row -> row.test().equals(words[1]));
    }
}
