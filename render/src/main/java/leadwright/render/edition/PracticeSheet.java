package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.house.Paper;
import leadwright.planner.Plan;
import leadwright.planner.plan.Chain;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.rehearse.Practice;
import leadwright.render.paper.Block;
import leadwright.render.paper.Document;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;

/** A practice sheet for a trainee: readings of last year and now, and what may be the cause. It does not hold the answer. */
public final class PracticeSheet {

    private final PracticeWords words;
    private final Practice practice;
    private final DocumentBuilder page = new DocumentBuilder();

    private PracticeSheet(Plan plan, Practice practice) {
        this.words = new PracticeWords(plan);
        this.practice = practice;
    }

    /** The sheet to hand out. */
    public static Document of(Plan plan, Practice practice) {
        return new PracticeSheet(plan, practice).paper();
    }

    /** The same for a terminal: the choices as a list, and nothing to write in. */
    public static List<Block> onScreen(Plan plan, Practice practice) {
        PracticeSheet sheet = new PracticeSheet(plan, practice);
        sheet.known();
        sheet.readings();
        sheet.page.section("What is it?");
        sheet.page.grid(List.of("", "What may be the cause"), List.of(6, 94), sheet.choices());
        return sheet.page.blocks();
    }

    /** The choices as sentences, in the order of their letters. */
    public static List<String> sentences(Plan plan, Practice practice) {
        PracticeWords words = new PracticeWords(plan);
        return practice.choices().stream().map(words::sentence).toList();
    }

    private Document paper() {
        known();
        readings();
        page.section("What is it?");
        page.toWriteIn(
                List.of("", "What may be the cause", "Ruled out by reading"),
                List.of(6, 70, 24),
                choices().stream()
                        .map(row -> List.of(row.get(0), row.get(1), Words.NONE))
                        .toList());
        page.say(
                "One is right: it explains every reading above, within the tester's accuracy. Each of the others is ruled out by a"
                        + " reading at least, by more than a fifth and more than twice the accuracy. Write down which.");
        page.toWriteIn(
                List.of("Your answer", "How you would make sure at the bench", "Name", "Date"),
                List.of(14, 46, 24, 16),
                List.of(DocumentBuilder.row("", "", "", "")));
        Plan plan = words.plan();
        return new Document(
                plan.device().name(),
                "Practice sheet " + practice.seed() + ", electrical safety test",
                "Practice sheet " + practice.seed() + " for " + plan.device().name() + ": invented readings, no record",
                plan.house().paper() == Paper.LETTER,
                Editions.brief(plan.device().name()) + ", practice " + words.name(practice),
                words.words()
                        .say(
                                "For training of qualified persons, under supervision. Defers to the device's own instructions and local"
                                        + " codes."),
                PracticeWords.MARK,
                page.blocks());
    }

    private List<List<Words>> choices() {
        List<List<Words>> rows = new ArrayList<>();
        for (int i = 0; i < practice.choices().size(); i++) {
            rows.add(List.of(
                    Words.strong(Practice.letter(i)),
                    Words.of(words.sentence(practice.choices().get(i)))));
        }
        return rows;
    }

    private void known() {
        Plan plan = words.plan();
        page.section("What is known");
        page.notice(words.notice());
        page.say(Words.of("This is ").bold(words.name(practice)).then("."));
        List<Words> lines = new ArrayList<>();
        lines.add(Words.of("Device: ")
                .bold(plan.device().name())
                .then(", " + words.words().classAndTypes() + ". Bench kit: "
                        + plan.kit().name() + ". Rules: " + plan.rules().name() + "."));
        lines.add(Words.of(
                "Last year this device was good, and nobody slipped: 'last year' is what was read then. 'Now' is today's"
                        + " reading, by the same plan, with the same kit, mains voltage and temperature."));
        lines.add(Words.of(
                "Since then one thing at most has gone wrong: a slip of whoever connected and read, or a fault of the"
                        + " device."));
        lines.addAll(words.accuracies(practice));
        page.items(lines);
        wiring();
    }

    /** What lies on which jack, in the hookups that the sheet has readings of. */
    private void wiring() {
        TreeSet<String> shown = practice.rows().stream()
                .flatMap(row -> words.reading(row.reading()).hookup().stream())
                .collect(Collectors.toCollection(TreeSet::new));
        List<List<Words>> rows = new ArrayList<>();
        for (Hookup hookup : words.plan().hookups()) {
            if (shown.contains(hookup.id())) {
                hookup.chains().stream()
                        .map(Chain::jack)
                        .distinct()
                        .forEach(jack -> rows.add(List.of(
                                Words.strong(hookup.id()),
                                Words.of("jack " + jack),
                                Words.of(words.words().subject(on(hookup, jack))),
                                Words.of(fans(hookup, jack)))));
            }
        }
        page.grid(List.of("Hookup", "Jack", "What lies on it", "Fan-out"), List.of(12, 12, 54, 22), rows);
    }

    private static List<String> on(Hookup hookup, int jack) {
        return hookup.chains().stream()
                .filter(chain -> chain.jack() == jack)
                .map(Chain::connection)
                .toList();
    }

    private String fans(Hookup hookup, int jack) {
        String fans = hookup.chains().stream()
                .filter(chain -> chain.jack() == jack)
                .flatMap(chain -> chain.items().stream())
                .filter(item -> WiringRows.isFanOut(words.plan(), item))
                .distinct()
                .map(item -> item.replace('/', ' '))
                .collect(Collectors.joining(", "));
        return fans.isEmpty() ? "–" : fans;
    }

    private void readings() {
        page.section("The readings");
        int all = words.plan().readings().size();
        page.say(practice.rows().size() + " of the plan's " + all
                + " readings, under the plan's numbers and limits. The others are" + " not part of this sheet.");
        Map<String, List<List<Words>>> quantities = new LinkedHashMap<>();
        for (Practice.Row row : practice.rows()) {
            Obligation what = words.reading(row.reading()).obligation();
            quantities
                    .computeIfAbsent(words.quantity(what), each -> new ArrayList<>())
                    .add(reading(row));
        }
        quantities.forEach((quantity, rows) -> {
            page.part(quantity);
            page.grid(
                    List.of("No.", "What is joined to what", "State", "Last year", "Now", "Limit"),
                    List.of(8, 33, 22, 12, 12, 13),
                    rows);
        });
    }

    private List<Words> reading(Practice.Row row) {
        Reading reading = words.reading(row.reading());
        Obligation what = reading.obligation();
        return List.of(
                Words.strong(row.reading()),
                Words.of(words.words().what(what, reading.hookup().flatMap(words.plan()::hookup)) + hookup(reading)),
                Words.of(words.words().state(what) + Editions.source(what)),
                Words.of(words.shows(row.reading(), row.before())),
                Words.strong(words.shows(row.reading(), row.now())),
                Words.of(words.limit(row.reading())));
    }

    private String hookup(Reading reading) {
        boolean several = words.plan().hookups().size() > 1;
        return reading.hookup().filter(id -> several).map(id -> " (" + id + ")").orElse("");
    }
}
