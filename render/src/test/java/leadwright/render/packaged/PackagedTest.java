package leadwright.render.packaged;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The program as users get it: one jar, the thin jar with its libraries, the launcher. Runs after packaging. */
class PackagedTest {

    private static final Path TARGET = Path.of(System.getProperty("leadwright.target"));
    private static final Path SAMPLES =
            TARGET.resolve("../../samples").toAbsolutePath().normalize();
    private static final String JAVA =
            Path.of(System.getProperty("java.home"), "bin", "java").toString();

    @TempDir
    Path place;

    /** How a run ended. */
    private record Run(int code, String out, String err) {}

    @Test
    void jar_thin_jar_and_launcher_write_the_same_files_here_and_elsewhere() throws Exception {
        Run jar = plan("jar", JAVA, "-jar", TARGET.resolve("leadwright.jar").toString());
        Run thin =
                plan("thin", JAVA, "-jar", TARGET.resolve("leadwright-thin.jar").toString());
        Run launcher = plan("launcher", TARGET.resolve("leadwright").toString());
        // Turkish changes the case of i, the zone the date, the encoding what is not ASCII: each is known to leak.
        Run elsewhere = plan(
                "elsewhere",
                JAVA,
                "-Duser.timezone=Pacific/Kiritimati",
                "-Duser.language=tr",
                "-Duser.country=TR",
                "-Dfile.encoding=ISO-8859-9",
                "-jar",
                TARGET.resolve("leadwright.jar").toString());
        for (Run run : List.of(jar, thin, launcher, elsewhere)) {
            assertThat(run.code()).as(run.err()).isZero();
            // Libraries that look for a place to log to, and say so when they find none.
            assertThat(run.err().toLowerCase(java.util.Locale.ROOT)).doesNotContain("log4j", "slf4j", "warning");
        }
        Map<String, byte[]> expected = files(place.resolve("jar"));
        assertThat(expected.keySet())
                .contains("bench-sheet.pdf", "bench-sheet.html", "plan.json", "readings.csv", "H1.svg", "H1.png")
                .contains("training.html", "training.pdf", "standing.html", "standing.pdf", "standing.docx");
        for (String other : List.of("thin", "launcher", "elsewhere")) {
            Map<String, byte[]> actual = files(place.resolve(other));
            assertThat(actual.keySet()).isEqualTo(expected.keySet());
            expected.forEach(
                    (name, bytes) -> assertThat(actual.get(name)).as(name).isEqualTo(bytes));
        }
    }

    @Test
    void the_launcher_says_nothing_of_its_own_and_hands_on_the_exit_code() throws Exception {
        Run version = run(place, Map.of(), TARGET.resolve("leadwright").toString(), "--version");
        assertThat(version.code()).isZero();
        assertThat(version.err()).isEmpty();
        assertThat(version.out()).isNotBlank();
        Run bad = run(place, Map.of(), TARGET.resolve("leadwright").toString(), "check", "no such file.yaml");
        assertThat(bad.code()).isEqualTo(2);
    }

    @Test
    void the_launcher_is_found_through_a_link_and_from_another_folder() throws Exception {
        Path link = place.resolve("a link");
        Files.createSymbolicLink(link, TARGET.resolve("leadwright"));
        Path second = place.resolve("lw");
        Files.createSymbolicLink(second, Path.of("a link"));
        assertThat(run(place, Map.of(), second.toString(), "--version").code()).isZero();
        assertThat(run(place, Map.of(), "sh", "lw", "--version").code()).isZero();
        assertThat(run(TARGET, Map.of(), "sh", "leadwright", "--version").code())
                .isZero();
    }

    @Test
    void the_archive_of_classes_is_used_and_can_be_missing() throws Exception {
        assertThat(TARGET.resolve("leadwright.jsa")).isNotEmptyFile();
        Map<String, String> mustShare = Map.of("LEADWRIGHT_JAVA_OPTS", "-Xshare:on");
        Run shared = run(place, mustShare, TARGET.resolve("leadwright").toString(), "--version");
        assertThat(shared.code()).as(shared.err()).isZero();

        Path folder = Files.createDirectory(place.resolve("moved to a folder"));
        for (String name : List.of("leadwright", "leadwright.jar")) {
            Files.copy(TARGET.resolve(name), folder.resolve(name), java.nio.file.StandardCopyOption.COPY_ATTRIBUTES);
        }
        Run without = run(place, Map.of(), folder.resolve("leadwright").toString(), "--version");
        assertThat(without.code()).as(without.err()).isZero();
        assertThat(without.err()).isEmpty();
        Files.writeString(folder.resolve("leadwright.jsa"), "not an archive");
        Run damaged = run(place, Map.of(), folder.resolve("leadwright").toString(), "--version");
        assertThat(damaged.code()).as(damaged.err()).isZero();
        assertThat(damaged.err()).isEmpty();
        assertThat(damaged.out()).isEqualTo(shared.out());
    }

    /** What is shipped is named, with its licence. */
    @Test
    void every_library_is_named_in_the_notice_and_brings_its_licence() throws Exception {
        try (JarFile jar = new JarFile(TARGET.resolve("leadwright.jar").toFile());
                Stream<Path> libraries = Files.list(TARGET.resolve("lib"))) {
            String notice = text(jar, "META-INF/THIRD-PARTY.md");
            List<String> names = libraries
                    .map(path -> path.getFileName().toString().replaceFirst("-[0-9][^-]*\\.jar$", ""))
                    .filter(name -> !name.startsWith("leadwright"))
                    .sorted()
                    .toList();
            assertThat(names).hasSizeGreaterThan(20);
            for (String name : names) {
                assertThat(notice).as("the notice").containsPattern("\\b" + name + "\\b");
            }
            for (String shipped : List.of(
                    "META-INF/third-party/openhtmltopdf-core-jar/META-INF/LICENSE-LGPL-2.1.txt",
                    "META-INF/third-party/pdfbox-jar/META-INF/LICENSE",
                    "META-INF/third-party/pdfbox-jar/META-INF/NOTICE",
                    "META-INF/third-party/batik-bridge-jar/META-INF/NOTICE",
                    "net/sf/jasperreports/fonts/dejavu/LICENSE")) {
                assertThat(text(jar, shipped)).as(shipped).isNotBlank();
            }
        }
    }

    private Run plan(String folder, String... program) throws Exception {
        List<String> line = new ArrayList<>(Arrays.asList(program));
        line.addAll(List.of(
                "plan",
                SAMPLES.resolve("brindlewick-ward-monitor.yaml").toString(),
                "--kit",
                SAMPLES.resolve("k1-marrowgate-bench.yaml").toString(),
                "--house",
                SAMPLES.resolve("ambersluice-house.yaml").toString(),
                "--on",
                "2027-01-10",
                "--edition",
                "bench,training,standing",
                "--out",
                place.resolve(folder).toString()));
        return run(place, Map.of(), line.toArray(String[]::new));
    }

    private Run run(Path folder, Map<String, String> environment, String... line) throws Exception {
        Path out = Files.createTempFile(place, "out", ".txt");
        Path err = Files.createTempFile(place, "err", ".txt");
        ProcessBuilder builder = new ProcessBuilder(line)
                .directory(folder.toFile())
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        builder.environment().remove("JAVA_TOOL_OPTIONS");
        builder.environment().putAll(environment);
        Process process = builder.start();
        assertThat(process.waitFor(120, TimeUnit.SECONDS)).as("ends in time").isTrue();
        return new Run(process.exitValue(), Files.readString(out), Files.readString(err));
    }

    private static Map<String, byte[]> files(Path folder) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> all = Files.list(folder)) {
            for (Path path : all.toList()) {
                files.put(path.getFileName().toString(), Files.readAllBytes(path));
            }
        }
        return files;
    }

    private static String text(JarFile jar, String name) throws IOException {
        return new String(jar.getInputStream(jar.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
    }
}
