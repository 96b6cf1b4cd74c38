package leadwright.render.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.Optional;
import leadwright.catalog.rules.NotDoneRow;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.RuleTable;
import leadwright.catalog.table.RuleSets;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Lists the rule sets, or prints the limits of one with clause, mark and source. */
@Command(
        name = "rules",
        header = "Show the rule sets, or the limits of one with clauses and sources",
        description = {
            "Without an id: the list. With an id: every limit, what it applies to, its clause, how well it is confirmed"
                    + " and what that rests on. Marks: A, two or more independent public texts agree; B, one public"
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
                out.print(json(writer -> ruleSet(writer, rules, true)));
            } else {
                table(rules, out);
            }
        } else if (json) {
            out.print(json(writer -> {
                writer.writeStartArray();
                for (RuleSet rules : RuleSets.builtIn().all()) {
                    ruleSet(writer, rules, false);
                }
                writer.writeEndArray();
            }));
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
        String quantity = "";
        for (RuleTable.Row row : RuleTable.rows(rules)) {
            if (!row.quantity().equals(quantity)) {
                quantity = row.quantity();
                out.println();
                out.println(quantity);
            }
            String condition = row.condition().isEmpty() ? "" : "; " + row.condition();
            out.println("  " + row.limit() + ": " + row.appliesTo() + condition);
            out.println("      " + row.id() + ", " + row.clause() + ", mark " + row.mark()
                    + (row.source().isEmpty() ? "" : ", " + row.source()));
        }
        if (!rules.notDone().isEmpty()) {
            out.println();
            out.println("left out");
            for (NotDoneRow row : rules.notDone()) {
                out.println("  " + row.test() + ": " + row.because() + " ("
                        + row.basis().clause() + ")");
            }
        }
    }

    /** What is written into a generator. */
    @FunctionalInterface
    private interface Content {
        void write(JsonGenerator out) throws IOException;
    }

    private static String json(Content content) {
        StringWriter text = new StringWriter();
        try (JsonGenerator out = new JsonFactory().createGenerator(text)) {
            out.setPrettyPrinter(new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n")));
            content.write(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.append('\n').toString();
    }

    private static void ruleSet(JsonGenerator out, RuleSet rules, boolean withLimits) throws IOException {
        out.writeStartObject();
        out.writeStringField("id", rules.id());
        out.writeStringField("name", rules.name());
        out.writeStringField("edition", rules.edition());
        out.writeStringField("about", rules.about());
        if (withLimits) {
            out.writeArrayFieldStart("limits");
            for (RuleTable.Row row : RuleTable.rows(rules)) {
                limit(out, row);
            }
            out.writeEndArray();
        }
        out.writeEndObject();
    }

    private static void limit(JsonGenerator out, RuleTable.Row row) throws IOException {
        out.writeStartObject();
        out.writeStringField("id", row.id());
        out.writeStringField("quantity", row.quantity());
        out.writeStringField("applies-to", row.appliesTo());
        out.writeStringField("condition", row.condition());
        out.writeStringField("limit", row.limit());
        out.writeStringField("clause", row.clause());
        out.writeStringField("mark", row.mark().name());
        out.writeStringField("source", row.source());
        out.writeEndObject();
    }
}
