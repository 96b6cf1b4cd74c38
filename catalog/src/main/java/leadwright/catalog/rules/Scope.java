package leadwright.catalog.rules;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;

/**
 * What a row of a rule set applies to. An empty list or value does not restrict: the row covers all.
 *
 * @param classes protection against electric shock; for an external adapter, the adapter's
 * @param types type of the applied part
 * @param subject between what it is read, such as {@code inlet-to-part} or {@code total}; a row without a subject covers
 *     readings without one only
 * @param builtTo rule-set ids of editions; a row with some covers devices built to one of them only
 * @param where a stated circumstance, such as a country or a kind of room, without which the row never applies
 */
public record Scope(
        List<Protection> classes,
        List<PartType> types,
        List<SupplyConnection> supplies,
        List<Condition> conditions,
        List<Method> methods,
        List<Component> components,
        Optional<String> subject,
        List<String> builtTo,
        Optional<String> where) {
    public Scope {
        classes = List.copyOf(classes);
        types = List.copyOf(types);
        supplies = List.copyOf(supplies);
        conditions = List.copyOf(conditions);
        methods = List.copyOf(methods);
        components = List.copyOf(components);
        builtTo = List.copyOf(builtTo);
    }

    /** Whether a row of this scope applies to the case. */
    public boolean covers(RuleCase asked) {
        return covers(classes, asked.protection())
                && covers(types, asked.type())
                && covers(supplies, asked.supply())
                && covers(conditions, asked.condition())
                && covers(methods, asked.method())
                && covers(components, asked.component())
                && covers(builtTo, asked.builtTo())
                && subject.equals(asked.subject())
                && where.equals(asked.where());
    }

    private static <T> boolean covers(List<T> listed, Optional<T> asked) {
        return listed.isEmpty() || asked.map(listed::contains).orElse(false);
    }
}
