package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import leadwright.planner.plan.Demand;
import leadwright.planner.plan.Floating;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/** What changed in the readings that are taken. */
record Tests(Side a, Side b, Names names, Pairs readings) {

    List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        readings.onlyA().forEach(each -> changes.add(alone(each).mirrored()));
        readings.onlyB().forEach(each -> changes.add(alone(each)));
        for (Pairs.Pair each : readings.both()) {
            otherwise(each, changes);
            if (!each.inA().clause().equals(each.inB().clause())) {
                changes.add(change(
                        Kind.CLAUSE,
                        Names.quantity(each.inA()),
                        each,
                        Optional.of(each.inA().clause()),
                        Optional.of(each.inB().clause())));
            }
            remarks(each, changes);
        }
        Hazards.keyed(Kind.NOT_APPLICABLE, notApplicable(a), notApplicable(b), changes);
        return changes;
    }

    /** A reading that only the second plan takes. */
    private Change alone(Reading reading) {
        Obligation what = reading.obligation();
        return new Change(
                Kind.READING,
                Trend.CAME,
                Names.quantity(what) + " (" + what.clause() + ")",
                names.reading(what),
                Optional.empty(),
                Optional.of(what.limit().map(Limits::value).orElse("not judged")),
                List.of(),
                List.of(reading.id()));
    }

    private Change change(Kind kind, String family, Pairs.Pair pair, Optional<String> before, Optional<String> after) {
        return new Change(
                kind,
                Change.trend(before, after),
                family,
                names.reading(pair),
                before,
                after,
                List.of(pair.a().id()),
                List.of(pair.b().id()));
    }

    /** The same reading by its key, with other conditions: each of them is a change. */
    private void otherwise(Pairs.Pair pair, List<Change> changes) {
        Map<String, String> before = conditions(pair.inA());
        Map<String, String> after = conditions(pair.inB());
        Set<String> all = new LinkedHashSet<>(before.keySet());
        all.addAll(after.keySet());
        for (String condition : all) {
            Optional<String> mine = Optional.ofNullable(before.get(condition));
            Optional<String> theirs = Optional.ofNullable(after.get(condition));
            if (!mine.equals(theirs)) {
                changes.add(change(
                        Kind.TAKEN_OTHERWISE, condition + ", " + Names.quantity(pair.inA()), pair, mine, theirs));
            }
        }
    }

    private Map<String, String> conditions(Obligation what) {
        Map<String, String> conditions = new LinkedHashMap<>();
        conditions.put(
                "subject", String.join(", ", what.of().stream().map(names::of).toList()));
        what.method().ifPresent(each -> conditions.put("method", each.word()));
        what.network().ifPresent(each -> conditions.put("measuring network", each.word()));
        what.component().ifPresent(each -> conditions.put("component", each.word()));
        what.place().ifPresent(each -> conditions.put("place of clip or probe", names.of(each)));
        what.earthSubject().ifPresent(each -> conditions.put("path", each.word().replace('-', ' ')));
        conditions.put("mains", what.state().word());
        conditions.put("mode", what.mode());
        what.sourcePolarity().ifPresent(each -> conditions.put("source", each.word()));
        Demand demand = what.demand();
        connections("measured connections", demand.measured(), conditions);
        connections("connections measured against", demand.against(), conditions);
        connections("connections tied to earth", demand.earthed(), conditions);
        return conditions;
    }

    private static void connections(String name, Collection<String> connections, Map<String, String> conditions) {
        if (!connections.isEmpty()) {
            conditions.put(name, String.join(", ", connections));
        }
    }

    /** What a person must know about a reading; which connections float joined is a hazard of its own. */
    private void remarks(Pairs.Pair pair, List<Change> changes) {
        Set<String> before = remarks(a, pair.inA());
        Set<String> after = remarks(b, pair.inB());
        if (!before.equals(after)) {
            changes.add(
                    change(Kind.REMARK, Names.quantity(pair.inA()), pair, only(before, after), only(after, before)));
        }
    }

    private static Optional<String> only(Set<String> mine, Set<String> theirs) {
        String all = mine.stream().filter(each -> !theirs.contains(each)).collect(Collectors.joining("; "));
        return all.isEmpty() ? Optional.empty() : Optional.of(all);
    }

    private static Set<String> remarks(Side side, Obligation what) {
        Set<String> remarks = new LinkedHashSet<>();
        for (String each : what.note().map(side::inWords).orElse("").split("; ")) {
            if (!each.isBlank() && !each.startsWith(Floating.REMARK)) {
                remarks.add(each);
            }
        }
        return remarks;
    }

    private static Map<String, String> notApplicable(Side side) {
        Map<String, String> all = new LinkedHashMap<>();
        for (NotApplicable each : side.notApplicable()) {
            all.merge(
                    each.test(),
                    side.inWords(each.because()),
                    (one, other) -> one.equals(other) ? one : one + "; " + other);
        }
        return all;
    }
}
