package leadwright.catalog.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;

/** A rule set as rows of text, for a person who holds them against the printed standard. */
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

    /**
     * What is read, or how it is joined.
     *
     * @param how states and components of a reading, or what is joined with what
     */
    public record Rule(String quantity, String appliesTo, String how, String clause, Mark mark, String source) {}

    /** What the rule set asks to be read, and in which states. */
    public static List<Rule> readings(RuleSet rules) {
        return rules.tests().stream()
                .map(row -> rule(row.quantity(), whom(row.scope()), states(row), row.basis()))
                .toList();
    }

    /** What is measured as one, against what. */
    public static List<Rule> joinings(RuleSet rules) {
        return rules.joinings().stream()
                .map(row -> rule(row.quantity(), appliesTo(row.scope()), joined(row), row.basis()))
                .toList();
    }

    private static Rule rule(QuantityKind quantity, String appliesTo, String how, Basis basis) {
        return new Rule(quantity.word(), appliesTo, how, basis.clause(), basis.mark(), source(basis));
    }

    /** Conditions and components of a test row are those that are read, not a restriction. */
    private static String whom(Scope scope) {
        return appliesTo(new Scope(
                scope.classes(),
                scope.types(),
                scope.supplies(),
                List.of(),
                scope.methods(),
                List.of(),
                scope.subject(),
                scope.builtTo(),
                scope.where()));
    }

    private static String states(TestRow row) {
        List<String> parts = new ArrayList<>();
        if (!row.started()) {
            parts.add("device off");
        } else if (row.scope().supplies().equals(List.of(SupplyConnection.PERMANENT))) {
            parts.add("as installed");
        } else if (row.polarities().isEmpty()) {
            parts.add("outlet off, device on");
        } else {
            parts.add(
                    "polarity " + row.polarities().stream().map(Polarity::word).collect(Collectors.joining(" and ")));
            parts.add(
                    row.scope().conditions().stream().map(RuleTable::condition).collect(Collectors.joining(", ")));
        }
        if (!row.sourcePolarities().isEmpty()) {
            parts.add("source "
                    + row.sourcePolarities().stream().map(Polarity::word).collect(Collectors.joining(" and ")));
        }
        if (row.functionalEarthOpenToo()) {
            parts.add("functional earth also open");
        }
        if (row.switchedOffToo()) {
            parts.add("also switched off");
        }
        if (row.earthedParts() != EarthedParts.WITH_EARTH_OPEN) {
            parts.add("earthed parts " + row.earthedParts().word());
        }
        add(
                parts,
                "",
                row.scope().components().stream().map(RuleTable::component).toList());
        return String.join("; ", parts);
    }

    private static String joined(JoiningRow row) {
        return "one reading for each " + row.joined().word().replace('-', ' ')
                + (row.against() == Against.EARTH
                        ? ""
                        : ", against " + row.against().word().replace('-', ' '))
                + (row.earthed() == EarthedOthers.NOTHING
                        ? ""
                        : ", earthed: " + row.earthed().word().replace('-', ' '));
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
        scope.where().ifPresent(where -> parts.add("only where: " + where));
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

    /** Keys of sources; {@code from memory} for mark C, with what supports it. */
    public static String source(Basis basis) {
        String keys = String.join(", ", basis.sources());
        if (basis.mark() != Mark.C) {
            return keys;
        }
        return keys.isEmpty() ? "from memory" : "from memory; supported by " + keys;
    }
}
