package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.List;
import leadwright.catalog.house.Paper;
import leadwright.catalog.readings.Nulls;
import leadwright.catalog.rules.Limit;
import leadwright.planner.judge.PlannedReading;
import leadwright.planner.judge.PlannedTest;
import leadwright.planner.judge.TestRecord;
import leadwright.planner.plan.NotApplicable;

/**
 * The record of a test, to be signed and filed: the result with its reasons, who measured what with which tester, every
 * reading with its limit and verdict, what a person must look at, what was not tested. One page source serves screen and
 * paper and refers to nothing outside itself.
 */
public final class RecordSheet {

    private static final String FOOT = "The readings only. Defers to the device's own instructions and local codes.";

    private final TestRecord record;
    private final PlannedTest plan;
    private final RecordWords words;
    private final Xhtml page = new Xhtml();

    private RecordSheet(TestRecord record) {
        this.record = record;
        this.plan = record.plan();
        this.words = new RecordWords(plan);
    }

    /** The page source, the same for the same record. */
    public static String xhtml(TestRecord record, Paper paper) {
        return new RecordSheet(record).write(paper);
    }

    private String write(Paper paper) {
        page.docType();
        page.with(
                "html",
                "",
                new String[] {"xmlns", "http://www.w3.org/1999/xhtml", "lang", "en-GB", "xml:lang", "en-GB"},
                () -> {
                    head(paper);
                    page.in("body", "record", this::body);
                });
        return page.finish();
    }

    private void head(Paper paper) {
        String title = "Test record: " + plan.device().name();
        String unit = unit();
        page.in("head", "", () -> {
            page.empty("meta", "charset", "UTF-8");
            page.leaf("title", "", title);
            page.empty(
                    "meta",
                    "name",
                    "description",
                    "content",
                    "Record of an electrical-safety test of " + plan.device().name());
            page.empty("meta", "name", "subject", "content", title);
            page.empty("meta", "name", "viewport", "content", "width=device-width");
            page.leaf(
                    "style",
                    "",
                    PageStyle.of(
                            "record.css",
                            paper,
                            plan.device().name() + ", " + unit + ", " + record.date() + ", plan "
                                    + plan.fingerprint().substring(0, 8),
                            FOOT,
                            mark()));
        });
    }

    private String unit() {
        return record.readings()
                .device()
                .serial()
                .map(serial -> "serial " + serial)
                .or(() -> record.readings().device().inventory().map(number -> "inventory " + number))
                .orElse("");
    }

    private String mark() {
        List<String> marks = new ArrayList<>();
        if (plan.training()) {
            marks.add("TRAINING: not a record");
        }
        if (plan.partial()) {
            marks.add("PARTIAL");
        }
        return String.join(". ", marks);
    }

    private void body() {
        if (plan.training()) {
            page.leaf("div", "watermark", "TRAINING");
            page.leaf("p", "alarm", "TRAINING COPY: NOT A RECORD.");
        }
        page.in(
                "table",
                "titles",
                () -> page.in("tr", "", () -> {
                    page.in("td", "", () -> {
                        page.leaf("h1", "", plan.device().name());
                        page.leaf("p", "", "Record of the electrical safety test");
                    });
                    page.in("td", "right", () -> {
                        page.leaf("p", "", plan.house().department().orElse(""));
                        page.in(
                                "p",
                                "",
                                () -> page.text("Plan ").bold(plan.fingerprint().substring(0, 8)));
                    });
                }));
        outcome();
        facts();
        end();
        new RecordRows(record, words, page).write();
        list(
                "Not tested: the kit cannot take these",
                plan.shortfalls().stream()
                        .map(each -> each.about() + ": " + each.because())
                        .toList());
        list(
                "Notes",
                record.notes().stream().map(words::say).map(Amounts::inProse).toList());
        notDone();
        unconfirmed();
    }

    private void outcome() {
        page.in("div", "outcome", () -> {
            page.in("p", "", () -> page.span("word", RecordWords.result(record)));
            record.because().forEach(each -> page.leaf("p", "", RecordWords.capital(each) + "."));
            if (record.provisional() && says()) {
                int count = record.unconfirmed().size();
                page.leaf(
                        "p",
                        "",
                        "Provisional: " + count + (count == 1 ? " limit" : " limits")
                                + " not yet confirmed with the department's own copy of the standard, listed below.");
            }
        });
    }

    /** Whether the result says anything of the device that a limit could make provisional. */
    private boolean says() {
        return record.result() == TestRecord.Result.PASS || record.result() == TestRecord.Result.FAIL;
    }

    private void facts() {
        page.in(
                "table",
                "facts",
                () -> page.in("tbody", "", () -> {
                    List<String> device = new ArrayList<>();
                    record.readings().device().serial().ifPresent(each -> device.add("serial " + each));
                    record.readings().device().inventory().ifPresent(each -> device.add("inventory " + each));
                    List<String> accessories = record.readings().device().accessories();
                    device.add(
                            accessories.isEmpty() ? "no accessories named" : "with " + String.join(", ", accessories));
                    fact("Device", String.join("; ", device));
                    fact(
                            "Measured",
                            record.date() + " by " + record.readings().by() + "; occasion: "
                                    + plan.occasion().replace('-', ' '));
                    fact(
                            "With",
                            plan.bench().tester()
                                    + record.readings()
                                            .tester()
                                            .map(each -> ", " + each)
                                            .orElse("")
                                    + (plan.bench().kit().equals(plan.bench().tester())
                                            ? ""
                                            : "; kit: " + plan.bench().kit())
                                    + "; calibrated until "
                                    + plan.bench()
                                            .calibratedUntil()
                                            .map(Object::toString)
                                            .orElse("a day not stated"));
                    fact(
                            "By the rules of",
                            plan.rules().name()
                                    + (plan.rules().edition().isEmpty()
                                            ? ""
                                            : ", edition " + plan.rules().edition())
                                    + words.oneMethod()
                                            .map(each -> ", " + each.word() + " method")
                                            .orElse(""));
                    fact("Mains", mains());
                    if (plan.readings().stream().anyMatch(PlannedReading::isThroughLeads)) {
                        fact(
                                "Leads",
                                record.readings().nulls().map(this::nulls).orElse("not nulled, or not written down"));
                    }
                    fact("Decision", String.join(" ", RecordWords.rule(record.rule())));
                    record.previous().ifPresent(day -> fact("Compared with", "the record of " + day));
                }));
    }

    private void fact(String name, String text) {
        page.in("tr", "", () -> {
            page.leaf("td", "name", name);
            page.leaf("td", "", text);
        });
    }

    private String mains() {
        String measured = record.mains()
                .measured()
                .map(volts -> Amounts.text(volts) + " measured")
                .orElse("not measured");
        String nominal = record.mains()
                .nominal()
                .map(volts -> ", " + Amounts.text(volts) + " nominal")
                .orElse("");
        return measured + nominal;
    }

    private String nulls(Nulls nulls) {
        if (plan.bench().fourWire()) {
            return "measured with four wires, the leads do not count";
        }
        return Amounts.text(nulls.start()) + " at the start, "
                + nulls.end().map(end -> Amounts.text(end) + " at the end").orElse("not read at the end")
                + (nulls.takenOff() ? "; taken off by the tester" : "; taken off here, the smaller of the two");
    }

    private void list(String heading, List<String> lines) {
        if (!lines.isEmpty()) {
            page.leaf("h2", "", heading);
            page.in("ul", "", () -> lines.forEach(each -> page.leaf("li", "", RecordWords.capital(each))));
        }
    }

    private void notDone() {
        if (plan.notApplicable().isEmpty()) {
            return;
        }
        page.leaf("h2", "", "Not done, and why");
        page.in(
                "table",
                "list",
                () -> page.in(
                        "tbody", "", () -> plan.notApplicable().forEach(each -> page.in("tr", "", () -> row(each)))));
    }

    private void row(NotApplicable each) {
        page.leaf("td", "", each.test());
        page.leaf("td", "", each.because());
        page.leaf("td", "", each.clause());
    }

    private void unconfirmed() {
        if (record.unconfirmed().isEmpty()) {
            return;
        }
        page.leaf("h2", "", "Limits not yet confirmed: the result rests on them and is provisional");
        page.in(
                "table",
                "list",
                () -> page.in(
                        "tbody",
                        "",
                        () -> record.unconfirmed()
                                .values()
                                .forEach((Limit limit) -> page.in("tr", "", () -> {
                                    page.leaf("td", "", limit.id());
                                    page.leaf("td", "", Amounts.bound(limit));
                                    page.leaf(
                                            "td",
                                            "",
                                            limit.clause() + ", mark "
                                                    + limit.mark().name());
                                }))));
    }

    private void end() {
        page.in("div", "end", () -> {
            page.in("p", "", () -> {
                page.text("Beside the readings: ");
                page.ticked("look passed")
                        .ticked("functional check")
                        .ticked("put back as found")
                        .ticked("label on");
            });
            page.in("p", "", () -> page.field("Next due", "w30", "").field("Note", "w90", ""));
            page.in(
                    "table",
                    "sign",
                    () -> page.in(
                            "tbody",
                            "",
                            () -> signs().forEach(who -> page.in("tr", "", () -> {
                                page.leaf("td", "", RecordWords.capital(who) + ", name");
                                page.leaf("td", "", "Signature");
                                page.leaf("td", "", "Date");
                            }))));
        });
    }

    private List<String> signs() {
        List<String> signs = new ArrayList<>(plan.house().signs());
        signs.add("reviewed by");
        return signs;
    }
}
