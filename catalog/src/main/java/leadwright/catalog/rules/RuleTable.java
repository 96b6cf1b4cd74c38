package leadwright.catalog.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;

/** A rule set's limits as rows of text, for a person. */
public final class RuleTable {

    private RuleTable() {}

    /**
     * One limit.
     *
     * @param condition {@code no fault}, {@code supply open}, …; empty where the limit does not depend on it
     * @param limit {@code at most 50 uA}
     * @param source keys of the catalog's source list; {@code from memory} for mark C, with the keys of what supports it
     */
    public record Row(
            String id,
            String quantity,
            String appliesTo,
            String condition,
            String limit,
            String clause,
            Mark mark,
            String source) {}

    /** Every limit of the rule set, in its order. */
    public static List<Row> rows(RuleSet rules) {
        return rules.limits().stream().map(RuleTable::row).toList();
    }

    private static Row row(LimitRow row) {
        return new Row(
                row.id(),
                row.quantity().word(),
                appliesTo(row.scope()),
                row.scope().conditions().stream().map(RuleTable::condition).collect(Collectors.joining(", ")),
                (row.bound() == Limit.Bound.AT_MOST ? "at most " : "at least ")
                        + row.value().text(),
                row.basis().clause(),
                row.basis().mark(),
                source(row.basis()));
    }

    private static String appliesTo(Scope scope) {
        List<String> parts = new ArrayList<>();
        add(parts, "", scope.classes().stream().map(RuleTable::protection).toList());
        add(parts, "type ", scope.types().stream().map(PartType::word).toList());
        add(parts, "", scope.supplies().stream().map(RuleTable::supply).toList());
        scope.subject().ifPresent(subject -> parts.add(subject.replace('-', ' ')));
        add(parts, "", scope.components().stream().map(RuleTable::component).toList());
        add(
                parts,
                "",
                scope.methods().stream()
                        .map(Method::word)
                        .map(word -> word + " method")
                        .toList());
        add(parts, "built to ", scope.builtTo());
        scope.where().ifPresent(where -> parts.add("only: " + where.replace('-', ' ')));
        return parts.isEmpty() ? "all" : String.join("; ", parts);
    }

    private static void add(List<String> parts, String before, List<String> words) {
        if (!words.isEmpty()) {
            parts.add(before + String.join(", ", words));
        }
    }

    private static String condition(Condition condition) {
        return switch (condition) {
            case NONE -> "no fault";
            case SUPPLY_OPEN -> "supply open";
            case EARTH_OPEN -> "earth open";
        };
    }

    private static String protection(Protection protection) {
        return switch (protection) {
            case CLASS_1 -> "class I";
            case CLASS_2 -> "class II";
            case INTERNALLY_POWERED -> "internally powered";
        };
    }

    private static String supply(SupplyConnection supply) {
        return switch (supply) {
            case DETACHABLE_CORD -> "detachable cord";
            case FIXED_CORD -> "fixed cord";
            case PERMANENT -> "permanently installed";
            case EXTERNAL_ADAPTER -> "external adapter";
            case NONE -> "no mains supply";
        };
    }

    private static String component(Component component) {
        return component == Component.AC ? "a.c." : "d.c.";
    }

    private static String source(Basis basis) {
        String keys = String.join(", ", basis.sources());
        if (basis.mark() != Mark.C) {
            return keys;
        }
        return keys.isEmpty() ? "from memory" : "from memory; supported by " + keys;
    }
}
