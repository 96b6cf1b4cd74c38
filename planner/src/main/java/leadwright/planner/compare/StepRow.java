package leadwright.planner.compare;

import java.util.Optional;
import java.util.function.Supplier;
import leadwright.planner.file.Given;
import leadwright.planner.plan.Joint;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Step;

/** A step as a plan's file has it. */
final class StepRow {

    private StepRow() {}

    /** What builds the step, once the file has no problem. */
    static Supplier<Step> step(Given row) {
        int number = row.whole("number");
        Optional<Step.Act> does = row.word("does", Step.Act.class);
        if (row.maybe("does").isEmpty()) {
            row.missing("does");
        }
        Optional<MainsState> state = ReadingRow.state(row);
        Optional<Joint> joint = row.section("joint").map(each -> new Joint(each.text("from"), each.text("to")));
        Optional<Step.Account> account = row.word("account", Step.Account.class);
        if (row.maybe("account").isEmpty()) {
            row.missing("account");
        }
        String text = row.text("text");
        String because = row.text("because");
        int seconds = row.whole("seconds");
        int writing = row.whole("writing");
        return () -> new Step(
                number,
                does.orElseThrow(),
                text,
                row.maybe("reading"),
                state.orElseThrow(),
                row.maybe("hookup"),
                joint,
                row.maybe("place"),
                seconds,
                account.orElseThrow(),
                writing,
                row.maybe("caution"),
                row.maybe("on-fail"),
                because);
    }
}
