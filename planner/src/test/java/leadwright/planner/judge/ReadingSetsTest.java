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
import org.junit.jupiter.params.provider.CsvSource;
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
                known("isolated-supply.yaml", VOID, "R01=VOID " + CURRENTS_VOID, "not referenced to earth"),
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

    // ---- what the plan makes of them

    @Test
    void leakageIsCountedAtNominalMainsAndNotTwice() {
        TestRecord low = Sets.judged(Sets.plan(), "low-mains.yaml", Sets.HOUSE);
        assertThat(Sets.reading(low, "R07").counted().orElseThrow().text()).isEqualTo("511.112 uA");
        // The source's reading was corrected by the tester.
        assertThat(Sets.reading(low, "R09").counted().orElseThrow().text()).isEqualTo("12.4 uA");
        TestRecord high = Sets.judged(Sets.plan(), "high-mains.yaml", Sets.HOUSE);
        assertThat(Sets.reading(high, "R07").counted().orElseThrow().text()).isEqualTo("478.4 uA");
        assertThat(Sets.reading(high, "R09").counted().orElseThrow().text()).isEqualTo("49 uA");
        PlannedTest silent = Sets.planWith("\"nominal-mains\": \"Annex C\"", "\"nominal-mains\": null")
                .orThrow();
        TestRecord uncorrected = Sets.judged(silent, "low-mains.yaml", Sets.HOUSE);
        assertThat(uncorrected.result()).isEqualTo(PASS);
        assertThat(Sets.reading(uncorrected, "R07").atNominal()).isFalse();
    }

    @Test
    void aRawReadingIsJudgedAtTheLeastThatADeviceAtItsLimitShows() {
        PlannedTest raw = Sets.planWith("\"reading\": \"corrected\"", "\"reading\": \"raw\"")
                .orThrow();
        TestRecord record = Sets.judged(raw, "raw-source.yaml", Sets.HOUSE);
        Judged ecg = Sets.reading(record, "R09");
        // 1/(1/50 uA + 1/3.5 mA) and 1/(1/5 mA + 1/3.5 mA): 49.3 uA and 2.06 mA.
        assertThat(ecg.limit().orElseThrow().value().text()).isEqualTo("49.295 uA");
        assertThat(ecg.verdict()).isEqualTo(Verdict.FAIL_INSIDE_UNCERTAINTY);
        assertThat(Sets.reading(record, "R11").limit().orElseThrow().value().text())
                .isEqualTo("2.058823 mA");
        assertThat(record.result()).isEqualTo(FAIL);
        assertThat(String.join("\n", record.notes())).contains("raw");
    }

    /** A raw source may follow the mains or not: it is corrected upwards alone. */
    @Test
    void aRawReadingIsNeverCorrectedTowardsAPass() {
        PlannedTest raw = Sets.planWith("\"reading\": \"corrected\"", "\"reading\": \"raw\"")
                .orThrow();
        TestRecord low = Sets.judged(raw, "low-mains.yaml", Sets.HOUSE);
        assertThat(Sets.reading(low, "R09").counted().orElseThrow().text()).isEqualTo("13.778 uA");
        TestRecord high = Sets.judged(raw, "high-mains.yaml", Sets.HOUSE);
        assertThat(Sets.reading(high, "R09").counted().orElseThrow().text()).isEqualTo("49 uA");
    }

    /** With four wires the leads do not count: taking them off would help a bad earth to pass. */
    @Test
    void withFourWiresNothingIsTakenOff() {
        PlannedTest four = Sets.planWith("\"two-wire\"", "\"four-wire\"").orThrow();
        TestRecord record = Sets.judged(four, "leads-in-the-value.yaml", Sets.HOUSE);
        assertThat(Sets.reading(record, "R05").counted().orElseThrow().text()).isEqualTo("340 mohm");
        assertThat(record.result()).isEqualTo(FAIL);
        assertThat(Sets.judged(four, "leads-never-nulled.yaml", Sets.HOUSE).judged())
                .allSatisfy(each -> assertThat(each.flags()).isEmpty());
    }

    /** Below 60 uA may be below 50 uA or not. */
    @Test
    void aRangeThatEndsBeyondTheLimitTellsNothing() {
        TestRecord record = changed("12.4 uA", "\"< 60 uA\"");
        assertThat(Sets.reading(record, "R09").verdict()).isEqualTo(Verdict.NOT_JUDGED);
        assertThat(record.result()).isEqualTo(NOT_COMPLETE);
        assertThat(changed("12.4 uA", "\"> 60 uA\"").result()).isEqualTo(FAIL);
        assertThat(changed("12.4 uA", "\"< 40 uA\"").result()).isEqualTo(PASS);
    }

    private static TestRecord changed(String piece, String instead) {
        String text = new String(Sets.bytes("readings/all-well.yaml"), StandardCharsets.UTF_8).replace(piece, instead);
        Readings readings = ReadingsReader.read("r.yaml", text.getBytes(StandardCharsets.UTF_8))
                .orThrow();
        return Judge.judge(Sets.plan(), readings, Sets.HOUSE).orThrow();
    }

    @Test
    void twinsThatShowTheSameAreAskedAbout() {
        TestRecord record = changed("218 uA", "212 uA");
        assertThat(Sets.reading(record, "R07").flags())
                .containsExactly("the same to the last digit as R08 in the other polarity: was it reversed?");
        assertThat(Sets.reading(record, "R08").flags()).hasSize(1);
        // Polarity of the tester's own source is no matter of the mains.
        assertThat(Sets.reading(changed("13 uA", "12.4 uA"), "R09").flags()).isEmpty();
    }

    /** R06 made an insulation reading of at least 2 Mohm; accuracy 10 % and 0.1 Mohm: U = 2 × 0.3 / √3 Mohm. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "70 Mohm, PASS",
        "2.35 Mohm, PASS",
        "2.3 Mohm, PASS_INSIDE_UNCERTAINTY",
        "2 Mohm, PASS_INSIDE_UNCERTAINTY",
        "1.9 Mohm, FAIL_INSIDE_UNCERTAINTY",
        "1.6 Mohm, FAIL",
        "> 50 Mohm, PASS",
        "> 1 Mohm, NOT_JUDGED",
        "< 1 Mohm, FAIL",
        "open, NOT_JUDGED"
    })
    void aLimitFromBelow(String shown, Verdict verdict) {
        String plan = new String(Sets.bytes("plan.json"), StandardCharsets.UTF_8);
        int at = plan.indexOf("\"id\": \"R06\"");
        String insulation = plan.substring(0, at)
                + plan.substring(at)
                        .replaceFirst("\"quantity\": \"earth-resistance\"", "\"quantity\": \"insulation-resistance\"")
                        .replaceFirst("iec-62353-earth-plug-to-part", "iec-62353-insulation-mains-to-earth")
                        .replaceFirst("\"at-most\": \"300 mohm\"", "\"at-least\": \"2 Mohm\"");
        PlannedTest planned = PlanFile.read(
                        "p",
                        insulation
                                .replace(
                                        "\"accuracy\": {",
                                        "\"accuracy\": {\"insulation\": {\"reading\": \"10 %\", \"floor\": \"0.1 Mohm\"},")
                                .getBytes(StandardCharsets.UTF_8))
                .orThrow();
        String text = new String(Sets.bytes("readings/all-well.yaml"), StandardCharsets.UTF_8)
                .replace("value: 118 mohm", "value: \"" + shown + "\"");
        Readings readings =
                ReadingsReader.read("r", text.getBytes(StandardCharsets.UTF_8)).orThrow();
        TestRecord record = Judge.judge(planned, readings, Sets.HOUSE).orThrow();
        assertThat(Sets.reading(record, "R06").verdict()).isEqualTo(verdict);
        // The leads' resistance is no matter of megohms.
        assertThat(Sets.reading(record, "R06").leadsOff()).isEmpty();
    }

    /** R02 made the proof that the earth lead is off. */
    @Test
    void anEarthLeadThatIsStillOnVoidsTheLeakage() {
        PlannedTest planned = Sets.planWith(
                        "\"quantity\": \"supply-voltage\", \"clause\": \"bench practice\", \"of\": [\"outlet\"], \"measured\":"
                                + " [], \"against\": [], \"earthed\": [], \"place\": null, \"hookup\": null, \"polarity\": null,"
                                + " \"fault\": \"none\", \"mode\": \"off\", \"source-polarity\": null, \"method\": null,"
                                + " \"component\": null, \"network\": null, \"limit\": null, \"foreseen\": null, \"state\":"
                                + " \"off\", \"key\": \"supply-voltage/neutral-to-earth/off\"",
                        "\"quantity\": \"proof\", \"clause\": \"bench practice\", \"of\": [\"earth-lead\"], \"mode\": \"off\","
                                + " \"limit\": null, \"state\": \"off\", \"key\": \"proof/earth-lead-off/off\"")
                .orThrow();
        String text = new String(Sets.bytes("readings/all-well.yaml"), StandardCharsets.UTF_8);
        Readings off = ReadingsReader.read("r", text.replace("1.2 V", "open").getBytes(StandardCharsets.UTF_8))
                .orThrow();
        assertThat(Judge.judge(planned, off, Sets.HOUSE).orThrow().result()).isEqualTo(PASS);
        Readings on = ReadingsReader.read("r", text.replace("1.2 V", "85 mohm").getBytes(StandardCharsets.UTF_8))
                .orThrow();
        TestRecord record = Judge.judge(planned, on, Sets.HOUSE).orThrow();
        assertThat(record.result()).isEqualTo(VOID);
        assertThat(Sets.reading(record, "R07").because()).contains("the earth lead was still on");
        assertThat(Sets.reading(record, "R05").verdict()).isEqualTo(Verdict.PASS);
    }

    /** What has no limit is corrected and compared with the last value all the same. */
    @Test
    void whatHasNoLimitIsSetBesideTheLastValue() {
        String plan = new String(Sets.bytes("plan.json"), StandardCharsets.UTF_8);
        int at = plan.indexOf("\"id\": \"R07\"");
        int limit = plan.indexOf("\"limit\": {", at);
        String free = plan.substring(0, limit) + "\"limit\": null" + plan.substring(plan.indexOf('}', limit) + 1);
        PlannedTest planned =
                PlanFile.read("p", free.getBytes(StandardCharsets.UTF_8)).orThrow();
        TestRecord record = Sets.judged(planned, "drift.yaml", after(Sets.previous()));
        Judged r07 = Sets.reading(record, "R07");
        assertThat(r07.verdict()).isEqualTo(Verdict.NOT_JUDGED);
        assertThat(r07.counted().orElseThrow().text()).isEqualTo("95.585 uA");
        assertThat(r07.flags()).singleElement().asString().contains("a tenth of the last value");
        assertThat(record.result()).isEqualTo(PASS);
    }

    @Test
    void aPlanWithShortfallsIsPartialWhateverItSays() {
        PlannedTest planned = Sets.planWith(
                        "\"shortfalls\": []",
                        "\"shortfalls\": [{\"about\": \"comb\", \"connections\": [], \"because\": \"six short\","
                                + " \"additions\": []}]")
                .orThrow();
        assertThat(Sets.judged(planned, "all-well.yaml", Sets.HOUSE).result()).isEqualTo(NOT_COMPLETE);
        assertThat(Sets.planWith("\"id\": \"R06\"", "\"id\": \"R05\"").problems())
                .singleElement()
                .satisfies(each -> assertThat(each.message()).contains("stands twice in the plan"));
    }

    @Test
    void aPartialPlanIsNeverAPass() {
        PlannedTest partial =
                Sets.planWith("\"partial\": false", "\"partial\": true").orThrow();
        TestRecord record = Sets.judged(partial, "all-well.yaml", Sets.HOUSE);
        assertThat(record.result()).isEqualTo(NOT_COMPLETE);
        assertThat(String.join("\n", record.because())).contains("PARTIAL");
        assertThat(Sets.judged(partial, "fail-far.yaml", Sets.HOUSE).because())
                .anyMatch(each -> each.contains("PARTIAL"));
    }

    @Test
    void aTrainingCopyIsNoRecord() {
        PlannedTest training = Sets.planWith("\"training-copy\": false", "\"training-copy\": true")
                .orThrow();
        assertThat(Sets.judged(training, "all-well.yaml", Sets.HOUSE).result()).isEqualTo(VOID);
    }

    @Test
    void aConfirmedLimitIsNotProvisional() {
        PlannedTest confirmed =
                Sets.planWith("\"confirmed\": false", "\"confirmed\": true").orThrow();
        assertThat(Sets.judged(confirmed, "all-well.yaml", Sets.HOUSE).provisional())
                .isFalse();
    }

    @Test
    void withoutStatedAccuracyAGuardBandCannotBeKept() {
        PlannedTest blind = Sets.planWith("\"leakage\": {", "\"other\": {").orThrow();
        TestRecord simple = Sets.judged(blind, "all-well.yaml", Sets.HOUSE);
        assertThat(simple.result()).isEqualTo(PASS);
        assertThat(Sets.reading(simple, "R09").flags()).anyMatch(each -> each.contains("no accuracy"));
        TestRecord guarded = Sets.judged(blind, "all-well.yaml", Sets.GUARD_BAND);
        assertThat(guarded.result()).isEqualTo(NOT_COMPLETE);
        assertThat(Sets.reading(guarded, "R09").verdict()).isEqualTo(Verdict.NOT_JUDGED);
        assertThat(Sets.judged(blind, "fail-far.yaml", Sets.GUARD_BAND).result())
                .isEqualTo(FAIL);
    }

    @Test
    void theHouseChoosesTheRuleAndAnOptionIsNamed() {
        PlannedTest strict = Sets.planWith("\"decision\": \"simple\"", "\"decision\": \"guard-band\"")
                .orThrow();
        assertThat(Sets.judged(strict, "guard-band.yaml", Sets.HOUSE).result()).isEqualTo(FAIL);
        TestRecord other = Sets.judged(Sets.plan(), "guard-band.yaml", Sets.GUARD_BAND);
        assertThat(String.join("\n", other.notes())).contains("the house's decision rule is simple");
    }

    // ---- the last record

    private static Judge.Options after(Previous previous) {
        return new Judge.Options(Optional.empty(), Optional.empty(), Optional.of(previous));
    }

    @Test
    void whatIsFarFromTheLastRecordIsPointedOutBothWays() {
        TestRecord record = Sets.judged(Sets.plan(), "drift.yaml", after(Sets.previous()));
        assertThat(record.result()).isEqualTo(PASS);
        assertThat(Sets.reading(record, "R09").flags())
                .singleElement()
                .asString()
                .contains("up by 19 uA");
        assertThat(Sets.reading(record, "R07").flags())
                .singleElement()
                .asString()
                .contains("down by 114.415 uA")
                .contains("a connection that was not made");
        assertThat(Sets.reading(record, "R08").flags()).isEmpty();
        assertThat(Sets.reading(record, "R08").before().orElseThrow().value().text())
                .isEqualTo("214 uA");
        // What was void the last time is no measure.
        assertThat(Sets.reading(record, "R11").before()).isEmpty();
    }

    @Test
    void theRecordOfAnotherDeviceIsRefused() {
        Readings other = Sets.readings("drift.yaml").orThrow();
        Previous previous = Sets.previous();
        Previous wrong = new Previous(
                previous.file(),
                previous.device(),
                Optional.of("BW-0001"),
                previous.inventory(),
                previous.date().plusYears(3),
                previous.values());
        assertThat(Judge.judge(Sets.plan(), other, after(wrong)).problems())
                .extracting(Problem::message)
                .anyMatch(each -> each.contains("serial number 'BW-0001'"))
                .anyMatch(each -> each.contains("later than the readings"));
    }

    // ---- the plan itself

    @Test
    void aLimitLoosenedInThePlanFileIsSeen() {
        assertThat(Sets.planWith("\"50 uA\"", "\"500 uA\"").problems())
                .hasSize(2)
                .allSatisfy(each -> assertThat(each.message()).contains("looser than 50 uA of the rule set"));
        assertThat(Sets.planWith("\"50 uA\"", "\"40 uA\"").problems()).isEmpty();
    }

    @Test
    void aPlanOfAnOlderProgramIsToBeMadeAnew() {
        assertThat(Sets.planWith("\"nominal-mains\"", "\"other\"").problems())
                .singleElement()
                .satisfies(each -> assertThat(each.message()).contains("key 'nominal-mains' is missing"));
    }
}
