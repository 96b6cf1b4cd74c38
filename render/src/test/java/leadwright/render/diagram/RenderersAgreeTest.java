package leadwright.render.diagram;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import leadwright.render.export.PngExport;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The samples' drawings look alike whoever paints them: Batik, a browser and librsvg, at 96 dots an inch. Of what one picture
 * has in ink nearly all must have ink in the other within three dots, 0.8 mm, and the other way round: letters are set a
 * little differently, a line that is missing has no ink anywhere near.
 */
class RenderersAgreeTest {
    private static final int WIDTH = 941;
    private static final int HEIGHT = 718;
    /** Dots. */
    private static final int NEAR = 3;
    /** How dark ink is, of 1, and what it may have faded to. */
    private static final double INK = 0.35;

    private static final double FADED = 0.15;
    /** Share of the ink. */
    private static final double TOLERATED = 0.00015;

    private static final Pattern LEVEL = Pattern.compile(" d=\"M([0-9.]+)[ ,][0-9.]+ ?H([0-9.]+)");
    private static final int ON_A_PAGE = 8;

    private static final List<String> DRAWINGS = new ArrayList<>();
    private static final List<BufferedImage> BY_BATIK = new ArrayList<>();

    @TempDir
    private Path folder;

    @BeforeAll
    static void paint() throws IOException {
        Planned.all().values().stream()
                .flatMap(plan -> Diagrams.draw(plan).stream())
                .map(Drawing::svg)
                .forEach(DRAWINGS::add);
        for (String svg : DRAWINGS) {
            BY_BATIK.add(sized(ImageIO.read(new ByteArrayInputStream(PngExport.png(svg, 96)))));
        }
    }

    @Test
    void librsvgPaintsTheSame() throws Exception {
        assumeTrue(onPath("rsvg-convert"), "skipped: needs rsvg-convert (Debian package librsvg2-bin)");
        for (int i = 0; i < DRAWINGS.size(); i++) {
            Path svg = folder.resolve(i + ".svg");
            Path png = folder.resolve(i + ".png");
            Files.writeString(svg, DRAWINGS.get(i));
            run("rsvg-convert", "-w", "" + WIDTH, "-h", "" + HEIGHT, "-o", png.toString(), svg.toString());
            assertThat(differing(BY_BATIK.get(i), sized(ImageIO.read(png.toFile()))))
                    .as("drawing %d", i)
                    .isLessThan(TOLERATED);
        }
    }

    @Test
    void aBrowserPaintsTheSame() throws Exception {
        assumeTrue(onPath("chromium"), "skipped: needs chromium (Debian package chromium)");
        for (int first = 0; first < DRAWINGS.size(); first += ON_A_PAGE) {
            int end = Math.min(first + ON_A_PAGE, DRAWINGS.size());
            StringBuilder page = new StringBuilder("<!DOCTYPE html><body style='margin:0;background:white'>");
            for (int i = first; i < end; i++) {
                Files.writeString(folder.resolve("b" + i + ".svg"), DRAWINGS.get(i));
                page.append("<img style='display:block' width='" + WIDTH + "' height='" + HEIGHT + "' src='b" + i
                        + ".svg'>");
            }
            Path html = Files.writeString(folder.resolve("page.html"), page);
            Path png = folder.resolve("page.png");
            run(
                    "chromium",
                    "--headless",
                    "--no-sandbox",
                    "--disable-gpu",
                    "--hide-scrollbars",
                    "--user-data-dir=" + folder.resolve("profile"),
                    "--force-device-scale-factor=1",
                    "--window-size=" + WIDTH + "," + (end - first) * HEIGHT,
                    "--screenshot=" + png,
                    html.toUri().toString());
            BufferedImage all = ImageIO.read(png.toFile());
            for (int i = first; i < end; i++) {
                BufferedImage one = all.getSubimage(0, (i - first) * HEIGHT, WIDTH, HEIGHT);
                assertThat(differing(BY_BATIK.get(i), one)).as("drawing %d", i).isLessThan(TOLERATED);
            }
        }
    }

    /** The comparison itself notices one wire, one box or one text that is not there. */
    @ParameterizedTest
    @ValueSource(strings = {"<path class=\"wire patient", "<text", "<rect class=\"box\""})
    void aDrawingThatLacksSomethingDiffers(String lacks) throws Exception {
        for (int i = 0; i < 4; i++) {
            String svg = DRAWINGS.get(i);
            int at = longest(svg, lacks);
            assertThat(at).as(lacks).isPositive();
            String without = svg.substring(0, at)
                    + lacks.replaceFirst("<(\\w+)", "<$1 display=\"none\"")
                    + svg.substring(at + lacks.length());
            BufferedImage other = sized(ImageIO.read(new ByteArrayInputStream(PngExport.png(without, 96))));
            assertThat(differing(BY_BATIK.get(i), other)).as(lacks).isGreaterThan(TOLERATED);
        }
    }

    /** Where the one with the longest level line begins, or the first that has none. */
    private static int longest(String svg, String begins) {
        int best = -1;
        double most = -1;
        for (int at = svg.indexOf(begins); at >= 0; at = svg.indexOf(begins, at + 1)) {
            Matcher line = LEVEL.matcher(svg.substring(at, svg.indexOf('>', at)));
            double length =
                    line.find() ? Math.abs(Double.parseDouble(line.group(2)) - Double.parseDouble(line.group(1))) : 0;
            if (length > most) {
                most = length;
                best = at;
            }
        }
        return best;
    }

    private static double differing(BufferedImage a, BufferedImage b) {
        return Math.max(alone(a, b), alone(b, a));
    }

    /** Share of the ink of one picture that has none of the other near it. */
    private static double alone(BufferedImage one, BufferedImage other) {
        int ink = 0;
        int alone = 0;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                if (dark(one, x, y) > INK) {
                    ink++;
                    alone += near(other, x, y) ? 0 : 1;
                }
            }
        }
        return (double) alone / ink;
    }

    private static boolean near(BufferedImage image, int x, int y) {
        for (int v = Math.max(0, y - NEAR); v <= Math.min(HEIGHT - 1, y + NEAR); v++) {
            for (int u = Math.max(0, x - NEAR); u <= Math.min(WIDTH - 1, x + NEAR); u++) {
                if (dark(image, u, v) > FADED) {
                    return true;
                }
            }
        }
        return false;
    }

    private static double dark(BufferedImage image, int x, int y) {
        int rgb = image.getRGB(x, y);
        return 1 - (0.2126 * (rgb >> 16 & 255) + 0.7152 * (rgb >> 8 & 255) + 0.0722 * (rgb & 255)) / 255;
    }

    private static BufferedImage sized(BufferedImage image) {
        BufferedImage sized = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = sized.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, WIDTH, HEIGHT);
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        graphics.drawImage(image, 0, 0, WIDTH, HEIGHT, null);
        graphics.dispose();
        return sized;
    }

    private static boolean onPath(String program) {
        return Stream.of(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
    }

    private void run(String... command) throws Exception {
        Path log = folder.resolve("log.txt");
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        if (!process.waitFor(120, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError(command[0] + " does not end");
        }
        assertThat(process.exitValue()).as(Files.readString(log)).isZero();
    }
}
