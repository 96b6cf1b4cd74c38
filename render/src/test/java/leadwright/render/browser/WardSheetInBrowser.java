package leadwright.render.browser;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** The ward monitor's bench sheet in a real browser, empty before each test. */
abstract class WardSheetInBrowser {

    @TempDir
    static Path folder;

    static Browser browser;
    static BenchPages.Written sheet;

    @BeforeAll
    static void open() {
        browser = Browser.start(folder);
        sheet = BenchPages.brindlewick(folder.resolve("plan"));
    }

    @AfterAll
    static void close() {
        browser.close();
    }

    @BeforeEach
    void anew() {
        browser.open(sheet.page());
        browser.script("localStorage.clear()");
        browser.open(sheet.page());
    }
}
