package leadwright.planner.oblige;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import leadwright.catalog.device.Device;
import leadwright.catalog.kit.Kit;
import leadwright.planner.plan.Obligation;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * The limit that each reading of a case gets, written down by hand: rule set, class, supply, type of the part, quantity, state
 * of the mains and component, and what is due. The device is that of {@link CombinationsTest}: an earthed frame (class I), an
 * unearthed knob, a part of two wires.
 *
 * <p>A state of {@code *} stands for every state in which the quantity is read; {@code none} for a reading that is taken and
 * not judged; {@code -} for no reading at all.
 */
class LimitOfEachCaseTest {
    private static final String TABLE = """
            recurrent class-1 detachable CF earth-resistance      *                    300 mohm
            recurrent class-1 fixed      BF earth-resistance      *                    300 mohm
            recurrent class-1 permanent  B  earth-resistance      *                    300 mohm
            recurrent class-1 detachable CF equipment-leakage     *                    500 uA
            recurrent class-2 fixed      BF equipment-leakage     *                    100 uA
            recurrent class-1 detachable CF applied-part-leakage  *                    50 uA
            recurrent class-2 adapter    BF applied-part-leakage  *                    5 mA
            recurrent battery none       CF applied-part-leakage  *                    50 uA
            recurrent class-1 fixed      B  applied-part-leakage  *                    -
            recurrent class-2 functional BF functional-earth-leakage *                 none
            recurrent class-2 permanent  BF touch-current         *                    100 uA
            third     class-1 detachable CF earth-resistance      *                    100 mohm
            third     class-1 fixed      CF earth-resistance      *                    200 mohm
            third     class-1 permanent  B  earth-resistance      *                    100 mohm
            third     class-1 fixed      BF earth-leakage         normal               5 mA
            third     class-1 fixed      BF earth-leakage         reversed/supply-open 10 mA
            third     class-2 functional BF functional-earth-leakage normal            5 mA
            third     class-2 functional BF functional-earth-leakage normal/supply-open 10 mA
            third     class-1 fixed      BF touch-current         reversed             100 uA
            third     class-1 fixed      BF touch-current         normal/earth-open    500 uA
            third     class-2 functional BF touch-current         normal/earth-open    100 uA
            third     class-1 fixed      B  patient-leakage/ac    normal               100 uA
            third     class-1 fixed      B  patient-leakage/dc    normal/earth-open    50 uA
            third     class-1 fixed      CF patient-leakage/ac    reversed             10 uA
            third     class-1 fixed      CF patient-leakage/ac    normal/supply-open   50 uA
            third     battery none       CF patient-auxiliary/ac  off                  10 uA
            third     class-1 fixed      BF mains-on-applied-part *                    5 mA
            third     class-1 fixed      CF mains-on-applied-part *                    50 uA
            third     class-1 fixed      B  mains-on-applied-part *                    -
            third     class-1 fixed      B  mains-on-unearthed-metal *                 500 uA
            third     class-1 fixed      CF mains-on-unearthed-metal *                 -
            second    class-1 fixed      BF earth-resistance      *                    none
            second    class-1 fixed      BF earth-leakage         normal               500 uA
            second    class-1 fixed      BF earth-leakage         normal/supply-open   1 mA
            second    class-1 fixed      BF touch-current         normal               100 uA
            second    class-1 fixed      BF touch-current         normal/earth-open    500 uA
            second    class-1 fixed      CF patient-leakage/ac    normal               10 uA
            second    class-1 fixed      B  patient-leakage/dc    normal/supply-open   50 uA
            second    class-1 fixed      BF mains-on-applied-part *                    5 mA
            second    class-1 fixed      CF mains-on-applied-part *                    50 uA
            second    class-1 fixed      B  mains-on-unearthed-metal *                 -
            nfpa      class-1 fixed      CF earth-resistance      *                    500 mohm
            nfpa      class-1 permanent  CF earth-resistance      *                    none
            nfpa      class-1 fixed      CF touch-current         normal               100 uA
            nfpa      class-1 fixed      CF touch-current         normal/earth-open    500 uA
            nfpa      class-1 fixed      CF touch-current         reversed             -
            nfpa      class-1 fixed      CF patient-leakage       normal               100 uA
            nfpa      class-1 fixed      B  patient-leakage       normal/earth-open    500 uA
            nfpa      battery none       CF patient-leakage       off                  100 uA
            leads     class-1 fixed      CF touch-current         *                    300 uA
            leads     class-1 fixed      CF patient-leakage       normal               10 uA
            leads     class-1 fixed      BF patient-leakage       reversed/earth-open  50 uA
            leads     class-1 fixed      B  patient-leakage       *                    100 uA
            leads     class-1 fixed      CF lead-to-lead          normal/earth-open    50 uA
            leads     class-1 fixed      B  lead-to-lead          *                    50 uA
            leads     battery none       CF lead-to-lead          off                  10 uA
            leads     class-1 fixed      BF mains-on-applied-part *                    50 uA
            es1       class-1 fixed      CF touch-current         normal               100 uA
            es1       class-1 fixed      CF touch-current         normal/earth-open    300 uA
            es1       class-1 fixed      B  patient-leakage       normal               10 uA
            es1       class-1 fixed      B  patient-leakage       normal/earth-open    100 uA
            es1       class-1 fixed      BF lead-to-lead          normal               10 uA
            lab       class-1 detachable B  earth-resistance      *                    100 mohm
            lab       class-1 fixed      B  earth-resistance      *                    200 mohm
            lab       class-1 permanent  B  earth-resistance      *                    none
            lab       class-1 fixed      B  touch-current/ac      reversed             500 uA
            lab       class-1 fixed      B  touch-current/ac      normal/supply-open   3.5 mA
            lab       class-2 fixed      B  touch-current/dc      normal               2 mA
            lab       class-1 fixed      B  touch-current/dc      normal/earth-open    15 mA
            bonding   class-1 permanent  B  bonding-resistance    *                    none
            bonding   class-1 permanent  B  bonding-voltage       *                    none
            uk        class-1 permanent  B  bonding-resistance    *                    100 mohm
            uk        class-1 permanent  B  bonding-voltage/ac    *                    10 mV
            uk        class-1 permanent  B  bonding-voltage/dc    *                    10 mV
            japan     class-1 permanent  B  bonding-voltage/dc    *                    -
            group-1   class-1 permanent  B  bonding-resistance    *                    700 mohm
            group-1   class-1 permanent  B  bonding-voltage       *                    none
            us-old    class-1 permanent  B  bonding-voltage       *                    40 mV
            us-old    class-1 permanent  B  bonding-resistance    *                    200 mohm
            """;

    private record Ruling(String id, String house) {}

    private static Ruling rules(String word) {
        return switch (word) {
            case "recurrent" -> new Ruling(Bench.RECURRENT, "");
            case "third" -> new Ruling(Bench.THIRD, "");
            case "second" -> new Ruling("iec-60601-1-ed2", "");
            case "nfpa" -> new Ruling("nfpa-99-2012", "");
            case "leads" -> new Ruling("us-leads-older", "");
            case "es1" -> new Ruling("us-leads-older", "where: es1-1993\n");
            case "lab" -> new Ruling("iec-61010-1", "");
            case "uk" -> new Ruling("bonding", "where: uk-imaging-room\n");
            case "japan" -> new Ruling("bonding", "where: japan\n");
            case "group-1" -> new Ruling("bonding", "where: group-1-room\n");
            case "us-old" -> new Ruling("bonding", "where: us-existing-critical\n");
            default -> new Ruling(word, "");
        };
    }

    @TestFactory
    Stream<DynamicTest> as_written_down() {
        return TABLE.lines()
                .map(line ->
                        DynamicTest.dynamicTest(line, () -> compare(line.trim().split("\\s+"))));
    }

    private static void compare(String[] cells) {
        Ruling rules = rules(cells[0]);
        Device device = CombinationsTest.device(cells[1], cells[2], cells[3]);
        Kit kit = CombinationsTest.kit(cells[0].equals("lab") ? "lab" : "-");
        Obligations due = Bench.due(device, kit, rules.id(), Bench.house(rules.house() + "paper: a4\n"));
        String[] quantity = cells[4].split("/");
        List<Obligation> readings = due.wanted().stream()
                .filter(each -> each.quantity().word().equals(quantity[0]))
                .filter(each -> quantity.length < 2
                        || each.component().orElseThrow().word().equals(quantity[1]))
                .filter(each -> cells[5].equals("*") || each.state().word().equals(cells[5]))
                // The cord alone has a limit of its own, or none.
                .filter(each -> !each.of().contains("cord"))
                .toList();
        String value = String.join(" ", List.of(cells).subList(6, cells.length));
        if (value.equals("-")) {
            assertThat(readings).isEmpty();
            return;
        }
        Set<String> limits = new TreeSet<>();
        readings.forEach(each ->
                limits.add(each.limit().map(limit -> limit.value().text()).orElse("none")));
        assertThat(limits).containsExactly(value);
        if (value.equals("none")) {
            assertThat(readings).allMatch(each -> each.note().orElse("").contains(Limits.NONE));
        }
    }
}
