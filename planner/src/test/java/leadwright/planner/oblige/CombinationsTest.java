package leadwright.planner.oblige;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Shortfall;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * Class, supply, type of the part and what the tester can switch, in combination, each line counted by hand.
 *
 * <pre>
 *   frame (earthed, class I only)  ─┐
 *   knob  (bare metal, unearthed)  ─┤ device ─ part p with two wires a, b of one function
 * </pre>
 *
 * The last column names what the shortfalls are about, in the order in which the readings need it.
 */
class CombinationsTest {

    private static final String COLUMNS = "earth el fe equip ap touch patient aux mains metal";

    private static final String RECURRENT = """
            class   supply     type without            | earth el fe equip ap touch patient aux mains metal | missing
            class-1 detachable B    -                  | 1     0  0  2     0  0     0       0   0     0     | -
            class-1 detachable BF   -                  | 1     0  0  2     4  0     0       0   0     0     | -
            class-1 detachable CF   -                  | 1     0  0  2     4  0     0       0   0     0     | -
            class-1 fixed      B    -                  | 1     0  0  2     0  0     0       0   0     0     | -
            class-1 fixed      BF   -                  | 1     0  0  2     4  0     0       0   0     0     | -
            class-1 fixed      CF   -                  | 1     0  0  2     4  0     0       0   0     0     | -
            class-1 adapter    CF   -                  | 1     0  0  2     4  0     0       0   0     0     | -
            class-1 permanent  B    -                  | 1     0  0  0     0  1     0       0   0     0     | -
            class-1 permanent  CF   -                  | 1     0  0  0     0  1     0       0   0     0     | fixed-plant
            class-2 detachable B    -                  | 0     0  0  2     0  0     0       0   0     0     | -
            class-2 detachable CF   -                  | 0     0  0  2     4  0     0       0   0     0     | -
            class-2 fixed      BF   -                  | 0     0  0  2     4  0     0       0   0     0     | -
            class-2 adapter    BF   -                  | 0     0  0  2     4  0     0       0   0     0     | -
            class-2 functional BF   -                  | 0     0  2  4     4  0     0       0   0     0     | -
            class-2 permanent  BF   -                  | 0     0  0  0     0  1     0       0   0     0     | fixed-plant
            battery none       B    -                  | 0     0  0  0     0  0     0       0   0     0     | -
            battery none       CF   -                  | 0     0  0  0     2  0     0       0   0     0     | -
            class-1 fixed      BF   supply             | 1     0  0  2     4  0     0       0   0     0     | -
            class-1 fixed      BF   polarity           | 1     0  0  1     2  0     0       0   0     0     | tester-switch-polarity
            class-2 functional BF   earth              | 0     0  2  2     4  0     0       0   0     0     | tester-switch-earth
            """;

    private static final String THIRD = """
            class   supply     type without               | earth el fe equip ap touch patient aux mains metal | missing
            class-1 detachable B    -                     | 2     4  0  0     0  8     12      24  0     4     | -
            class-1 detachable BF   -                     | 2     4  0  0     0  8     12      24  4     4     | -
            class-1 detachable CF   -                     | 2     4  0  0     0  8     24      24  8     0     | -
            class-1 fixed      B    -                     | 1     4  0  0     0  8     12      24  0     4     | -
            class-1 fixed      BF   -                     | 1     4  0  0     0  8     12      24  4     4     | -
            class-1 fixed      CF   -                     | 1     4  0  0     0  8     24      24  8     0     | -
            class-1 adapter    CF   -                     | 1     4  0  0     0  8     24      24  8     0     | -
            class-1 permanent  B    -                     | 1     0  0  0     0  1     0       0   0     0     | fixed-plant
            class-1 permanent  CF   -                     | 1     0  0  0     0  1     0       0   0     0     | fixed-plant
            class-2 detachable B    -                     | 0     0  0  0     0  4     8       16  0     4     | -
            class-2 detachable BF   -                     | 0     0  0  0     0  4     8       16  4     4     | -
            class-2 fixed      CF   -                     | 0     0  0  0     0  4     16      16  8     0     | -
            class-2 adapter    BF   -                     | 0     0  0  0     0  4     8       16  4     4     | -
            class-2 functional BF   -                     | 0     0  4  0     0  6     12      16  4     4     | -
            class-2 permanent  BF   -                     | 0     0  0  0     0  1     0       0   0     0     | fixed-plant
            battery none       B    -                     | 0     0  0  0     0  1     2       4   0     2     | -
            battery none       BF   -                     | 0     0  0  0     0  1     2       4   2     2     | -
            battery none       CF   -                     | 0     0  0  0     0  1     4       4   4     0     | -
            class-1 fixed      BF   earth                 | 1     4  0  0     0  4     8       16  4     4     | tester-switch-earth
            class-1 fixed      BF   supply                | 1     2  0  0     0  6     8       16  4     4     | tester-switch-supply
            class-1 fixed      BF   polarity              | 1     2  0  0     0  4     6       12  2     2     | tester-switch-polarity
            class-1 fixed      CF   earth+supply          | 1     2  0  0     0  2     8       8   8     0     | tester-switch-supply+tester-switch-earth
            class-1 fixed      CF   earth+supply+polarity | 1     1  0  0     0  1     4       4   4     0     | tester-switch-polarity+tester-switch-supply+tester-switch-earth
            class-2 fixed      B    supply                | 0     0  0  0     0  2     4       8   0     4     | tester-switch-supply
            class-2 fixed      BF   polarity              | 0     0  0  0     0  2     4       8   2     2     | tester-switch-polarity
            class-2 functional CF   earth                 | 0     0  4  0     0  4     16      16  8     0     | tester-switch-earth
            battery none       CF   earth+supply+polarity | 0     0  0  0     0  1     4       4   4     0     | -
            """;

    private static final String MORE_COLUMNS = "earth el touch patient aux lead mains bond volt";

    /** Enclosure leakage is read at the knob only, in six states; no row for the functional earth, none for metal. */
    private static final String SECOND = """
            class   supply     type without  | earth el touch patient aux lead mains bond volt | missing
            class-1 detachable B    -        | 2     4  6     12      24  0    0     0    0    | -
            class-1 detachable CF   -        | 2     4  6     24      24  0    8     0    0    | -
            class-1 fixed      BF   -        | 1     4  6     12      24  0    4     0    0    | -
            class-1 adapter    CF   -        | 1     4  6     24      24  0    8     0    0    | -
            class-1 permanent  B    -        | 1     0  1     0       0   0    0     0    0    | fixed-plant
            class-2 fixed      CF   -        | 0     0  4     16      16  0    8     0    0    | -
            class-2 functional BF   -        | 0     0  6     12      16  0    4     0    0    | -
            class-2 permanent  BF   -        | 0     0  1     0       0   0    0     0    0    | fixed-plant
            battery none       B    -        | 0     0  1     2       4   0    0     0    0    | -
            battery none       CF   -        | 0     0  1     4       4   0    4     0    0    | -
            class-1 fixed      BF   earth    | 1     4  4     8       16  0    4     0    0    | tester-switch-earth
            class-1 fixed      CF   supply   | 1     2  4     16      16  0    8     0    0    | tester-switch-supply
            """;

    /** One polarity, ground intact and open; frame and knob, on and switched off; all leads as one, on. */
    private static final String NFPA = """
            class   supply     type without  | earth el touch patient aux lead mains bond volt | missing
            class-1 detachable B    -        | 1     0  8     2       0   0    0     0    0    | -
            class-1 detachable CF   -        | 1     0  8     2       0   0    0     0    0    | -
            class-1 fixed      BF   -        | 1     0  8     2       0   0    0     0    0    | -
            class-1 adapter    CF   -        | 1     0  8     2       0   0    0     0    0    | -
            class-1 permanent  CF   -        | 1     0  0     0       0   0    0     0    0    | -
            class-2 fixed      BF   -        | 0     0  2     1       0   0    0     0    0    | -
            class-2 functional CF   -        | 0     0  2     1       0   0    0     0    0    | -
            class-2 permanent  BF   -        | 0     0  0     0       0   0    0     0    0    | -
            battery none       CF   -        | 0     0  0     1       0   0    0     0    0    | -
            class-1 fixed      BF   earth    | 1     0  4     1       0   0    0     0    0    | tester-switch-earth
            class-1 fixed      BF   polarity | 1     0  8     2       0   0    0     0    0    | -
            class-1 fixed      BF   supply   | 1     0  8     2       0   0    0     0    0    | -
            """;

    /** Both polarities, ground intact and open; each lead to earth, against the other, and with mains on it. */
    private static final String LEADS = """
            class   supply     type without  | earth el touch patient aux lead mains bond volt | missing
            class-1 detachable B    -        | 1     0  6     8       0   8    0     0    0    | -
            class-1 detachable CF   -        | 1     0  6     8       0   8    8     0    0    | -
            class-1 fixed      BF   -        | 1     0  6     8       0   8    8     0    0    | -
            class-1 permanent  CF   -        | 1     0  0     0       0   0    0     0    0    | -
            class-2 fixed      BF   -        | 0     0  2     4       0   4    8     0    0    | -
            class-2 adapter    B    -        | 0     0  2     4       0   4    0     0    0    | -
            battery none       CF   -        | 0     0  0     2       0   2    4     0    0    | -
            class-1 fixed      CF   earth    | 1     0  2     4       0   4    8     0    0    | tester-switch-earth
            class-1 fixed      BF   polarity | 1     0  3     4       0   4    4     0    0    | tester-switch-polarity
            """;

    /** A.c. and d.c. through the laboratory network ({@code lab}); the parts of the device are no matter of this rule set. */
    private static final String LABORATORY = """
            class   supply     type without  | earth el touch patient aux lead mains bond volt | missing
            class-1 detachable B    lab      | 2     0  16    0       0   0    0     0    0    | -
            class-1 fixed      B    lab      | 1     0  16    0       0   0    0     0    0    | -
            class-1 permanent  B    lab      | 1     0  2     0       0   0    0     0    0    | -
            class-2 fixed      B    lab      | 0     0  8     0       0   0    0     0    0    | -
            class-2 functional B    lab      | 0     0  12    0       0   0    0     0    0    | -
            battery none       B    lab      | 0     0  2     0       0   0    0     0    0    | -
            class-1 fixed      B    -        | 1     0  0     0       0   0    0     0    0    | measuring-network
            class-1 fixed      B    lab+supply | 1   0  12    0       0   0    0     0    0    | tester-switch-supply
            """;

    /** The earthed frame is bonded; the voltage is read at frame and knob. */
    private static final String BONDING = """
            class   supply     type without  | earth el touch patient aux lead mains bond volt | missing
            class-1 permanent  B    -        | 0     0  0     0       0   0    0     1    2    | -
            class-2 permanent  CF   -        | 0     0  0     0       0   0    0     0    1    | -
            class-1 fixed      B    -        | 0     0  0     0       0   0    0     0    0    | -
            battery none       CF   -        | 0     0  0     0       0   0    0     0    0    | -
            class-1 permanent  B    lab      | 0     0  0     0       0   0    0     1    0    | measuring-network
            """;

    @TestFactory
    Stream<DynamicTest> counted_by_hand() {
        return Stream.of(
                        lines(Bench.RECURRENT, RECURRENT, COLUMNS),
                        lines(Bench.THIRD, THIRD, COLUMNS),
                        lines("iec-60601-1-ed2", SECOND, MORE_COLUMNS),
                        lines("nfpa-99-2012", NFPA, MORE_COLUMNS),
                        lines("us-leads-older", LEADS, MORE_COLUMNS),
                        lines("iec-61010-1", LABORATORY, MORE_COLUMNS),
                        lines("bonding", BONDING, MORE_COLUMNS))
                .flatMap(each -> each);
    }

    private static Stream<DynamicTest> lines(String rules, String table, String columns) {
        return table.lines()
                .skip(1)
                .map(line -> DynamicTest.dynamicTest(
                        rules + ": "
                                + line.substring(0, line.indexOf('|')).trim().replaceAll(" +", " "),
                        () -> compare(rules, line, columns)));
    }

    private static void compare(String rules, String line, String names) {
        String[] columns = line.split("\\|");
        String[] given = columns[0].trim().split(" +");
        Obligations due = Bench.due(device(given[0], given[1], given[2]), kit(given[3]), rules);

        Map<String, Integer> expected = new LinkedHashMap<>();
        String[] counts = columns[1].trim().split(" +");
        for (int i = 0; i < counts.length; i++) {
            expected.put(names.split(" ")[i], Integer.parseInt(counts[i]));
        }
        assertThat(counted(due, names)).isEqualTo(expected);
        String missing = due.shortfalls().stream()
                .map(Shortfall::about)
                .map(about -> about.replace(' ', '-'))
                .collect(Collectors.joining("+"));
        assertThat(missing.isEmpty() ? "-" : missing).isEqualTo(columns[2].trim());
        boolean outlet = !given[1].equals("permanent")
                && !given[1].equals("none")
                && expected.values().stream().anyMatch(count -> count > 0);
        assertThat(due.wanted().stream()
                        .filter(each -> each.quantity().word().equals("supply-voltage"))
                        .count())
                .isEqualTo(outlet ? 3 : 0);
    }

    private static Map<String, Integer> counted(Obligations due, String names) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        for (String column : names.split(" ")) {
            counts.put(column, 0);
        }
        for (Obligation each : due.wanted()) {
            String column = switch (each.quantity()) {
                case EARTH_RESISTANCE -> "earth";
                case EARTH_LEAKAGE -> "el";
                case FUNCTIONAL_EARTH_LEAKAGE -> "fe";
                case EQUIPMENT_LEAKAGE -> "equip";
                case APPLIED_PART_LEAKAGE -> "ap";
                case TOUCH_CURRENT -> "touch";
                case PATIENT_LEAKAGE -> "patient";
                case PATIENT_AUXILIARY -> "aux";
                case MAINS_ON_APPLIED_PART -> "mains";
                case LEAD_TO_LEAD -> "lead";
                case BONDING_RESISTANCE -> "bond";
                case BONDING_VOLTAGE -> "volt";
                case MAINS_ON_UNEARTHED_METAL -> "metal";
                case SUPPLY_VOLTAGE, TESTER_CHECK -> "checks";
                default -> throw new AssertionError("not expected: " + each.key());
            };
            counts.merge(column, 1, Integer::sum);
        }
        counts.remove("checks");
        return counts;
    }

    static Device device(String protection, String supply, String type) {
        List<String> lines = new ArrayList<>(List.of("leadwright: device/1", "name: Two-wire device"));
        String rated = ", system: line-neutral, voltage: 230 V, frequency: 50 Hz, current: 0.5 A";
        String connection = switch (supply) {
            case "detachable" -> "detachable-cord, inlet: iec-60320-c14, cord-plug: bs-1363" + rated;
            case "fixed", "functional" -> "fixed-cord, cord-plug: bs-1363" + rated;
            case "permanent" -> "permanent" + rated;
            case "adapter" -> "external-adapter, cord-plug: bs-1363" + rated;
            default -> "none";
        };
        lines.add("supply: {connection: " + connection + "}");
        if (supply.equals("adapter")) {
            lines.add("adapter: {class: " + protection + ", functional-earth: none}");
        }
        if (supply.equals("functional")) {
            lines.add("functional-earth: via-cord");
        }
        lines.add("protection: " + (protection.equals("battery") ? "internally-powered" : protection));
        lines.add("battery: " + (protection.equals("battery") ? "only" : "none"));
        lines.add("mains-switch: both-poles");
        lines.add("start-up: 5 s");
        lines.add("shut-down: 2 s");
        lines.add("tolerates-power-cut: yes");
        lines.add("applied-parts:");
        lines.add("  - {id: p, name: Part, type: " + type + ", connections: [{id: a, terminal: snap-socket},"
                + " {id: b, terminal: snap-socket}]}");
        lines.add("touch-points:");
        if (protection.equals("class-1")) {
            lines.add("  - {id: frame, name: Frame, earthed: yes, surface: metal}");
        }
        lines.add("  - {id: knob, name: Knob, earthed: no, surface: metal}");
        return Bench.deviceFrom(String.join("\n", lines) + "\n");
    }

    static Kit kit(String without) {
        List<String> switches = new ArrayList<>(List.of("earth", "supply", "polarity"));
        switches.removeAll(List.of(without.split("\\+")));
        String text = Bench.sample("k1-marrowgate-bench")
                .replace("switches: [earth, supply, polarity]", "switches: [" + String.join(", ", switches) + "]");
        boolean laboratory = List.of(without.split("\\+")).contains("lab");
        return Bench.kitFrom(laboratory ? text.replace("networks: [iec-60601]", "networks: [iec-60990]") : text);
    }
}
