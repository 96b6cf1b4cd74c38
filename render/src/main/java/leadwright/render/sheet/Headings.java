package leadwright.render.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import leadwright.planner.plan.Obligation;
import leadwright.render.sheet.Course.Group;
import leadwright.render.sheet.Course.Heading;
import leadwright.render.sheet.Course.Line;
import leadwright.render.sheet.Course.Value;

/** Puts a heading over every run of rows of one quantity that is long enough to gain by it. */
final class Headings {

    /** Rows from which a heading saves more room than it takes, where they differ in nothing but their subject. */
    private static final int PLAIN = 4;

    /** The same where each row also says its component or the polarity of its source. */
    private static final int QUALIFIED = 2;

    private Headings() {}

    static Group over(Group group) {
        List<Line> lines = new ArrayList<>();
        List<Value> run = new ArrayList<>();
        for (Line line : group.lines()) {
            if (!run.isEmpty() && !(line instanceof Value next && sameQuantity(run.get(0), next))) {
                close(run, lines);
            }
            if (line instanceof Value value) {
                run.add(value);
            } else {
                lines.add(line);
            }
        }
        close(run, lines);
        return new Group(group.state(), group.mode(), group.checks(), group.mains(), List.copyOf(lines));
    }

    private static void close(List<Value> run, List<Line> lines) {
        if (run.isEmpty()) {
            return;
        }
        Obligation first = run.get(0).reading().obligation();
        boolean sameComponent = run.stream()
                .allMatch(each -> each.reading().obligation().component().equals(first.component()));
        boolean qualified = !sameComponent || first.sourcePolarity().isPresent();
        if (run.size() < (qualified ? QUALIFIED : PLAIN)) {
            lines.addAll(run);
        } else {
            Heading heading = new Heading(first, sameComponent);
            lines.add(heading);
            run.forEach(
                    value -> lines.add(new Value(value.reading(), Optional.of(heading), value.note(), value.clip())));
        }
        run.clear();
    }

    private static boolean sameQuantity(Value one, Value other) {
        Obligation a = one.reading().obligation();
        Obligation b = other.reading().obligation();
        return a.quantity() == b.quantity() && a.method().equals(b.method());
    }
}
