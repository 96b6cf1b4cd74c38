package leadwright.render;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import leadwright.render.cli.Main;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** The samples' files with everything that they list in another order, and their keys too: the same bytes come out. */
class ShuffledFilesTest {
    private static final Path SAMPLES = Path.of("..", "samples");

    @ParameterizedTest(name = "{0}, {1}, {2}")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, 1",
        "brindlewick-ward-monitor, k1-marrowgate-bench, 2",
        "oddlebar-rescue-set, k1-marrowgate-bench, 3",
        "dovecote-infant-warmer, k1-marrowgate-bench, 4",
        "mossback-bed, k1-marrowgate-bench, 5",
        "slaterow-tilt-table, k3-fixed-plant-case, 6",
        "wickling-rhythm-card, k1-marrowgate-bench, 7"
    })
    void the_same_bytes(String device, String kit, long seed, @TempDir Path folder) throws IOException {
        Map<String, String> usual = written(folder, SAMPLES, device, kit);
        Path shuffled = Files.createDirectory(folder.resolve("shuffled"));
        Random random = new Random(seed * 0x9E3779B97F4A7C15L);
        for (String name : List.of(device, kit)) {
            Object content = new Load(LoadSettings.builder().build())
                    .loadFromString(Files.readString(SAMPLES.resolve(name + ".yaml")));
            // JSON is YAML too.
            Files.write(
                    shuffled.resolve(name + ".yaml"), new ObjectMapper().writeValueAsBytes(shuffled(content, random)));
        }
        assertThat(written(folder, shuffled, device, kit)).isEqualTo(usual);
    }

    /** Lists of what is described, and keys, in another order; lists of words say an order themselves. */
    private static Object shuffled(Object content, Random random) {
        if (content instanceof Map<?, ?> map) {
            List<Map.Entry<?, ?>> entries = new ArrayList<>(map.entrySet());
            Collections.shuffle(entries, random);
            // What kind of file it is stands first.
            entries.sort(Comparator.comparing(entry -> !entry.getKey().equals("leadwright")));
            Map<Object, Object> other = new LinkedHashMap<>();
            entries.forEach(entry -> other.put(entry.getKey(), shuffled(entry.getValue(), random)));
            return other;
        }
        if (content instanceof List<?> list) {
            List<Object> other = new ArrayList<>();
            list.forEach(each -> other.add(shuffled(each, random)));
            if (list.stream().allMatch(Map.class::isInstance)) {
                Collections.shuffle(other, random);
            }
            return other;
        }
        return content;
    }

    private static Map<String, String> written(Path folder, Path from, String device, String kit) throws IOException {
        Path out = Files.createTempDirectory(folder, "out");
        StringWriter said = new StringWriter();
        int code = Main.run(
                new String[] {
                    "plan",
                    from.resolve(device + ".yaml").toString(),
                    "--kit",
                    from.resolve(kit + ".yaml").toString(),
                    "--formats",
                    "svg,html,json,csv",
                    "--out",
                    out.toString()
                },
                new PrintWriter(said),
                new PrintWriter(said));
        assertThat(code).as(said.toString()).isLessThanOrEqualTo(1);
        Map<String, String> bytes = new TreeMap<>();
        try (Stream<Path> files = Files.list(out)) {
            files.forEach(file -> bytes.put(file.getFileName().toString(), text(file)));
        }
        assertThat(bytes).isNotEmpty();
        return bytes;
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
