package leadwright.catalog.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Test;

/** A mistake in a built-in table stops the program and says where it is. */
class TableFileTest {

    @Test
    void a_file_that_is_absent_or_of_another_kind_is_refused() {
        assertThatThrownBy(() -> TableFile.read("nothing.yaml", "mains/1", top -> () -> ""))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("nothing.yaml");
        assertThatThrownBy(() -> TableFile.read("mains.yaml", "connectors/1", top -> () -> ""))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("mains.yaml");
    }

    @Test
    void a_row_without_a_source_has_to_be_from_memory_and_marked_C() {
        assertThat(problems("{id: a, mark: B}")).containsExactly("the row has neither a source nor 'from-memory: yes'");
        assertThat(problems("{id: a, mark: C, sources: [X]}"))
                .containsExactly("mark C and 'from-memory: yes' go together");
        assertThat(problems("{id: a, mark: A, sources: [X], from-memory: yes}"))
                .containsExactly("mark C and 'from-memory: yes' go together");
        assertThat(problems("{id: a, mark: C, from-memory: yes}")).isEmpty();
        assertThat(problems("{id: a, mark: A, sources: [X]}")).isEmpty();
    }

    @Test
    void a_key_that_nobody_reads_and_a_second_row_of_one_id_are_mistakes() {
        assertThat(problems("{id: a, mark: A, sources: [X], maets: [b]}"))
                .singleElement()
                .asString()
                .contains("maets");
        assertThat(problems("{id: a, mark: A, sources: [X]}", "{id: a, mark: A, sources: [X]}"))
                .containsExactly("'a' has a row already");
    }

    private static List<String> problems(String... rows) {
        String text = "leadwright: rows/1\nrows:\n  - " + String.join("\n  - ", rows) + "\n";
        return Document.read("rows.yaml", text.getBytes(StandardCharsets.UTF_8), "rows/1", top -> {
                    Rows.byKey(top, "rows", "id", Origin::of);
                    return () -> "";
                })
                .problems()
                .stream()
                .map(Problem::message)
                .toList();
    }
}
