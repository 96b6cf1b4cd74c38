package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.render.sheet.Vocabulary;

/**
 * Readings of one quantity that follow one another in one state, with what is selected, touched or clipped before each: a
 * long plan is read by such runs, not step by step.
 */
final class ReadingRuns {

    private final Plan plan;
    private final Vocabulary words;
    private final List<Step> steps;
    private final Map<String, Reading> readings;

    ReadingRuns(Plan plan, Vocabulary words) {
        this.plan = plan;
        this.words = words;
        this.steps = plan.steps();
        this.readings = plan.readings().stream().collect(Collectors.toMap(Reading::id, Function.identity()));
    }

    /** Where the run that begins at this step ends, exclusive; the same place where none begins. */
    int end(int from) {
        int end = unit(from);
        if (end == from) {
            return from;
        }
        while (true) {
            int next = unit(end);
            if (next == end || !alike(steps.get(end - 1), steps.get(next - 1)) || cautions(from, next) > 1) {
                return end;
            }
            end = next;
        }
    }

    /** The end of a reading with what is made ready for it; the same place where the next step is not of that kind. */
    private int unit(int from) {
        int at = from;
        while (at < steps.size() && prepares(at)) {
            at++;
        }
        boolean read = at < steps.size() && steps.get(at).does() == Step.Act.READ;
        return read && cautions(from, at + 1) <= 1 ? at + 1 : from;
    }

    private boolean prepares(int at) {
        Step step = steps.get(at);
        return switch (step.does()) {
            case TIE, TOUCH -> true;
            case CLIP -> step.place().isPresent() && step.place().equals(placeRead(at));
            default -> false;
        };
    }

    private Optional<String> placeRead(int at) {
        return steps.subList(at, steps.size()).stream()
                .flatMap(step -> step.reading().stream())
                .findFirst()
                .flatMap(id -> readings.get(id).obligation().place());
    }

    private int cautions(int from, int to) {
        return (int) steps.subList(from, to).stream()
                .flatMap(step -> step.caution().stream())
                .distinct()
                .count();
    }

    private boolean alike(Step one, Step next) {
        Obligation first = read(one).obligation();
        Obligation second = read(next).obligation();
        return one.state() == next.state()
                && one.hookup().equals(next.hookup())
                && one.because().equals(next.because())
                && one.onFail().equals(next.onFail())
                && first.quantity() == second.quantity()
                && first.method().equals(second.method())
                && first.earthSubject().equals(second.earthSubject())
                && first.clause().equals(second.clause())
                && first.mode().equals(second.mode());
    }

    private Reading read(Step step) {
        return readings.get(step.reading().orElseThrow());
    }

    private List<Reading> of(int from, int to) {
        return steps.subList(from, to).stream()
                .flatMap(step -> step.reading().stream())
                .map(readings::get)
                .toList();
    }

    /** What is done in a run. */
    String text(int from, int to) {
        List<Reading> read = of(from, to);
        Obligation first = read.get(0).obligation();
        if (read.size() == 1) {
            return ready(from, to, first.place().map(words::place)) + "Read "
                    + read.get(0).id() + ", " + words.quantity(first) + ": " + subject(read.get(0)) + ".";
        }
        boolean oneComponent = read.stream()
                        .map(each -> each.obligation().component())
                        .distinct()
                        .count()
                == 1;
        Map<String, List<String>> bySubject = new LinkedHashMap<>();
        for (Reading each : read) {
            String manner = words.manner(each.obligation(), !oneComponent);
            bySubject
                    .computeIfAbsent(subject(each), subject -> new ArrayList<>())
                    .add(each.id() + (manner.isEmpty() ? "" : " (" + manner + ")"));
        }
        return ready(from, to, Optional.empty()) + "Read " + read.get(0).id() + "–"
                + read.get(read.size() - 1).id() + ", " + words.quantity(first, oneComponent) + ": "
                + bySubject.entrySet().stream()
                        .map(each -> String.join(", ", each.getValue()) + " of " + each.getKey())
                        .collect(Collectors.joining("; "))
                + ".";
    }

    private String subject(Reading reading) {
        return words.what(reading.obligation(), reading.hookup().flatMap(plan::hookup));
    }

    /** What is made ready before a reading at one place, or before each of several. */
    private String ready(int from, int to, Optional<String> one) {
        StringBuilder ready = new StringBuilder();
        if (has(from, to, Step.Act.TIE)) {
            boolean several = of(from, to).size() > 1;
            ready.append(
                    several
                            ? "Before each reading select its jacks at the tester and no others. "
                            : "Select the jacks at the tester and no others. ");
        }
        if (has(from, to, Step.Act.TOUCH)) {
            ready.append("Touch ").append(one.orElse("each place")).append(" with the probe, hand behind its guard. ");
        }
        if (has(from, to, Step.Act.CLIP)) {
            ready.append("Put the clip on ").append(one.orElse("each place")).append(", on bare metal. ");
        }
        return ready.toString();
    }

    private boolean has(int from, int to, Step.Act act) {
        return steps.subList(from, to).stream().anyMatch(step -> step.does() == act);
    }

    /** Why: the reasons of the steps, each once, with the clause that asks for the readings. */
    String because(int from, int to) {
        String clause = of(from, to).get(0).obligation().clause();
        String because = steps.subList(from, to).stream()
                .filter(step -> step.does() != Step.Act.TIE)
                .map(Step::because)
                .distinct()
                .map(words::prose)
                .collect(Collectors.joining(" "));
        return clause.isBlank() || because.contains(clause) ? because : because + " (" + clause + ")";
    }
}
