package leadwright.catalog.rules;

import java.util.Optional;
import leadwright.catalog.device.PartType;
import leadwright.catalog.device.Protection;
import leadwright.catalog.device.SupplyConnection;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;

/** The case for which rows of a rule set are asked: what is known of a device and of one reading. */
public record RuleCase(
        QuantityKind quantity,
        Optional<Protection> protection,
        Optional<SupplyConnection> supply,
        Optional<String> builtTo,
        Optional<PartType> type,
        Optional<Condition> condition,
        Optional<Method> method,
        Optional<Component> component,
        Optional<String> subject,
        Optional<String> where) {

    /** The case of a quantity on a device, before anything of the reading is known. */
    public static RuleCase of(
            QuantityKind quantity, Protection protection, SupplyConnection supply, Optional<String> builtTo) {
        return new RuleCase(
                quantity,
                Optional.of(protection),
                Optional.of(supply),
                builtTo,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    public RuleCase type(PartType is) {
        return new RuleCase(
                quantity, protection, supply, builtTo, Optional.of(is), condition, method, component, subject, where);
    }

    public RuleCase condition(Condition is) {
        return new RuleCase(
                quantity, protection, supply, builtTo, type, Optional.of(is), method, component, subject, where);
    }

    public RuleCase method(Optional<Method> is) {
        return new RuleCase(quantity, protection, supply, builtTo, type, condition, is, component, subject, where);
    }

    public RuleCase component(Optional<Component> is) {
        return new RuleCase(quantity, protection, supply, builtTo, type, condition, method, is, subject, where);
    }

    public RuleCase subject(String is) {
        return new RuleCase(
                quantity, protection, supply, builtTo, type, condition, method, component, Optional.of(is), where);
    }

    public RuleCase where(String is) {
        return new RuleCase(
                quantity, protection, supply, builtTo, type, condition, method, component, subject, Optional.of(is));
    }
}
