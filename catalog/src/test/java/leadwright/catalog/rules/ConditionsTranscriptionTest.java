package leadwright.catalog.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.table.RuleSets;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Joining rules, states and earth-test sources a second time, as the tables print them, with mark and source keys. */
class ConditionsTranscriptionTest {

    /** Rule set, quantity, part type, method or subject; what is joined, against, earthed; mark; keys. */
    private static final String JOININGS = """
            iec-60601-1-ed3 patient-leakage             B  -           part       earth  nothing C
            iec-60601-1-ed3 patient-leakage             BF -           function   earth  nothing C GOST-249
            iec-60601-1-ed3 patient-leakage             CF -           connection earth  nothing C
            iec-60601-1-ed3 total-patient-leakage       B  -           type       earth  nothing B JIS12-p76
            iec-60601-1-ed3 total-patient-leakage       BF -           type       earth  nothing B JIS12-p76
            iec-60601-1-ed3 total-patient-leakage       CF -           type       earth  nothing B JIS12-p76
            iec-60601-1-ed3 patient-auxiliary           B  -           connection other-connections-of-device nothing C MG
            iec-60601-1-ed3 patient-auxiliary           CF -           connection other-connections-of-device nothing C MG
            iec-60601-1-ed3 mains-on-applied-part       BF -           function   earth  other-parts-metal-and-ports C
            iec-60601-1-ed3 mains-on-applied-part       CF -           connection earth  other-parts-metal-and-ports C
            iec-60601-1-ed3 total-mains-on-applied-part BF -           type       earth  other-parts-metal-and-ports C JIS12-p76
            iec-60601-1-ed3 mains-on-unearthed-metal    B  -           part       unearthed-metal nothing C
            iec-60601-1-ed3 mains-on-unearthed-metal    BF -           function   unearthed-metal nothing C
            iec-60601-1-ed3 mains-on-unearthed-metal    BF total       type       unearthed-metal nothing C JIS12-p76
            iec-60601-1-ed2 patient-leakage             B  -           part       earth  nothing C
            iec-60601-1-ed2 patient-leakage             BF -           function   earth  nothing C GOST-249
            iec-60601-1-ed2 patient-leakage             CF -           connection earth  nothing C
            iec-62353-2014  equipment-leakage           -  direct      housing-and-parts  earth nothing C
            iec-62353-2014  equipment-leakage           -  differential housing-and-parts earth nothing C
            iec-62353-2014  equipment-leakage           -  alternative housing-and-type-b earth nothing C
            iec-62353-2014  applied-part-leakage        BF direct      function   earth  housing-where-nothing-is-earthed C
            iec-62353-2014  applied-part-leakage        CF direct      function   earth  housing-where-nothing-is-earthed C
            iec-62353-2014  applied-part-leakage        CF alternative function   earth  housing-where-nothing-is-earthed C
            nfpa-99-2012    patient-leakage             B  -           device     earth  nothing C
            nfpa-99-2012    patient-leakage             CF -           device     earth  nothing C
            us-leads-older  patient-leakage             CF -           connection earth  nothing C
            us-leads-older  lead-to-lead                B  -           connection other-connections-of-device nothing C
            """;

    /** Rule set, quantity, class, polarities (n, nr), conditions, polarities of the source, components; mark. */
    private static final String STATES = """
            iec-60601-1-ed3 earth-leakage            class-1 nr none+supply-open            -  ac    B
            iec-60601-1-ed3 touch-current            class-1 nr none+supply-open+earth-open -  ac    B
            iec-60601-1-ed3 touch-current            class-2 nr none+supply-open            -  ac    B
            iec-60601-1-ed3 patient-leakage          class-1 nr none+supply-open+earth-open -  ac+dc B
            iec-60601-1-ed3 patient-leakage          class-2 nr none+supply-open            -  ac+dc B
            iec-60601-1-ed3 total-patient-leakage    class-1 nr none+supply-open+earth-open -  ac+dc B
            iec-60601-1-ed3 patient-auxiliary        class-1 nr none+supply-open+earth-open -  ac+dc C
            iec-60601-1-ed3 mains-on-applied-part    class-1 nr none                        nr ac    B
            iec-60601-1-ed3 mains-on-unearthed-metal class-2 nr none                        nr ac    B
            iec-60601-1-ed2 earth-leakage            class-1 nr none+supply-open            -  ac    C
            iec-60601-1-ed2 touch-current            class-1 nr none+supply-open+earth-open -  ac    C
            iec-60601-1-ed2 patient-leakage          class-1 nr none+supply-open+earth-open -  ac+dc C
            iec-60601-1-ed2 mains-on-applied-part    class-1 nr none                        nr ac    B
            nfpa-99-2012    touch-current            class-1 n  none+earth-open             -  ac    C
            nfpa-99-2012    touch-current            class-2 n  none                        -  ac    C
            nfpa-99-2012    patient-leakage          class-1 n  none+earth-open             -  ac    C
            us-leads-older  patient-leakage          class-1 nr none+earth-open             -  ac    C
            us-leads-older  lead-to-lead             class-1 nr none+earth-open             -  ac    C
            us-leads-older  mains-on-applied-part    class-1 nr none                        nr ac    C
            iec-61010-1     touch-current            class-1 nr none+supply-open+earth-open -  ac+dc C
            iec-61010-1     touch-current            class-2 nr none+supply-open            -  ac+dc C
            """;

    /** Rule set, least current, factor of the rated one, most volts without load, least time, mark, keys. */
    private static final String EARTH_TESTS = """
            iec-60601-1-ed3|25 A|1.5|6 V|5 s|C|GOST10-p62
            iec-62353-2014|200 mA|-|24 V|-|B|X353
            iec-61010-1|25 A|2|-|60 s|B|JY61010
            bonding|100 mA|-|-|-|B|EBME-MR
            """;

    private static RuleSet rules(String id) {
        return RuleSets.builtIn().find(id).orElseThrow();
    }

    @TestFactory
    Stream<DynamicTest> joinings() {
        return JOININGS.lines()
                .map(line -> DynamicTest.dynamicTest(line, () -> {
                    String[] cells = line.trim().split("\\s+");
                    QuantityKind quantity = QuantityKind.of(cells[1]).orElseThrow();
                    RuleCase asked = RuleCase.of(
                            quantity, Protection.CLASS_1, SupplyConnection.DETACHABLE_CORD, Optional.empty());
                    if (!cells[2].equals("-")) {
                        asked = asked.type(PartType.valueOf(cells[2]));
                    }
                    if (cells[3].equals("total")) {
                        asked = asked.subject("total");
                    } else if (!cells[3].equals("-")) {
                        asked = asked.method(Stream.of(Method.values())
                                .filter(method -> method.word().equals(cells[3]))
                                .findFirst());
                    }
                    JoiningRow row = rules(cells[0]).joining(asked).orElseThrow();
                    assertThat(row.joined().word()).isEqualTo(cells[4]);
                    assertThat(row.against().word()).isEqualTo(cells[5]);
                    assertThat(row.earthed().word()).isEqualTo(cells[6]);
                    assertThat(row.basis().mark().name()).isEqualTo(cells[7]);
                    assertThat(row.basis().sources()).containsAll(List.of(cells).subList(8, cells.length));
                }));
    }

    @TestFactory
    Stream<DynamicTest> states() {
        return STATES.lines()
                .map(line -> DynamicTest.dynamicTest(line, () -> {
                    String[] cells = line.trim().split("\\s+");
                    List<TestRow> rows = rules(cells[0])
                            .tests(QuantityKind.of(cells[1]).orElseThrow())
                            .stream()
                            .filter(row -> row.scope().classes().stream()
                                    .anyMatch(each -> each.word().equals(cells[2])))
                            .filter(row -> !row.polarities().isEmpty())
                            .toList();
                    assertThat(rows).hasSize(1);
                    TestRow row = rows.get(0);
                    assertThat(letters(row.polarities())).isEqualTo(cells[3]);
                    assertThat(words(row.scope().conditions().stream().map(Condition::word)))
                            .isEqualTo(Set.of(cells[4].split("\\+")));
                    assertThat(row.sourcePolarities().isEmpty() ? "-" : letters(row.sourcePolarities()))
                            .isEqualTo(cells[5]);
                    assertThat(words(row.scope().components().stream().map(Component::word)))
                            .isEqualTo(Set.of(cells[6].split("\\+")));
                    assertThat(row.basis().mark().name()).isEqualTo(cells[7]);
                }));
    }

    private static String letters(List<Polarity> polarities) {
        return polarities.stream().map(each -> each.word().substring(0, 1)).collect(Collectors.joining());
    }

    private static Set<String> words(Stream<String> words) {
        return words.collect(Collectors.toCollection(TreeSet::new));
    }

    @TestFactory
    Stream<DynamicTest> sources_of_the_earth_test() {
        return EARTH_TESTS
                .lines()
                .map(line -> DynamicTest.dynamicTest(line, () -> {
                    String[] cells = line.split("\\|");
                    assertThat(rules(cells[0]).earthTest()).hasSize(1);
                    EarthTestRow row = rules(cells[0]).earthTest().get(0);
                    assertThat(row.atLeast().text()).isEqualTo(cells[1]);
                    assertThat(row.factorOfRated().map(Object::toString).orElse("-"))
                            .isEqualTo(cells[2]);
                    assertThat(row.openCircuitAtMost()
                                    .map(volts -> volts.text())
                                    .orElse("-"))
                            .isEqualTo(cells[3]);
                    assertThat(row.lasting().map(time -> time.text()).orElse("-"))
                            .isEqualTo(cells[4]);
                    assertThat(row.basis().mark().name()).isEqualTo(cells[5]);
                    assertThat(row.basis().sources()).contains(cells[6]);
                }));
    }
}
