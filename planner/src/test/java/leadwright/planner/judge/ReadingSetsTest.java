package leadwright.planner.judge;

import static leadwright.planner.judge.TestRecord.Result.FAIL;
import static leadwright.planner.judge.TestRecord.Result.NOT_COMPLETE;
import static leadwright.planner.judge.TestRecord.Result.PASS;
import static leadwright.planner.judge.TestRecord.Result.VOID;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import leadwright.catalog.read.ReadingsReader;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.text.Outcome;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Sets of readings made by hand, each with the verdict that a person gave it; its first line says what it shows. */
class ReadingSetsTest {

    /**
     * What is known of a set.
     *
     * @param verdicts of single readings; of the others with a limit, pass
     */
    record Known(String file, String rule, TestRecord.Result result, Map<String, Verdict> verdicts, List<String> said) {
        @Override
        public String toString() {
            return file + ", " + rule;
        }
    }

    private static Known known(String file, TestRecord.Result result, String verdicts, String... said) {
        return known(file, "house", result, verdicts, said);
    }

    private static Known known(String file, String rule, TestRecord.Result result, String verdicts, String... said) {
        Map<String, Verdict> map = new TreeMap<>();
        for (String each : verdicts.isEmpty() ? new String[0] : verdicts.split(" ")) {
            map.put(each.split("=")[0], Verdict.valueOf(each.split("=")[1]));
        }
        return new Known(file, rule, result, map, List.of(said));
    }

    private static final String ALL_VOID =
            "R01=VOID R02=VOID R03=VOID R04=VOID R05=VOID R06=VOID R07=VOID R08=VOID R09=VOID R10=VOID R11=VOID R12=VOID";
    private static final String CURRENTS_VOID = "R07=VOID R08=VOID R09=VOID R10=VOID R11=VOID";

    static Stream<Known> sets() {
        return Stream.of(
                known("all-well.yaml", PASS, "", "all 7 readings with a limit are inside it"),
                known("all-well.json", PASS, ""),
                known("all-well.csv", PASS, ""),
                known("from-a-spreadsheet.csv", PASS, "", "not read again at the end"),
                known("short-fingerprint.yaml", PASS, ""),
                known("guard-band.yaml", PASS, "R09=PASS_INSIDE_UNCERTAINTY", "above 90 % of the limit"),
                known("guard-band.yaml", "guard-band", FAIL, "R09=PASS_INSIDE_UNCERTAINTY", "at most 48.267 uA"),
                known("edge-of-guard-band.yaml", "guard-band", PASS, ""),
                known("fail-near.yaml", FAIL, "R09=FAIL_INSIDE_UNCERTAINTY"),
                known("fail-far.yaml", FAIL, "R09=FAIL", "not accepted: R09"),
                known(
                        "leads-in-the-value.yaml",
                        PASS,
                        "R05=PASS_INSIDE_UNCERTAINTY",
                        "inside the limit only because 62 mohm of leads are taken off"),
                known(
                        "leads-never-nulled.yaml",
                        FAIL,
                        "R05=FAIL",
                        "the leads were not nulled: their resistance may be what is too much"),
                known("cord-in-the-null.yaml", PASS, "", "the device's own cord was not in the path"),
                known("null-drift.yaml", VOID, "R05=VOID R06=VOID", "62 mohm at the start and 90 mohm at the end"),
                known("null-drift-and-fail.yaml", FAIL, "R05=FAIL R06=VOID"),
                known("less-than-nothing.yaml", VOID, "R06=VOID", "less than nothing by more than the tester's floor"),
                known("past-due.yaml", VOID, ALL_VOID, "due on 2027-08-31, before the readings of 2027-09-01"),
                known("last-good-day.yaml", PASS, ""),
                known("ninety-per-cent.yaml", PASS, "", "above 90 % of the limit: compare with earlier values"),
                known("low-mains.yaml", FAIL, "R07=FAIL"),
                known("high-mains.yaml", PASS, "R09=PASS_INSIDE_UNCERTAINTY"),
                known("dead-tester.yaml", VOID, "R04=VOID R12=VOID " + CURRENTS_VOID, "a blown fuse"),
                known("isolated-supply.yaml", VOID, "R01=VOID R02=VOID " + CURRENTS_VOID, "not referenced to earth"),
                known("neutral-high.yaml", VOID, "R02=VOID " + CURRENTS_VOID, "where a few volts are usual"),
                known(
                        "earth-failed.yaml",
                        FAIL,
                        "R05=FAIL R07=NOT_JUDGED R08=NOT_JUDGED R09=NOT_JUDGED R10=NOT_JUDGED R11=NOT_JUDGED",
                        "not taken: the earth failed"),
                known("stopped.yaml", NOT_COMPLETE, "R10=NOT_JUDGED", "not taken: called away"),
                known("beyond-the-range.yaml", FAIL, "R05=FAIL"),
                known("range-too-short.yaml", NOT_COMPLETE, "R11=NOT_JUDGED", "it cannot tell"),
                known("raw-source.yaml", PASS, "R09=PASS_INSIDE_UNCERTAINTY R10=PASS"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sets")
    void isJudgedAsKnown(Known known) {
        Judge.Options options = known.rule().equals("house") ? Sets.HOUSE : Sets.GUARD_BAND;
        TestRecord record = Sets.judged(Sets.plan(), known.file(), options);
        Map<String, Verdict> verdicts = new TreeMap<>();
        for (Judged each : record.judged()) {
            List<Verdict> usual =
                    each.limit().isPresent() ? List.of(Verdict.PASS) : List.of(Verdict.AS_EXPECTED, Verdict.NOT_JUDGED);
            if (!usual.contains(each.verdict())) {
                verdicts.put(each.planned().id(), each.verdict());
            }
        }
        Map<String, Verdict> due = new TreeMap<>(known.verdicts());
        due.values().removeIf(each -> each == Verdict.PASS);
        assertThat(verdicts).isEqualTo(due);
        assertThat(record.result()).isEqualTo(known.result());
        assertThat(record.provisional()).isTrue();
        List<String> said = new ArrayList<>(record.because());
        record.judged().forEach(each -> {
            said.add(each.because());
            said.addAll(each.flags());
        });
        known.said().forEach(words -> assertThat(String.join("\n", said)).contains(words));
    }

    /** A set that is refused, and what is said of it: {@code line:column} and a piece of the message. */
    record Refused(String file, List<String> problems) {
        @Override
        public String toString() {
            return file;
        }
    }

    static Stream<Refused> refused() {
        return Stream.of(
                new Refused(
                        "inverted-unit.yaml",
                        List.of("16:22 '120 Mohm' cannot be earth-resistance", "20:22 '12 mohm' is no value of R09")),
                new Refused("another-plan.yaml", List.of("3:7 these are readings for plan '0123456789abcdef'")),
                new Refused("missing.yaml", List.of("2:1 these readings of the plan are missing: R06, R10")),
                new Refused("unknown-id.yaml", List.of("24:10 the plan has no reading 'R99'")),
                new Refused("duplicate.yaml", List.of("24:10 id 'R09' stands twice, first in line 20")),
                new Refused("no-mains-voltage.yaml", List.of("2:1 key 'mains-voltage' is missing")),
                new Refused("wrong-occasion.yaml", List.of("4:11 the plan is for the occasion 'recurrent'")),
                new Refused(
                        "impossible.yaml",
                        List.of(
                                "18:22 'value' is '-3 uA', less than nothing",
                                "19:22 'value': 'NaN uA' is not a number with its unit")),
                new Refused(
                        "broken.csv",
                        List.of(
                                "9:5 'value': '1.2' has no unit",
                                "11:5 'value': '99' has no unit",
                                "11:13 the header names no column for this cell",
                                "15:5 'value': '218 uA",
                                "15:5 this quoted cell has no end")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("refused")
    void isRefusedWithEveryPlace(Refused set) {
        Outcome<Readings> readings = Sets.readings(set.file());
        List<Problem> problems = readings.found()
                .map(each -> Judge.judge(Sets.plan(), each, Sets.HOUSE).problems())
                .orElseGet(readings::problems);
        assertThat(problems).hasSameSizeAs(set.problems());
        for (int i = 0; i < problems.size(); i++) {
            Problem problem = problems.get(i);
            assertThat(problem.file()).isEqualTo(set.file());
            assertThat(problem.line() + ":" + problem.column() + " " + problem.message())
                    .startsWith(set.problems().get(i));
        }
    }

    /** What cannot be told from the file alone is said together too: an ampere of leakage. */
    @Test
    void anAmpereOfLeakageIsNoReading() {
        String text =
                new String(Sets.bytes("readings/all-well.yaml"), StandardCharsets.UTF_8).replace("12.4 uA", "12.4 A");
        Readings readings = ReadingsReader.read("r.yaml", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
        assertThat(Judge.judge(Sets.plan(), readings, Sets.HOUSE).problems())
                .singleElement()
                .satisfies(each -> assertThat(each.message()).contains("1 A and more"));
    }

    @Test
    void withoutADayThereIsNoRecordAndTheOptionGivesOne() {
        String text = new String(Sets.bytes("readings/all-well.yaml"), StandardCharsets.UTF_8)
                .replace("date: 2027-01-10\n", "");
        Readings readings = ReadingsReader.read("r.yaml", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
        assertThat(Judge.judge(Sets.plan(), readings, Sets.HOUSE).problems())
                .singleElement()
                .satisfies(each -> assertThat(each.message()).contains("key 'date' is missing"));
        Judge.Options late =
                new Judge.Options(Optional.empty(), Optional.of(LocalDate.of(2027, 9, 1)), Optional.empty());
        assertThat(Judge.judge(Sets.plan(), readings, late).orThrow().result()).isEqualTo(VOID);
        assertThat(Judge.judge(Sets.plan(), Sets.readings("all-well.yaml").orThrow(), late)
                        .problems())
                .singleElement()
                .satisfies(each -> assertThat(each.message()).contains("leave one out"));
    }
}
