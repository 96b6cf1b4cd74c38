package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import leadwright.catalog.quantity.Dimension;
import org.junit.jupiter.api.Test;

/** A mistake in a built-in table stops the program and says where it is. */
class RowTest {

    private static Row row(Map<String, Object> values) {
        return new Row("table.yaml, rows, row 3", values);
    }

    private static void refused(Runnable reading, String... parts) {
        assertThatThrownBy(reading::run)
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("table.yaml, rows, row 3")
                .hasMessageContainingAll(parts);
    }

    @Test
    void a_key_that_nobody_reads_is_a_mistake() {
        Row row = row(Map.of("id", "x", "maets", "y"));
        assertThat(row.needed("id")).isEqualTo("x");
        refused(row::finish, "maets");
    }

    @Test
    void missing_and_ill_formed_values_are_mistakes() {
        refused(() -> row(Map.of()).needed("id"), "'id' is missing");
        refused(() -> row(Map.of("shrouded", "maybe")).flag("shrouded"), "neither yes nor no");
        refused(() -> row(Map.of("current", "10")).quantity("current", Dimension.CURRENT), "no unit");
        refused(() -> row(Map.of("mm2", "thick")).number("mm2"), "not a number");
        refused(() -> row(Map.of("contact", "glue")).word("contact", ContactKind.class), "glue");
        refused(() -> row(Map.of("mates", "x")).texts("mates"), "not a list");
        refused(() -> row(Map.of("iec", "x")).row("iec"), "not a row");
    }

    @Test
    void a_row_without_a_source_has_to_be_from_memory_and_marked_C() {
        refused(() -> row(Map.of("mark", "B")).origin(), "neither a source nor from memory");
        refused(() -> row(Map.of("mark", "C", "sources", List.of("X"))).origin(), "go together");
        refused(() -> row(Map.of("mark", "A", "from-memory", "yes")).origin(), "go together");
        assertThat(row(Map.of("mark", "C", "from-memory", "yes")).origin().sources())
                .isEmpty();
    }

    @Test
    void a_file_of_another_kind_is_refused() {
        assertThatThrownBy(() -> TableFile.load("mains.yaml", "connectors/1"))
                .hasMessageContaining("'mains/1' is no kind of file; write 'leadwright: connectors/1'");
        assertThatThrownBy(() -> TableFile.load("nothing.yaml", "connectors/1")).hasMessageContaining("nothing.yaml");
        assertThatThrownBy(() -> TableFile.load("mains.yaml", "mains/1").rows("plgus"))
                .hasMessageContaining("plgus");
    }
}
