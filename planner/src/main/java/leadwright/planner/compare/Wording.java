package leadwright.planner.compare;

import static leadwright.planner.compare.Names.count;
import static leadwright.planner.compare.Names.few;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Changes in sentences for a person at the bench. The first plan is the past, the second the present. */
final class Wording {

    private static final int MANY = 4;
    private static final String CEILING = "at most ";

    private final List<Change> group;
    private final Change first;
    private final int size;

    private Wording(List<Change> group) {
        this.group = group;
        this.first = group.get(0);
        this.size = group.size();
    }

    /**
     * One sentence.
     *
     * @param group at least one change, all alike as {@link Line} gathers them
     */
    static String of(List<Change> group) {
        Wording wording = new Wording(group);
        return switch (group.get(0).concern()) {
            case PLANNED_FOR -> wording.plannedFor();
            case HAZARDS -> wording.hazard();
            case LIMITS -> wording.limit();
            case TESTS -> wording.test();
            case WIRING -> wording.wiring();
            case ORDER -> wording.order();
            case TIME -> wording.time();
        };
    }

    private String plannedFor() {
        return switch (first.kind()) {
            case APPLIED_PART ->
                by(
                        "applied part " + named(first.after()) + " came in",
                        "applied part " + named(first.before()) + " went",
                        "applied part " + first.subject() + " is called " + after() + " now, was " + before());
            case PART_TYPE -> "applied part " + first.subject() + " is of type " + after() + " now, was " + before();
            case PART_CONNECTIONS ->
                "applied part " + first.subject() + ": "
                        + List.of(
                                        first.after()
                                                .map(each -> each + " came in")
                                                .orElse(""),
                                        first.before()
                                                .map(each -> each + " went")
                                                .orElse(""))
                                .stream()
                                .filter(each -> !each.isEmpty())
                                .collect(Collectors.joining("; "));
            default -> first.subject() + ": " + nowWas();
        };
    }

    private String named(Optional<String> name) {
        return first.subject()
                + name.filter(each -> !each.equals(first.subject()))
                        .map(each -> " (" + each + ")")
                        .orElse("");
    }

    private String hazard() {
        return switch (first.kind()) {
            case TRAINING_COPY -> by("TRAINING COPY now: no record may rest on it", "no longer a training copy", "");
            case PARTIAL ->
                by(
                        "PARTIAL now: this kit cannot take every reading that is due",
                        "whole now, was PARTIAL: every reading that is due is taken",
                        "");
            case SHORTFALL ->
                by(
                        "falls short now, " + first.subject() + ": " + after(),
                        "no longer falls short, " + first.subject() + "; was: " + before(),
                        "falls short, " + first.subject() + ": " + nowWas());
            case THERAPY_OUTPUT ->
                by(
                        "therapy output " + first.subject() + " comes in: " + quoted(after()),
                        "therapy output " + first.subject() + ": no step makes it safe any more; was: "
                                + quoted(before()),
                        "therapy output " + first.subject() + " is made safe otherwise: now " + quoted(after())
                                + "; was " + quoted(before()));
            case MAINS_ON_PART ->
                by(
                        "mains is put on " + each() + ": " + after() + eachOne() + ", none before",
                        "mains is no longer put on " + each() + ", was in " + before() + eachOne(),
                        "mains is put on " + each() + ": " + after() + eachOne() + ", was in " + before());
            case PART_SOURCE -> "source for mains on a part: " + nowWas();
            case CAUTION -> caution();
            case REPLUG_UNDER_POWER -> "plugging under power, mains " + first.subject() + ": " + nowWas();
            case FLOAT_JOINED -> floating();
            case ON_FAIL ->
                "what to do when it fails, " + readings() + ": now " + quoted(after()) + "; was " + quoted(before());
            default ->
                by("note came in: " + quoted(first.subject()), "note went: " + quoted(first.subject()), nowWas());
        };
    }

    private String caution() {
        String text = quoted(first.family());
        boolean whole = first.subject().equals(first.family());
        if (whole) {
            return by(
                    "caution came in, at " + after() + ": " + text,
                    "caution went, was at " + before() + ": " + text,
                    "");
        }
        return by("caution came in at " + each() + ": " + text, "caution went from " + each() + ": " + text, "");
    }

    private String floating() {
        boolean more = first.trend() == Trend.MORE;
        if (first.inA().isEmpty() || first.inB().isEmpty()) {
            return count(size, "reading") + (more ? " that came in with" : " that went, with")
                    + " connections that share a jack while they float";
        }
        return size == 1
                ? first.subject() + ": " + after() + " share a jack while they float, were " + before()
                : count(size, "reading") + " with " + (more ? "more" : "fewer")
                        + " connections that share a jack while they float: " + each();
    }

    private String limit() {
        return switch (first.kind()) {
            case LIMIT -> {
                String how = switch (first.trend()) {
                    case RELAXED -> "RELAXED";
                    case TIGHTENED -> "tightened";
                    case WENT -> "NO LIMIT any more";
                    case CAME -> "judged now";
                    default -> "another kind of limit";
                };
                yield how + ", " + readings() + ": " + nowWas();
            }
            case LIMIT_ORIGIN -> "same value, resting on something else, " + readings() + ": " + nowWas();
            case ACCURACY -> "accuracy of the tester, " + first.subject() + ": " + nowWas();
            default -> first.subject() + ": " + nowWas();
        };
    }

    private String test() {
        return switch (first.kind()) {
            case READING -> {
                String turn = first.trend() == Trend.CAME ? "came in" : "went";
                String what = size <= 2 ? each() : first.family();
                yield count(size, "reading") + " " + turn + ": " + what + "; " + limits();
            }
            case TAKEN_OTHERWISE -> otherwise();
            case CLAUSE -> "clause of " + readings() + ": " + nowWas();
            case REMARK ->
                "to know of " + readings() + ": "
                        + by(
                                "now also " + quoted(after()),
                                "no longer " + quoted(before()),
                                "now " + quoted(after()) + "; was " + quoted(before()));
            default ->
                by(
                        "left out now: " + leftOut(true),
                        "no longer left out: " + leftOut(false),
                        "left out for another reason: "
                                + group.stream()
                                        .map(each -> each.subject() + ", now "
                                                + quoted(each.after().orElse("")) + "; was "
                                                + quoted(each.before().orElse("")))
                                        .collect(Collectors.joining("; ")));
        };
    }

    /** Lists of connections are long: what came and what went is enough. */
    private String otherwise() {
        int comma = first.family().indexOf(", ");
        String condition = first.family().substring(0, comma);
        String which = size == 1
                ? first.subject()
                : count(size, "reading") + " of " + first.family().substring(comma + 2);
        String taken = which + " taken otherwise, " + condition + ": ";
        if (!condition.contains("connections")) {
            return taken + nowWas();
        }
        List<String> came = only(first.after(), first.before());
        List<String> went = only(first.before(), first.after());
        return taken
                + (came.isEmpty() ? "" : few(came) + " came in")
                + (came.isEmpty() || went.isEmpty() ? "" : "; ")
                + (went.isEmpty() ? "" : few(went) + " went");
    }

    private static List<String> only(Optional<String> mine, Optional<String> theirs) {
        List<String> only =
                new ArrayList<>(mine.map(each -> List.of(each.split(", "))).orElse(List.of()));
        only.removeAll(theirs.map(each -> List.of(each.split(", "))).orElse(List.of()));
        return only;
    }

    private String wiring() {
        return switch (first.kind()) {
            case HOOKUPS -> count(Integer.parseInt(after()), "hookup") + ", were " + before();
            case HOOKUP ->
                by(first.subject() + " came in: " + after(), first.subject() + " went; was: " + before(), "");
            case JACK ->
                where() + ": " + few(subjects()) + " "
                        + by(
                                "came in" + (size == 1 ? ", on " + after() : ""),
                                "no longer wired" + (size == 1 ? ", was on " + before() : ""),
                                "on " + after() + ", was on " + before());
            case CHAIN -> where() + ": " + few(subjects()) + " by " + after() + ", was by " + before();
            case LINK ->
                where() + ": "
                        + by(
                                first.subject() + " are joined by " + after(),
                                first.subject() + " are no longer joined, were by " + before(),
                                first.subject() + " are joined by " + after() + ", were by " + before());
            case EARTH_LEAD ->
                where() + ": "
                        + by(
                                first.subject() + " came in, " + after(),
                                first.subject() + " went, was " + before(),
                                first.subject() + ": " + nowWas());
            case TAKEN_IN ->
                readings() + " taken in another hookup: in " + after() + " of B, was in " + before() + " of A";
            default -> "items needed: " + list();
        };
    }

    private String order() {
        return switch (first.kind()) {
            case START_UPS -> count(Integer.parseInt(after()), "start-up") + ", were " + before();
            case READING_MOVED -> {
                String turn = switch (first.trend()) {
                    case EARLIER -> "earlier";
                    case LATER -> "later";
                    default -> "among others";
                };
                yield readings() + " taken " + turn;
            }
            case INSTRUCTION ->
                by(
                        "step came in: " + quoted(first.subject()),
                        "step went: " + quoted(first.subject()),
                        "step " + after() + ", was " + before() + ": " + quoted(first.subject()));
            default -> "numbers of steps: " + list();
        };
    }

    private String time() {
        return switch (first.kind()) {
            case SPLIT -> "of that: " + list();
            default -> first.subject() + ": " + nowWas();
        };
    }

    private String by(String came, String went, String otherwise) {
        return switch (first.trend()) {
            case CAME -> came;
            case WENT -> went;
            default -> otherwise;
        };
    }

    /** The readings concerned: the one itself, or how many and of what. */
    private String readings() {
        return size == 1 ? first.subject() : count(size, "reading") + " of " + first.family();
    }

    /** The subjects, of which some hold commas. */
    private String each() {
        List<String> subjects = subjects();
        return subjects.size() <= MANY
                ? String.join("; ", subjects)
                : String.join("; ", subjects.subList(0, MANY - 1)) + "; and " + (subjects.size() - MANY + 1) + " more";
    }

    /** The limits of readings that came or went, each once. */
    private String limits() {
        List<String> limits = group.stream()
                .map(each -> each.after().or(each::before).orElse(""))
                .distinct()
                .toList();
        boolean ceilings = limits.stream().allMatch(each -> each.startsWith(CEILING));
        return ceilings
                ? CEILING
                        + limits.stream()
                                .map(each -> each.substring(CEILING.length()))
                                .collect(Collectors.joining(", "))
                : String.join(", ", limits);
    }

    /** Tests left out, with the reason where they are few. */
    private String leftOut(boolean now) {
        return size > MANY
                ? String.join(", ", subjects())
                : group.stream()
                        .map(each -> each.subject()
                                + (now ? " (" : " (was: ")
                                + (now ? each.after() : each.before()).orElse("") + ")")
                        .collect(Collectors.joining("; "));
    }

    private String eachOne() {
        return size > 1 ? " each" : "";
    }

    private List<String> subjects() {
        return group.stream().map(Change::subject).toList();
    }

    /** Each with its two figures. */
    private String list() {
        return group.stream()
                .map(each -> each.subject() + " " + each.after().orElse("none") + " (was "
                        + each.before().orElse("none") + ")")
                .collect(Collectors.joining(", "));
    }

    private String where() {
        String inA = first.inA().isEmpty() ? "" : first.inA().get(0);
        String inB = first.inB().isEmpty() ? "" : first.inB().get(0);
        return inA.equals(inB) ? inB : inB + " (was " + inA + ")";
    }

    private String nowWas() {
        return "now " + after() + "; was " + before();
    }

    private String before() {
        return first.before().orElse("none");
    }

    private String after() {
        return first.after().orElse("none");
    }

    private static String quoted(String text) {
        return "“" + text + "”";
    }
}
