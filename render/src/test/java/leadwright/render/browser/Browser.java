package leadwright.render.browser;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** A real browser without a window, with a profile that outlives it. */
final class Browser implements AutoCloseable {

    /** Why a test is skipped where there is no browser. */
    static final String NEEDS = "needs chromium and chromedriver (Debian packages chromium, chromium-driver)";

    private static final Duration PATIENCE = Duration.ofSeconds(20);

    /** The driver knows no protocol as new as the browser and says so at every start; nothing here needs it. */
    private static final Logger SAYS = Logger.getLogger("org.openqa.selenium");

    private final Path profile;
    private final Path downloads;
    private final ChromeDriver driver;

    private Browser(Path profile, Path downloads, ChromeDriver driver) {
        this.profile = profile;
        this.downloads = downloads;
        this.driver = driver;
    }

    /** Whether tests that ask for a browser can run. */
    static boolean isInstalled() {
        return program("chromium").isPresent() && program("chromedriver").isPresent();
    }

    /**
     * Starts a browser.
     *
     * @param folder holds its profile and what it downloads
     */
    static Browser start(Path folder) {
        SAYS.setLevel(Level.SEVERE);
        Path profile = folder.resolve("profile");
        Path downloads = folder.resolve("downloads");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(program("chromium").orElseThrow().toFile());
        options.addArguments(
                "--headless=new",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-dev-shm-usage",
                "--disable-background-networking",
                "--disable-component-update",
                "--no-first-run",
                "--user-data-dir=" + profile);
        options.setExperimentalOption(
                "prefs",
                Map.of("download.default_directory", downloads.toString(), "download.prompt_for_download", false));
        options.setCapability(ChromeOptions.LOGGING_PREFS, logs);
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(program("chromedriver").orElseThrow().toFile())
                .usingAnyFreePort()
                .build();
        return new Browser(profile, downloads, new ChromeDriver(service, options));
    }

    private static Optional<Path> program(String name) {
        return Stream.of(System.getenv().getOrDefault("PATH", "").split(":"))
                .map(folder -> Path.of(folder, name))
                .filter(Files::isExecutable)
                .findFirst();
    }

    ChromeDriver driver() {
        return driver;
    }

    /** Opens a page anew: what was written to the logs before is not looked at any more. */
    Browser open(Path page) {
        driver.manage().logs().get(LogType.PERFORMANCE);
        driver.manage().logs().get(LogType.BROWSER);
        driver.get(page.toUri().toString());
        return this;
    }

    /** Makes the inside of the window so large. */
    Browser size(int width, int height) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", false));
        driver.manage().window().setSize(new Dimension(width, height));
        return this;
    }

    /** A control of the page by its name. */
    WebElement control(String name) {
        return driver.findElement(By.cssSelector("[data-name=\"" + name + "\"]"));
    }

    /** Types into a control what a person types, in place of what is there. */
    Browser type(String name, String text) {
        control(name).sendKeys(Keys.chord(Keys.CONTROL, "a"), Keys.DELETE, text);
        return this;
    }

    /** Puts a text into a control at once, where the keys are not what is looked at. */
    Browser put(String name, String text) {
        script(
                "arguments[0].value = arguments[1];"
                        + "arguments[0].dispatchEvent(new Event('input', {bubbles: true}));",
                control(name),
                text);
        return this;
    }

    String value(String name) {
        return control(name).getDomProperty("value");
    }

    /** The words beside a reading. */
    String verdict(String id) {
        return text("#verdict-" + id);
    }

    /** The text of an element, also where it is not shown. */
    String text(String selector) {
        return driver.findElement(By.cssSelector(selector)).getDomProperty("textContent");
    }

    /** Clicks where a person does, who first brings the thing into sight. */
    Browser click(WebElement element) {
        script("arguments[0].scrollIntoView({block: 'center'})", element);
        element.click();
        return this;
    }

    Browser press(String words) {
        return click(driver.findElements(By.tagName("button")).stream()
                .filter(button -> button.getText().equals(words))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no button '" + words + "'")));
    }

    Object script(String code, Object... arguments) {
        return driver.executeScript(code, arguments);
    }

    /** Hands a file to the page as a person does who chooses it. */
    Browser choose(Path file) {
        driver.findElement(By.cssSelector("input[type=file]")).sendKeys(file.toString());
        return this;
    }

    /** The one file that has been downloaded; it is taken away, so that the next one is the one again. */
    String downloaded() {
        waitFor("a downloaded file", () -> finished().size() == 1);
        Path file = finished().get(0);
        try {
            String text = Files.readString(file, StandardCharsets.UTF_8);
            Files.delete(file);
            return text;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<Path> finished() {
        return files(downloads).stream()
                .filter(file -> file.toString().endsWith(".json"))
                .toList();
    }

    /** Waits until the browser has brought a text of the page's storage to disk. */
    Browser waitUntilStored(String text) {
        byte[] wanted = text.getBytes(StandardCharsets.UTF_8);
        waitFor(
                "'" + text + "' on disk",
                () -> files(profile.resolve("Default/Local Storage/leveldb")).stream()
                        .anyMatch(file -> contains(file, wanted)));
        return this;
    }

    private static boolean contains(Path file, byte[] wanted) {
        try {
            String all = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
            return all.contains(new String(wanted, StandardCharsets.ISO_8859_1));
        } catch (IOException goneMeanwhile) {
            return false;
        }
    }

    private static List<Path> files(Path folder) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> list = Files.list(folder)) {
            return list.filter(Files::isRegularFile).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void waitFor(String what, BooleanSupplier there) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!there.getAsBoolean()) {
            assertThat(System.nanoTime()).as("waiting for " + what).isLessThan(end);
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }
    }

    /** Kills the processes of this browser, known by its profile, as a crash or an empty battery does. */
    void kill() {
        assertThat(own()).isNotEmpty();
        own().forEach(ProcessHandle::destroyForcibly);
        waitFor("the death of the browser", () -> own().isEmpty());
        close();
        for (String left : List.of("SingletonSocket", "SingletonLock", "SingletonCookie")) {
            try {
                Files.deleteIfExists(profile.resolve(left));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private List<ProcessHandle> own() {
        return ProcessHandle.allProcesses()
                .filter(process -> process.info().commandLine().orElse("").contains("--user-data-dir=" + profile))
                .toList();
    }

    /** Addresses that the page asked for since it was opened. */
    List<String> requests() {
        return driver.manage().logs().get(LogType.PERFORMANCE).getAll().stream()
                .map(LogEntry::getMessage)
                .filter(message -> message.contains("\"Network.requestWillBeSent\""))
                .map(message -> message.replaceAll("(?s).*\"request\":\\{.*?\"url\":\"([^\"]*)\".*", "$1"))
                .toList();
    }

    /** What the browser complained of since the page was opened: refused scripts, styles and requests, faults of code. */
    List<String> complaints() {
        return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
                .map(LogEntry::getMessage)
                .toList();
    }

    @Override
    public void close() {
        try {
            driver.quit();
        } catch (org.openqa.selenium.WebDriverException alreadyDead) {
            // Killed on purpose: nothing is left to close.
        }
    }
}
