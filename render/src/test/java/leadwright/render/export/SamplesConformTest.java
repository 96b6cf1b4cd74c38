package leadwright.render.export;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import leadwright.catalog.table.RuleSets;
import leadwright.render.cli.Main;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/**
 * The three editions of real plans as the command line writes them, judged by an independent validator. Some plans each time;
 * every sample on every kit by every rule set with {@code -Dleadwright.conformance=all}, which takes long.
 */
class SamplesConformTest {

    private static final Path SAMPLES = Path.of("..", "samples");
    private static final List<String> FILES = List.of("bench-sheet.pdf", "training.pdf", "standing.pdf");

    @TempDir
    Path folder;

    @ParameterizedTest(name = "{0} on {1} by {2}")
    @CsvSource({
        "brindlewick-ward-monitor, k1-marrowgate-bench, iec-62353-2014",
        "noctuary-sleep-recorder, k1-marrowgate-bench, iec-62353-2014",
        "slaterow-tilt-table, k3-fixed-plant-case, bonding",
        "wickling-rhythm-card, k1-marrowgate-bench, us-leads-older",
    })
    void someEachTime(String device, String kit, String rules) throws Exception {
        assertThat(conforms(device, kit, rules)).isTrue();
    }

    @Test
    @EnabledIfSystemProperty(named = "leadwright.conformance", matches = "all")
    void allOfThem() throws Exception {
        int planned = 0;
        for (String device : samples("device/1")) {
            for (String kit : samples("kit/1")) {
                for (String rules : RuleSets.builtIn().ids()) {
                    long begun = System.nanoTime();
                    if (conforms(device, kit, rules)) {
                        planned++;
                        System.out.printf(
                                "%s %s %s: three editions conform, %d s%n",
                                device, kit, rules, (System.nanoTime() - begun) / 1_000_000_000);
                    }
                }
            }
        }
        assertThat(planned).isGreaterThan(20);
    }

    /** Names of the samples of one shape. */
    private static List<String> samples(String shape) throws IOException {
        try (Stream<Path> files = Files.list(SAMPLES)) {
            return files.filter(each -> each.toString().endsWith(".yaml"))
                    .filter(each -> says(each, "leadwright: " + shape))
                    .map(each -> each.getFileName().toString().replace(".yaml", ""))
                    .sorted()
                    .toList();
        }
    }

    private static boolean says(Path file, String line) {
        try {
            return Files.readAllLines(file).contains(line);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** Whether there is a plan; its editions are then judged. */
    private boolean conforms(String device, String kit, String rules) throws Exception {
        Path out = folder.resolve(device + "-" + kit + "-" + rules);
        StringWriter said = new StringWriter();
        int code = Main.run(
                new String[] {
                    "plan",
                    SAMPLES.resolve(device + ".yaml").toString(),
                    "--kit",
                    SAMPLES.resolve(kit + ".yaml").toString(),
                    "--rules",
                    rules,
                    "--house",
                    SAMPLES.resolve("ambersluice-house.yaml").toString(),
                    "--edition",
                    "bench,training,standing",
                    "--formats",
                    "pdf",
                    "--out",
                    out.toString()
                },
                new PrintWriter(said),
                new PrintWriter(said));
        assertThat(code).as(said.toString()).isLessThanOrEqualTo(1);
        if (!Files.exists(out)) {
            return false;
        }
        for (String file : FILES) {
            byte[] pdf = Files.readAllBytes(out.resolve(file));
            for (PDFAFlavour flavour : List.of(PDFAFlavour.PDFUA_1, PDFAFlavour.PDFA_2_U)) {
                assertThat(Conformance.complaints(pdf, flavour))
                        .as("%s of %s on %s by %s as %s", file, device, kit, rules, flavour)
                        .isEmpty();
            }
        }
        return true;
    }
}
