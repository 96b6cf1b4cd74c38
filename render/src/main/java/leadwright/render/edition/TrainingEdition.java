package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.house.Paper;
import leadwright.planner.Plan;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Step;
import leadwright.render.diagram.Drawing;
import leadwright.render.paper.Document;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** The training edition: why every step is here, what each reading means, and how a mistake in the wiring shows. */
public final class TrainingEdition {

    private static final String MARK = "TRAINING: not a record";

    private final Plan plan;
    private final List<Drawing> drawings;
    private final List<String> assumed;
    private final Vocabulary words;
    private final DocumentBuilder page = new DocumentBuilder();

    private TrainingEdition(Plan plan, List<Drawing> drawings, List<String> assumed) {
        this.plan = plan;
        this.drawings = drawings;
        this.assumed = assumed;
        this.words = Vocabulary.of(plan);
    }

    /**
     * @param plan an audited plan
     * @param drawings its drawings in order
     * @param assumed values that the input files leave out and the program filled in, a line each
     */
    public static Document of(Plan plan, List<Drawing> drawings, List<String> assumed) {
        return new TrainingEdition(plan, drawings, assumed).write();
    }

    private Document write() {
        Foresights foresights = new Foresights(plan, words, page);
        intent();
        states();
        order();
        hookups();
        readings();
        foresights.wouldRead();
        foresights.budgets();
        onPurpose();
        limits();
        foresights.assumptions();
        List<Questions.Question> questions = Questions.of(plan, words);
        page.section("Questions");
        page.say("All can be answered from this plan. The answers are at the end.");
        page.numbered(Questions.asked(questions));
        page.section("Glossary");
        page.grid(List.of("Word", "Means here"), List.of(28, 72), Glossary.of(page.blocks(), words));
        page.section("Answers");
        page.numbered(Questions.answered(questions));
        signOff();
        String name = plan.device().name();
        return new Document(
                name,
                "Training edition, electrical safety test",
                "Training edition of the electrical safety test of " + name + " by "
                        + plan.rules().name(),
                plan.house().paper() == Paper.LETTER,
                Editions.brief(name) + ", training edition, plan " + words.fingerprint(),
                words.say(
                        "For training of qualified persons, under supervision. Defers to the device's own instructions and local"
                                + " codes."),
                MARK,
                page.blocks());
    }

    private void intent() {
        page.section("What this is for");
        page.notice(Words.strong(MARK + ". ")
                .then(
                        "Nothing is written here about a device. Readings are taken and recorded with the bench sheet of the same"
                                + " plan, " + words.fingerprint() + "."));
        page.say(
                "It goes with the bench sheet: the steps and readings have the same numbers. It says why each is there, which way"
                        + " the current runs, and which way a mistake moves the value. Most mistakes in the wiring read low, and low"
                        + " passes: the limit does not find them, the technician must.");
        page.say("Device: " + plan.device().name() + ", " + words.classAndTypes() + ". Rules: "
                + plan.rules().name() + edition() + ", occasion "
                + plan.occasion().replace('-', ' ') + ". Bench kit: "
                + plan.kit().name() + ".");
        if (plan.partial()) {
            page.notice(Words.strong("PARTIAL: ")
                    .then(
                            "this kit cannot take every reading that is due; what is missing is listed on the bench sheet and is no"
                                    + " part of this training."));
        }
        List<Words> known = new ArrayList<>();
        plan.warnings().forEach(each -> known.add(Words.of(words.prose(each))));
        if (!known.isEmpty()) {
            page.say("To know before the bench:");
            page.items(known);
        }
    }

    private String edition() {
        return plan.rules().edition().isEmpty()
                ? ""
                : ", edition " + plan.rules().edition();
    }

    private void states() {
        page.section("The states, and the risk in each");
        Set<MainsState> occurring =
                plan.steps().stream().map(Step::state).collect(Collectors.toCollection(TreeSet::new));
        List<List<Words>> rows = new ArrayList<>();
        for (MainsState state : occurring) {
            rows.add(List.of(
                    Words.strong(words.state(state)),
                    Words.of(words.say(States.risk(state))),
                    Words.of(words.say(States.why(state)))));
        }
        page.grid(List.of("State", "The risk", "Why it is set"), List.of(24, 40, 36), rows);
        if (plan.device().staysOnWithoutMains()) {
            page.say(words.say(
                    "The battery keeps this device on in every state of the mains: that it runs says nothing about the"
                            + " outlet."));
        }
    }

    private void order() {
        page.section("Every step, and why it is here");
        page.say(words.say(
                "The order follows three rules. What protects comes before what relies on it: checks of the bench, then the"
                        + " earth, then insulation where it is due, then leakage without a fault, then with one, and mains on a part last in its hookup."
                        + " Within that, all readings of one state are taken together, and a hookup is changed as seldom as can be."
                        + " Hands go near the wiring only when the step says that it is safe."));
        page.grid(
                List.of("No.", "What is done", "Why it is here"),
                List.of(12, 50, 38),
                StepRows.table(
                        plan,
                        words,
                        (row, does) -> List.of(Words.strong(row.numbers()), does, Words.of(row.because()))));
    }

    private void hookups() {
        page.section("The hookups, and what goes wrong in them");
        page.say("The drawing of each hookup follows this section, on a page of its own.");
        page.notice(Words.strong("Before a hand goes near the wiring to find a mistake: ")
                .then(
                        "outlet off, and the source off. Only the touch probe is moved under power, by its insulated handle."
                                + (plan.device().outputs().isEmpty()
                                        ? ""
                                        : " A therapy output is made safe again before its wires are handled.")));
        for (Hookup hookup : plan.hookups()) {
            page.part("Hookup " + hookup.id());
            page.grid(WiringRows.HEAD, WiringRows.WIDTHS, WiringRows.of(plan, hookup, words));
            List<List<Words>> slips = Slips.of(plan, hookup, words);
            if (!slips.isEmpty()) {
                page.heading("Common mistakes in hookup " + hookup.id());
                page.grid(Slips.HEAD, Slips.WIDTHS, slips);
            }
        }
        for (Drawing drawing : drawings) {
            page.picture(drawing.svg(), Editions.alt(drawing));
        }
    }

    private void readings() {
        page.section("The readings: what is joined, where the current runs, what it means");
        page.say(
                "In the figures the heavy line is the way of the current, and the numbers are the order in which it runs"
                        + " through what the boxes name; thin lines are what else is joined. One figure serves all that is alike.");
        CircuitFigures figures = new CircuitFigures(plan, words);
        for (Map.Entry<ReadingKind, List<Reading>> kind : ReadingKind.of(plan).entrySet()) {
            Obligation first = kind.getValue().get(0).obligation();
            page.part(Editions.heading(first, words));
            Explanation explained = ReadingKind.explain(first, plan);
            List<CircuitFigures.Shown> shown = figures.of(kind.getValue());
            List<Words> told = new ArrayList<>(List.of(
                    Words.strong("The current: ").then(shown.get(0).circuit().words()),
                    Words.strong("A healthy reading: ").then(words.say(explained.healthy()))));
            Sums.of(first, plan, words)
                    .ifPresent(sum -> told.add(
                            Words.strong("A worked sum, not of this device: ").then(words.say(sum))));
            told.add(Words.strong("A mistake: ").then(words.say(explained.slips())));
            told.add(Words.strong("How to find it: ").then(words.say(explained.exposed())));
            page.items(told);
            shown.forEach(this::figure);
            Set<String> common = Notes.common(kind.getValue());
            if (!common.isEmpty()) {
                page.say("All of these: " + common.stream().map(words::prose).collect(Collectors.joining("; ")) + ".");
            }
            page.grid(
                    List.of("No.", "What is joined to what", "State", "Limit"),
                    List.of(13, 43, 26, 18),
                    rows(kind.getValue(), common));
        }
    }

    private void figure(CircuitFigures.Shown shown) {
        String states = String.join("; ", shown.states());
        if (shown.again()) {
            page.say(states + ": the way of the current is that of figure " + shown.number() + ".");
            return;
        }
        page.figure(
                shown.svg(),
                shown.circuit().words(),
                Words.strong("Figure " + shown.number() + ". ").then(shown.title() + ": " + states + "."));
    }

    /** Readings of one subject and limit in one row, with the states in which they are taken. */
    private List<List<Words>> rows(List<Reading> readings, Set<String> common) {
        Map<List<String>, List<Reading>> alike = new LinkedHashMap<>();
        for (Reading reading : readings) {
            Obligation what = reading.obligation();
            String own = Notes.own(reading, common).stream().map(words::prose).collect(Collectors.joining("; "));
            String joined = words.what(what, reading.hookup().flatMap(plan::hookup));
            String component = what.component().map(Editions::component).orElse("");
            String limit = Editions.limit(what, words).text();
            alike.computeIfAbsent(List.of(joined, component, own, limit), key -> new ArrayList<>())
                    .add(reading);
        }
        List<List<Words>> rows = new ArrayList<>();
        alike.forEach((key, group) -> {
            String component = key.get(1).isEmpty() ? "" : ", " + key.get(1);
            rows.add(List.of(
                    Words.strong(group.stream().map(Reading::id).collect(Collectors.joining(", "))),
                    Words.of(key.get(0) + component + (key.get(2).isEmpty() ? "" : " – " + key.get(2))),
                    Words.of(ObligationRows.states(group, words)),
                    Editions.limit(group.get(0).obligation(), words)));
        });
        return rows;
    }

    private void onPurpose() {
        page.section("Do it wrong on purpose");
        page.notice(Words.strong("On a dummy load only. ")
                .then(words.say(
                        "A board of resistors and the resistance range of a meter, or a battery of a few volts. Never on the"
                                + " mains, never on a device, never with a person in the circuit.")));
        page.numbered(Editions.lines(
                words,
                "Two resistors side by side stand for the earth of a device and a data cable. Read one; add the other. The value"
                        + " falls, though nothing was repaired.",
                "Null with a resistor in the path that stands for the cord, then read the same resistor. It reads nothing: the"
                        + " cord has vanished from the reading.",
                "Null with the tips apart, or in the fingers, then read again with the tips together. Say what is wrong before"
                        + " you look at the value.",
                "Put a strip of painted metal under the clip, then scrape it bare. The first value is high, or none at all.",
                "Join five equal resistors on a fan-out and feed them from the battery; read the current. Pull one wire: the"
                        + " current falls by its share only. Pull the trunk: it is gone.",
                "Swap two plugs whose resistors differ. Both values look right; say which check finds it.",
                "Measure through foil that lies loosely, then press it down. The value must not depend on the hand."));
    }

    private void limits() {
        page.section("What is a standard's, and what is not");
        page.part("Limits, by the rule set");
        page.grid(LimitRows.HEAD, LimitRows.WIDTHS, LimitRows.of(plan, words));
        page.say(LimitRows.MARKS);
        if (!assumed.isEmpty()) {
            page.part("Assumed: what the files leave out");
            page.say(
                    "The program filled in the safe value for each. None of these is a standard's, and none is known of this"
                            + " device.");
            page.items(assumed.stream().map(each -> Words.of(words.prose(each))).toList());
        }
        page.part("Common practice, no source");
        page.items(Editions.practice(plan, words));
    }

    private void signOff() {
        page.section("Assessment of the trainee");
        page.say("This is about the trainee and says nothing about a device.");
        page.toWriteIn(
                List.of("Shown and explained without help", "Trainee", "Assessor", "Date"),
                List.of(46, 20, 20, 14),
                List.of(
                        DocumentBuilder.row("sets up each hookup from the list and counts the ends", "", "", ""),
                        DocumentBuilder.row("says the risk and the rule of each state", "", "", ""),
                        DocumentBuilder.row("finds a mistake that reads low", "", "", ""),
                        DocumentBuilder.row("answers the questions", "", "", "")));
    }
}
