package leadwright.render.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Proof;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Remedy;
import leadwright.planner.plan.Shortfall;

/** A plan in a few lines for the person who asked for it: what was made, and what must be known before the bench. */
final class PlanReport {

    private static final int SOME = 8;

    private PlanReport() {}

    /** What the plan is, in two lines. */
    static List<String> headline(Plan plan) {
        String edition = plan.rules().edition().isEmpty()
                ? ""
                : ", edition " + plan.rules().edition();
        return List.of(
                plan.device().name() + " on " + plan.kit().name() + ", by "
                        + plan.rules().name() + edition + " (" + plan.occasion().replace('-', ' ') + ")",
                plan.readings().isEmpty()
                        ? "Nothing can be read with this kit. Plan "
                                + plan.fingerprint().substring(0, 8) + "."
                        : count(plan.hookups().size(), "hookup") + " (" + proven(plan.hookupsProof(), "fewest") + "), "
                                + count(plan.readings().size(), "reading") + ", "
                                + minutes(plan.time().total()) + " ("
                                + proven(plan.timeProof(), "least") + "), "
                                + count(plan.time().startUps(), "start-up")
                                + ". Plan " + plan.fingerprint().substring(0, 8) + ".");
    }

    /** What a person must know, a line each. */
    static List<String> toKnow(Plan plan, List<String> assumed) {
        List<String> lines = new ArrayList<>();
        if (plan.trainingCopy()) {
            lines.add("TRAINING COPY: the tester is past its calibration date; no record.");
        }
        if (plan.partial()) {
            lines.add("PARTIAL: this kit cannot take every reading that is due.");
            plan.shortfalls().forEach(each -> lines.add("  " + shortfall(each)));
            plan.remedy()
                    .filter(remedy -> plan.shortfalls().size() > 1)
                    .ifPresent(remedy -> lines.add("  " + together(remedy)));
        }
        int unconfirmed = plan.unconfirmedLimits().size();
        if (unconfirmed > 0) {
            lines.add(count(unconfirmed, "limit") + " not yet confirmed with a copy of the standard: results are"
                    + " provisional (listed at the back of the sheet).");
        }
        if (!plan.notApplicable().isEmpty()) {
            lines.add("Not done, reasons on the sheet: "
                    + plan.notApplicable().stream()
                            .map(NotApplicable::test)
                            .distinct()
                            .collect(Collectors.joining(", "))
                    + ".");
        }
        plan.warnings().forEach(each -> lines.add("Note: " + each));
        if (assumed.contains(Inputs.DEFAULT_KIT_ASSUMED)) {
            lines.add("Note: " + Inputs.DEFAULT_KIT_ASSUMED + ".");
        }
        if (!assumed.isEmpty()) {
            lines.add(
                    count(assumed.size(), "value") + " that the files leave out filled in with the safe default (listed"
                            + " at the back of the sheet).");
        }
        return lines;
    }

    /** {@code For all that items can help: … (1 piece, proven fewest)}. */
    static String together(Remedy remedy) {
        List<String> texts = remedy.alternatives().stream().map(Proposal::text).toList();
        return "For all together that items can help: " + String.join("; or ", texts) + " ("
                + count(remedy.alternatives().get(0).count(), "piece") + ", " + proven(remedy.proof(), "fewest") + ")";
    }

    static String shortfall(Shortfall each) {
        String connections = each.connections().isEmpty() ? "" : " (" + some(each.connections()) + ")";
        String additions = each.additions().isEmpty() ? "" : "; would do: " + String.join("; or ", each.additions());
        return each.about() + connections + ": " + each.because() + additions;
    }

    /** All names where they are few; else the first ones and how many follow, for the sheet lists them all. */
    private static String some(List<String> names) {
        return names.size() <= SOME
                ? String.join(", ", names)
                : String.join(", ", names.subList(0, SOME)) + " and " + (names.size() - SOME) + " more";
    }

    private static String proven(Proof proof, String superlative) {
        return proof.optimal()
                ? "proven " + superlative
                : "not proven " + superlative + ": at least " + proof.lowerBound();
    }

    static String count(int number, String word) {
        return number + " " + word + (number == 1 ? "" : "s");
    }

    private static String minutes(int seconds) {
        return "about " + count((seconds + 59) / 60, "minute");
    }
}
