package leadwright.render.sheet;

import java.util.List;
import leadwright.planner.Plan;
import leadwright.render.diagram.Drawing;

/**
 * The bench edition: the form a technician works from and writes on, then the drawings, then what belongs at the back. One
 * well-formed page source serves screen, browser print and PDF. It refers to nothing outside itself.
 */
public final class BenchSheet {

    private static final String FOOT =
            "Qualified persons only. Mains can kill: one hand, no jewellery, never alone. This"
                    + " sheet defers to the device's own instructions and local codes.";

    private BenchSheet() {}

    /**
     * @param plan an audited plan
     * @param drawings its drawings in order, several for one hookup where it continues; may be empty
     * @param assumed values that the input files leave out and the program filled in, a line each
     * @return the page source, the same for the same input
     */
    public static String xhtml(Plan plan, List<Drawing> drawings, List<String> assumed) {
        Sheet sheet = Sheet.of(plan);
        Xhtml page = sheet.page();
        page.docType();
        page.with(
                "html",
                "",
                new String[] {"xmlns", "http://www.w3.org/1999/xhtml", "lang", "en-GB", "xml:lang", "en-GB"},
                () -> {
                    head(sheet);
                    page.in("body", "bench", () -> body(sheet, drawings, assumed));
                });
        return page.finish();
    }

    private static void head(Sheet sheet) {
        Plan plan = sheet.plan();
        Xhtml page = sheet.page();
        String title = "Bench sheet: " + plan.device().name();
        String continued = plan.device().name() + ", plan " + sheet.shortFingerprint() + ", continued";
        page.in("head", "", () -> {
            page.empty("meta", "charset", "UTF-8");
            page.leaf("title", "", title);
            page.empty(
                    "meta",
                    "name",
                    "description",
                    "content",
                    "Electrical-safety bench sheet of " + plan.device().name() + " by "
                            + plan.rules().name());
            page.empty("meta", "name", "subject", "content", title);
            page.empty("meta", "name", "viewport", "content", "width=device-width");
            page.leaf("style", "", PageStyle.of(plan.house().paper(), continued, sheet.say(FOOT), mark(plan)));
        });
    }

    /** What pages after the first say at their right: the marks of the plan, and where the asset number goes. */
    private static String mark(Plan plan) {
        if (plan.trainingCopy()) {
            return plan.partial() ? "TRAINING: not a record. PARTIAL." : "TRAINING: not a record";
        }
        return plan.partial() ? "PARTIAL" : "";
    }

    private static void body(Sheet sheet, List<Drawing> drawings, List<String> assumed) {
        Xhtml page = sheet.page();
        if (sheet.plan().trainingCopy()) {
            page.leaf("div", "watermark", "TRAINING");
        }
        page.in("div", "form", () -> {
            HeadSection.write(sheet);
            BeforeSection.write(sheet);
            new ReadingsSection(
                            sheet,
                            drawings.stream().map(Drawing::hookup).distinct().toList())
                    .write();
            IfNo.underReadings(sheet);
            AfterSections.shortfalls(sheet);
            AfterSections.end(sheet);
        });
        for (Drawing drawing : drawings) {
            page.in("div", "drawing", () -> page.markup(inline(drawing.svg())));
        }
        AfterSections.back(sheet, assumed);
    }

    /** A drawing without its XML declaration, which may not stand in the middle of a page. */
    private static String inline(String svg) {
        String drawing = svg.stripLeading();
        return drawing.startsWith("<?xml")
                ? drawing.substring(drawing.indexOf("?>") + 2).stripLeading()
                : drawing;
    }
}
