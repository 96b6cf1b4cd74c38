package leadwright.catalog.read;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import leadwright.catalog.text.JsonOf;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Shipped files, damaged at random: a reader gives a record or located problems, never anything else; and what it reads,
 * the schema finds valid.
 */
class MutationTest {

    private static final int FILES_A_SEED = 400;

    private static final List<String> PIECES = List.of(
            "[",
            "]",
            "{",
            "}",
            ":",
            ": ",
            "- ",
            ",",
            "#",
            "&a ",
            "*a",
            "!t ",
            "!%1E",
            "\"",
            "'",
            "|",
            ">",
            "%",
            "@",
            "`",
            "\t",
            "\n",
            "\r",
            "\n\n",
            "  ",
            "---\n",
            "...\n",
            "? ",
            "<<: ",
            "~",
            "yes",
            "no",
            "true",
            "0",
            "-1",
            "1e9",
            "0x1F",
            ".nan",
            "1_000",
            "230 V",
            "230",
            " mohm",
            "\u0000",
            "\u0085",
            "\u2028",
            "\uFEFF",
            "\u00b5",
            "\u03a9",
            "\uD83D\uDE00",
            "[[[[[[[[",
            "{a: ".repeat(50),
            "x".repeat(2000),
            "none",
            "metal",
            "CF",
            "id",
            "ecg",
            "null",
            "[]",
            "{}");

    private static byte[] damaged(byte[] file, Random random) {
        byte[] bytes = file;
        int damages = 1 + random.nextInt(4);
        for (int i = 0; i < damages; i++) {
            bytes = damagedOnce(bytes, random);
        }
        return bytes;
    }

    private static byte[] damagedOnce(byte[] bytes, Random random) {
        int at = random.nextInt(bytes.length + 1);
        int length = Math.min(bytes.length - at, random.nextInt(1 + random.nextInt(40)));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(bytes, 0, at);
        switch (random.nextInt(6)) {
            case 0 -> out.write(bytes, at + length, bytes.length - at - length);
            case 1 -> {
                out.writeBytes(piece(random));
                out.write(bytes, at, bytes.length - at);
            }
            case 2 -> {
                out.writeBytes(piece(random));
                out.write(bytes, at + length, bytes.length - at - length);
            }
            case 3 -> {
                out.write(random.nextInt(256));
                out.write(bytes, Math.min(at + 1, bytes.length), bytes.length - Math.min(at + 1, bytes.length));
            }
            case 4 -> {
                int from = random.nextInt(bytes.length + 1);
                out.write(bytes, from, Math.min(bytes.length - from, 60));
                out.write(bytes, at, bytes.length - at);
            }
            default -> {
                // One line taken out: what is left is mostly still YAML.
                String text = new String(bytes, StandardCharsets.ISO_8859_1);
                int start = text.lastIndexOf('\n', Math.max(0, at - 1)) + 1;
                int end = text.indexOf('\n', start);
                return (text.substring(0, start) + (end < 0 ? "" : text.substring(end + 1)))
                        .getBytes(StandardCharsets.ISO_8859_1);
            }
        }
        return out.toByteArray();
    }

    private static byte[] piece(Random random) {
        return PIECES.get(random.nextInt(PIECES.size())).getBytes(StandardCharsets.UTF_8);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void damageIsReported(long seed) {
        Random random = new Random(seed);
        List<Path> files = TestFiles.all();
        int read = 0;
        for (int i = 0; i < FILES_A_SEED; i++) {
            String text = TestFiles.text(files.get(random.nextInt(files.size())));
            String kind = TestFiles.kind(text);
            byte[] bytes = damaged(text.getBytes(StandardCharsets.UTF_8), random);
            Outcome<?> outcome = TestFiles.read(kind, "t.yaml", bytes);
            String context = "seed " + seed + ", file " + i + ": " + Arrays.toString(bytes);
            if (outcome.found().isPresent()) {
                read++;
                assertThat(Schemas.errors(kind, JsonOf.file(bytes).orElseThrow()))
                        .as(new String(bytes, StandardCharsets.UTF_8))
                        .isEmpty();
            } else {
                assertThat(outcome.problems()).as(context).isNotEmpty().allSatisfy(MutationTest::isLocated);
            }
        }
        assertThat(read).isBetween(FILES_A_SEED / 20, FILES_A_SEED * 19 / 20);
    }

    /** The same with a hundred further seeds, for a long run. */
    @Tag("campaign")
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("manySeeds")
    void damageIsReportedInALongRun(long seed) {
        damageIsReported(seed);
    }

    static LongStream manySeeds() {
        return LongStream.range(1000, 1100);
    }

    private static void isLocated(Problem problem) {
        assertThat(problem.line()).isPositive();
        assertThat(problem.column()).isPositive();
        assertThat(problem.message()).isNotBlank();
        assertThat(problem.text().codePoints().noneMatch(Character::isISOControl))
                .isTrue();
    }
}
