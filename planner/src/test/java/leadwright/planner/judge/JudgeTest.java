package leadwright.planner.judge;

import static leadwright.planner.judge.TestRecord.Result.FAIL;
import static leadwright.planner.judge.TestRecord.Result.NOT_COMPLETE;
import static leadwright.planner.judge.TestRecord.Result.PASS;
import static leadwright.planner.judge.TestRecord.Result.VOID;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import leadwright.catalog.read.ReadingsReader;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.text.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What plan, house and last record make of the same readings. */
class JudgeTest {

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
