package leadwright.render.cli;

import java.util.List;
import java.util.Locale;
import leadwright.catalog.house.House;
import leadwright.catalog.table.Connectors;
import leadwright.catalog.table.MainsCouplers;
import leadwright.catalog.table.RuleSets;
import leadwright.render.export.PdfExport;

/**
 * Loads on a second thread what a run will soon ask for: the built-in tables, then the typesetter. A short run spends
 * most of its time on loading, so on two cores it ends a third sooner. Nothing depends on it: whatever is not loaded yet
 * is loaded when it is needed, and the tables are the same whoever asks first.
 */
final class HeadStart {

    private HeadStart() {}

    /** Begins the loading when the command line is one that needs it and there is a core to spare. */
    static void give(String[] arguments) {
        List<String> words = List.of(arguments);
        if (!words.contains("plan") || Runtime.getRuntime().availableProcessors() < 2) {
            return;
        }
        boolean typesets = typesets(words);
        String rules = rules(words);
        Thread thread = new Thread(() -> load(rules, typesets), "head start");
        thread.setDaemon(true);
        // Should it fail, the run itself will meet the same fault and say so.
        thread.setUncaughtExceptionHandler((failed, why) -> {});
        thread.start();
    }

    private static void load(String rules, boolean typesets) {
        RuleSets.builtIn().find(rules);
        Connectors.builtIn();
        MainsCouplers.builtIn();
        if (typesets) {
            PdfExport.warmUp();
        }
    }

    /** The rule set that seems to be asked for; a house that names another one costs a reading for nothing. */
    static String rules(List<String> words) {
        for (int i = 0; i < words.size(); i++) {
            if (words.get(i).equals("--rules") && i + 1 < words.size()) {
                return words.get(i + 1);
            }
            if (words.get(i).startsWith("--rules=")) {
                return words.get(i).substring("--rules=".length());
            }
        }
        return House.defaults().rules();
    }

    /** Whether a PDF seems to be asked for: unless told otherwise all formats are written. */
    static boolean typesets(List<String> words) {
        if (words.contains("--json") || words.contains("--help")) {
            return false;
        }
        for (int i = 0; i < words.size(); i++) {
            String word = words.get(i).toLowerCase(Locale.ROOT);
            if (word.equals("--formats")) {
                return i + 1 < words.size()
                        && words.get(i + 1).toLowerCase(Locale.ROOT).contains("pdf");
            }
            if (word.startsWith("--formats=")) {
                return word.contains("pdf");
            }
        }
        return true;
    }
}
