package leadwright.planner.compare;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.plan.Bundle;
import leadwright.planner.plan.Floating;
import leadwright.planner.plan.MainsState;
import leadwright.planner.plan.NaturalOrder;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;
import leadwright.planner.plan.Shortfall;
import leadwright.planner.plan.Step;

/** What changed in what can hurt somebody, and in what the plan cannot vouch for. Cautions are in {@link Cautions}. */
record Hazards(Side a, Side b, Names names, Pairs readings) {

    List<Change> changes() {
        List<Change> changes = new ArrayList<>();
        said(Kind.TRAINING_COPY, "training copy", a.training(), b.training(), changes);
        said(Kind.PARTIAL, "partial", a.partial(), b.partial(), changes);
        keyed(Kind.SHORTFALL, shortfalls(a), shortfalls(b), changes);
        keyed(Kind.THERAPY_OUTPUT, outputs(a), outputs(b), changes);
        keyed(Kind.MAINS_ON_PART, mainsOnParts(a), mainsOnParts(b), changes);
        keyed(Kind.PART_SOURCE, source(a), source(b), changes);
        changes.addAll(new Cautions(a, b, names, readings).changes());
        keyed(Kind.REPLUG_UNDER_POWER, underPower(a), underPower(b), changes);
        floating(changes);
        onFail(changes);
        keyed(Kind.WARNING, warnings(a), warnings(b), changes);
        return changes;
    }

    private static void said(Kind kind, String subject, boolean before, boolean after, List<Change> changes) {
        if (before != after) {
            Optional<String> yes = Optional.of("yes");
            changes.add(Change.of(kind, subject, before ? yes : Optional.empty(), after ? yes : Optional.empty()));
        }
    }

    /** What stands in one plan only, or differently, under its name. */
    static void keyed(Kind kind, Map<String, String> before, Map<String, String> after, List<Change> changes) {
        Set<String> keys = new TreeSet<>(NaturalOrder.IDS);
        keys.addAll(before.keySet());
        keys.addAll(after.keySet());
        for (String key : keys) {
            Optional<String> mine = Optional.ofNullable(before.get(key));
            Optional<String> theirs = Optional.ofNullable(after.get(key));
            if (!mine.equals(theirs)) {
                changes.add(Change.of(kind, key, mine, theirs));
            }
        }
    }

    private static Map<String, String> shortfalls(Side side) {
        Map<String, String> all = new LinkedHashMap<>();
        for (Shortfall each : side.shortfalls()) {
            String connections = each.connections().isEmpty() ? "" : " (" + Names.few(each.connections()) + ")";
            String additions =
                    each.additions().isEmpty() ? "" : "; would do: " + String.join("; or ", each.additions());
            all.merge(
                    each.about(),
                    side.inWords(each.because()) + connections + additions,
                    (one, other) -> one + "; " + other);
        }
        return all;
    }

    /** How each therapy output is made safe. */
    private static Map<String, String> outputs(Side side) {
        Map<String, String> outputs = new LinkedHashMap<>();
        side.steps().stream()
                .filter(step -> step.does() == Step.Act.MAKE_SAFE)
                .forEach(step -> outputs.merge(
                        step.place().orElse("output"),
                        side.inWords(step.text()),
                        (one, other) -> one.contains(other) ? one : one + " " + other));
        return outputs;
    }

    /** On what the tester puts mains, and in how many readings. */
    private Map<String, String> mainsOnParts(Side side) {
        Map<String, Integer> counts = new TreeMap<>();
        for (Reading each : side.readings()) {
            if (each.obligation().sourcePolarity().isPresent()) {
                on(each).forEach(part -> counts.merge(part, 1, Integer::sum));
            }
        }
        Map<String, String> all = new LinkedHashMap<>();
        counts.forEach((part, count) -> all.put(part, Names.count(count, "reading")));
        return all;
    }

    /** What the source is put on: parts by the measured connections, metal and ports by those measured against. */
    private Set<String> on(Reading reading) {
        Obligation what = reading.obligation();
        boolean opposite = what.quantity() == QuantityKind.MAINS_ON_UNEARTHED_METAL
                || what.quantity() == QuantityKind.MAINS_ON_PORT;
        Set<String> things = new TreeSet<>(NaturalOrder.IDS);
        for (String connection :
                opposite ? what.demand().against() : what.demand().measured()) {
            String[] words = connection.split("\\.", 3);
            boolean place = words.length > 1 && (words[0].equals("housing") || words[0].equals("port"));
            things.add(names.of(place ? words[1] : words[0]));
        }
        if (things.isEmpty()) {
            what.of().forEach(id -> things.add(names.of(id)));
        }
        return things;
    }

    private static Map<String, String> source(Side side) {
        return side.bench()
                .source()
                .map((PartSource each) -> Map.of(
                        "source",
                        each.voltage().text() + ", at most "
                                + each.shortCircuit().text() + ", "
                                + each.reading().word() + " readings"))
                .orElse(Map.of());
    }

    /** Steps that join or part something while the device has mains. */
    private static Map<String, String> underPower(Side side) {
        Map<String, Integer> counts = new TreeMap<>();
        for (Step step : side.steps()) {
            boolean moves = step.does() == Step.Act.JOIN || step.does() == Step.Act.PART;
            boolean live = step.state() != MainsState.OFF && step.state() != MainsState.ISOLATED;
            if (moves && live) {
                counts.merge(step.state().word().replace("/", ", "), 1, Integer::sum);
            }
        }
        Map<String, String> all = new LinkedHashMap<>();
        counts.forEach((state, count) -> all.put(state, Names.count(count, "step")));
        return all;
    }

    /** Readings during which other connections float joined than in the other plan, counted. */
    private void floating(List<Change> changes) {
        for (Pairs.Pair each : readings.both()) {
            int before = floating(a, each.a());
            int after = floating(b, each.b());
            if (before != after) {
                floating(
                        names.reading(each),
                        before,
                        after,
                        List.of(each.a().id()),
                        List.of(each.b().id()),
                        changes);
            }
        }
        for (Reading each : readings.onlyA()) {
            floating(names.reading(each.obligation()), floating(a, each), 0, List.of(each.id()), List.of(), changes);
        }
        for (Reading each : readings.onlyB()) {
            floating(names.reading(each.obligation()), 0, floating(b, each), List.of(), List.of(each.id()), changes);
        }
    }

    private static void floating(
            String subject, int before, int after, List<String> inA, List<String> inB, List<Change> changes) {
        if (before != after) {
            changes.add(new Change(
                    Kind.FLOAT_JOINED,
                    after > before ? Trend.MORE : Trend.LESS,
                    inA.isEmpty() || inB.isEmpty() ? "of one plan" : "of both plans",
                    subject,
                    Optional.of(Names.count(before, "connection")),
                    Optional.of(Names.count(after, "connection")),
                    inA,
                    inB));
        }
    }

    private static int floating(Side side, Reading reading) {
        return Floating.joined(reading.obligation(), side.hookup(reading)).stream()
                .mapToInt((Bundle bundle) -> bundle.connections().size())
                .sum();
    }

    /** What is to be done when a reading fails. */
    private void onFail(List<Change> changes) {
        for (Pairs.Pair each : readings.both()) {
            Optional<String> before = a.taking(each.a()).flatMap(Step::onFail).map(a::inWords);
            Optional<String> after = b.taking(each.b()).flatMap(Step::onFail).map(b::inWords);
            if (!before.equals(after)) {
                changes.add(new Change(
                        Kind.ON_FAIL,
                        Change.trend(before, after),
                        Names.quantity(each.inA()),
                        names.reading(each),
                        before,
                        after,
                        List.of(each.a().id()),
                        List.of(each.b().id())));
            }
        }
    }

    private static Map<String, String> warnings(Side side) {
        return side.warnings().stream()
                .map(side::inWords)
                .distinct()
                .collect(Collectors.toMap(text -> text, text -> text, (one, other) -> one, LinkedHashMap::new));
    }
}
