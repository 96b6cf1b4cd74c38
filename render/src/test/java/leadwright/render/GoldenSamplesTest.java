package leadwright.render;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import java.util.stream.Stream;
import leadwright.render.cli.Main;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each sample planned and drawn as a user does it, compared with the output kept beside this test: the plan by meaning (its
 * JSON tokens), the drawings by their elements. After a wanted change run the tests with
 * {@code -Dleadwright.golden=refresh} and look at what changed.
 */
class GoldenSamplesTest {
    private static final Path SAMPLES = Path.of("..", "samples");
    private static final Path GOLDEN = Path.of("src", "test", "resources", "golden");
    private static final boolean REFRESH = "refresh".equals(System.getProperty("leadwright.golden"));

    /** What is planned; the exit code is part of the sample. */
    record Sample(String name, String device, String kit, int exit) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Sample> samples() {
        return Stream.of(
                new Sample("brindlewick-k1", "brindlewick-ward-monitor", "k1-marrowgate-bench", 0),
                new Sample("oddlebar-k1", "oddlebar-rescue-set", "k1-marrowgate-bench", 0),
                new Sample("noctuary-k1", "noctuary-sleep-recorder", "k1-marrowgate-bench", 1),
                new Sample("slaterow-k3", "slaterow-tilt-table", "k3-fixed-plant-case", 0),
                new Sample("wickling-k1", "wickling-rhythm-card", "k1-marrowgate-bench", 0));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("samples")
    void sameAsKept(Sample sample, @TempDir Path folder) throws IOException {
        run(sample, folder);
        Path kept = GOLDEN.resolve(sample.name());
        List<Path> written = files(folder);
        if (REFRESH) {
            Files.createDirectories(kept);
            for (Path old : files(kept)) {
                Files.delete(old);
            }
            for (Path file : written) {
                Files.copy(file, kept.resolve(file.getFileName()));
            }
        }
        assertThat(written.stream().map(file -> file.getFileName().toString()))
                .as("files; refresh with -Dleadwright.golden=refresh")
                .containsExactlyElementsOf(files(kept).stream()
                        .map(file -> file.getFileName().toString())
                        .toList());
        for (Path file : written) {
            assertThat(meaning(file))
                    .as(file.getFileName().toString())
                    .isEqualTo(meaning(kept.resolve(file.getFileName())));
        }
    }

    /** The same bytes again, in another time zone and locale. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("samples")
    void sameBytesElsewhere(Sample sample, @TempDir Path one, @TempDir Path other) throws IOException {
        run(sample, one);
        Locale locale = Locale.getDefault();
        TimeZone zone = TimeZone.getDefault();
        try {
            // Turkish changes the case of i, the zone the date: both are known to leak into output.
            Locale.setDefault(Locale.forLanguageTag("tr-TR"));
            TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
            run(sample, other);
        } finally {
            Locale.setDefault(locale);
            TimeZone.setDefault(zone);
        }
        for (Path file : files(one)) {
            assertThat(Files.readAllBytes(other.resolve(file.getFileName())))
                    .as(file.getFileName().toString())
                    .isEqualTo(Files.readAllBytes(file));
        }
    }

    private static void run(Sample sample, Path folder) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(
                new String[] {
                    "plan",
                    SAMPLES.resolve(sample.device() + ".yaml").toString(),
                    "--kit",
                    SAMPLES.resolve(sample.kit() + ".yaml").toString(),
                    "--formats",
                    "svg,json,csv",
                    "--out",
                    folder.toString()
                },
                new PrintWriter(out),
                new PrintWriter(err));
        assertThat(code).as(out + "\n" + err).isEqualTo(sample.exit());
    }

    private static List<Path> files(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> list = Files.list(folder)) {
            return list.sorted().toList();
        }
    }

    /** What a file says, without how it is laid out. */
    private static List<String> meaning(Path file) throws IOException {
        String text = Files.readString(file, StandardCharsets.UTF_8);
        if (!file.toString().endsWith(".json")) {
            return text.replace("><", ">\n<").lines().map(String::strip).toList();
        }
        List<String> tokens = new ArrayList<>();
        try (JsonParser parser = new JsonFactory().createParser(text)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                tokens.add(token + " " + parser.getText());
            }
        }
        return tokens;
    }
}
