package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import leadwright.catalog.rules.Limit;

/** What changed in the limits of readings that both plans take, and in what else decides a verdict. */
record Limits(Side a, Side b, Names names, Pairs readings) {

    List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        for (Pairs.Pair each : readings.both()) {
            Optional<Limit> before = each.inA().limit();
            Optional<Limit> after = each.inB().limit();
            if (!before.map(Limits::value).equals(after.map(Limits::value))) {
                changes.add(change(Kind.LIMIT, trend(before, after), each, before, after));
            } else if (!before.equals(after)) {
                changes.add(change(Kind.LIMIT_ORIGIN, Trend.OTHERWISE, each, before, after));
            }
        }
        String decided = a.house().decision().word();
        String decides = b.house().decision().word();
        if (!decided.equals(decides)) {
            changes.add(Change.of(Kind.DECISION, "decision rule", Optional.of(decided), Optional.of(decides)));
        }
        Hazards.keyed(Kind.ACCURACY, accuracy(a), accuracy(b), changes);
        return changes;
    }

    private Change change(Kind kind, Trend trend, Pairs.Pair pair, Optional<Limit> before, Optional<Limit> after) {
        return new Change(
                kind,
                trend,
                Names.quantity(pair.inA()),
                names.reading(pair),
                before.map(Limits::text),
                after.map(Limits::text),
                List.of(pair.a().id()),
                List.of(pair.b().id()));
    }

    /** The value alone, for instance {@code at most 500 uA}. */
    static String value(Limit limit) {
        return limit.bound().word().replace('-', ' ') + " " + limit.value().text();
    }

    /** The value with all that it rests on. */
    private static String text(Limit limit) {
        String sources = limit.sources().isEmpty() ? "" : " of " + String.join(", ", limit.sources());
        String confirmed = limit.confirmed() ? "" : ", unconfirmed";
        return value(limit) + " (" + limit.id() + ", " + limit.clause() + ", mark "
                + limit.mark().name() + sources + confirmed + ")";
    }

    private static Trend trend(Optional<Limit> before, Optional<Limit> after) {
        if (before.isEmpty() || after.isEmpty()) {
            return before.isEmpty() ? Trend.CAME : Trend.WENT;
        }
        Limit from = before.get();
        Limit to = after.get();
        if (from.bound() != to.bound() || from.value().dimension() != to.value().dimension()) {
            return Trend.OTHERWISE;
        }
        boolean more = to.value().compareTo(from.value()) > 0;
        return more == (from.bound() == Limit.Bound.AT_MOST) ? Trend.RELAXED : Trend.TIGHTENED;
    }

    private static Map<String, String> accuracy(Side side) {
        Map<String, String> all = new TreeMap<>();
        side.bench()
                .accuracy()
                .forEach((function, each) -> all.put(
                        function, each.reading().text() + " and " + each.floor().text()));
        return all;
    }
}
