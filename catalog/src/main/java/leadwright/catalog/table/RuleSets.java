package leadwright.catalog.table;

import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
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
import leadwright.catalog.rules.Joined;
import leadwright.catalog.rules.JoiningRow;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.LimitRow;
import leadwright.catalog.rules.MethodRow;
import leadwright.catalog.rules.NotDoneRow;
import leadwright.catalog.rules.Polarity;
import leadwright.catalog.rules.QuantityKind;
import leadwright.catalog.rules.RuleSet;
import leadwright.catalog.rules.Scope;
import leadwright.catalog.rules.TestRow;
import leadwright.catalog.rules.Trait;

/** The rule sets that the catalog ships. */
public final class RuleSets {
    private final Map<String, RuleSet> byId;

    private RuleSets(Map<String, RuleSet> byId) {
        this.byId = Collections.unmodifiableMap(byId);
    }

    private static final class BuiltIn {
        private static final RuleSets ALL = load();
    }

    /** The catalog's own rule sets. */
    public static RuleSets builtIn() {
        return BuiltIn.ALL;
    }

    private static RuleSets load() {
        Map<String, RuleSet> byId = new LinkedHashMap<>();
        for (Row row : TableFile.load("rules/index.yaml", "rule-sets/1").rows("rule-sets")) {
            RuleSet rules = read(row.needed("id"));
            row.finish();
            byId.put(rules.id(), rules);
        }
        return new RuleSets(byId);
    }

    /** Ids in the order in which they are listed for people. */
    public List<String> ids() {
        return List.copyOf(byId.keySet());
    }

    public Optional<RuleSet> find(String id) {
        return Optional.ofNullable(byId.get(id));
    }

    /** Every rule set, in the order of {@link #ids}. */
    public List<RuleSet> all() {
        return List.copyOf(byId.values());
    }

    private static RuleSet read(String id) {
        TableFile file = TableFile.load("rules/" + id + ".yaml", "rules/1");
        Row head = file.row("rule-set");
        RuleSet rules = new RuleSet(
                head.needed("id"),
                head.needed("name"),
                head.needed("edition"),
                head.needed("about"),
                head.text("network").isPresent()
                        ? Optional.of(head.word("network", MeasuringNetwork.class))
                        : Optional.empty(),
                file.rows("earth-test").stream().map(RuleSets::earthTest).toList(),
                file.rows("tests").stream().map(RuleSets::test).toList(),
                file.rows("joinings").stream().map(RuleSets::joining).toList(),
                file.rows("limits").stream().map(RuleSets::limit).toList(),
                file.rows("methods").stream().map(RuleSets::method).toList(),
                file.rows("not-done").stream().map(RuleSets::notDone).toList());
        head.finish();
        if (!rules.id().equals(id)) {
            throw new IllegalStateException("rules/" + id + ".yaml is about " + rules.id());
        }
        return rules;
    }

    private static EarthTestRow earthTest(Row row) {
        Optional<BigDecimal> factor = row.optionalNumber("factor-of-rated");
        EarthTestRow read = new EarthTestRow(
                row.neededQuantity("at-least", Dimension.CURRENT),
                factor,
                row.quantity("open-circuit-at-most", Dimension.VOLTAGE),
                basis(row));
        row.finish();
        return read;
    }

    private static TestRow test(Row row) {
        TestRow read = new TestRow(
                quantity(row),
                scope(row),
                row.words("polarities", Polarity.class),
                row.words("source-polarities", Polarity.class),
                row.flag("started").orElse(true),
                row.text("functional-earth").map("open-too"::equals).orElse(false),
                basis(row));
        row.finish();
        return read;
    }

    private static JoiningRow joining(Row row) {
        JoiningRow read = new JoiningRow(
                quantity(row),
                scope(row),
                row.word("joined", Joined.class),
                row.text("against").isPresent() ? row.word("against", Against.class) : Against.EARTH,
                row.text("earthed").isPresent() ? row.word("earthed", EarthedOthers.class) : EarthedOthers.NOTHING,
                basis(row));
        row.finish();
        return read;
    }

    private static LimitRow limit(Row row) {
        QuantityKind quantity = quantity(row);
        Optional<Quantity> atMost = row.quantity("at-most", dimension(quantity));
        Optional<Quantity> atLeast = row.quantity("at-least", dimension(quantity));
        String id = row.needed("id");
        if (atMost.isPresent() == atLeast.isPresent()) {
            throw new IllegalStateException(id + " needs one of at-most and at-least");
        }
        LimitRow read = new LimitRow(
                id,
                quantity,
                scope(row),
                atMost.isPresent() ? Limit.Bound.AT_MOST : Limit.Bound.AT_LEAST,
                atMost.or(() -> atLeast).orElseThrow(),
                basis(row));
        row.finish();
        return read;
    }

    private static MethodRow method(Row row) {
        MethodRow read = new MethodRow(
                row.word("method", Method.class),
                row.quantity("not-for-limits-to", Dimension.CURRENT),
                row.flag("not-with-electronic-switch").orElse(false),
                basis(row));
        row.finish();
        return read;
    }

    private static NotDoneRow notDone(Row row) {
        NotDoneRow read =
                new NotDoneRow(row.needed("test"), row.words("when", Trait.class), row.needed("because"), basis(row));
        row.finish();
        return read;
    }

    private static Scope scope(Row row) {
        return new Scope(
                row.words("class", Protection.class),
                row.words("type", PartType.class),
                row.words("supply", SupplyConnection.class),
                row.words("condition", Condition.class),
                row.words("method", Method.class),
                row.words("component", Component.class),
                row.text("subject"),
                row.texts("built-to"),
                row.text("where"));
    }

    private static Basis basis(Row row) {
        Origin origin = row.origin();
        return new Basis(row.needed("clause"), origin.mark(), origin.sources());
    }

    private static QuantityKind quantity(Row row) {
        return row.word("quantity", QuantityKind.class);
    }

    private static Dimension dimension(QuantityKind quantity) {
        return switch (quantity) {
            case EARTH_RESISTANCE, BONDING_RESISTANCE, INSULATION_RESISTANCE -> Dimension.RESISTANCE;
            case BONDING_VOLTAGE, SUPPLY_VOLTAGE -> Dimension.VOLTAGE;
            default -> Dimension.CURRENT;
        };
    }
}
