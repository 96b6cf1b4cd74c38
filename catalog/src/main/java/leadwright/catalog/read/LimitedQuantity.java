package leadwright.catalog.read;

import java.util.List;
import leadwright.catalog.quantity.Dimension;
import leadwright.catalog.rules.QuantityKind;

/** What a limit on a quantity is written in. */
final class LimitedQuantity {

    /** Where the quantity is not known. */
    static final List<Dimension> ANY = List.of(Dimension.CURRENT, Dimension.RESISTANCE, Dimension.VOLTAGE);

    private LimitedQuantity() {}

    static Dimension dimension(QuantityKind kind) {
        return switch (kind) {
            case EARTH_RESISTANCE, BONDING_RESISTANCE, INSULATION_RESISTANCE -> Dimension.RESISTANCE;
            case BONDING_VOLTAGE, SUPPLY_VOLTAGE -> Dimension.VOLTAGE;
            default -> Dimension.CURRENT;
        };
    }

    /** Insulation has a least value; the supply, the tester's check and proof steps have none of a device's own. */
    static boolean hasCeiling(QuantityKind kind) {
        return switch (kind) {
            case INSULATION_RESISTANCE, SUPPLY_VOLTAGE, TESTER_CHECK, PROOF -> false;
            default -> true;
        };
    }
}
