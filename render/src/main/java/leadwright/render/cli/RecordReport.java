package leadwright.render.cli;

import java.util.ArrayList;
import java.util.List;
import leadwright.planner.judge.Judged;
import leadwright.planner.judge.TestRecord;
import leadwright.planner.judge.Verdict;

/** A record in a few lines for the person who asked for it. */
final class RecordReport {

    private RecordReport() {}

    /** The result with its reasons, then what a person must look at, a line each. */
    static List<String> lines(TestRecord record, List<String> assumed) {
        List<String> lines = new ArrayList<>();
        lines.add(record.plan().device().name() + ", plan "
                + record.plan().fingerprint().substring(0, 8) + ", read on " + record.date() + " by "
                + record.readings().by() + ": " + result(record));
        record.because().forEach(each -> lines.add("  " + each));
        for (Judged each : record.judged()) {
            boolean told =
                    each.verdict() != Verdict.PASS && (each.limit().isPresent() || each.verdict() == Verdict.VOID);
            if (told) {
                lines.add(each.planned().id() + ", " + each.planned().quantity().word() + ": " + each.because());
            }
            each.flags().forEach(flag -> lines.add(each.planned().id() + ": " + flag));
        }
        record.notes().forEach(each -> lines.add("Note: " + each));
        assumed.forEach(each -> lines.add("Left out: " + each));
        if (record.provisional()) {
            lines.add("Provisional: " + PlanReport.count(record.unconfirmed().size(), "limit")
                    + " not yet confirmed with a copy of the standard (listed in the record).");
        }
        return lines;
    }

    private static String result(TestRecord record) {
        String word = record.result().word().toUpperCase(java.util.Locale.ROOT).replace('-', ' ');
        return word
                + (record.plan().partial() ? ", PARTIAL" : "")
                + (record.plan().training() ? ", TRAINING COPY" : "");
    }
}
