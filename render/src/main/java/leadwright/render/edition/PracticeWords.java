package leadwright.render.edition;

import static leadwright.catalog.rules.QuantityKind.INSULATION_RESISTANCE;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Amounts;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.rehearse.Display;
import leadwright.planner.rehearse.Practice;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** What sheets, key and answers have in common: the words of readings, choices and values. */
final class PracticeWords {

    static final String MARK = "PRACTICE: not a record";

    /** A microampere in nA. */
    private static final long MICRO = 1_000;

    private final Plan plan;
    private final Vocabulary words;
    private final CauseWords causes;

    PracticeWords(Plan plan) {
        this.plan = plan;
        this.words = Vocabulary.of(plan);
        this.causes = new CauseWords(plan, words);
    }

    Plan plan() {
        return plan;
    }

    Vocabulary words() {
        return words;
    }

    CauseWords causes() {
        return causes;
    }

    Reading reading(String id) {
        return plan.readings().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** What is read: {@code ECG, all 10, patient leakage, a.c., NORMAL, no fault}. */
    String what(String reading) {
        Obligation what = reading(reading).obligation();
        return words.what(what) + ", " + small(quantity(what)) + ", " + words.state(what) + Editions.source(what);
    }

    /** The quantity with its method and component, without the polarity of a source. */
    String quantity(Obligation what) {
        String method =
                what.method().map(each -> ", " + each.word() + " method").orElse("");
        String component =
                what.component().map(each -> ", " + Editions.component(each)).orElse("");
        return words.named(what.quantity()) + method + component;
    }

    private static String small(String quantity) {
        return quantity.substring(0, 1).toLowerCase(Locale.ROOT) + quantity.substring(1);
    }

    /** What the display says. */
    String shows(String reading, Display display) {
        if (display instanceof Display.Amount amount) {
            return amount(amount.quantity());
        }
        boolean insulation = reading(reading).obligation().quantity() == INSULATION_RESISTANCE;
        return insulation ? "above range" : "no path";
    }

    /** As the tester's display has it: no current in nA, so that no factor of a thousand lies between two rows of a column. */
    private String amount(Quantity quantity) {
        if (quantity.dimension() == Dimension.CURRENT && quantity.amount() < MICRO) {
            BigDecimal micro = BigDecimal.valueOf(quantity.amount()).movePointLeft(3);
            String figures =
                    quantity.amount() == 0 ? "0" : micro.stripTrailingZeros().toPlainString();
            return figures + "\u00a0µA";
        }
        return quantity.amount() == 0 ? "0\u00a0mΩ" : words.amount(quantity);
    }

    String sentence(Practice.Choice choice) {
        return causes.sentence(choice.cause());
    }

    String limit(String reading) {
        return reading(reading).obligation().limit().map(words::bound).orElse("–");
    }

    /** Within what the tester reads, for the kinds of readings that a sheet has. */
    List<Words> accuracies(Practice practice) {
        List<Words> lines = new ArrayList<>();
        boolean insulation = practice.rows().stream().anyMatch(row -> quantity(row) == INSULATION_RESISTANCE);
        boolean earth = practice.rows().stream()
                .anyMatch(row -> dimension(row) == Dimension.RESISTANCE && quantity(row) != INSULATION_RESISTANCE);
        if (earth) {
            lines.add(Words.of(words.say("Earth is read within ") + accuracy("earth")));
        }
        if (insulation) {
            lines.add(Words.of("Insulation is read within " + accuracy("insulation")));
        }
        if (practice.rows().stream().anyMatch(row -> dimension(row) == Dimension.CURRENT)) {
            lines.add(Words.of("Leakage is read within " + accuracy("leakage")));
        }
        return lines;
    }

    private QuantityKind quantity(Practice.Row row) {
        return reading(row.reading()).obligation().quantity();
    }

    private Dimension dimension(Practice.Row row) {
        return Amounts.dimension(reading(row.reading()).obligation());
    }

    private String accuracy(String function) {
        Accuracy accuracy = Amounts.accuracy(plan.kit(), function);
        boolean stated = plan.kit().tester().accuracy().containsKey(function);
        return words.letters(accuracy.reading().text()) + " and " + words.amount(accuracy.floor())
                + (stated ? ", by the kit's file." : ", which is common for its class; the kit's file does not say.");
    }

    /** What every sheet must say of itself. */
    Words notice() {
        return Words.strong(MARK + ". ")
                .then(
                        "The readings are invented: calculated for one cause, or none, that is hidden in them. They were taken of"
                                + " no device and say nothing about one.");
    }

    /** {@code sheet 17 of plan 4fd45d4c}. */
    String name(Practice practice) {
        return "sheet " + practice.seed() + " of plan " + words.fingerprint();
    }
}
