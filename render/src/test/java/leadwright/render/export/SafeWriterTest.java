package leadwright.render.export;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import leadwright.render.export.SafeWriter.CannotWriteException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SafeWriterTest {

    @TempDir
    Path place;

    @Test
    void writes_all_files_and_leaves_nothing_else() throws Exception {
        SafeWriter.write(place.resolve("out/of/run"), files("a.svg", "A", "b.json", "B", "drawings/h1.svg", "H"));
        assertThat(tree()).containsExactly("out/of/run/a.svg", "out/of/run/b.json", "out/of/run/drawings/h1.svg");
        assertThat(text("out/of/run/drawings/h1.svg")).isEqualTo("H");
    }

    @Test
    void replaces_what_is_there_and_spares_the_rest() throws Exception {
        put("a.svg", "old, and longer than the new one");
        put("mine.txt", "mine");
        SafeWriter.write(place, files("a.svg", "new", "b.svg", "B"));
        assertThat(tree()).containsExactly("a.svg", "b.svg", "mine.txt");
        assertThat(text("a.svg")).isEqualTo("new");
        assertThat(text("mine.txt")).isEqualTo("mine");
    }

    /** A folder where a file should go makes the last of the files fail, after the others were ready. */
    @Test
    void writes_nothing_when_one_cannot_be_written() throws Exception {
        put("a.svg", "old");
        put("z.pdf/inside.txt", "someone's");
        assertThatThrownBy(() -> SafeWriter.write(place, files("a.svg", "new", "b.svg", "B", "z.pdf", "Z")))
                .isInstanceOf(CannotWriteException.class)
                .hasMessageContaining("Nothing was written")
                .hasMessageContaining("z.pdf");
        assertThat(tree()).containsExactly("a.svg", "z.pdf/inside.txt");
        assertThat(text("a.svg")).isEqualTo("old");
    }

    /** Here the failure comes while files are being moved into place, so that moves made must be taken back. */
    @Test
    void takes_back_what_was_moved_when_a_later_move_fails() throws Exception {
        put("a.svg", "old a");
        put("n", "a file where a folder is needed");
        assertThatThrownBy(() -> SafeWriter.write(place, files("a.svg", "new", "b.svg", "B", "n/c.svg", "C")))
                .isInstanceOf(CannotWriteException.class);
        assertThat(tree()).containsExactly("a.svg", "n");
        assertThat(text("a.svg")).isEqualTo("old a");
        assertThat(text("n")).isEqualTo("a file where a folder is needed");
    }

    @Test
    void removes_the_folders_it_made_when_it_fails() throws Exception {
        put("n", "a file");
        assertThatThrownBy(() -> SafeWriter.write(place.resolve("n/deep/out"), files("a.svg", "A")))
                .isInstanceOf(CannotWriteException.class);
        assertThatThrownBy(() -> SafeWriter.write(
                        place.resolve("new/out"), files("a", "a file", "a/b.svg", "cannot stand in a file")))
                .isInstanceOf(CannotWriteException.class);
        assertThat(tree()).containsExactly("n");
        assertThat(place.resolve("new")).doesNotExist();
    }

    @Test
    void replaces_a_link_and_not_what_it_points_to() throws Exception {
        put("elsewhere.txt", "kept");
        Files.createSymbolicLink(place.resolve("a.svg"), place.resolve("elsewhere.txt"));
        SafeWriter.write(place, files("a.svg", "new"));
        assertThat(text("elsewhere.txt")).isEqualTo("kept");
        assertThat(text("a.svg")).isEqualTo("new");
        assertThat(Files.isSymbolicLink(place.resolve("a.svg"))).isFalse();
    }

    @Test
    void takes_files_away_with_the_writing_or_not_at_all() throws Exception {
        put("a.svg", "old a");
        put("b.svg", "old b");
        put("mine.txt", "mine");
        put("c/inside.txt", "c");
        SortedSet<String> gone = new TreeSet<>(List.of("b.svg", "c"));
        assertThatThrownBy(() -> SafeWriter.write(place, files("a.svg", "new"), gone))
                .isInstanceOf(CannotWriteException.class);
        assertThat(tree()).containsExactly("a.svg", "b.svg", "c/inside.txt", "mine.txt");
        assertThat(text("a.svg")).isEqualTo("old a");
        SafeWriter.write(place, files("a.svg", "new"), new TreeSet<>(List.of("b.svg")));
        assertThat(tree()).containsExactly("a.svg", "c/inside.txt", "mine.txt");
        assertThat(text("a.svg")).isEqualTo("new");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "..", "../a", "/etc/a", "b/../../a", "b/./a", "a/.."})
    void refuses_names_that_lead_out(String name) throws Exception {
        assertThatIllegalArgumentException().isThrownBy(() -> SafeWriter.write(place, files(name, "x")));
        assertThat(tree()).isEmpty();
    }

    private static SortedMap<String, byte[]> files(String... namesAndTexts) {
        SortedMap<String, byte[]> files = new TreeMap<>();
        for (int i = 0; i < namesAndTexts.length; i += 2) {
            files.put(namesAndTexts[i], namesAndTexts[i + 1].getBytes(UTF_8));
        }
        return files;
    }

    private void put(String name, String text) throws IOException {
        Files.createDirectories(place.resolve(name).getParent());
        Files.writeString(place.resolve(name), text);
    }

    private String text(String name) throws IOException {
        return Files.readString(place.resolve(name));
    }

    private List<String> tree() throws IOException {
        try (Stream<Path> all = Files.walk(place)) {
            return all.filter(path -> !Files.isDirectory(path))
                    .map(path -> place.relativize(path).toString())
                    .sorted()
                    .toList();
        }
    }
}
