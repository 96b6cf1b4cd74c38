package leadwright.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import leadwright.render.cli.Main;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Two plans of a sample compared as a user does it, line by line with what is kept beside this test. After a wanted change
 * run the tests with {@code -Dleadwright.golden=refresh} and look at what changed.
 */
class GoldenComparisonsTest {
    private static final Path SAMPLES = Path.of("..", "samples");
    private static final Path GOLDEN = Path.of("src", "test", "resources", "golden", "compare");
    private static final Path DOCS = Path.of("..", "docs", "comparing.md");
    private static final boolean REFRESH = "refresh".equals(System.getProperty("leadwright.golden"));

    /** What is planned for A and for B. */
    record Pair(String name, String device, List<String> a, List<String> b) {
        @Override
        public String toString() {
            return name;
        }
    }

    static Stream<Pair> pairs() {
        return Stream.of(
                new Pair(
                        "brindlewick-rules",
                        "brindlewick-ward-monitor",
                        List.of("--kit", kit("k1-marrowgate-bench"), "--rules", "iec-62353-2014"),
                        List.of("--kit", kit("k1-marrowgate-bench"), "--rules", "iec-60601-1-ed3")),
                new Pair(
                        "slaterow-kits",
                        "slaterow-tilt-table",
                        List.of("--kit", kit("k1-marrowgate-bench")),
                        List.of("--kit", kit("k3-fixed-plant-case"))));
    }

    private static String kit(String name) {
        return SAMPLES.resolve(name + ".yaml").toString();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("pairs")
    void sameAsKept(Pair pair, @TempDir Path folder) throws IOException {
        Path a = planned(folder.resolve("a.json"), pair.device(), pair.a());
        Path b = planned(folder.resolve("b.json"), pair.device(), pair.b());
        String told = run("compare", a.toString(), b.toString());
        Path kept = GOLDEN.resolve(pair.name() + ".txt");
        if (REFRESH) {
            Files.createDirectories(GOLDEN);
            Files.writeString(kept, told);
        }
        assertThat(told.lines())
                .as("refresh with -Dleadwright.golden=refresh")
                .containsExactlyElementsOf(Files.readAllLines(kept));
        if (pair.name().equals("slaterow-kits")) {
            sameInTheDocs(told);
        }
        assertThat(told.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
        assertThat(run("compare", a.toString(), b.toString(), "--all").lines())
                .allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100))
                .hasSizeGreaterThan((int) told.lines().count());
    }

    /** The page for users shows what the program says. */
    private static void sameInTheDocs(String told) throws IOException {
        String page = Files.readString(DOCS);
        int from = page.indexOf("```\n") + 4;
        int to = page.indexOf("```\n", from);
        if (REFRESH) {
            Files.writeString(DOCS, page.substring(0, from) + told + page.substring(to));
            return;
        }
        assertThat(page.substring(from, to)).as("docs/comparing.md").isEqualTo(told);
    }

    private static Path planned(Path file, String device, List<String> options) throws IOException {
        List<String> arguments = new ArrayList<>(
                List.of("plan", SAMPLES.resolve(device + ".yaml").toString(), "--json"));
        arguments.addAll(options);
        return Files.writeString(file, run(arguments.toArray(String[]::new)), StandardCharsets.UTF_8);
    }

    private static String run(String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        int code = Main.run(arguments, new PrintWriter(out), new PrintWriter(err));
        assertThat(code).as(err.toString()).isZero();
        return out.toString().replace("\r\n", "\n");
    }
}
