package leadwright.planner.judge;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Supplier;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.house.Paper;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.kit.SourceReading;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.table.RuleSets;
import leadwright.catalog.text.Document;
import leadwright.catalog.text.Fields;
import leadwright.catalog.text.Outcome;
import leadwright.planner.file.Given;
import leadwright.planner.file.PlanParts;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Shortfall;

/** Reads what judging needs of a {@code plan/1} that this program wrote. */
public final class PlanFile {

    /** Supplies whose voltage is the one between the two conductors that a person reads; a three-phase one is not. */
    private static final List<String> BETWEEN_TWO = List.of("line-neutral", "split-phase", "phase-phase", "isolated");

    private final Given top;

    private PlanFile(Given top) {
        this.top = top;
    }

    /**
     * Reads a plan.
     *
     * @param file name of the file, for messages
     */
    public static Outcome<PlannedTest> read(String file, byte[] bytes) {
        return Document.readWritten(file, bytes, "plan/1", (Fields fields) -> new PlanFile(new Given(fields)).plan());
    }

    private Supplier<PlannedTest> plan() {
        String fingerprint = top.text("fingerprint");
        boolean partial = top.yes("partial");
        boolean training = top.yes("training-copy");
        String occasion = top.text("occasion");
        Optional<PlannedTest.Device> device = top.due("device").map(PlanFile::device);
        Optional<PlannedTest.Bench> bench = top.due("kit").map(PlanFile::bench);
        Optional<PlannedTest.Rules> rules = top.due("rules").map(PlanFile::rules);
        Optional<PlannedTest.House> house = top.due("house").map(PlanFile::house);
        Optional<RuleSet> known = rules.flatMap(each -> RuleSets.builtIn().find(each.id()));
        List<Supplier<PlannedReading>> readings = top.rows("readings").stream()
                .map(row -> reading(row, known, bench.flatMap(PlannedTest.Bench::source)))
                .toList();
        Set<String> ids = new HashSet<>();
        for (Given row : top.rows("readings")) {
            if (!ids.add(row.text("id"))) {
                row.problem("id", "reading '" + row.text("id") + "' stands twice in the plan; plan again");
            }
        }
        if (readings.isEmpty()) {
            top.problem("readings", "the plan has no readings; there is nothing to judge");
        }
        List<NotApplicable> notApplicable = PlanParts.notApplicable(top);
        List<Shortfall> shortfalls = PlanParts.shortfalls(top);
        return () -> new PlannedTest(
                fingerprint,
                partial || !shortfalls.isEmpty(),
                training,
                occasion,
                device.orElseThrow(),
                bench.orElseThrow(),
                rules.orElseThrow(),
                house.orElseThrow(),
                readings.stream().map(Supplier::get).toList(),
                notApplicable,
                shortfalls);
    }

    private static PlannedTest.Device device(Given device) {
        Map<String, String> names = new TreeMap<>();
        for (Given each : device.rows("places")) {
            names.put(each.text("id"), each.text("name"));
        }
        for (Given each : device.rows("applied-parts")) {
            names.put(each.text("id"), each.text("name"));
        }
        return new PlannedTest.Device(device.text("name"), names);
    }

    private static PlannedTest.Bench bench(Given kit) {
        Map<String, Accuracy> accuracy = PlanParts.accuracy(kit);
        List<Quantity> nominal = new ArrayList<>();
        for (Given each : kit.rows("outlets")) {
            if (BETWEEN_TWO.contains(each.text("system"))) {
                each.quantity("voltage", Dimension.VOLTAGE).ifPresent(nominal::add);
            }
        }
        Map<String, PlannedTest.Resistor> checks = new TreeMap<>();
        for (Given each : kit.rows("checks")) {
            Optional<Quantity> value = each.quantity("value", Dimension.RESISTANCE);
            Optional<Quantity> tolerance = each.quantity("tolerance", Dimension.RATIO);
            if (value.isPresent() && tolerance.isPresent()) {
                checks.put(each.text("id"), new PlannedTest.Resistor(value.get(), tolerance.get()));
            }
        }
        return new PlannedTest.Bench(
                kit.text("name"),
                kit.text("tester"),
                kit.date("calibrated-until"),
                accuracy,
                kit.text("earth-wiring").equals("four-wire"),
                kit.quantity("null-up-to", Dimension.RESISTANCE),
                nominal,
                kit.section("mains-on-applied-part").flatMap(PlanParts::source),
                checks);
    }

    private static PlannedTest.Rules rules(Given rules) {
        if (!rules.has("nominal-mains")) {
            rules.missing("nominal-mains");
        }
        return new PlannedTest.Rules(
                rules.text("id"), rules.text("name"), rules.text("edition"), rules.maybe("nominal-mains"));
    }

    private static PlannedTest.House house(Given house) {
        return new PlannedTest.House(
                house.maybe("department"),
                house.word("decision", DecisionRule.class).orElse(DecisionRule.SIMPLE),
                house.word("paper", Paper.class).orElse(Paper.A4),
                house.word("words", EarthWord.class).orElse(EarthWord.EARTH),
                house.texts("signs"));
    }

    private static Supplier<PlannedReading> reading(Given row, Optional<RuleSet> known, Optional<PartSource> source) {
        Optional<QuantityKind> quantity = row.word("quantity", QuantityKind.class);
        if (quantity.isEmpty() && row.maybe("quantity").isEmpty()) {
            row.missing("quantity");
        }
        String id = row.text("id");
        String key = row.text("key");
        String clause = row.text("clause");
        String state = row.text("state");
        String mode = row.text("mode");
        List<String> of = row.texts("of");
        Optional<Method> method = row.word("method", Method.class);
        Optional<Component> component = row.word("component", Component.class);
        if (!row.has("limit")) {
            row.missing("limit");
        }
        Optional<Limit> stated = row.section("limit").flatMap(PlanParts::limit);
        Optional<LimitRow> inRules = stated.flatMap(each -> ruled(each.id(), known));
        stated.ifPresent(each -> inRules.filter(ruled -> looser(each, ruled))
                .ifPresent(ruled -> row.problem(
                        "limit",
                        "limit " + each.id() + " is " + each.value().text() + ", looser than "
                                + ruled.value().text()
                                + " of the rule set: the plan was changed by hand; plan again")));
        boolean limitedSource =
                row.maybe("source-polarity").isPresent() || method.equals(Optional.of(Method.ALTERNATIVE));
        Optional<Limit> limit = stated.map(each -> inRules.flatMap(
                        ruled -> source.filter(one -> limitedSource).flatMap(one -> lowered(ruled, one)))
                .filter(value -> value.compareTo(each.value()) < 0)
                .map(value -> new Limit(
                        each.id(), each.bound(), value, each.clause(), each.mark(), each.sources(), each.confirmed()))
                .orElse(each));
        return () -> new PlannedReading(
                id,
                key,
                quantity.orElseThrow(),
                clause,
                of,
                row.maybe("place"),
                state,
                mode,
                row.maybe("source-polarity"),
                method,
                component,
                row.maybe("earth-subject"),
                limit,
                row.maybe("note"),
                row.section("foreseen").flatMap(PlanFile::expected));
    }

    private static Optional<Expected> expected(Given foreseen) {
        boolean assumed = foreseen.text("basis").equals("assumed");
        return span(foreseen)
                .map(band ->
                        new Expected(band, assumed, foreseen.section("firm").flatMap(PlanFile::span)));
    }

    private static Optional<Expected.Span> span(Given section) {
        List<Dimension> dimensions = List.of(Dimension.CURRENT, Dimension.RESISTANCE, Dimension.VOLTAGE);
        return section.quantity("low", dimensions)
                .map(low -> new Expected.Span(
                        low, section.has("high") ? section.quantity("high", low.dimension()) : Optional.empty()));
    }

    /** The row of a limit in the plan's rule set, or in that of the edition the device was built to. */
    private static Optional<LimitRow> ruled(String id, Optional<RuleSet> known) {
        return known.flatMap(rules -> rules.limit(id))
                .or(() -> id.startsWith("device-")
                        ? Optional.empty()
                        : RuleSets.builtIn().all().stream()
                                .flatMap(rules -> rules.limit(id).stream())
                                .findFirst());
    }

    /**
     * What a limit comes to on a source whose readings are raw: the lowest that a device at its limit shows. A plan has its
     * limits lowered so; a reader of readings does not rely on it.
     */
    private static Optional<Quantity> lowered(LimitRow ruled, PartSource source) {
        if (source.reading() != SourceReading.RAW
                || ruled.bound() != Limit.Bound.AT_MOST
                || ruled.value().dimension() != Dimension.CURRENT) {
            return Optional.empty();
        }
        BigInteger own = BigInteger.valueOf(ruled.value().amount());
        BigInteger most = BigInteger.valueOf(source.shortCircuit().amount());
        return Optional.of(Quantity.of(
                Dimension.CURRENT, own.multiply(most).divide(own.add(most)).longValueExact()));
    }

    private static boolean looser(Limit limit, LimitRow ruled) {
        if (limit.bound() != ruled.bound()
                || limit.value().dimension() != ruled.value().dimension()) {
            return true;
        }
        int order = limit.value().compareTo(ruled.value());
        return limit.bound() == Limit.Bound.AT_MOST ? order > 0 : order < 0;
    }
}
