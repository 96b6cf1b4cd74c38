package leadwright.planner.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import leadwright.catalog.text.Outcome;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is no plan, or not a whole one, is refused with its places. */
class DamagedPlansTest {

    private static final String[] PIECES = {
        "null", "[]", "{}", "\"\"", "0", "true", ",", ":", "\"", "}", "]", "-1 uA", "9e99", "key", "µ"
    };

    private static Outcome<Side> read(String text) {
        return SideFile.read("p", text.getBytes(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    "plan/1"              | "plan/2"               | p:2:17: version '/2' of a plan is not known to this program; it reads plan/1
                    "plan/1"              | "record/1"             | p:2:17: this is a record ('record/1') where a plan (plan/1) is due
                    "hookup": "H1", "pol  | "hookup": "H7", "pol   | the plan has no hookup 'H7'; plan again
                    "reading": "R3"       | "reading": "R4"        | no step takes the reading 'R3'; plan again
                    "reading": "R3"       | "reading": "R9"        | the plan has no reading 'R9'; plan again
                    "id": "R4"            | "id": "R3"             | 'R3' stands twice in 'readings'; plan again
                    "at-most": "50 uA"    | "at-most": "50"        | 'at-most'
                    "does": "look"        | "does": "stare"        | 'stare' is not a word for 'does'
                    "state": "reversed"   | "state": "sideways"    | 'sideways' is no state of the mains; plan again
                    "quantity": "earth-r  | "quantity": "earthy-r  | is not a word for 'quantity'
                    "steps": [            | "ladders": [           | key 'steps' is missing
                    "seconds": 60         | "seconds": "long"      | 'seconds'
                    "against": []         | "against": ["ecg.R"]   | ecg.R is in two sets of one demand; plan again
                    "on": null            | "on": "soon"           | 'on' is no day
                    "total": 245,         |                        | 'total'
                    5b0c8f1e00            | 5b0c8f                 |
                    """)
    void isRefusedWithItsPlace(String piece, String instead, String message) {
        Outcome<Side> outcome = read(SmallPlan.with(SmallPlan.text(), piece, instead == null ? "" : instead));
        if (message == null) {
            assertThat(outcome.problems()).isEmpty();
            return;
        }
        assertThat(outcome.found()).isEmpty();
        assertThat(outcome.problems()).anySatisfy(problem -> {
            assertThat(problem.text()).contains(message);
            assertThat(problem.line()).isPositive();
        });
    }

    @Test
    void aFileCutOffIsRefused() {
        String text = SmallPlan.text();
        for (int end = 0; end < text.length() - 3; end += 97) {
            Outcome<Side> outcome = read(text.substring(0, end));
            assertThat(outcome.found()).as("first %s characters", end).isEmpty();
            assertThat(outcome.problems()).isNotEmpty();
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2})
    void isReadOrRefusedAndComparedWithoutFault(long seed) {
        Random random = new Random(seed);
        Side whole = SmallPlan.side();
        int read = 0;
        for (int i = 0; i < 300; i++) {
            Outcome<Side> outcome = read(damaged(SmallPlan.text(), random));
            assertThat(outcome.found().isPresent()).isEqualTo(outcome.problems().isEmpty());
            if (outcome.found().isPresent()) {
                read++;
                Comparison forth = Comparison.of(whole, outcome.found().get());
                Comparison back = Comparison.of(outcome.found().get(), whole);
                assertThat(back.changes())
                        .containsExactlyInAnyOrderElementsOf(
                                forth.changes().stream().map(Change::mirrored).toList());
            }
        }
        assertThat(read).isBetween(10, 250);
    }

    /** One value, or a few characters, replaced. */
    private static String damaged(String text, Random random) {
        String piece = PIECES[random.nextInt(PIECES.length)];
        int colon = text.indexOf(": ", random.nextInt(text.length()));
        if (colon < 0 || random.nextInt(4) == 0) {
            int at = random.nextInt(text.length() - 3);
            return text.substring(0, at) + piece + text.substring(at + random.nextInt(3));
        }
        int end = text.length();
        for (char c : new char[] {',', '}', ']', '\n'}) {
            int found = text.indexOf(c, colon + 2);
            end = found < 0 ? end : Math.min(end, found);
        }
        return text.substring(0, colon + 2) + piece + text.substring(end);
    }
}
