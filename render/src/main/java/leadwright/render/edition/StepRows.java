package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Step;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** A plan's steps in words; joints, and readings of one quantity, that follow one another for the same reason are one row. */
final class StepRows {

    /** A piece of the kit as the plan names it, {@code lead-short/2}; drawings and lists part the number by a blank. */
    private static final Pattern INSTANCE = Pattern.compile("([A-Za-z][\\w-]*)/(\\d+)");

    /**
     * Steps in one row.
     *
     * @param first number of the first
     * @param last number of the last
     */
    record Row(int first, int last, String text, MainsState state, Optional<String> caution, String because) {

        /** What is done, and the caution: in full where it begins to hold, its first sentence in the rows that follow. */
        Words does(Optional<Row> before) {
            if (caution.isEmpty()) {
                return Words.of(text);
            }
            String whole = caution.get();
            int sentence = whole.indexOf(". ");
            boolean said = before.flatMap(Row::caution).equals(caution) && sentence > 0;
            return Words.of(text + " ").bold(said ? whole.substring(0, sentence + 1) : whole);
        }

        String numbers() {
            return first == last ? String.valueOf(first) : first + "–" + last;
        }
    }

    private final Plan plan;
    private final Vocabulary words;
    private final ReadingRuns runs;

    private StepRows(Plan plan, Vocabulary words) {
        this.plan = plan;
        this.words = words;
        this.runs = new ReadingRuns(plan, words);
    }

    static List<Row> of(Plan plan, Vocabulary words) {
        return new StepRows(plan, words).rows();
    }

    /**
     * The rows of a table.
     *
     * @param columns of a row, from the row and what is done in it
     */
    static List<List<Words>> table(Plan plan, Vocabulary words, BiFunction<Row, Words, List<Words>> columns) {
        List<List<Words>> table = new ArrayList<>();
        Optional<Row> before = Optional.empty();
        for (Row row : of(plan, words)) {
            table.add(columns.apply(row, row.does(before)));
            before = Optional.of(row);
        }
        return table;
    }

    private List<Row> rows() {
        List<Row> rows = new ArrayList<>();
        List<Step> steps = plan.steps();
        for (int from = 0; from < steps.size(); ) {
            int to = runs.end(from);
            if (to > from) {
                rows.add(run(from, to));
            } else {
                to = from + 1;
                while (to < steps.size() && together(steps.get(from), steps.get(to))) {
                    to++;
                }
                rows.add(row(steps.subList(from, to)));
            }
            from = to;
        }
        return rows;
    }

    private Row run(int from, int to) {
        List<Step> steps = plan.steps().subList(from, to);
        return new Row(
                steps.get(0).number(),
                steps.get(steps.size() - 1).number(),
                runs.text(from, to),
                steps.get(0).state(),
                steps.stream()
                        .flatMap(step -> step.caution().stream())
                        .findFirst()
                        .map(words::prose),
                runs.because(from, to));
    }

    private static boolean together(Step one, Step next) {
        return isJoint(one)
                && one.does() == next.does()
                && one.state() == next.state()
                && one.hookup().equals(next.hookup())
                && one.because().equals(next.because())
                && one.caution().equals(next.caution())
                && one.onFail().equals(next.onFail());
    }

    private static boolean isJoint(Step step) {
        return step.does() == Step.Act.JOIN || step.does() == Step.Act.PART;
    }

    private Row row(List<Step> steps) {
        Step first = steps.get(0);
        Step last = steps.get(steps.size() - 1);
        return new Row(
                first.number(),
                last.number(),
                text(steps),
                first.state(),
                first.caution().map(words::prose),
                words.prose(first.because()));
    }

    /**
     * Whether the hookup's drawing bears the numbers: it shows the joints as they are made when the hookup is built, and what
     * comes off for it; not what comes off or goes on again in a later visit.
     */
    private boolean onDrawing(List<Step> steps) {
        Step first = steps.get(0);
        if (first.does() == Step.Act.PART || first.hookup().isEmpty()) {
            return false;
        }
        return steps.stream()
                .allMatch(step -> plan.steps().stream()
                        .filter(each ->
                                each.does() == Step.Act.JOIN && each.hookup().equals(step.hookup()))
                        .filter(each -> each.joint().equals(step.joint()))
                        .findFirst()
                        .filter(step::equals)
                        .isPresent());
    }

    /** {@code number 62, ECG R from lead-short 2}: a joint in words, for a row that no drawing helps. */
    private String joint(Step step) {
        return step.number() + " "
                + INSTANCE.matcher(words.prose(step.text())).replaceAll("$1 $2").replaceFirst("\\.$", "");
    }

    private String text(List<Step> steps) {
        Step step = steps.get(0);
        if (steps.size() > 1) {
            String what = step.does() == Step.Act.JOIN ? "Join" : "Part";
            return onDrawing(steps)
                    ? what + " these " + steps.size() + " joints, in the order of their numbers on the drawing"
                            + step.hookup().map(id -> " of hookup " + id).orElse("") + "."
                    : what + ": " + steps.stream().map(this::joint).collect(Collectors.joining("; ")) + ".";
        }
        String text = words.prose(step.text());
        if (isJoint(step)) {
            return INSTANCE.matcher(text).replaceAll("$1 $2");
        }
        // A place has a name on every paper; its id stands in the files alone.
        return step.place()
                .map(id -> text.replace(id + " (" + words.place(id) + ")", words.place(id)))
                .orElse(text);
    }
}
