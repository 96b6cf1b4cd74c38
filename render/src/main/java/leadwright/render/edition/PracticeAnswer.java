package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.planner.Plan;
import leadwright.planner.mistake.Cause;
import leadwright.planner.rehearse.Practice;
import leadwright.render.paper.Block;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** The answer to a practice sheet: what it was, what that does, and the reading that rules each other choice out. */
public final class PracticeAnswer {

    /** Named of one kind; the rest is counted. */
    private static final int NAMED = 12;

    private final PracticeWords words;
    private final Practice practice;
    private final DocumentBuilder page;

    private PracticeAnswer(PracticeWords words, Practice practice, DocumentBuilder page) {
        this.words = words;
        this.practice = practice;
        this.page = page;
    }

    /** For a terminal. */
    public static List<Block> of(Plan plan, Practice practice) {
        DocumentBuilder page = new DocumentBuilder();
        write(new PracticeWords(plan), practice, page);
        return page.blocks();
    }

    static void write(PracticeWords words, Practice practice, DocumentBuilder page) {
        PracticeAnswer answer = new PracticeAnswer(words, practice, page);
        answer.explained();
        answer.others();
        answer.alike();
    }

    private void explained() {
        Vocabulary say = words.words();
        Optional<Cause> cause = practice.rightChoice().cause();
        page.say(Words.strong("Right is " + practice.right() + ": ").then(words.sentence(practice.rightChoice())));
        CauseExplained explained = cause.map(CauseExplained::of).orElseGet(CauseExplained::nothing);
        page.items(List.of(
                Words.strong("In the circuit: ").then(say.say(explained.circuit())),
                Words.strong("In the readings: ").then(say.say(explained.readings())),
                Words.strong("At the bench: ").then(say.say(explained.bench())),
                Words.strong("A proof step: ").then(say.say(ProofWords.of(words.plan(), cause)))));
        List<List<Words>> moved = practice.rows().stream()
                .filter(Practice.Row::moved)
                .map(row -> List.of(
                        Words.strong(row.reading()),
                        Words.of(words.what(row.reading())),
                        Words.of(words.shows(row.reading(), row.before())),
                        Words.strong(words.shows(row.reading(), row.now()))))
                .toList();
        page.grid(List.of("No.", "What it moves", "Last year", "Now"), List.of(8, 60, 16, 16), moved);
    }

    private void others() {
        List<List<Words>> rows = new ArrayList<>();
        for (int i = 0; i < practice.choices().size(); i++) {
            Practice.Choice choice = practice.choices().get(i);
            if (i != practice.answer()) {
                Practice.Against first = choice.against().get(0);
                rows.add(List.of(
                        Words.strong(Practice.letter(i)),
                        Words.of(words.sentence(choice)),
                        Words.strong(first.reading()),
                        Words.of(words.shows(first.reading(), first.would())),
                        Words.of(now(first.reading())),
                        Words.of(String.valueOf(choice.against().size()))));
            }
        }
        page.grid(
                List.of("", "Why not", "Reading", "It would show", "It shows", "So many rule it out"),
                List.of(6, 46, 10, 13, 13, 12),
                rows);
    }

    private String now(String reading) {
        return practice.rows().stream()
                .filter(row -> row.reading().equals(reading))
                .map(row -> words.shows(reading, row.now()))
                .findFirst()
                .orElseThrow();
    }

    /** Causes that were not offered because the sheet cannot tell them from the right one, kind by kind. */
    private void alike() {
        Map<String, List<String>> kinds = new LinkedHashMap<>();
        for (Cause cause : practice.alike()) {
            kinds.computeIfAbsent(words.causes().kind(cause), each -> new ArrayList<>())
                    .add(words.causes().things(cause));
        }
        if (kinds.isEmpty()) {
            return;
        }
        page.say("Not offered, because these readings cannot tell it from the right answer:");
        List<Words> lines = new ArrayList<>();
        kinds.forEach((kind, things) -> {
            List<String> named = things.stream().filter(each -> !each.isEmpty()).toList();
            String more = named.size() > NAMED ? "; and " + (named.size() - NAMED) + " more of this kind" : "";
            String which = String.join("; ", named.subList(0, Math.min(NAMED, named.size()))) + more;
            lines.add(Words.of(kind + (named.isEmpty() ? "" : ": " + which)));
        });
        page.items(lines);
    }
}
