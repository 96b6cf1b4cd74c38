package leadwright.render.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import leadwright.catalog.rules.Basis;
import leadwright.catalog.rules.EarthTestRow;
import leadwright.catalog.rules.MethodRow;
import leadwright.catalog.rules.NotDoneRow;
import leadwright.catalog.rules.PlaceRow;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.RuleTable;

/** Rule sets as JSON. */
final class RulesJson {

    private RulesJson() {}

    /** One rule set with all of its rows. */
    static String of(RuleSet rules) {
        return json(writer -> ruleSet(writer, rules, true));
    }

    /** The list, without rows. */
    static String of(List<RuleSet> all) {
        return json(writer -> {
            writer.writeStartArray();
            for (RuleSet rules : all) {
                ruleSet(writer, rules, false);
            }
            writer.writeEndArray();
        });
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
            rules(out, "readings", RuleTable.readings(rules));
            rules(out, "joinings", RuleTable.joinings(rules));
            out.writeArrayFieldStart("earth-test");
            for (EarthTestRow row : rules.earthTest()) {
                rule(
                        out,
                        Map.of("at-least", row.atLeast().text(), "further", RulesCommand.earthTest(row)),
                        row.basis());
            }
            out.writeEndArray();
            out.writeArrayFieldStart("methods");
            for (MethodRow row : rules.methods()) {
                rule(out, Map.of("method", row.method().word(), "presupposes", RulesCommand.method(row)), row.basis());
            }
            out.writeEndArray();
            out.writeArrayFieldStart("where");
            for (PlaceRow row : rules.places()) {
                rule(out, Map.of("id", row.id(), "name", row.name()), row.basis());
            }
            out.writeEndArray();
            out.writeArrayFieldStart("left-out");
            for (NotDoneRow row : rules.notDone()) {
                rule(out, Map.of("test", row.test(), "because", row.because()), row.basis());
            }
            out.writeEndArray();
        }
        out.writeEndObject();
    }

    private static void rules(JsonGenerator out, String name, List<RuleTable.Rule> rows) throws IOException {
        out.writeArrayFieldStart(name);
        for (RuleTable.Rule row : rows) {
            out.writeStartObject();
            out.writeStringField("quantity", row.quantity());
            out.writeStringField("applies-to", row.appliesTo());
            out.writeStringField("how", row.how());
            out.writeStringField("clause", row.clause());
            out.writeStringField("mark", row.mark().name());
            out.writeStringField("source", row.source());
            out.writeEndObject();
        }
        out.writeEndArray();
    }

    private static void rule(JsonGenerator out, Map<String, String> texts, Basis basis) throws IOException {
        out.writeStartObject();
        for (Map.Entry<String, String> text : new TreeMap<>(texts).entrySet()) {
            out.writeStringField(text.getKey(), text.getValue());
        }
        out.writeStringField("clause", basis.clause());
        out.writeStringField("mark", basis.mark().name());
        out.writeStringField("source", RuleTable.source(basis));
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
