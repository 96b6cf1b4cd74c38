package leadwright.render.sheet;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.judge.Judged;
import leadwright.planner.judge.TestRecord;
import leadwright.planner.judge.Verdict;

/** The readings of a record, a row each, and below them what a person must look at. */
final class RecordRows {

    private final TestRecord record;
    private final RecordWords words;
    private final Xhtml page;

    RecordRows(TestRecord record, RecordWords words, Xhtml page) {
        this.record = record;
        this.words = words;
        this.page = page;
    }

    void write() {
        page.leaf("h2", "", "Readings");
        page.in("table", "rows", () -> {
            page.in(
                    "thead",
                    "",
                    () -> page.in("tr", "bar", () -> {
                        page.leaf("th", "no", "No.");
                        page.leaf("th", "", "What, in which state");
                        page.leaf("th", "num", "Shown");
                        page.leaf("th", "num", "Counted");
                        page.leaf("th", "limit", "Limit");
                        page.leaf("th", "band", "± U");
                        page.leaf("th", "verdict", "Verdict");
                    }));
            page.in("tbody", "", () -> record.judged().forEach(this::row));
        });
        page.leaf(
                "p",
                "",
                "U: expanded uncertainty at the limit, coverage factor 2, from the accuracy that the kit states.");
        flags();
    }

    private void row(Judged each) {
        page.in("tr", "", () -> {
            page.leaf("td", "no", each.planned().id());
            page.in("td", "", () -> {
                String how = words.how(each.planned());
                page.text(words.quantity(each.planned()) + ": " + words.subject(each.planned())
                        + (how.isEmpty() ? "" : "; " + how));
            });
            page.leaf(
                    "td",
                    "num",
                    each.taken()
                            .shown()
                            .map(shown -> Amounts.letters(shown.value().text()).replace(' ', '\u00a0'))
                            .orElse("not taken"));
            page.leaf("td", "num", each.counted().map(Amounts::text).orElse("–"));
            page.leaf("td", "limit", each.limit().map(Amounts::bound).orElse("–"));
            page.leaf("td", "band", each.guardBand().map(RecordRows::short3).orElse("–"));
            page.in("td", "verdict", () -> {
                boolean free = each.verdict() == Verdict.NOT_JUDGED
                        && each.limit().isEmpty()
                        && each.taken().shown().isPresent();
                String verdict = free ? "no limit" : RecordWords.verdict(each.verdict(), record.rule());
                if (each.verdict().rejected(record.rule()) || each.verdict() == Verdict.VOID) {
                    page.bold(verdict);
                } else {
                    page.text(verdict);
                }
                each.conforming().ifPresent(share -> page.span("state", "chance to conform " + percent(share)));
            });
        });
    }

    /** To three figures and never less than it is: a guard band is not made smaller by printing it. */
    private static String short3(Quantity band) {
        BigDecimal rounded = new BigDecimal(band.amount()).round(new MathContext(3, RoundingMode.UP));
        return Amounts.text(Quantity.of(band.dimension(), rounded.longValueExact()));
    }

    private static String percent(double share) {
        return BigDecimal.valueOf(share * 100)
                        .setScale(0, RoundingMode.HALF_EVEN)
                        .toPlainString() + "\u00a0%";
    }

    private void flags() {
        List<Judged> flagged =
                record.judged().stream().filter(each -> !lines(each).isEmpty()).toList();
        if (flagged.isEmpty()) {
            return;
        }
        page.leaf("h2", "", "To look at");
        page.in(
                "table",
                "list",
                () -> page.in(
                        "tbody",
                        "",
                        () -> flagged.forEach(each -> page.in("tr", "", () -> {
                            page.leaf("td", "no", each.planned().id());
                            page.in("td", "", () -> lines(each).forEach(line -> page.leaf("p", "", line)));
                        }))));
    }

    /** What is to be said of a reading beside its row. */
    private List<String> lines(Judged each) {
        List<String> lines = new ArrayList<>();
        if (each.verdict() != Verdict.PASS
                && (each.limit().isPresent()
                        || each.verdict() == Verdict.VOID
                        || each.taken().shown().isEmpty())) {
            lines.add(sentence(each.because()));
        }
        each.flags().forEach(flag -> lines.add(sentence(flag)));
        each.taken().remark().ifPresent(remark -> lines.add("Remark: " + remark));
        return lines;
    }

    private String sentence(String phrase) {
        return RecordWords.capital(Amounts.inProse(phrase)) + ".";
    }
}
