package leadwright.planner.file;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.Mark;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Shortfall;

/** Parts of a {@code plan/1} that more than one reader of it asks for. */
public final class PlanParts {

    /** What a limit may be of. */
    public static final List<Dimension> LIMITED = List.of(Dimension.CURRENT, Dimension.RESISTANCE, Dimension.VOLTAGE);

    private PlanParts() {}

    /** Tests that do not apply, of the whole plan. */
    public static List<NotApplicable> notApplicable(Given plan) {
        return plan.rows("not-applicable").stream()
                .map(row -> new NotApplicable(row.text("test"), row.text("because"), row.text("clause")))
                .toList();
    }

    /** What the kit cannot do, of the whole plan. */
    public static List<Shortfall> shortfalls(Given plan) {
        return plan.rows("shortfalls").stream()
                .map(row -> new Shortfall(
                        row.text("about"), row.texts("connections"), row.text("because"), row.texts("additions")))
                .toList();
    }

    /** Accuracy by function, of the section {@code kit}. */
    public static Map<String, Accuracy> accuracy(Given kit) {
        Map<String, Accuracy> accuracy = new TreeMap<>();
        Optional<Given> stated = kit.due("accuracy");
        for (String function : stated.map(Given::keys).orElse(List.of())) {
            Optional<Given> one = stated.get().due(function);
            Optional<Quantity> share = one.flatMap(each -> each.quantity("reading", Dimension.RATIO));
            Optional<Quantity> floor = one.flatMap(each -> each.quantity("floor", PlanParts.LIMITED));
            if (share.isPresent() && floor.isPresent()) {
                accuracy.put(function, new Accuracy(share.get(), floor.get()));
            }
        }
        return accuracy;
    }

    /** The source for mains on an applied part. */
    public static Optional<PartSource> source(Given source) {
        Optional<Quantity> voltage = source.quantity("voltage", Dimension.VOLTAGE);
        Optional<Quantity> shortCircuit = source.quantity("short-circuit", Dimension.CURRENT);
        Optional<SourceReading> reading = source.word("reading", SourceReading.class);
        if (voltage.isEmpty() || shortCircuit.isEmpty() || reading.isEmpty()) {
            source.problem("voltage", "the tester's source for mains on a part is not stated whole; plan again");
            return Optional.empty();
        }
        return Optional.of(new PartSource(voltage.get(), shortCircuit.get(), reading.get()));
    }

    /** A limit; empty with a problem where it has no value, or two. */
    public static Optional<Limit> limit(Given limit) {
        Optional<Quantity> most = limit.quantity("at-most", LIMITED);
        Optional<Quantity> least = limit.quantity("at-least", LIMITED);
        Optional<Mark> mark = mark(limit);
        if (most.isPresent() == least.isPresent()) {
            limit.problem("id", "the limit has no value, or two; plan again");
            return Optional.empty();
        }
        Limit.Bound bound = most.isPresent() ? Limit.Bound.AT_MOST : Limit.Bound.AT_LEAST;
        return Optional.of(new Limit(
                limit.text("id"),
                bound,
                most.or(() -> least).get(),
                limit.text("clause"),
                mark.orElse(Mark.C),
                limit.texts("sources"),
                limit.yes("confirmed")));
    }

    private static Optional<Mark> mark(Given limit) {
        for (Mark each : Mark.values()) {
            if (limit.text("mark").equals(each.name())) {
                return Optional.of(each);
            }
        }
        limit.problem("mark", "'mark' is one of A, B, C, D");
        return Optional.empty();
    }
}
