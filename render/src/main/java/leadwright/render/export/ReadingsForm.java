package leadwright.render.export;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import leadwright.planner.judge.PlannedReading;
import leadwright.planner.judge.PlannedTest;

/**
 * An empty {@code readings/1} for one plan, as comma-separated values to fill in: whose it is above, then a row for each
 * reading with its limit beside the place for the value.
 */
public final class ReadingsForm {

    private ReadingsForm() {}

    /** The whole file, every line ended by a line feed. */
    public static String of(PlannedTest plan) {
        StringBuilder form = new StringBuilder();
        line(form, List.of("leadwright", "readings/1"));
        line(form, List.of("plan", plan.fingerprint()));
        line(form, List.of("occasion", plan.occasion()));
        for (String blank :
                List.of("device.serial", "device.inventory", "device.accessories", "by", "date", "tester")) {
            line(form, List.of(blank, ""));
        }
        line(form, List.of("mains-voltage", ""));
        if (!plan.bench().fourWire() && plan.readings().stream().anyMatch(PlannedReading::isThroughLeads)) {
            for (String blank : List.of("nulls.start", "nulls.end", "nulls.taken-off")) {
                line(form, List.of(blank, ""));
            }
        }
        form.append('\n');
        line(
                form,
                List.of("id", "quantity", "of", "state", "source-polarity", "limit", "value", "not-taken", "remark"));
        for (PlannedReading each : plan.readings()) {
            Optional<String> limit = each.limit()
                    .map(one -> one.bound().word() + " " + one.value().text());
            line(
                    form,
                    List.of(
                            each.id(),
                            each.quantity().word(),
                            PlanCsv.subject(each.quantity(), each.of(), each.key()),
                            each.state(),
                            each.sourcePolarity().orElse(""),
                            limit.orElse(""),
                            "",
                            "",
                            ""));
        }
        return form.toString();
    }

    private static void line(StringBuilder form, List<String> cells) {
        form.append(cells.stream().map(PlanCsv::cell).collect(Collectors.joining(",")))
                .append('\n');
    }
}
