package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** A plan's steps in words; joints that follow one another for the same reason are one row. */
final class StepRows {

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
    private final Map<String, Reading> readings;

    private StepRows(Plan plan, Vocabulary words) {
        this.plan = plan;
        this.words = words;
        this.readings = plan.readings().stream().collect(Collectors.toMap(Reading::id, Function.identity()));
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
            int to = from + 1;
            while (to < steps.size() && together(steps.get(from), steps.get(to))) {
                to++;
            }
            rows.add(row(from, steps.subList(from, to)));
            from = to;
        }
        return rows;
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

    private Row row(int at, List<Step> steps) {
        Step first = steps.get(0);
        Step last = steps.get(steps.size() - 1);
        return new Row(
                first.number(),
                last.number(),
                text(at, steps),
                first.state(),
                first.caution().map(words::prose),
                because(at, first));
    }

    private String text(int at, List<Step> steps) {
        Step step = steps.get(0);
        if (steps.size() > 1) {
            String what = step.does() == Step.Act.JOIN ? "Join" : "Part";
            return what + " these " + steps.size() + " joints, in the order of their numbers on the drawing"
                    + step.hookup().map(id -> " of hookup " + id).orElse("") + ".";
        }
        if (step.does() == Step.Act.TIE) {
            return selection(at).orElse(words.prose(step.text()));
        }
        if (step.does() == Step.Act.READ) {
            return step.reading()
                    .map(readings::get)
                    .map(reading -> "Read " + reading.id() + ", "
                            + words.quantity(reading.obligation()) + ": "
                            + words.what(reading.obligation(), reading.hookup().flatMap(plan::hookup)) + ".")
                    .orElse(words.prose(step.text()));
        }
        return words.prose(step.text());
    }

    /** What is selected is what the next reading asks for. */
    private Optional<String> selection(int at) {
        return next(at).map(reading -> {
            Obligation what = reading.obligation();
            String jacks = reading.hookup()
                    .flatMap(plan::hookup)
                    .map(hookup -> words.jacks(what.demand(), hookup))
                    .orElse("");
            return "Select at the tester: " + jacks + " (" + words.what(what) + "); all others not selected.";
        });
    }

    private Optional<Reading> next(int at) {
        return plan.steps().subList(at, plan.steps().size()).stream()
                .flatMap(step -> step.reading().stream())
                .map(readings::get)
                .findFirst();
    }

    private String because(int at, Step step) {
        if (step.does() == Step.Act.TIE) {
            return next(at).map(reading -> "The readings that follow are of " + words.what(reading.obligation()) + ".")
                    .orElse(words.prose(step.because()));
        }
        String because = words.prose(step.because());
        String clause = step.reading()
                .map(readings::get)
                .map(reading -> reading.obligation().clause())
                .orElse("");
        return clause.isBlank() || because.contains(clause) ? because : because + " (" + clause + ")";
    }
}
