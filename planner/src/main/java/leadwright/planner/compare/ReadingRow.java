package leadwright.planner.compare;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.file.Given;
import leadwright.planner.file.PlanParts;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Obligation.EarthSubject;
import leadwright.planner.plan.Obligation.SourcePolarity;
import leadwright.planner.plan.Reading;

/** A reading as a plan's file has it. */
final class ReadingRow {

    private ReadingRow() {}

    /** What builds the reading, once the file has no problem. */
    static Supplier<Reading> reading(Given row) {
        String id = row.text("id");
        String key = row.text("key");
        String clause = row.text("clause");
        String mode = row.text("mode");
        Optional<QuantityKind> quantity = row.word("quantity", QuantityKind.class);
        if (row.maybe("quantity").isEmpty()) {
            row.missing("quantity");
        }
        Optional<Demand> demand = demand(row);
        Optional<EarthSubject> earthSubject = row.word("earth-subject", EarthSubject.class);
        Optional<MainsState> state = state(row);
        Optional<SourcePolarity> source = row.word("source-polarity", SourcePolarity.class);
        Optional<Method> method = row.word("method", Method.class);
        Optional<Component> component = row.word("component", Component.class);
        Optional<MeasuringNetwork> network = row.word("network", MeasuringNetwork.class);
        if (!row.has("limit")) {
            row.missing("limit");
        }
        Optional<Limit> limit = row.section("limit").flatMap(PlanParts::limit);
        List<String> of = row.texts("of");
        Optional<String> hookup = row.maybe("hookup");
        return () -> new Reading(
                id,
                new Obligation(
                        key,
                        quantity.orElseThrow(),
                        clause,
                        of,
                        demand.orElseThrow(),
                        row.maybe("place"),
                        earthSubject,
                        state.orElseThrow(),
                        mode,
                        source,
                        method,
                        component,
                        network,
                        limit,
                        row.maybe("note")),
                hookup);
    }

    private static Optional<Demand> demand(Given row) {
        try {
            return Optional.of(Demand.of(row.texts("measured"), row.texts("against"), row.texts("earthed")));
        } catch (IllegalArgumentException e) {
            row.problem("measured", e.getMessage() + "; plan again");
            return Optional.empty();
        }
    }

    /** A state of the mains, whose words are not made of the names of the constants. */
    static Optional<MainsState> state(Given row) {
        String word = row.text("state");
        for (MainsState each : MainsState.values()) {
            if (each.word().equals(word)) {
                return Optional.of(each);
            }
        }
        row.problem("state", "'" + word + "' is no state of the mains; plan again");
        return Optional.empty();
    }
}
