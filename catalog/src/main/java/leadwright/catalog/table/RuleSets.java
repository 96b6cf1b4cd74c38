package leadwright.catalog.table;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.device.Words;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.quantity.Quantity;
import leadwright.catalog.rules.Against;
import leadwright.catalog.rules.Basis;
import leadwright.catalog.rules.Condition;
import leadwright.catalog.rules.EarthTestRow;
import leadwright.catalog.rules.EarthedOthers;
import leadwright.catalog.rules.EarthedParts;
import leadwright.catalog.rules.Joined;
import leadwright.catalog.rules.JoiningRow;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.MethodRow;
import leadwright.catalog.rules.NotDoneRow;
import leadwright.catalog.rules.PlaceRow;
import leadwright.catalog.rules.Polarity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.Scope;
import leadwright.catalog.rules.TestRow;
import leadwright.catalog.rules.Trait;
import leadwright.catalog.text.Fields;

/** The rule sets that the catalog ships. Each is read when it is first asked for and once only: a plan needs but one. */
public final class RuleSets {
    private final List<String> ids;
    private final Map<String, RuleSet> known = new ConcurrentHashMap<>();

    private RuleSets(List<String> ids) {
        this.ids = List.copyOf(ids);
    }

    private static final class BuiltIn {
        private static final RuleSets ALL = load();
    }

    /** The catalog's own rule sets. */
    public static RuleSets builtIn() {
        return BuiltIn.ALL;
    }

    private static RuleSets load() {
        List<String> ids = TableFile.read("rules/index.yaml", "rule-sets/1", top -> {
            List<String> listed =
                    top.rows("rule-sets").stream().map(row -> row.id("id")).toList();
            return () -> listed;
        });
        return new RuleSets(ids);
    }

    /** Ids in the order in which they are listed for people. */
    public List<String> ids() {
        return ids;
    }

    public Optional<RuleSet> find(String id) {
        return ids.contains(id) ? Optional.of(known.computeIfAbsent(id, RuleSets::read)) : Optional.empty();
    }

    /** Every rule set, in the order of {@link #ids}. */
    public List<RuleSet> all() {
        return ids.stream().map(this::find).flatMap(Optional::stream).toList();
    }

    private static RuleSet read(String id) {
        return TableFile.read("rules/" + id + ".yaml", "rules/1", top -> {
            Optional<Fields> head = top.section("rule-set");
            head.filter(row -> !row.id("id").equals(id))
                    .ifPresent(row -> row.findings().problem(row.at("id"), "the file is named for '" + id + "'"));
            RuleSet rules = new RuleSet(
                    head.map(row -> row.id("id")).orElse(id),
                    head.map(row -> row.text("name")).orElse(""),
                    head.map(row -> row.text("edition")).orElse(""),
                    head.map(row -> row.text("about")).orElse(""),
                    head.flatMap(row -> row.optionalWord("network", MeasuringNetwork.values(), MeasuringNetwork::word)),
                    top.optionalSection("editions").map(RuleSets::basis),
                    rows(top, "places", RuleSets::place),
                    head.flatMap(row -> row.optionalSection("nominal-mains")).map(RuleSets::basis),
                    rows(top, "earth-test", RuleSets::earthTest),
                    rows(top, "tests", RuleSets::test),
                    rows(top, "joinings", RuleSets::joining),
                    rows(top, "limits", RuleSets::limit),
                    rows(top, "methods", RuleSets::method),
                    rows(top, "not-done", RuleSets::notDone));
            return () -> rules;
        });
    }

    private static <T> List<T> rows(Fields top, String list, Function<Fields, T> row) {
        return top.rows(list).stream().map(row).toList();
    }

    private static PlaceRow place(Fields row) {
        return new PlaceRow(row.id("id"), row.text("name"), basis(row));
    }

    private static EarthTestRow earthTest(Fields row) {
        return new EarthTestRow(
                row.positive("at-least", Dimension.CURRENT),
                row.optionalDecimal("factor-of-rated"),
                row.optionalPositive("open-circuit-at-most", Dimension.VOLTAGE),
                row.optionalPositive("lasting", Dimension.TIME),
                basis(row));
    }

    private static TestRow test(Fields row) {
        return new TestRow(
                quantity(row),
                scope(row),
                row.wordList("polarities", Polarity.values(), Words::of),
                row.wordList("source-polarities", Polarity.values(), Words::of),
                row.yesNo("started", true),
                row.optionalOneOf("functional-earth", List.of("open-too")).isPresent(),
                row.optionalOneOf("switched-off", List.of("too")).isPresent(),
                row.optionalWord("earthed-parts", EarthedParts.values(), Words::of)
                        .orElse(EarthedParts.WITH_EARTH_OPEN),
                basis(row));
    }

    private static JoiningRow joining(Fields row) {
        return new JoiningRow(
                quantity(row),
                scope(row),
                row.word("joined", Joined.values(), Words::of),
                row.optionalWord("against", Against.values(), Words::of).orElse(Against.EARTH),
                row.optionalWord("earthed", EarthedOthers.values(), Words::of).orElse(EarthedOthers.NOTHING),
                basis(row));
    }

    private static LimitRow limit(Fields row) {
        QuantityKind quantity = quantity(row);
        Optional<Quantity> atMost = row.optionalPositive("at-most", dimension(quantity));
        Optional<Quantity> atLeast = row.optionalPositive("at-least", dimension(quantity));
        if (atMost.isPresent() == atLeast.isPresent()) {
            row.findings().problem(row.at(), "one of at-most and at-least is due");
        }
        return new LimitRow(
                row.text("id"),
                quantity,
                scope(row),
                atMost.isPresent() ? Limit.Bound.AT_MOST : Limit.Bound.AT_LEAST,
                atMost.or(() -> atLeast).orElse(Quantity.of(dimension(quantity), 0)),
                basis(row));
    }

    private static MethodRow method(Fields row) {
        return new MethodRow(
                row.word("method", Method.values(), Method::word),
                row.text("presupposes"),
                row.optionalPositive("not-for-limits-to", Dimension.CURRENT),
                row.yesNo("not-with-electronic-switch", false),
                basis(row));
    }

    private static NotDoneRow notDone(Fields row) {
        return new NotDoneRow(
                row.text("test"), row.wordList("when", Trait.values(), Words::of), row.text("because"), basis(row));
    }

    private static Scope scope(Fields row) {
        return new Scope(
                row.wordList("class", Protection.values(), Protection::word),
                row.wordList("type", PartType.values(), PartType::word),
                row.wordList("supply", SupplyConnection.values(), SupplyConnection::word),
                row.wordList("condition", Condition.values(), Words::of),
                row.wordList("method", Method.values(), Method::word),
                row.wordList("component", Component.values(), Component::word),
                row.optionalText("subject"),
                row.texts("built-to"),
                row.optionalText("where"));
    }

    private static Basis basis(Fields row) {
        Origin origin = Origin.of(row);
        return new Basis(row.text("clause"), origin.mark(), origin.sources());
    }

    private static QuantityKind quantity(Fields row) {
        return row.word("quantity", QuantityKind.values(), QuantityKind::word);
    }

    private static Dimension dimension(QuantityKind quantity) {
        return switch (quantity) {
            case EARTH_RESISTANCE, BONDING_RESISTANCE, INSULATION_RESISTANCE -> Dimension.RESISTANCE;
            case BONDING_VOLTAGE, SUPPLY_VOLTAGE -> Dimension.VOLTAGE;
            default -> Dimension.CURRENT;
        };
    }
}
