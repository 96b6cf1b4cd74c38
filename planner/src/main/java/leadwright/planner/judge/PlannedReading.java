package leadwright.planner.judge;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.Method;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;

/**
 * A reading as its plan asks for it.
 *
 * @param key names it in every plan of the device, whatever the order and the hookups
 * @param of ids of its subjects
 * @param state word of the mains' state
 * @param mode id of the operating mode
 * @param limit empty where the rule set has none
 */
public record PlannedReading(
        String id,
        String key,
        QuantityKind quantity,
        String clause,
        List<String> of,
        Optional<String> place,
        String state,
        String mode,
        Optional<String> sourcePolarity,
        Optional<Method> method,
        Optional<Component> component,
        Optional<String> earthSubject,
        Optional<Limit> limit,
        Optional<String> note,
        Optional<Expected> expected) {
    public PlannedReading {
        of = List.copyOf(of);
    }

    /** Which function of the tester takes it, as the kit's accuracy names them; empty where the kit has no word for it. */
    public Optional<String> function() {
        return switch (quantity) {
            case EARTH_RESISTANCE, BONDING_RESISTANCE -> Optional.of("earth");
            case INSULATION_RESISTANCE -> Optional.of("insulation");
            case SUPPLY_VOLTAGE, BONDING_VOLTAGE -> Optional.of("voltage");
            case SUPPLY_CURRENT, PROOF -> Optional.empty();
            case TESTER_CHECK -> Optional.of(component.isPresent() ? "leakage" : "earth");
            default -> Optional.of("leakage");
        };
    }

    /** What it is measured in; empty for proofs, which show what they show. */
    public Optional<Dimension> dimension() {
        if (limit.isPresent()) {
            return Optional.of(limit.get().value().dimension());
        }
        return switch (quantity) {
            case PROOF -> Optional.empty();
            case EARTH_RESISTANCE, BONDING_RESISTANCE, INSULATION_RESISTANCE -> Optional.of(Dimension.RESISTANCE);
            case SUPPLY_VOLTAGE, BONDING_VOLTAGE -> Optional.of(Dimension.VOLTAGE);
            case TESTER_CHECK -> Optional.of(component.isPresent() ? Dimension.CURRENT : Dimension.RESISTANCE);
            default -> Optional.of(Dimension.CURRENT);
        };
    }

    /** A current that flows where none should. */
    public boolean isLeakage() {
        return function().equals(Optional.of("leakage")) && quantity != QuantityKind.TESTER_CHECK;
    }

    /** Taken between leads whose own resistance counts. */
    public boolean isThroughLeads() {
        return quantity == QuantityKind.EARTH_RESISTANCE || quantity == QuantityKind.BONDING_RESISTANCE;
    }

    /** Driven by the tester's own limited source and not by the mains at its outlet. */
    public boolean isFromSource() {
        return sourcePolarity.isPresent() || method.equals(Optional.of(Method.ALTERNATIVE));
    }
}
