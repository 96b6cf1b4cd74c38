package leadwright.render.cli;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import leadwright.planner.Plan;
import leadwright.planner.judge.PlanFile;
import leadwright.planner.judge.PlannedTest;
import leadwright.render.diagram.Diagrams;
import leadwright.render.diagram.Drawing;
import leadwright.render.export.BenchData;
import leadwright.render.export.PdfExport;
import leadwright.render.export.PlanCsv;
import leadwright.render.export.PlanJson;
import leadwright.render.export.PngExport;
import leadwright.render.sheet.BenchSheet;
import leadwright.render.sheet.OnScreen;

/** All files of a plan, in memory: nothing is written before everything is there. */
final class Documents {

    /** Dots per inch: fine enough that the smallest text of a drawing reads well on a screen. */
    private static final int PICTURE_DPI = 150;

    private Documents() {}

    /** Contents by file name. */
    static SortedMap<String, byte[]> of(
            Plan plan, List<String> assumed, Set<DocumentFormat> formats, Progress progress) {
        SortedMap<String, byte[]> files = new TreeMap<>();
        progress.stage("drawing");
        List<Drawing> drawings = formats.stream().anyMatch(Documents::showsDrawings) ? Diagrams.draw(plan) : List.of();
        for (Drawing drawing : drawings) {
            if (formats.contains(DocumentFormat.SVG)) {
                files.put(name(drawing) + ".svg", bytes(drawing.svg()));
            }
            if (formats.contains(DocumentFormat.PNG)) {
                files.put(name(drawing) + ".png", PngExport.png(drawing.svg(), PICTURE_DPI));
            }
        }
        if (formats.contains(DocumentFormat.JSON)) {
            files.put("plan.json", bytes(PlanJson.of(plan)));
        }
        if (formats.contains(DocumentFormat.CSV)) {
            files.put("readings.csv", bytes(PlanCsv.of(plan)));
        }
        if (formats.contains(DocumentFormat.HTML) || formats.contains(DocumentFormat.PDF)) {
            String sheet = BenchSheet.xhtml(plan, drawings, assumed);
            if (formats.contains(DocumentFormat.HTML)) {
                files.put("bench-sheet.html", bytes(onScreen(plan, sheet)));
            }
            if (formats.contains(DocumentFormat.PDF)) {
                progress.stage("typesetting");
                files.put("bench-sheet.pdf", PdfExport.pdf(sheet, plan.on()));
            }
        }
        return files;
    }

    /** The sheet to fill in on a screen; with nothing to read it is the paper form and no more. */
    private static String onScreen(Plan plan, String sheet) {
        if (plan.readings().isEmpty()) {
            return sheet;
        }
        // By the file and not by the plan itself: the page then weighs what judge will read.
        PlannedTest judged =
                PlanFile.read("plan.json", bytes(PlanJson.of(plan))).orThrow();
        return OnScreen.page(sheet, BenchData.of(judged));
    }

    private static boolean showsDrawings(DocumentFormat format) {
        return format != DocumentFormat.JSON && format != DocumentFormat.CSV;
    }

    /** {@code H1}, or {@code H1-2} for the second of several sheets. */
    private static String name(Drawing drawing) {
        return drawing.ofSheets() == 1 ? drawing.hookup() : drawing.hookup() + "-" + drawing.sheet();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
