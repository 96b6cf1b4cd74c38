package leadwright.planner.plan;

import java.util.List;
import java.util.Optional;
import leadwright.catalog.kit.Component;
import leadwright.catalog.kit.MeasuringNetwork;
import leadwright.catalog.kit.Method;
import leadwright.catalog.rules.Limit;
import leadwright.catalog.rules.QuantityKind;

/**
 * One reading that the rule set asks for, before it has a hookup.
 *
 * @param key names it, unique in a plan and independent of hookups
 * @param quantity what is read
 * @param clause clause that asks for it
 * @param of ids of its subjects: applied parts, functions (full names), touch points, ports or earth subjects
 * @param demand what it asks of the wiring; {@link Demand#NOTHING} where it asks nothing
 * @param place where clip or probe is put: a touch point, port or earth point id
 * @param earthSubject for earth readings, between what it is taken
 * @param state state of the mains; OFF for readings without mains and for internally powered devices
 * @param mode operating mode id; {@code on}, or {@code off} where the device is not started
 * @param sourcePolarity polarity of the source, for readings with mains on an applied part
 * @param limit empty where the rule set has none for the case: the reading is not judged
 * @param note what a person must know about this reading
 */
public record Obligation(
        String key,
        QuantityKind quantity,
        String clause,
        List<String> of,
        Demand demand,
        Optional<String> place,
        Optional<EarthSubject> earthSubject,
        MainsState state,
        String mode,
        Optional<SourcePolarity> sourcePolarity,
        Optional<Method> method,
        Optional<Component> component,
        Optional<MeasuringNetwork> network,
        Optional<Limit> limit,
        Optional<String> note) {
    public Obligation {
        of = List.copyOf(of);
    }

    /** The same with another note. */
    public Obligation noting(String other) {
        return new Obligation(
                key,
                quantity,
                clause,
                of,
                demand,
                place,
                earthSubject,
                state,
                mode,
                sourcePolarity,
                method,
                component,
                network,
                limit,
                Optional.of(other));
    }

    /** Polarity of the source that puts mains on an applied part. */
    public enum SourcePolarity {
        NORMAL,
        REVERSED;

        public String word() {
            return leadwright.catalog.device.Words.of(this);
        }
    }

    /** Between what an earth reading is taken; the limit follows it. */
    public enum EarthSubject {
        /** Earth contact of the plug, cord fitted, to an earthed part. */
        PLUG_TO_PART,
        /** Earth pin of the inlet, cord out, to an earthed part; two leads. */
        INLET_TO_PART,
        /** The detachable cord alone. */
        CORD,
        /** Reference earth or earth terminal of permanent plant to an earthed part; two leads. */
        REFERENCE_TO_PART;

        public String word() {
            return leadwright.catalog.device.Words.of(this);
        }
    }

    /**
     * What an insulation reading is taken against, in words: {@code mains part}, {@code protective earth} or {@code housing};
     * empty for other readings.
     */
    public Optional<String> insulatedFrom() {
        if (quantity != QuantityKind.INSULATION_RESISTANCE) {
            return Optional.empty();
        }
        String subject = key.substring(key.indexOf('/') + 1);
        if (subject.startsWith("mains-to-earth/") && of.equals(List.of("mains"))) {
            return Optional.of("protective earth");
        }
        if (of.stream().anyMatch(each -> subject.startsWith("mains-to-" + each))) {
            return Optional.of("mains part");
        }
        return Optional.of(demand.against().isEmpty() ? "protective earth" : "housing");
    }

    /** Which of the phases in their fixed order it belongs to. */
    public Phase phase() {
        return switch (quantity) {
            case SUPPLY_VOLTAGE, TESTER_CHECK, PROOF -> Phase.CHECK;
            case EARTH_RESISTANCE, BONDING_RESISTANCE -> Phase.EARTH;
            case INSULATION_RESISTANCE -> Phase.INSULATION;
            default -> sourcePolarity.isPresent() ? Phase.MAINS_ON_PART : Phase.ORDINARY;
        };
    }

    /** Phases of a plan. */
    public enum Phase {
        CHECK,
        EARTH,
        INSULATION,
        ORDINARY,
        MAINS_ON_PART
    }

    /** A touch reading, by current or by voltage: with no fault it precedes every fault state of its polarity. */
    public boolean isTouch() {
        return quantity == QuantityKind.TOUCH_CURRENT
                || quantity == QuantityKind.TOUCH_CURRENT_BETWEEN
                || quantity == QuantityKind.BONDING_VOLTAGE;
    }
}
