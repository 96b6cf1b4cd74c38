package leadwright.render.edition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.QuantityKind;
import leadwright.planner.Plan;
import leadwright.planner.plan.Obligation;
import leadwright.planner.plan.Reading;

/**
 * Readings to which one explanation applies.
 *
 * @param returns which way the current of a source goes back: {@code against}, {@code earthed} or {@code device}
 */
record ReadingKind(
        QuantityKind quantity,
        Optional<Method> method,
        Optional<Obligation.EarthSubject> subject,
        Optional<String> insulatedFrom,
        boolean source,
        String returns) {

    static ReadingKind of(Obligation reading) {
        String returns = !reading.demand().against().isEmpty()
                ? "against"
                : reading.demand().earthed().isEmpty() ? "device" : "earthed";
        return new ReadingKind(
                reading.quantity(),
                reading.method(),
                reading.earthSubject(),
                reading.insulatedFrom(),
                reading.sourcePolarity().isPresent(),
                returns);
    }

    /** The readings of a plan by kind, in the order in which each kind first comes. */
    static Map<ReadingKind, List<Reading>> of(Plan plan) {
        Map<ReadingKind, List<Reading>> kinds = new LinkedHashMap<>();
        for (Reading each : plan.readings()) {
            kinds.computeIfAbsent(of(each.obligation()), kind -> new ArrayList<>())
                    .add(each);
        }
        return kinds;
    }

    static Explanation explain(Obligation reading, Plan plan) {
        boolean mains = plan.device().runsOnMains();
        if (reading.sourcePolarity().isPresent()) {
            return SourceExplained.of(reading);
        }
        return switch (reading.quantity()) {
            case EARTH_RESISTANCE, BONDING_RESISTANCE -> EarthExplained.resistance();
            case BONDING_VOLTAGE -> EarthExplained.bondingVoltage();
            case INSULATION_RESISTANCE -> EarthExplained.insulation();
            case SUPPLY_VOLTAGE -> EarthExplained.supplyVoltage();
            case TESTER_CHECK -> EarthExplained.testerCheck();
            case PROOF -> EarthExplained.proof();
            case SUPPLY_CURRENT -> LeakageExplained.supplyCurrent();
            case EARTH_LEAKAGE, FUNCTIONAL_EARTH_LEAKAGE -> LeakageExplained.earth();
            case TOUCH_CURRENT -> mains ? LeakageExplained.touch() : LeakageExplained.battery();
            case TOUCH_CURRENT_BETWEEN -> mains ? LeakageExplained.between() : LeakageExplained.battery();
            case EQUIPMENT_LEAKAGE -> LeakageExplained.equipment(reading);
            case PATIENT_LEAKAGE, TOTAL_PATIENT_LEAKAGE ->
                mains ? LeakageExplained.patient() : LeakageExplained.battery();
            case PATIENT_AUXILIARY -> LeakageExplained.auxiliary(false);
            case LEAD_TO_LEAD -> LeakageExplained.auxiliary(true);
            case APPLIED_PART_LEAKAGE,
                    MAINS_ON_APPLIED_PART,
                    TOTAL_MAINS_ON_APPLIED_PART,
                    MAINS_ON_UNEARTHED_METAL,
                    MAINS_ON_PORT -> SourceExplained.of(reading);
        };
    }
}
