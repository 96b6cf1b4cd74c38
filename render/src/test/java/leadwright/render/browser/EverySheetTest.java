package leadwright.render.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import leadwright.planner.judge.PlannedReading;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sheets of unlike devices open in a browser: every reading has its box, nothing fails, what is exported is judged. */
@EnabledIf(value = "leadwright.render.browser.Browser#isInstalled", disabledReason = Browser.NEEDS)
class EverySheetTest {

    @TempDir
    static Path folder;

    private static Browser browser;

    @BeforeAll
    static void open() {
        browser = Browser.start(folder);
    }

    @AfterAll
    static void close() {
        browser.close();
    }

    @ParameterizedTest(name = "{0} on {1}, {2}")
    @CsvSource({
        "oddlebar-rescue-set, k1-marrowgate-bench, paper: a4, 2027-01-10",
        "noctuary-sleep-recorder, k1-marrowgate-bench, paper: a4, 2027-01-10",
        "slaterow-tilt-table, k3-fixed-plant-case, paper: a4, 2027-01-10",
        "wickling-rhythm-card, k1-marrowgate-bench, words: ground, 2027-01-10",
        "pennywhistle-trolley, k1-marrowgate-bench, paper: letter, 2027-01-10",
        "brindlewick-ward-monitor, k1-marrowgate-bench, past-due: training-copy, 2029-01-10",
    })
    void opensAndIsFilledIn(String device, String kit, String house, String day) throws IOException {
        Path rules = Files.writeString(folder.resolve("house.yaml"), "leadwright: house/1\n" + house + "\n");
        BenchPages.Written sheet = BenchPages.write(
                folder.resolve(device),
                BenchPages.SAMPLES.resolve(device + ".yaml"),
                kit,
                "html,json",
                "--house",
                rules.toString(),
                "--on",
                day);
        browser.size(768, 1024).open(sheet.page());
        assertThat(browser.value("date")).as("the day that the plan is for").isEqualTo(day);
        List<String> ids =
                sheet.plan().readings().stream().map(PlannedReading::id).toList();
        assertThat(browser.script("return [...document.querySelectorAll('[data-name^=\"value/\"]')]"
                        + ".map(each => each.dataset.name.slice(6))"))
                .isEqualTo(ids);
        assertThat(browser.script("return [...document.querySelectorAll('.form input')]"
                        + ".filter(each => !each.getAttribute('aria-label').trim()).length"))
                .as("controls without a name")
                .isEqualTo(0L);
        faults();
        Map<String, String> values = BenchPages.soundValues(sheet.plan());
        BenchPages.fill(browser, values);
        browser.put("date", day);
        assertThat(browser.text(".count")).startsWith(ids.size() + " of " + ids.size() + " readings");
        browser.press("Export readings");
        String file = browser.downloaded();
        assertThat(BenchPages.judge(sheet.plan(), file).judged()).hasSameSizeAs(ids);
        assertThat(browser.complaints()).isEmpty();
    }

    private static void faults() throws IOException {
        try (InputStream axe = EverySheetTest.class.getResourceAsStream("/axe.min.js")) {
            browser.script(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
        }
        assertThat(
                        browser.driver()
                                .executeAsyncScript(
                                        "const done = arguments[0]; axe.run().then(found => done(found.violations"
                                                + ".filter(each => ['serious', 'critical'].includes(each.impact))"
                                                + ".map(each => each.id + ': ' + each.nodes.map(node => node.html).slice(0, 3).join(' | '))))"))
                .isEqualTo(List.of());
    }
}
