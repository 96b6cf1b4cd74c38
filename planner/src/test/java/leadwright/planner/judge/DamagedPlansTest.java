package leadwright.planner.judge;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import leadwright.catalog.text.Outcome;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A plan or record that was damaged is read or refused with its places, never anything else. */
class DamagedPlansTest {

    private static final String[] PIECES = {
        "null", "[]", "{}", "\"\"", "0", "true", ",", ":", "\"", "}", "]", "-1 uA", "9e99", "key", "µ"
    };

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2})
    void isReadOrRefused(long seed) {
        Random random = new Random(seed);
        String plan = new String(Sets.bytes("plan.json"), StandardCharsets.UTF_8);
        String record = new String(Sets.bytes("previous.json"), StandardCharsets.UTF_8);
        int read = 0;
        for (int i = 0; i < 250; i++) {
            Outcome<PlannedTest> planned = PlanFile.read("p", damaged(plan, random));
            assertThat(planned.found().isPresent()).isEqualTo(planned.problems().isEmpty());
            Outcome<Previous> previous = Previous.read("r", damaged(record, random));
            assertThat(previous.found().isPresent())
                    .isEqualTo(previous.problems().isEmpty());
            read += planned.found().isPresent() ? 1 : 0;
            planned.found()
                    .ifPresent(each ->
                            Judge.judge(each, Sets.readings("all-well.yaml").orThrow(), Sets.HOUSE));
        }
        assertThat(read).isBetween(5, 200);
    }

    /** One value, or a few characters, replaced. */
    private static byte[] damaged(String text, Random random) {
        String piece = PIECES[random.nextInt(PIECES.length)];
        int colon = text.indexOf(": ", random.nextInt(text.length()));
        if (colon < 0 || random.nextInt(4) == 0) {
            int at = random.nextInt(text.length() - 3);
            return (text.substring(0, at) + piece + text.substring(at + random.nextInt(3)))
                    .getBytes(StandardCharsets.UTF_8);
        }
        int end = text.length();
        for (char c : new char[] {',', '}', ']', '\n'}) {
            int found = text.indexOf(c, colon + 2);
            end = found < 0 ? end : Math.min(end, found);
        }
        return (text.substring(0, colon + 2) + piece + text.substring(end)).getBytes(StandardCharsets.UTF_8);
    }
}
