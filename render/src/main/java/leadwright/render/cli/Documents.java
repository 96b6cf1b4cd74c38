package leadwright.render.cli;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Supplier;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Netlists;
import leadwright.planner.judge.PlanFile;
import leadwright.planner.judge.PlannedTest;
import leadwright.render.diagram.Diagrams;
import leadwright.render.diagram.Drawing;
import leadwright.render.edition.StandingEdition;
import leadwright.render.edition.TrainingEdition;
import leadwright.render.export.BenchData;
import leadwright.render.export.DocxExport;
import leadwright.render.export.PdfExport;
import leadwright.render.export.PlanCsv;
import leadwright.render.export.PlanJson;
import leadwright.render.export.PngExport;
import leadwright.render.paper.Document;
import leadwright.render.sheet.BenchSheet;
import leadwright.render.sheet.DocumentPage;
import leadwright.render.sheet.OnScreen;

/** All files of a plan, in memory: nothing is written before everything is there. */
final class Documents {

    /** Dots per inch: fine enough that the smallest text of a drawing reads well on a screen. */
    private static final int PICTURE_DPI = 150;

    private Documents() {}

    /** Contents by file name. */
    static SortedMap<String, byte[]> of(Plan plan, List<String> assumed, Wanted wanted, Progress progress) {
        SortedMap<String, byte[]> files = new TreeMap<>();
        progress.stage("drawing");
        List<Drawing> drawings = wanted.drawings() ? Diagrams.draw(plan) : List.of();
        for (Drawing drawing : drawings) {
            if (wanted.has(DocumentFormat.SVG)) {
                files.put(name(drawing) + ".svg", bytes(drawing.svg()));
            }
            if (wanted.has(DocumentFormat.PNG)) {
                files.put(name(drawing) + ".png", PngExport.png(drawing.svg(), PICTURE_DPI));
            }
        }
        if (wanted.has(DocumentFormat.JSON)) {
            files.put("plan.json", bytes(PlanJson.of(plan)));
        }
        if (wanted.has(DocumentFormat.CSV)) {
            files.put("readings.csv", bytes(PlanCsv.of(plan)));
        }
        if (wanted.has(DocumentFormat.CIR)) {
            Netlists.of(plan).forEach((reading, netlist) -> files.put(reading + ".cir", bytes(netlist)));
        }
        progress.stage("typesetting");
        if (wanted.has(EditionWord.BENCH)) {
            String sheet = BenchSheet.xhtml(plan, drawings, assumed);
            pages(EditionWord.BENCH, sheet, () -> onScreen(plan, sheet), plan, wanted, files);
        }
        if (wanted.has(EditionWord.TRAINING)) {
            Document training = TrainingEdition.of(plan, drawings, assumed);
            String page = DocumentPage.xhtml(training);
            pages(EditionWord.TRAINING, page, () -> page, plan, wanted, files);
        }
        if (wanted.has(EditionWord.STANDING)) {
            Document standing = StandingEdition.of(plan, drawings, assumed, wanted.since());
            String page = DocumentPage.xhtml(standing);
            pages(EditionWord.STANDING, page, () -> page, plan, wanted, files);
            if (wanted.has(EditionWord.STANDING, DocumentFormat.DOCX)) {
                files.put(EditionWord.STANDING.file() + ".docx", DocxExport.docx(standing, plan.on()));
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

    /** @param screen the page as the screen has it, asked for only where it is written */
    private static void pages(
            EditionWord edition,
            String paper,
            Supplier<String> screen,
            Plan plan,
            Wanted wanted,
            SortedMap<String, byte[]> files) {
        if (wanted.has(edition, DocumentFormat.HTML)) {
            files.put(edition.file() + ".html", bytes(screen.get()));
        }
        if (wanted.has(edition, DocumentFormat.PDF)) {
            files.put(edition.file() + ".pdf", PdfExport.pdf(paper, plan.on()));
        }
    }

    /** {@code H1}, or {@code H1-2} for the second of several sheets. */
    private static String name(Drawing drawing) {
        return drawing.ofSheets() == 1 ? drawing.hookup() : drawing.hookup() + "-" + drawing.sheet();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
