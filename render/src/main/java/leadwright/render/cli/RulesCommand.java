package leadwright.render.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import leadwright.catalog.rules.Basis;
import leadwright.catalog.rules.EarthTestRow;
import leadwright.catalog.rules.MethodRow;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.RuleTable;
import leadwright.catalog.table.RuleSets;
import leadwright.catalog.table.Sources;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lists the rule sets, or prints the limits of one with clause, mark and source. */
@Command(
        name = "rules",
        header = "Show the rule sets, or one of them with clauses and sources",
        description = {
            "Without an id: the list. With an id: every limit, what it applies to, its condition, its clause, how well it"
                    + " is confirmed and what that rests on; then what is read in which states, what is joined, what is"
                    + " left out and why. Marks: A, two or more independent public texts agree; B, one public"
                    + " text; C, from memory: unconfirmed until your department has compared it with its own copy of"
                    + " the standard; D, calculated from these.",
            "",
            "Example:",
            "  leadwright rules iec-62353-2014"
        },
        exitCodeList = {ExitCode.HELP_0, ExitCode.HELP_2})
final class RulesCommand extends Verb {

    @Parameters(paramLabel = "ID", arity = "0..1", description = "a rule set from the list")
    private Optional<String> id = Optional.empty();

    @Option(names = "--json", description = "print JSON")
    private boolean json;

    @Override
    public Integer call() {
        PrintWriter out = results();
        if (id.isPresent()) {
            RuleSet rules = Inputs.rules(id.get());
            if (json) {
                out.print(RulesJson.of(rules));
            } else {
                table(rules, out);
            }
        } else if (json) {
            out.print(RulesJson.of(RuleSets.builtIn().all()));
        } else {
            RuleSets.builtIn().all().forEach(rules -> out.println(String.format("%-20s %s", rules.id(), title(rules))));
        }
        return ExitCode.DONE;
    }

    private static String title(RuleSet rules) {
        return rules.name() + (rules.edition().isEmpty() ? "" : ", edition " + rules.edition());
    }

    private static void table(RuleSet rules, PrintWriter out) {
        out.println(rules.id() + ": " + title(rules));
        out.println(rules.about());
        if (!rules.places().isEmpty()) {
            out.println();
            out.println("where (what the house rules may state)");
            columns(
                    out,
                    rules.places().stream()
                            .map(row -> cells(row.id(), row.name(), row.basis()))
                            .toList());
        }
        limits(rules, out);
        out.println();
        out.println("what is read");
        columns(out, RuleTable.readings(rules).stream().map(RulesCommand::cells).toList());
        if (!rules.earthTest().isEmpty()) {
            out.println();
            out.println("source of the earth test");
            columns(
                    out,
                    rules.earthTest().stream()
                            .map(row -> cells("at least " + row.atLeast().text(), earthTest(row), row.basis()))
                            .toList());
        }
        if (!rules.joinings().isEmpty()) {
            out.println();
            out.println("what is joined");
            columns(
                    out,
                    RuleTable.joinings(rules).stream().map(RulesCommand::cells).toList());
        }
        if (!rules.methods().isEmpty()) {
            out.println();
            out.println("leakage methods");
            columns(
                    out,
                    rules.methods().stream()
                            .map(row -> cells(row.method().word(), method(row), row.basis()))
                            .toList());
        }
        out.println();
        out.println("left out");
        columns(
                out,
                rules.notDone().stream()
                        .map(row -> cells(row.test(), row.because(), row.basis()))
                        .toList());
        sources(rules, out);
    }

    private static void limits(RuleSet rules, PrintWriter out) {
        Map<String, List<List<String>>> groups = new LinkedHashMap<>();
        for (RuleTable.Row row : RuleTable.rows(rules)) {
            groups.computeIfAbsent(row.quantity(), quantity -> new ArrayList<>())
                    .add(List.of(
                            row.limit(),
                            row.appliesTo(),
                            row.condition().isEmpty() ? "any" : row.condition(),
                            row.clause(),
                            row.mark().name(),
                            row.source(),
                            row.id()));
        }
        groups.forEach((quantity, rows) -> {
            out.println();
            out.println(quantity);
            List<List<String>> all = new ArrayList<>();
            all.add(List.of("limit", "applies to", "condition", "clause", "mark", "source", "id"));
            all.addAll(rows);
            columns(out, all);
        });
    }

    static String method(MethodRow row) {
        return row.presupposes()
                + row.notForLimitsTo()
                        .map(least -> "; not for limits of " + least.text() + " or less")
                        .orElse("")
                + (row.notWithElectronicSwitch() ? "; not with an electronic mains switch" : "");
    }

    static String earthTest(EarthTestRow row) {
        return row.factorOfRated()
                        .map(factor -> "or " + factor.toPlainString() + " x rated current, where that is more; ")
                        .orElse("")
                + row.openCircuitAtMost()
                        .map(volts -> "open circuit at most " + volts.text() + "; ")
                        .orElse("")
                + row.lasting().map(time -> "for " + time.text() + " or more").orElse("");
    }

    private static List<String> cells(RuleTable.Rule row) {
        return List.of(
                row.quantity(),
                row.appliesTo(),
                row.how(),
                row.clause(),
                row.mark().name(),
                row.source());
    }

    private static List<String> cells(String first, String second, Basis basis) {
        return List.of(first, second, basis.clause(), basis.mark().name(), RuleTable.source(basis));
    }

    /** Rows whose cells stand below each other. */
    private static void columns(PrintWriter out, List<List<String>> rows) {
        int[] widths = new int[rows.stream().mapToInt(List::size).max().orElse(0)];
        for (List<String> row : rows) {
            for (int i = 0; i < row.size(); i++) {
                widths[i] = Math.max(widths[i], row.get(i).length());
            }
        }
        for (List<String> row : rows) {
            StringBuilder line = new StringBuilder(" ");
            for (int i = 0; i < row.size(); i++) {
                line.append(' ')
                        .append(row.get(i))
                        .append(" ".repeat(widths[i] - row.get(i).length() + 1));
            }
            out.println(line.toString().stripTrailing());
        }
    }

    /** The texts behind the keys, each once. */
    private static void sources(RuleSet rules, PrintWriter out) {
        SortedSet<String> keys = new TreeSet<>();
        rules.limits().forEach(row -> keys.addAll(row.basis().sources()));
        rules.tests().forEach(row -> keys.addAll(row.basis().sources()));
        rules.joinings().forEach(row -> keys.addAll(row.basis().sources()));
        rules.earthTest().forEach(row -> keys.addAll(row.basis().sources()));
        rules.places().forEach(row -> keys.addAll(row.basis().sources()));
        rules.notDone().forEach(row -> keys.addAll(row.basis().sources()));
        if (!keys.isEmpty()) {
            out.println();
            out.println("sources");
            columns(
                    out,
                    keys.stream()
                            .map(key -> List.of(key, Sources.builtIn().find(key).orElse("")))
                            .toList());
        }
    }
}
