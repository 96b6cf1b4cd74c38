package leadwright.render.edition;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.catalog.house.Paper;
import leadwright.planner.Plan;
import leadwright.planner.compare.Comparison;
import leadwright.planner.plan.Hookup;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Proposal;
import leadwright.planner.plan.Remedy;
import leadwright.planner.plan.Shortfall;
import leadwright.render.diagram.Drawing;
import leadwright.render.paper.Document;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** The standing edition: the plan as a department's own procedure, to be approved and kept. It has no blanks for readings. */
public final class StandingEdition {

    private final Plan plan;
    private final List<Drawing> drawings;
    private final List<String> assumed;
    private final Optional<Comparison> since;
    private final Vocabulary words;
    private final DocumentBuilder page = new DocumentBuilder();

    private StandingEdition(Plan plan, List<Drawing> drawings, List<String> assumed, Optional<Comparison> since) {
        this.plan = plan;
        this.drawings = drawings;
        this.assumed = assumed;
        this.since = since;
        this.words = Vocabulary.of(plan);
    }

    /**
     * @param plan an audited plan
     * @param drawings its drawings in order
     * @param assumed values that the input files leave out and the program filled in, a line each
     * @param since what changed from the plan that was in force before, where that is known
     */
    public static Document of(Plan plan, List<Drawing> drawings, List<String> assumed, Optional<Comparison> since) {
        return new StandingEdition(plan, drawings, assumed, since).write();
    }

    private Document write() {
        marks();
        purposeAndScope();
        StandingRules rules = new StandingRules(plan, words, page);
        rules.references();
        rules.people();
        equipment();
        page.section("Cautions");
        CautionsText.write(page, words);
        procedure();
        Foresights foresights = new Foresights(plan, words, page);
        foresights.proofSteps();
        foresights.budgets();
        due();
        rules.proof();
        page.section("Acceptance limits and their sources");
        page.grid(LimitRows.HEAD, LimitRows.WIDTHS, LimitRows.of(plan, words));
        page.say(LimitRows.MARKS);
        rules.decision();
        rules.records();
        rules.failures();
        StandingHistory.write(page, plan, since);
        page.section("What foreseen values rest on");
        foresights.assumptions();
        drawings.forEach(drawing -> page.picture(drawing.svg(), Editions.alt(drawing)));
        String name = plan.device().name();
        return new Document(
                name,
                "Standing procedure, electrical safety test",
                "Standing procedure for the electrical safety test of " + name + " by "
                        + plan.rules().name(),
                plan.house().paper() == Paper.LETTER,
                Editions.brief(name) + ", standing edition, plan " + words.fingerprint(),
                words.say(
                        "Not in force before it is approved. Defers to the device's own instructions and local codes."),
                mark(),
                page.blocks());
    }

    private String mark() {
        if (plan.trainingCopy()) {
            return "TRAINING: not a record";
        }
        return plan.partial() ? "PARTIAL" : "";
    }

    private void marks() {
        if (plan.trainingCopy()) {
            page.notice(Words.strong("TRAINING: not a record. ").then("The tester is past its calibration date."));
        }
        if (plan.partial()) {
            page.notice(
                    Words.strong("PARTIAL. ")
                            .then(
                                    "This bench kit cannot take every reading that is due: see 'Due, and not measured with this kit'."));
        }
        int open = plan.unconfirmedLimits().size();
        if (open > 0) {
            page.notice(
                    Words.strong(open + (open == 1 ? " limit is" : " limits are") + " not yet confirmed. ")
                            .then(
                                    "Every result that rests on them is provisional: see 'Acceptance limits and their sources'."));
        }
    }

    private void purposeAndScope() {
        page.section("Purpose");
        page.say(
                "To show by measurement that the device is electrically safe, with the fewest changes of wiring and in an order that"
                        + " never does what is hazardous before what protects from it.");
        page.section("Scope");
        page.part("Covered");
        page.items(List.of(
                Words.strong(plan.device().name()).then(": " + words.classAndTypes() + "."),
                Words.of("Occasion: " + plan.occasion().replace('-', ' ') + "."),
                Words.of("With the bench kit " + plan.kit().name() + ", and no other."),
                Words.strong("Plan " + words.fingerprint())
                        .then(". The bench sheet of the same plan is the form for readings.")));
        page.part("Not covered");
        page.items(Editions.lines(
                words,
                "Any other device, build or accessory: a part, port or unearthed metal that the device file does not name is not"
                        + " measured.",
                "Another class, part type, rule set, occasion or bench kit: each needs a plan of its own.",
                "What the section on obligations lists as not applicable or not measured.",
                "Performance, calibration, alarms, gases, software and mechanical safety."));
    }

    private void equipment() {
        page.section("Equipment");
        page.part("Tester: " + plan.kit().tester().name());
        page.grid(List.of("What", "As the kit file states it"), List.of(30, 70), EquipmentRows.tester(plan, words));
        List<List<Words>> items = EquipmentRows.items(plan, words);
        if (!items.isEmpty()) {
            page.part("Items of the kit that are used");
            page.grid(EquipmentRows.ITEMS, EquipmentRows.WIDTHS, items);
            page.say(
                    "At once: the most that stand in one hookup. An item whose voltage is not stated is used neither for mains on a"
                            + " part nor for insulation.");
        }
        page.part("Calibration");
        page.say(
                "A tester past the date above is not used: its readings would be void. The known resistor is read at start and end"
                        + " where the kit has one; when it is off, the readings since the last good check are void. Items are looked over"
                        + " before each use; a damaged one is taken out.");
    }

    private void procedure() {
        page.section("Procedure");
        page.say(
                "The bench sheet has the same steps with boxes to tick and to write in. The drawings of the hookups are at the end, each"
                        + " on a page of its own; the numbers in them are the steps in which the ends are joined.");
        if (!plan.warnings().isEmpty()) {
            page.part("To know before the bench");
            page.items(plan.warnings().stream()
                    .map(each -> Words.of(words.prose(each)))
                    .toList());
        }
        page.part("Steps");
        page.grid(
                List.of("No.", "State", "What is done"),
                List.of(12, 22, 66),
                StepRows.table(
                        plan,
                        words,
                        (row, does) -> List.of(Words.strong(row.numbers()), Words.of(words.state(row.state())), does)));
        for (Hookup hookup : plan.hookups()) {
            page.part("Wiring of hookup " + hookup.id());
            page.grid(WiringRows.HEAD, WiringRows.WIDTHS, WiringRows.of(plan, hookup, words));
        }
    }

    private void due() {
        page.section("Obligations");
        page.part("Due");
        page.grid(ObligationRows.HEAD, ObligationRows.WIDTHS, ObligationRows.of(plan, words));
        if (!plan.shortfalls().isEmpty()) {
            page.part("Due, and not measured with this kit");
            List<Words> missing = new ArrayList<>(
                    plan.shortfalls().stream().map(this::shortfall).toList());
            plan.remedy()
                    .filter(remedy -> plan.shortfalls().size() > 1)
                    .ifPresent(remedy -> missing.add(together(remedy)));
            page.items(missing);
        }
        page.part("Not applicable, and why");
        if (plan.notApplicable().isEmpty()) {
            page.say("Nothing that the rule set names is left out for this device.");
        }
        page.grid(
                List.of("Test", "Why", "Clause"),
                List.of(30, 54, 16),
                plan.notApplicable().stream().map(this::notApplicable).toList());
        if (!assumed.isEmpty()) {
            page.part("Taken for what the files leave out");
            page.items(assumed.stream().map(each -> Words.of(words.prose(each))).toList());
        }
    }

    private Words shortfall(Shortfall each) {
        String connections = each.connections().isEmpty() ? "" : " (" + words.subject(each.connections()) + ")";
        String additions =
                each.additions().isEmpty() ? "" : " Would do: " + String.join("; or ", each.additions()) + ".";
        return Words.strong(each.about()).then(connections + ": " + words.prose(each.because()) + "." + additions);
    }

    private static Words together(Remedy remedy) {
        String which = remedy.alternatives().stream().map(Proposal::text).collect(Collectors.joining("; or "));
        return Words.strong("all together that items can help")
                .then(": " + which + (remedy.proof().optimal() ? ", proven" : ", not proven") + " the fewest pieces.");
    }

    private List<Words> notApplicable(NotApplicable each) {
        return List.of(
                Words.strong(each.test().replace('-', ' ')),
                Words.of(words.prose(each.because())),
                Words.of(each.clause().isBlank() ? "–" : each.clause()));
    }
}
