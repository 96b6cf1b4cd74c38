package leadwright.render.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The page as such: it sends nothing, prints the paper form, works by keyboard, and hides nothing from anybody. */
@EnabledIf(value = "leadwright.render.browser.Browser#isInstalled", disabledReason = Browser.NEEDS)
class PageTest extends WardSheetInBrowser {

    private static final String HOSTILE =
            "</script><script>window.hostile = 1</script><img src=x onerror='window.hostile = 2'>"
                    + " <!-- ]]> & \" \\ ${x} \u2028 name";

    @BeforeEach
    void upright() {
        browser.size(768, 1024);
    }

    // ---- nothing is sent, nothing foreign runs

    @Test
    void nothingIsAskedForAndNothingIsRefused() {
        BenchPages.fill(browser, BenchPages.soundValues(sheet.plan()));
        browser.press("Export readings").downloaded();
        assertThat(browser.requests())
                .as("addresses")
                .allMatch(each -> each.equals(sheet.page().toUri().toString())
                        || each.startsWith("blob:")
                        // The browser's own picture in a field for a day.
                        || each.startsWith("data:"));
        assertThat(browser.complaints()).isEmpty();
    }

    @Test
    void thePolicyIsInForce() {
        browser.script("const script = document.createElement('script'); script.textContent = 'window.foreign = 1';"
                + "document.body.append(script);"
                + "const image = document.createElement('img'); image.src = 'http://127.0.0.1:9/x.png';"
                + "document.body.append(image);"
                + "document.body.insertAdjacentHTML('beforeend', '<p onclick=\"window.foreign = 2\" id=\"inline\">x</p>');"
                + "document.getElementById('inline').click();");
        assertThat(browser.script("return window.foreign === undefined")).isEqualTo(true);
        assertThat(browser.script("return fetch('http://127.0.0.1:9/').then(() => 'sent', () => 'refused')"))
                .isEqualTo("refused");
        Browser.waitFor(
                "complaints",
                () -> browser.complaints().stream()
                                .filter(each -> each.contains("Content Security Policy"))
                                .count()
                        >= 1);
    }

    @Test
    void namesOfTheDeviceFileStayText() throws Exception {
        String device = Files.readString(BenchPages.SAMPLES.resolve("wickling-rhythm-card.yaml"));
        String quoted =
                "\"" + HOSTILE.replace("\\", "\\\\").replace("\"", "\\\"").replace("\u2028", "\\u2028") + "\"";
        Path file = Files.writeString(
                folder.resolve("hostile.yaml"),
                device.replaceFirst("(?m)^name: .*$", java.util.regex.Matcher.quoteReplacement("name: " + quoted)));
        BenchPages.Written hostile =
                BenchPages.write(folder.resolve("hostile"), file, "k1-marrowgate-bench", "html,json");
        String page = Files.readString(hostile.page());
        assertThat(page.split("<script", -1))
                .as("script elements: the data and three of our own")
                .hasSize(5);
        browser.open(hostile.page());
        assertThat(browser.text("h1")).isEqualTo(HOSTILE);
        assertThat(browser.text(".count")).startsWith("0 of ");
        assertThat(browser.script("return window.hostile === undefined")).isEqualTo(true);
        assertThat(browser.script("return JSON.parse(document.getElementById('bench-data').textContent).device"))
                .isEqualTo(HOSTILE);
        assertThat(browser.complaints()).isEmpty();
        // Well-formed, for whoever reads the page as XML.
        DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(
                        page.replace("<!DOCTYPE html>", "").getBytes(StandardCharsets.UTF_8)));
    }

    // ---- paper

    @Test
    void anEmptyPagePrintsAsThePaperForm() throws IOException {
        Path plain = Files.writeString(
                folder.resolve("plain.html"),
                Files.readString(sheet.page())
                        .replaceAll("(?s)<script.*</script>", "")
                        .replaceAll("<meta http-equiv[^>]*>", ""));
        List<int[]> filled = pictures(printed());
        browser.open(plain);
        List<int[]> paper = pictures(printed());
        assertThat(filled).hasSameSizeAs(paper);
        for (int i = 0; i < paper.size(); i++) {
            assertThat(Arrays.equals(filled.get(i), paper.get(i)))
                    .as("page " + (i + 1) + " is the same picture")
                    .isTrue();
        }
    }

    @Test
    void whatIsTypedIsPrintedAndControlsAreNot() throws IOException {
        Map<String, String> values = BenchPages.soundValues(sheet.plan());
        values.put("R05", "142.5");
        values.put("R06", "> 1 ohm");
        BenchPages.fill(browser, values);
        browser.put("remark/R05", "scraped bright first");
        browser.click(browser.control("tick/0"));
        byte[] pdf = printed();
        Files.write(folder.resolve("filled.pdf"), pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            String text = new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", " ");
            assertThat(text)
                    .contains("BW-0417", "A-17", "R. Sedgemere", "2027-01-10", "142.5 mΩ", "> 1 ohm", "✓")
                    .contains("Remark: scraped bright first");
            assertThat(text)
                    .doesNotContain(
                            "Next reading",
                            "Export readings",
                            "Filling in on a screen",
                            "Note\n",
                            "within limit",
                            "Saved");
        }
        try (PDDocument empty = Loader.loadPDF(Files.readAllBytes(folder.resolve("plan/bench-sheet.pdf")));
                PDDocument filled = Loader.loadPDF(pdf)) {
            assertThat(filled.getNumberOfPages()).isLessThanOrEqualTo(empty.getNumberOfPages() + 1);
        }
    }

    private static byte[] printed() {
        Map<String, Object> pdf = browser.driver()
                .executeCdpCommand("Page.printToPDF", Map.of("preferCSSPageSize", true, "printBackground", true));
        return Base64.getDecoder().decode((String) pdf.get("data"));
    }

    private static List<int[]> pictures(byte[] pdf) throws IOException {
        List<int[]> pictures = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFRenderer renderer = new PDFRenderer(document);
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                java.awt.image.BufferedImage image = renderer.renderImageWithDPI(page, 60, ImageType.GRAY);
                pictures.add(image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth()));
            }
        }
        return pictures;
    }

    // ---- everybody

    @ParameterizedTest(name = "{0} px wide")
    @CsvSource({"1280", "768", "360"})
    void noSeriousFaultIsFound(int width) throws IOException {
        browser.size(width, 1024);
        Map<String, String> values = BenchPages.soundValues(sheet.plan());
        values.put("R05", "900");
        values.put("R06", "two");
        BenchPages.fill(browser, values);
        browser.press("Clear the sheet");
        faults("with a question");
        browser.press("Keep as it is");
        faults("filled in");
    }

    private static void faults(String when) throws IOException {
        try (InputStream axe = PageTest.class.getResourceAsStream("/axe.min.js")) {
            browser.script(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
        }
        List<?> found = (List<?>) browser.driver()
                .executeAsyncScript("const done = arguments[0]; axe.run().then(found => done(found.violations"
                        + ".filter(each => ['serious', 'critical'].includes(each.impact))"
                        + ".map(each => each.id + ': ' + each.nodes.map(node => node.html).slice(0, 3).join(' | '))),"
                        + " fault => done(['' + fault]))");
        assertThat(found).as(when).isEqualTo(List.of());
    }

    @ParameterizedTest(name = "{0} px wide")
    @CsvSource({"1280", "768", "360"})
    void nothingToTouchIsSmallAndNothingIsCutOff(int width) {
        browser.size(width, 1024);
        assertThat(browser.script("return [...document.querySelectorAll('button, select, input:not([type=file])')]"
                        + ".filter(each => each.offsetParent !== null)"
                        + ".filter(each => each.offsetHeight < 44 || each.offsetWidth < 44)"
                        + ".map(each => each.outerHTML)"))
                .isEqualTo(List.of());
        assertThat(browser.script("return [...document.querySelectorAll('button, select, input:not([type=file])')]"
                        + ".filter(each => each.offsetParent !== null)"
                        + ".filter(each => each.getBoundingClientRect().right > innerWidth + 0.5)"
                        + ".map(each => each.outerHTML)"))
                .as("beyond the right edge")
                .isEqualTo(List.of());
    }

    /** Tab alone reaches every control in the order of the page, each in sight and with a visible mark. */
    @Test
    void theKeyboardAloneReachesEverything() {
        @SuppressWarnings("unchecked")
        List<Object> due = (List<Object>)
                browser.script(
                        "return [...document.querySelectorAll('button, select, input:not([type=file])')]"
                                + ".filter(each => each.offsetParent !== null).map(each => each.dataset.name || each.textContent)");
        List<Object> reached = new ArrayList<>();
        Actions keys = new Actions(browser.driver());
        String where = "const at = document.activeElement; const box = at.getBoundingClientRect();"
                + "const x = box.left + Math.min(box.width, 20) / 2, y = box.top + box.height / 2;"
                + "const top = document.elementFromPoint(x, y);"
                + "return [at.dataset.name || at.textContent, at === top || at.contains(top),"
                + " getComputedStyle(at).outlineStyle === 'solid' && parseFloat(getComputedStyle(at).outlineWidth) >= 3]";
        for (int i = 0; i < due.size() + 4; i++) {
            keys.sendKeys(Keys.TAB).perform();
            List<?> now = (List<?>) browser.script(where);
            if (due.contains(now.get(0)) && !reached.contains(now.get(0))) {
                assertThat(now.get(1)).as(now.get(0) + " is in sight").isEqualTo(true);
                assertThat(now.get(2)).as(now.get(0) + " is marked").isEqualTo(true);
                reached.add(now.get(0));
            }
        }
        assertThat(reached.stream().distinct().collect(Collectors.toList()))
                .containsExactlyElementsOf(due.stream().distinct().toList());
    }

    @Test
    void aSheetIsFilledInByKeysAlone() {
        browser.control("value/R01").sendKeys("");
        Actions keys = new Actions(browser.driver());
        WebElement first = browser.control("value/R01");
        browser.script("arguments[0].focus()", first);
        keys.sendKeys("230", Keys.ENTER, "2", Keys.ENTER, "230", Keys.ENTER, "100", Keys.ENTER, "142", Keys.ENTER)
                .perform();
        assertThat(browser.text(".count")).startsWith("5 of ");
        assertThat(browser.value("value/R05")).isEqualTo("142");
        WebElement tick = browser.control("tick/0");
        browser.script("arguments[0].focus()", tick);
        keys.sendKeys(Keys.SPACE).perform();
        assertThat(tick.isSelected()).isTrue();
        browser.press("Clear the sheet");
        keys.sendKeys(Keys.ESCAPE).perform();
        assertThat(browser.value("value/R05")).as("escape keeps").isEqualTo("142");
    }

    @Test
    void theSameInputsGiveTheSamePage() throws IOException {
        BenchPages.Written again = BenchPages.brindlewick(folder.resolve("again"));
        assertThat(again.page()).hasSameBinaryContentAs(sheet.page());
    }
}
