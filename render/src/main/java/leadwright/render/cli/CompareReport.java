package leadwright.render.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import leadwright.planner.compare.Change;
import leadwright.planner.compare.Comparison;
import leadwright.planner.compare.Concern;
import leadwright.planner.compare.Line;
import leadwright.planner.compare.Side;

/** A comparison in lines of at most a hundred columns. */
final class CompareReport {

    private static final int WIDTH = 100;

    private CompareReport() {}

    /**
     * The two plans, then what changed under a heading for each concern.
     *
     * @param all whether every change is listed under the line that gathers it
     */
    static List<String> lines(Comparison comparison, boolean all) {
        List<String> lines = new ArrayList<>(head(comparison));
        boolean gathered = false;
        for (Concern concern : Concern.values()) {
            List<Line> told = comparison.lines().stream()
                    .filter(line -> line.kind().concern() == concern)
                    .toList();
            if (!told.isEmpty()) {
                lines.add("");
                lines.add(concern.heading());
            }
            for (Line line : told) {
                wrap(lines, "  - ", line.sentence());
                if (all && gathers(line)) {
                    line.changes().forEach(each -> wrap(lines, "      ", one(each)));
                }
                gathered |= gathers(line);
            }
        }
        if (comparison.sameAtTheBench()) {
            lines.add("");
            lines.add("No difference that matters at the bench.");
        }
        if (gathered && !all) {
            lines.add("");
            lines.add("Some lines gather several changes; --all lists each.");
        }
        return lines;
    }

    /** Whether a line leaves things out; lists of figures leave out nothing. */
    private static boolean gathers(Line line) {
        return line.changes().size() > 1
                && switch (line.kind()) {
                    case ITEMS, ACTS, SPLIT -> false;
                    default -> true;
                };
    }

    /** Which two plans, and how many changes of each concern. */
    static List<String> summary(Comparison comparison) {
        List<String> lines = new ArrayList<>(head(comparison));
        if (comparison.sameAtTheBench()) {
            lines.add("No difference that matters at the bench.");
            return lines;
        }
        List<String> counts = new ArrayList<>();
        for (Concern concern : Concern.values()) {
            int count = comparison.about(concern).size();
            if (count > 0) {
                counts.add(concern.heading().toLowerCase(Locale.ROOT) + " " + count);
            }
        }
        wrap(lines, "", "Changes: " + String.join(", ", counts));
        return lines;
    }

    private static List<String> head(Comparison comparison) {
        Side a = comparison.a();
        Side b = comparison.b();
        List<String> lines = new ArrayList<>();
        wrap(lines, "A  ", side(a));
        wrap(lines, "B  ", side(b));
        if (!a.device().name().equals(b.device().name())) {
            wrap(lines, "", "These are plans of two devices; what has the same id is taken for the same thing.");
        }
        if (a.fingerprint().equals(b.fingerprint()) && !comparison.changes().isEmpty()) {
            wrap(
                    lines,
                    "",
                    "Both carry the same fingerprint and yet they differ: one of them was changed by hand, and neither"
                            + " is to be trusted. Plan again.");
        }
        return lines;
    }

    private static String side(Side side) {
        String edition = side.rules().edition().isEmpty()
                ? ""
                : ", edition " + side.rules().edition();
        return "plan " + side.fingerprint().substring(0, 8) + ": "
                + side.device().name() + " on "
                + side.bench().kit() + ", by " + side.rules().name() + edition + " ("
                + side.occasion().replace('-', ' ')
                + side.on().map(day -> ", " + day).orElse("") + "); "
                + PlanReport.count(side.hookups().size(), "hookup") + ", "
                + PlanReport.count(side.readings().size(), "reading")
                + (side.partial() ? ", PARTIAL" : "")
                + (side.training() ? ", TRAINING COPY" : "");
    }

    /** A change of a gathered line: the ids in both plans, what, and how it was and is where that is not said above. */
    private static String one(Change change) {
        String inA = String.join(", ", change.inA());
        String inB = String.join(", ", change.inB());
        String ids = inA.isEmpty() && inB.isEmpty()
                ? ""
                : (inA.isEmpty() ? "–" : inA) + " → " + (inB.isEmpty() ? "–" : inB) + "  ";
        return ids
                + switch (change.kind()) {
                    case READING, NOT_APPLICABLE ->
                        change.subject() + ": "
                                + change.after().or(change::before).orElse("");
                    case FLOAT_JOINED, READING_MOVED, JACK ->
                        change.subject() + ": now " + change.after().orElse("none") + "; was "
                                + change.before().orElse("none");
                    default -> change.subject();
                };
    }

    /** Breaks at spaces; what is longer than a line stays whole. */
    private static void wrap(List<String> lines, String first, String text) {
        String indent = " ".repeat(first.length());
        StringBuilder line = new StringBuilder(first);
        boolean empty = true;
        for (String word : text.split(" ")) {
            if (!empty && line.length() + 1 + word.length() > WIDTH) {
                lines.add(line.toString());
                line = new StringBuilder(indent);
                empty = true;
            }
            line.append(empty ? "" : " ").append(word);
            empty = false;
        }
        lines.add(line.toString());
    }
}
