package leadwright.render.export;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.planner.judge.Judged;
import leadwright.planner.judge.TestRecord;

/** The judged readings as comma-separated values, as harmless to a spreadsheet as {@link PlanCsv}. */
public final class RecordCsv {

    private static final List<String> HEADER = List.of(
            "id",
            "quantity",
            "of",
            "state",
            "source-polarity",
            "shown",
            "counted",
            "bound",
            "limit",
            "limit-id",
            "mark",
            "clause",
            "uncertainty",
            "guard-band",
            "verdict",
            "because",
            "flags",
            "remark");

    private RecordCsv() {}

    /** The whole file, header first, every line ended by a line feed. */
    public static String of(TestRecord record) {
        StringBuilder file = new StringBuilder();
        line(file, HEADER);
        record.judged().forEach(each -> line(file, cells(each)));
        return file.toString();
    }

    private static List<String> cells(Judged each) {
        Optional<Limit> limit = each.limit();
        return List.of(
                each.planned().id(),
                each.planned().quantity().word(),
                PlanCsv.subject(
                        each.planned().quantity(),
                        each.planned().of(),
                        each.planned().key()),
                each.planned().state(),
                each.planned().sourcePolarity().orElse(""),
                each.taken().shown().map(shown -> shown.value().text()).orElse(""),
                each.counted().map(Quantity::text).orElse(""),
                limit.map(one -> one.bound().word()).orElse(""),
                limit.map(one -> one.value().text()).orElse(""),
                limit.map(Limit::id).orElse(""),
                limit.map(one -> one.mark().name()).orElse(""),
                limit.map(Limit::clause).orElse(each.planned().clause()),
                each.uncertainty().map(Quantity::text).orElse(""),
                each.guardBand().map(Quantity::text).orElse(""),
                each.verdict().word(),
                each.because(),
                String.join("; ", each.flags()),
                each.taken().remark().orElse(""));
    }

    private static void line(StringBuilder file, List<String> cells) {
        file.append(cells.stream().map(PlanCsv::cell).collect(Collectors.joining(",")))
                .append('\n');
    }
}
