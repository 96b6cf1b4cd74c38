package leadwright.render.edition;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import leadwright.planner.Plan;
import leadwright.planner.foresee.Assumed;
import leadwright.planner.foresee.Basis;
import leadwright.planner.foresee.EarthBudget;
import leadwright.planner.foresee.LeadDraw;
import leadwright.planner.foresee.Situation;
import leadwright.planner.mistake.Exposure;
import leadwright.planner.mistake.Finding;
import leadwright.planner.mistake.ProofStep;
import leadwright.render.paper.DocumentBuilder;
import leadwright.render.paper.Words;
import leadwright.render.sheet.Vocabulary;

/** What is foreseen, for the documents that are read: proof steps, what remains unseen, budgets and assumed values. */
final class Foresights {
    private final Plan plan;
    private final Vocabulary words;
    private final DocumentBuilder page;
    private final Situation situation;

    Foresights(Plan plan, Vocabulary words, DocumentBuilder page) {
        this.plan = plan;
        this.words = words;
        this.page = page;
        this.situation = plan.foresight().situation();
    }

    /** A section with what every slip would have read. */
    void wouldRead() {
        List<List<Words>> rows = WouldRead.of(plan, words);
        if (rows.isEmpty()) {
            return;
        }
        page.section("What it would have read");
        page.say(words.say(
                "Every single slip in joining and setting that a circuit can show was put into the circuit of every reading it"
                        + " touches. A row gathers slips alike; its reading is the one that tells most. Where that looks right although"
                        + " the slip was made, a step of the plan shows it, or nothing does."));
        page.grid(WouldRead.HEAD, WouldRead.WIDTHS, rows);
        page.say(
                "By nominal values; * with values that are assumed, listed at the end of the part on what is assumed. Two slips at"
                        + " once are not looked for.");
        remaining();
    }

    /** The proof steps and why they are there. */
    void proofSteps() {
        List<ProofStep> proofs = plan.foresight().watch().proofs();
        if (plan.foresight().watch().findings().isEmpty()) {
            return;
        }
        page.part("Proof steps");
        long silent = count(Exposure.SILENT);
        page.say(words.say("Of " + plan.foresight().watch().findings().size()
                + " slips that were put into the circuits, "
                + count(Exposure.LIMIT) + " fail a limit whatever the assumed values are, " + count(Exposure.BAND)
                + " leave what the device file foresees, " + count(Exposure.CHECK)
                + " are shown by checks that are done in any"
                + " case, " + count(Exposure.HARMLESS) + " let no bad device pass, and " + silent
                + " leave every reading looking right. These steps, "
                + plan.foresight().watch().seconds()
                + " s together, are the cheapest that show all of those that such a step can show."));
        page.grid(
                List.of("Step", "What is done", "Shows"),
                List.of(24, 60, 16),
                proofs.stream()
                        .map(proof -> List.of(
                                Words.strong(WouldRead.named(plan, proof)),
                                Words.of(words.prose(proof.text())),
                                Words.of(proof.exposes().size()
                                        + (proof.exposes().size() == 1 ? " slip" : " slips"))))
                        .toList());
        remaining();
    }

    private long count(Exposure exposure) {
        return plan.foresight().watch().findings().stream()
                .filter(finding -> finding.exposure() == exposure)
                .count();
    }

    private void remaining() {
        List<String> left = plan.foresight().watch().remaining();
        if (left.isEmpty()) {
            page.say(
                    "Of the slips that were looked for none stays unseen. What no circuit shows stays: a wrong label, another"
                            + " cord, a value in the wrong row.");
            return;
        }
        page.notice(Words.strong("Not shown by anything: ")
                .then(plan.foresight().watch().findings().stream()
                                .map(Finding::slip)
                                .filter(slip -> left.contains(slip.id()))
                                .map(slip -> words.say(slip.words()))
                                .distinct()
                                .collect(Collectors.joining("; "))
                        + "."));
    }

    /** Budgets of the earth path and of what the leads draw. */
    void budgets() {
        List<EarthBudget> budgets = plan.foresight().budgets();
        List<LeadDraw> draws = plan.readings().stream()
                .flatMap(reading -> LeadDraw.of(plan, reading, situation).stream())
                .toList();
        if (!budgets.isEmpty()) {
            page.part(words.say("What lies in the earth path"));
            earth(budgets);
        }
        if (!draws.isEmpty()) {
            page.part("What the leads alone draw with mains on a part");
            draws(draws);
        }
    }

    private void earth(List<EarthBudget> budgets) {
        Map<List<EarthBudget.Entry>, List<EarthBudget>> alike = new LinkedHashMap<>();
        budgets.forEach(each -> alike.computeIfAbsent(each.entries(), entries -> new ArrayList<>())
                .add(each));
        List<List<Words>> rows = new ArrayList<>();
        alike.forEach((entries, these) -> {
            String readings = these.stream().map(EarthBudget::reading).collect(Collectors.joining(", "));
            for (EarthBudget.Entry entry : entries) {
                boolean nulled = these.get(0).nulled() && entry.leads();
                rows.add(List.of(
                        entry == entries.get(0) ? Words.strong(readings) : Words.of("the same"),
                        Words.of(words.say(entry.words().replace('/', ' '))
                                + (entry.basis() == Basis.ASSUMED ? "*" : "")),
                        Words.of(milliohms(entry.nominal())),
                        Words.of(milliohms(entry.low()) + " to " + milliohms(entry.high())),
                        Words.of(nulled ? "taken off" : "stays")));
            }
        });
        page.grid(
                List.of("Readings", "Piece of the path", "Most likely", "Span", "By nulling"),
                List.of(20, 38, 14, 16, 12),
                rows);
        page.say("In mΩ, copper at " + number(situation.celsius())
                + " °C; * assumed. A contact or tool that is fitted after the" + " nulling is not taken off.");
        budgets.stream()
                .filter(EarthBudget::beyondNull)
                .findFirst()
                .ifPresent(each -> page.notice(Words.strong("More than the tester nulls: ")
                        .then("the leads may have more than the "
                                + milliohms(each.nullUpTo().orElse(0.0))
                                + " mΩ that the tester takes off. Null them and see that it takes; else use shorter or thicker"
                                + " leads.")));
    }

    private void draws(List<LeadDraw> draws) {
        List<List<Words>> rows = draws.stream()
                .map(each -> List.of(
                        Words.strong(each.reading()),
                        Words.of(words.amount(each.nominal()) + (each.basis() == Basis.ASSUMED ? "*" : "")),
                        Words.of(words.amount(each.low()) + " to " + words.amount(each.high())),
                        Words.of(each.share()
                                .map(share -> Math.round(share * 100) + " %")
                                .orElse("–"))))
                .toList();
        page.grid(
                List.of("Reading", "Background, device end free", "Span", "Share of the limit"),
                List.of(16, 32, 32, 20),
                rows);
        page.say("Written down beside the reading and never taken off it. * the capacitance of a lead is assumed.");
        if (draws.stream().anyMatch(LeadDraw::noteworthy)) {
            page.notice(Words.strong("The leads count: ")
                    .then("above a tenth of the limit in "
                            + draws.stream()
                                    .filter(LeadDraw::noteworthy)
                                    .map(LeadDraw::reading)
                                    .collect(Collectors.joining(", "))
                            + ". Shorter leads, laid apart from " + words.say("earthed metal")
                            + ", draw less."));
        }
    }

    /** Every value that is assumed where no file states one. */
    void assumptions() {
        List<List<Words>> rows = new ArrayList<>();
        for (Assumed each : Assumed.values()) {
            rows.add(List.of(
                    Words.of(words.say(each.words())),
                    Words.of(amount(each.nominal(), each.unit())),
                    Words.of(amount(each.low(), each.unit()) + " to " + amount(each.high(), each.unit()))));
        }
        page.part("Assumed where no file states a value");
        page.grid(List.of("Value", "Taken as", "Span"), List.of(56, 18, 26), rows);
        page.say("Common practice, no source, hence the wide spans. They make a foreseen reading, never a verdict.");
    }

    private static final List<String> PREFIXES = List.of("p", "n", "µ", "m", "", "k", "M", "G", "T");

    /** Three figures with the prefix that leaves one to three of them before the point. */
    private static String amount(double value, String unit) {
        if (unit.isEmpty()) {
            return number(value);
        }
        int power = (int) Math.floor(Math.log10(value) / 3 + 1e-9);
        int at = Math.max(0, Math.min(PREFIXES.size() - 1, power + 4));
        return number(value / Math.pow(10, 3.0 * (at - 4))) + "\u00a0" + PREFIXES.get(at) + unit.replace("ohm", "Ω");
    }

    private static String milliohms(double ohms) {
        return number(ohms * 1000);
    }

    private static String number(double value) {
        return new BigDecimal(String.format(Locale.ROOT, "%.3g", value))
                .setScale(3, RoundingMode.HALF_EVEN)
                .stripTrailingZeros()
                .toPlainString();
    }
}
