package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.planner.compare.Comparison;
import leadwright.planner.compare.Concern;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;

/** What changed since the procedure that was in force before, and who approves this one. */
final class StandingHistory {

    private StandingHistory() {}

    static void write(DocumentBuilder page, Plan plan, Optional<Comparison> since) {
        page.section("Revision history");
        since.ifPresentOrElse(comparison -> changes(page, comparison), () -> {
            page.grid(
                    List.of("Plan", "Change"),
                    List.of(26, 74),
                    List.of(DocumentBuilder.row(
                            plan.fingerprint()
                                    .substring(0, Math.min(8, plan.fingerprint().length())),
                            "No earlier plan was named; nothing is known to have changed.")));
        });
        page.section("Approval");
        page.toWriteIn(
                List.of("Role", "Name", "Signature", "Date"),
                List.of(28, 28, 26, 18),
                List.of(
                        DocumentBuilder.row("Prepared by", "", "", ""),
                        DocumentBuilder.row("Reviewed by", "", "", ""),
                        DocumentBuilder.row("Approved by", "", "", ""),
                        DocumentBuilder.row("In force from", "–", "–", ""),
                        DocumentBuilder.row("To be reviewed by", "–", "–", "")));
        page.say(
                "It is reviewed by that day, and sooner when the device, its accessories, the kit, the rule set or the standard"
                        + " changes: each gives another plan with another fingerprint.");
    }

    private static void changes(DocumentBuilder page, Comparison comparison) {
        String before = comparison.a().fingerprint().substring(0, 8);
        String after = comparison.b().fingerprint().substring(0, 8);
        if (!comparison.a().device().name().equals(comparison.b().device().name())) {
            page.notice(Words.strong("These are plans of two devices: ")
                    .then(comparison.a().device().name() + " before, "
                            + comparison.b().device().name()
                            + " now; what has the same id is taken for the same thing."));
        }
        page.say("From plan " + before + " (" + comparison.a().device().name() + " on "
                + comparison.a().bench().kit() + ", by "
                + comparison.a().rules().name() + ") to this plan, " + after + ":");
        List<List<Words>> rows = new ArrayList<>();
        for (Concern concern : Concern.values()) {
            comparison.lines().stream()
                    .filter(line -> line.kind().concern() == concern)
                    .forEach(line -> rows.add(List.of(Words.strong(concern.heading()), Words.of(line.sentence()))));
        }
        page.grid(List.of("About", "Change"), List.of(20, 80), rows);
        if (comparison.sameAtTheBench()) {
            page.say("No difference that matters at the bench.");
        }
    }
}
