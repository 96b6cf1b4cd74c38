package leadwright.render.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import leadwright.catalog.house.DecisionRule;
import leadwright.planner.judge.Judged;
import leadwright.planner.judge.TestRecord;
import leadwright.planner.judge.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.openqa.selenium.By;

/** The bench sheet filled in by a real browser: what is typed is kept, weighed as the judge does, exported and read again. */
@EnabledIf(value = "leadwright.render.browser.Browser#isInstalled", disabledReason = Browser.NEEDS)
class FillingInTest extends WardSheetInBrowser {

    @Test
    void aTypedValueIsComparedAtOnceWithItsUnit() {
        browser.type("value/R03", "230");
        assertThat(browser.verdict("R05")).isEqualTo("not read");
        String earth = "value/R05";
        assertThat(typed(earth, "R05", "300")).isEqualTo("within limit, by less than the uncertainty");
        assertThat(typed(earth, "R05", "142,5")).isEqualTo("within limit");
        assertThat(typed(earth, "R05", "0.142 Ω")).isEqualTo("within limit");
        assertThat(typed(earth, "R05", "0,35 ohm")).isEqualTo("over limit. If no: 1, 2, then 3");
        assertThat(typed(earth, "R05", "301")).startsWith("over limit, by no more than the uncertainty");
        assertThat(typed(earth, "R05", "OL")).startsWith("over limit");
        assertThat(typed(earth, "R05", "2 MΩ")).startsWith("not read: 1 kΩ and more is no path");
        assertThat(typed(earth, "R05", "1,425")).startsWith("not read: a comma before three digits");
        assertThat(typed(earth, "R05", "12 µA")).startsWith("not read: ").contains("another quantity");
        assertThat(typed(earth, "R05", "about 100")).startsWith("not read: ");
        assertThat(browser.control(earth).getDomAttribute("aria-invalid")).isEqualTo("true");
        assertThat(typed(earth, "R05", "")).isEqualTo("not read");
    }

    private static String typed(String name, String id, String text) {
        return browser.type(name, text).verdict(id);
    }

    @Test
    void progressIsSaidInWords() {
        int all = sheet.plan().readings().size();
        assertThat(browser.text(".count")).isEqualTo("0 of " + all + " readings");
        browser.type("value/R03", "230").type("value/R05", "120").type("value/R06", "900");
        assertThat(browser.text(".count")).isEqualTo("3 of " + all + " readings, 1 not accepted");
        browser.type("value/R06", "9 V");
        assertThat(browser.text(".count")).isEqualTo("2 of " + all + " readings, 1 cannot be read");
    }

    @Test
    void whatIsTypedSurvivesAReload() {
        browser.type("serial", "BW-0417").type("value/R05", "142");
        browser.click(browser.control("tick/0"));
        browser.open(sheet.page());
        assertThat(browser.value("serial")).isEqualTo("BW-0417");
        assertThat(browser.value("value/R05")).isEqualTo("142");
        assertThat(browser.verdict("R05")).isEqualTo("within limit");
        assertThat(browser.control("tick/0").isSelected()).isTrue();
        assertThat(browser.control("tick/1").isSelected()).isFalse();
        assertThat(browser.text(".said")).isEqualTo("What was saved is back.");
    }

    @Test
    void whatIsTypedSurvivesAKilledBrowser() throws InterruptedException {
        Path own = folder.resolve("to-be-killed");
        try (Browser first = Browser.start(own)) {
            first.open(sheet.page()).type("serial", "BW-0417-killed").type("value/R05", "143");
            first.waitUntilStored("BW-0417-killed").waitUntilStored("\"143\"");
            first.kill();
        }
        try (Browser second = Browser.start(own)) {
            second.open(sheet.page());
            assertThat(second.value("serial")).isEqualTo("BW-0417-killed");
            assertThat(second.value("value/R05")).isEqualTo("143");
        }
    }

    @Test
    void theExportIsJudgedAsThePageSaid() {
        Map<String, String> values = BenchPages.soundValues(sheet.plan());
        values.put("R06", "350 mohm");
        values.put("R05", "299.9 mohm");
        values.put("R09", "> 1 mA");
        BenchPages.fill(browser, values);
        TestRecord record = BenchPages.judge(sheet.plan(), exported());
        assertThat(record.result()).isEqualTo(TestRecord.Result.FAIL);
        record.judged().forEach(FillingInTest::sameAsShown);
        assertThat(record.judged().stream().map(Judged::verdict))
                .contains(Verdict.PASS, Verdict.PASS_INSIDE_UNCERTAINTY, Verdict.FAIL, Verdict.AS_EXPECTED);
        assertThat(record.readings().device().accessories()).containsExactly("ECG trunk cable", "finger sensor");
    }

    private static void sameAsShown(Judged judged) {
        String shown = browser.verdict(judged.planned().id());
        assertThat(shown.startsWith("within limit"))
                .as(judged.planned().id() + " " + shown)
                .isEqualTo(judged.verdict().accepted(DecisionRule.SIMPLE));
        assertThat(shown.startsWith("over limit") || shown.startsWith("under limit"))
                .as(judged.planned().id() + " " + shown)
                .isEqualTo(judged.verdict().rejected(DecisionRule.SIMPLE));
        assertThat(shown.startsWith("void")).isEqualTo(judged.verdict() == Verdict.VOID);
    }

    private static String exported() {
        browser.press("Export readings");
        return browser.downloaded();
    }

    @Test
    void whatIsMissingStandsAgainstAnExport() {
        BenchPages.fill(browser, Map.of("R05", "142"));
        browser.type("by", "").press("Export readings");
        assertThat(browser.text(".said")).isEqualTo("Not exported. 'Tested by' is missing.");
        assertThat(browser.driver().switchTo().activeElement().getDomAttribute("data-name"))
                .isEqualTo("by");
        browser.type("by", "R. Sedgemere").type("value/R06", "3 V").press("Export readings");
        assertThat(browser.text(".said")).startsWith("Not exported. R06: '3 V' is another quantity");
    }

    @Test
    void blankReadingsAreAskedForAndStandAsNotTaken() {
        BenchPages.fill(browser, Map.of("R03", "230", "R05", "142"));
        browser.press("Export readings");
        assertThat(browser.text("#ask-words")).startsWith("Not read yet: R01, R02, R04, R06");
        browser.press("Export all the same");
        TestRecord record = BenchPages.judge(sheet.plan(), browser.downloaded());
        assertThat(record.result()).isEqualTo(TestRecord.Result.NOT_COMPLETE);
    }

    @Test
    void anExportIsReadAgain() throws IOException {
        Map<String, String> values = BenchPages.soundValues(sheet.plan());
        BenchPages.fill(browser, values);
        browser.script("document.querySelector('[data-name=\"remark/R05\"]').closest('.notes').hidden = false");
        browser.type("remark/R05", "scraped bright first")
                .type("null-start", "62")
                .type("null-end", "63");
        String file = exported();
        Path kept = Files.writeString(folder.resolve("again.json"), file);
        browser.script("localStorage.clear()");
        browser.open(sheet.page());
        assertThat(browser.value("value/R05")).isEmpty();
        browser.choose(kept);
        Browser.waitFor("the import", () -> browser.text(".said").equals("Imported."));
        assertThat(browser.value("value/R05")).isEqualTo("150");
        assertThat(exported()).isEqualTo(file);
        browser.open(sheet.page());
        assertThat(browser.value("value/R05")).as("also kept").isEqualTo("150");
    }

    @Test
    void aFileOfAnotherPlanOrOneThatIsBrokenChangesNothing() throws IOException {
        Map<String, String> values = BenchPages.soundValues(sheet.plan());
        BenchPages.fill(browser, values);
        String file = exported();
        Object before = state();
        String plan = sheet.plan().fingerprint();
        refused(
                file.replace(plan, "0123456789abcdef"),
                "its readings are of plan 01234567, and this sheet is of plan ");
        refused(file.substring(0, file.length() / 2), "it is not JSON");
        refused("[]", "it is no readings file");
        refused(file.replace("\"150 mohm\"", "\"150 mV\""), "reading R05: '150 mV' is another quantity");
        refused(file.replace("\"R05\"", "\"R999\""), "the plan has no reading 'R999'");
        refused(file.replace("\"R06\"", "\"R05\""), "reading R05 stands there twice");
        refused(file.replace("\"by\"", "\"__proto__\": {\"shows\": 1}, \"by\""), "it has a key '__proto__'");
        refused(file.replace("\"2027-01-10\"", "[1]"), "its 'date' is no text");
        refused(file.replace("\"recurrent\"", "\"incident\""), "another occasion");
        assertThat(state()).isEqualTo(before);
    }

    private static Object state() {
        return browser.script("return JSON.stringify([localStorage.getItem(localStorage.key(0)),"
                + " [...document.querySelectorAll('input')].map(each => each.value)])");
    }

    private static void refused(String file, String because) throws IOException {
        browser.choose(Files.writeString(folder.resolve("refused.json"), file));
        Browser.waitFor(because, () -> browser.text(".said").contains(because));
        assertThat(browser.text(".said")).startsWith("Not imported, nothing was changed: ");
    }

    @Test
    void clearingIsConfirmed() {
        browser.type("value/R05", "142").press("Clear the sheet").press("Keep as it is");
        assertThat(browser.value("value/R05")).isEqualTo("142");
        browser.press("Clear the sheet").press("Clear everything");
        assertThat(browser.value("value/R05")).isEmpty();
        browser.open(sheet.page());
        assertThat(browser.value("value/R05")).isEmpty();
        assertThat(browser.script("return localStorage.length")).isEqualTo(0L);
    }

    @Test
    void aStorageThatIsFullIsTold() {
        browser.script("let room = 'x'.repeat(1 << 20); let n = 0;"
                + "for (; room.length > 0;) { try { localStorage.setItem('f' + n++, room); }"
                + " catch (full) { room = room.slice(0, room.length >> 1); } }");
        browser.type("value/R05", "142");
        assertThat(browser.text(".trouble")).startsWith("NOT SAVED: ").contains("QuotaExceededError");
        assertThat(browser.text(".saved")).isEmpty();
        assertThat(browser.verdict("R05")).isEqualTo("within limit");
        browser.script("localStorage.clear()");
        browser.type("value/R05", "143");
        assertThat(browser.text(".trouble")).isEmpty();
        assertThat(browser.text(".saved")).isEqualTo("Saved on this device.");
    }

    @Test
    void aStorageThatIsAbsentIsTold() {
        browser.driver()
                .executeCdpCommand(
                        "Page.addScriptToEvaluateOnNewDocument",
                        Map.of(
                                "source",
                                "if (location.hash === '#closed') Object.defineProperty(window, 'localStorage',"
                                        + " {get() { throw new DOMException('denied', 'SecurityError'); }});"));
        browser.driver().get(sheet.page().toUri() + "#closed");
        browser.driver().navigate().refresh();
        assertThat(browser.text(".trouble")).contains("SecurityError");
        browser.type("value/R05", "142");
        assertThat(browser.text(".trouble")).startsWith("NOT SAVED: ").contains("SecurityError");
    }

    @Test
    void ticksOfAnotherFormOfThePlanAreNotPutBack() {
        browser.type("value/R05", "142").click(browser.control("tick/0"));
        browser.script("const key = localStorage.key(0); const saved = JSON.parse(localStorage.getItem(key));"
                + "saved.form = 'another'; localStorage.setItem(key, JSON.stringify(saved))");
        browser.open(sheet.page());
        assertThat(browser.value("value/R05")).isEqualTo("142");
        assertThat(browser.control("tick/0").isSelected()).isFalse();
        assertThat(browser.text(".said")).contains("Ticks are not");
    }

    @Test
    void everySquareAndBoxOfThePaperFormHasItsControl() {
        int squares =
                browser.driver().findElements(By.cssSelector(".form .tick")).size();
        int controls =
                browser.driver().findElements(By.cssSelector(".form .square")).size();
        long withLimit = sheet.plan().readings().stream()
                .filter(each -> each.limit().isPresent())
                .count();
        assertThat(controls).isEqualTo(squares - 2 * (int) withLimit);
        assertThat(browser.driver().findElements(By.cssSelector(".form .box")))
                .allMatch(box -> box.findElements(By.cssSelector("input.entry")).size() == 1);
    }
}
