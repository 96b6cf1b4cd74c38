package leadwright.planner.oblige;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * How many readings of each quantity are due in each state, for every sample, counted by hand. A line of a table is
 * {@code quantity, states, modes, components, readings in each}; a dash is none. {@code both} stands for normal and
 * reversed, {@code open} and {@code earth} for both of them with the supply or the earth open.
 */
class SampleObligationsTest {

    private record Expected(String device, String kit, String rules, String table) {}

    private static final List<Expected> EXPECTED = List.of(
            // Two earthed points with the cord fitted; ten wires, sensor, cuff, two domes and probe are six functions,
            // each
            // with two polarities of the mains and two of the source.
            new Expected("brindlewick-ward-monitor", "k1-marrowgate-bench", Bench.RECURRENT, """
                    supply-voltage,       off,  off, -,  3
                    tester-check,         off,  off, ac, 2
                    earth-resistance,     off,  off, -,  2
                    equipment-leakage,    both, on,  ac, 1
                    applied-part-leakage, both, on,  ac, 12
                    """),
            // Inlet to two points, and the cord. Unearthed: screw and two sockets, in six states; the two earthed
            // points in
            // two; three pairs of the screw and the sockets. CF: 13 connections alone, BF: two functions. Totals of CF
            // and of BF. Auxiliary: each of 15
            // connections.
            // On metal: two BF functions and their total, two polarities of the source.
            new Expected("brindlewick-ward-monitor", "k1-marrowgate-bench", Bench.THIRD, """
                    supply-voltage,              off,             off, -,     3
                    tester-check,                off,             off, ac,    2
                    earth-resistance,            off,             off, -,     3
                    earth-leakage,               both open,       on,  ac,    1
                    touch-current,               both open,       on,  ac,    3
                    touch-current,               earth,           on,  ac,    5
                    touch-current-between,       both open earth, on,  ac,    3
                    patient-leakage,             both open earth, on,  ac dc, 15
                    total-patient-leakage,       both open earth, on,  ac dc, 2
                    patient-auxiliary,           both open earth, on,  ac dc, 15
                    mains-on-applied-part,       both,            on,  ac,    30
                    total-mains-on-applied-part, both,            on,  ac,    4
                    mains-on-unearthed-metal,    both,            on,  ac,    6
                    """),
            // Pads and spoons are split off: three equipment readings, four functions.
            new Expected("oddlebar-rescue-set", "k1-marrowgate-bench", Bench.RECURRENT, """
                    supply-voltage,       off,  off, -,  3
                    tester-check,         off,  off, ac, 2
                    earth-resistance,     off,  off, -,  1
                    equipment-leakage,    both, on,  ac, 3
                    applied-part-leakage, both, on,  ac, 8
                    """),
            // Unearthed: insert, shell, two sockets: six pairs. CF: two spoons and five wires, BF: pads and
            // sensor. The total of CF is split in two, that of BF is left with one part each and falls away.
            new Expected("oddlebar-rescue-set", "k1-marrowgate-bench", Bench.THIRD, """
                    supply-voltage,              off,             off, -,     3
                    tester-check,                off,             off, ac,    2
                    earth-resistance,            off,             off, -,     2
                    earth-leakage,               both open,       on,  ac,    1
                    touch-current,               both open,       on,  ac,    4
                    touch-current,               earth,           on,  ac,    5
                    touch-current-between,       both open earth, on,  ac,    6
                    patient-leakage,             both open earth, on,  ac dc, 9
                    total-patient-leakage,       both open earth, on,  ac dc, 2
                    patient-auxiliary,           both open earth, on,  ac dc, 10
                    mains-on-applied-part,       both,            on,  ac,    18
                    total-mains-on-applied-part, both,            on,  ac,    4
                    mains-on-unearthed-metal,    both,            on,  ac,    4
                    """),
            // Functional earth: its own row, and the equipment leakage with it closed and open. Six functions.
            new Expected("noctuary-sleep-recorder", "k1-marrowgate-bench", Bench.RECURRENT, """
                    supply-voltage,           off,        off, -,  3
                    tester-check,             off,        off, ac, 2
                    equipment-leakage,        both earth, on,  ac, 1
                    functional-earth-leakage, both,       on,  ac, 1
                    applied-part-leakage,     both,       on,  ac, 12
                    """),
            // Case, hook and socket: three pairs. One applied part: no totals. 64 wires each against the 63 others.
            new Expected("noctuary-sleep-recorder", "k1-marrowgate-bench", Bench.THIRD, """
                    supply-voltage,           off,             off, -,     3
                    tester-check,             off,             off, ac,    2
                    functional-earth-leakage, both open,       on,  ac,    1
                    touch-current,            both open earth, on,  ac,    3
                    touch-current-between,    both open earth, on,  ac,    3
                    patient-leakage,          both open earth, on,  ac dc, 6
                    patient-auxiliary,        both open,       on,  ac dc, 64
                    mains-on-applied-part,    both,            on,  ac,    12
                    mains-on-unearthed-metal, both,            on,  ac,    12
                    """),
            // 17 earthed points less two painted ones, and the hook that nobody knows of; the hook and a socket to
            // touch.
            new Expected("slaterow-tilt-table", "k3-fixed-plant-case", Bench.RECURRENT, """
                    tester-check,     off,          off,             -,  2
                    earth-resistance, isolated,     off,             -,  16
                    touch-current,    installed-on, resting tilting, ac, 1+1
                    """),
            new Expected("slaterow-tilt-table", "k3-fixed-plant-case", Bench.THIRD, """
                    tester-check,     off,          off,             -,  2
                    earth-resistance, isolated,     off,             -,  16
                    touch-current,    installed-on, resting tilting, ac, 1+1
                    """),
            // Column and hood, and a continuity look at the rail; the probe is type B and joins the housing.
            new Expected("dovecote-infant-warmer", "k1-marrowgate-bench", Bench.RECURRENT, """
                    supply-voltage,    off,  off,      -,  3
                    tester-check,      off,  off,      ac, 2
                    earth-resistance,  off,  off,      -,  3
                    equipment-leakage, both, cold hot, ac, 1
                    """),
            // With the supply open the warmer is off, in no mode: read once. Rail, tray and socket: three pairs.
            new Expected("dovecote-infant-warmer", "k1-marrowgate-bench", Bench.THIRD, """
                    supply-voltage,        off,        off,      -,     3
                    tester-check,          off,        off,      ac,    2
                    earth-resistance,      off,        off,      -,     3
                    earth-leakage,         both,       cold hot, ac,    1
                    earth-leakage,         open,       cold,     ac,    1
                    touch-current,         both,       cold hot, ac,    3
                    touch-current,         open,       cold,     ac,    3
                    touch-current,         earth,      cold hot, ac,    5
                    touch-current-between, both earth, cold hot, ac,    3
                    touch-current-between, open,       cold,     ac,    3
                    patient-leakage,       both earth, cold hot, ac dc, 1
                    patient-leakage,       open,       cold,     ac dc, 1
                    """),
            new Expected("mossback-bed", "k1-marrowgate-bench", Bench.RECURRENT, """
                    supply-voltage,    off,  off,          -,  3
                    tester-check,      off,  off,          ac, 2
                    equipment-leakage, both, still moving, ac, 1
                    """),
            // Two frames and a hand-set: three pairs. On metal: the type B surface, two polarities of the source.
            new Expected("mossback-bed", "k1-marrowgate-bench", Bench.THIRD, """
                    supply-voltage,           off,  off,          -,     3
                    tester-check,             off,  off,          ac,    2
                    touch-current,            both, still moving, ac,    3
                    touch-current,            open, still,        ac,    3
                    touch-current-between,    both, still moving, ac,    3
                    touch-current-between,    open, still,        ac,    3
                    patient-leakage,          both, still moving, ac dc, 1
                    patient-leakage,          open, still,        ac dc, 1
                    mains-on-unearthed-metal, both, still moving, ac,    2
                    """),
            new Expected("wickling-rhythm-card", "k1-marrowgate-bench", Bench.RECURRENT, """
                    tester-check,         off, off, ac, 2
                    applied-part-leakage, off, on,  ac, 2
                    """),
            new Expected("wickling-rhythm-card", "k1-marrowgate-bench", Bench.THIRD, """
                    tester-check,          off, off, ac,    2
                    touch-current,         off, on,  ac,    1
                    patient-leakage,       off, on,  ac dc, 3
                    patient-auxiliary,     off, on,  ac dc, 3
                    mains-on-applied-part, off, on,  ac,    6
                    """),
            new Expected("wickling-on-charger", "k1-marrowgate-bench", Bench.RECURRENT, """
                    supply-voltage,    off,  off, -,  3
                    tester-check,      off,  off, ac, 2
                    equipment-leakage, both, on,  ac, 1
                    """),
            new Expected("wickling-on-charger", "k1-marrowgate-bench", Bench.THIRD, """
                    supply-voltage,        off,       off, -,  3
                    tester-check,          off,       off, ac, 2
                    touch-current,         both open, on,  ac, 2
                    touch-current-between, both open, on,  ac, 1
                    """));

    @TestFactory
    Stream<DynamicTest> what_is_due_on_the_samples() {
        return EXPECTED.stream()
                .map(each -> DynamicTest.dynamicTest(each.device() + ", " + each.rules(), () -> {
                    Obligations due = Bench.due(Bench.device(each.device()), Bench.kit(each.kit()), each.rules());
                    assertThat(due.refusal()).isEmpty();
                    assertThat(counted(due)).isEqualTo(expanded(each.table()));
                }));
    }

    private static Map<String, Integer> counted(Obligations due) {
        Map<String, Integer> counts = new TreeMap<>();
        for (Obligation each : due.wanted()) {
            counts.merge(
                    each.quantity().word() + " " + each.state().word() + " " + each.mode() + " "
                            + each.component()
                                    .map(component -> component.word())
                                    .orElse("-"),
                    1,
                    Integer::sum);
        }
        return counts;
    }

    private static Map<String, Integer> expanded(String table) {
        Map<String, Integer> counts = new TreeMap<>();
        for (String line : table.lines().toList()) {
            String[] cells = line.trim().split(",\\s*");
            int count =
                    Stream.of(cells[4].split("\\+")).mapToInt(Integer::parseInt).sum();
            for (String state : states(cells[1])) {
                for (String mode : cells[2].split(" ")) {
                    for (String component : cells[3].split(" ")) {
                        counts.merge(cells[0] + " " + state + " " + mode + " " + component, count, Integer::sum);
                    }
                }
            }
        }
        return counts;
    }

    private static List<String> states(String words) {
        List<String> states = new ArrayList<>();
        for (String word : words.split(" ")) {
            switch (word) {
                case "both" -> states.addAll(List.of("normal", "reversed"));
                case "open" -> states.addAll(List.of("normal/supply-open", "reversed/supply-open"));
                case "earth" -> states.addAll(List.of("normal/earth-open", "reversed/earth-open"));
                default -> states.add(word);
            }
        }
        return states;
    }
}
