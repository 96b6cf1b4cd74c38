package leadwright.catalog.rules;

import java.util.Arrays;
import java.util.Optional;
import leadwright.catalog.device.Words;

/** What a reading is of: the words of the plan's {@code quantity}. */
public enum QuantityKind {
    EARTH_RESISTANCE,
    BONDING_RESISTANCE,
    BONDING_VOLTAGE,
    INSULATION_RESISTANCE,
    SUPPLY_VOLTAGE,
    SUPPLY_CURRENT,
    EARTH_LEAKAGE,
    FUNCTIONAL_EARTH_LEAKAGE,
    TOUCH_CURRENT,
    TOUCH_CURRENT_BETWEEN,
    EQUIPMENT_LEAKAGE,
    APPLIED_PART_LEAKAGE,
    PATIENT_LEAKAGE,
    TOTAL_PATIENT_LEAKAGE,
    PATIENT_AUXILIARY,
    LEAD_TO_LEAD,
    MAINS_ON_APPLIED_PART,
    TOTAL_MAINS_ON_APPLIED_PART,
    MAINS_ON_UNEARTHED_METAL,
    MAINS_ON_PORT,
    TESTER_CHECK,
    PROOF;

    /** As written in a plan. */
    public String word() {
        return Words.of(this);
    }

    public static Optional<QuantityKind> of(String word) {
        return Arrays.stream(values()).filter(kind -> kind.word().equals(word)).findFirst();
    }
}
