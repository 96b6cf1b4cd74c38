package leadwright.catalog.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import org.junit.jupiter.api.Test;

class DocumentTest {

    private record Row(String id, Optional<Quantity> voltage, List<String> mates, boolean memory) {}

    private static Outcome<List<Row>> rows(String text) {
        return Document.read("t.yaml", text.getBytes(StandardCharsets.UTF_8), "connectors/1", top -> {
            List<Row> rows = top.rows("connectors").stream()
                    .map(row -> new Row(
                            row.id("id"),
                            row.optionalPositive("voltage", Dimension.VOLTAGE),
                            row.texts("mates"),
                            row.yesNo("from-memory", false)))
                    .toList();
            return () -> rows;
        });
    }

    @Test
    void readsYaml() {
        assertThat(rows("""
                leadwright: connectors/1
                connectors:
                  - {id: NO, voltage: 1 kV, mates: [0123, on], from-memory: yes}
                  - id: b
                """).orThrow())
                .containsExactly(
                        new Row("NO", Optional.of(Quantity.volts(1000)), List.of("0123", "on"), true),
                        new Row("b", Optional.empty(), List.of(), false));
    }

    @Test
    void readsJsonIndentedWithTabs() {
        String json =
                "{\n\t\"leadwright\": \"connectors/1\",\n\t\"connectors\": [\n\t\t{\"id\":\"a\",\"from-memory\":true,"
                        + "\t\"mates\":[\"\\u00b5 \\ud83d\\ude00 \\/\"]}\n\t]\n}\n";
        assertThat(rows(json).orThrow())
                .containsExactly(new Row("a", Optional.empty(), List.of("\u00b5 \ud83d\ude00 /"), true));
    }

    @Test
    void reportsAllProblemsInTheOrderOfTheFile() {
        assertThat(rows("""
                leadwright: connectors/1
                connectors:
                  - {id: a, voltage: 230, matse: [x]}
                  - {voltage: 0 V, from-memory: nope}
                extra: 1
                """).problems())
                .extracting(Problem::text)
                .containsExactly(
                        "t.yaml:3:22: 'voltage': '230' has no unit; write for instance '230 V'",
                        "t.yaml:3:27: unknown key 'matse'; did you mean 'mates'?",
                        "t.yaml:4:5: key 'id' is missing; an id of its own is due",
                        "t.yaml:4:15: 'voltage' is zero; an amount above zero is due",
                        "t.yaml:4:33: 'nope' is not a word for 'from-memory'; known: yes, no",
                        "t.yaml:5:1: unknown key 'extra'; known: leadwright, connectors");
    }
}
