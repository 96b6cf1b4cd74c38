package leadwright.planner.judge;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.house.EarthWord;
import leadwright.catalog.house.Paper;
import leadwright.catalog.kit.Accuracy;
import leadwright.catalog.kit.PartSource;
import leadwright.catalog.quantity.Quantity;
import leadwright.planner.plan.NotApplicable;
import leadwright.planner.plan.Shortfall;

/**
 * What a {@code plan/1} says of the readings that are due, and of the tester that takes them.
 *
 * @param partial whether something due cannot be measured with the kit; {@code shortfalls} says what
 * @param training whether the plan is a training copy and no record
 */
public record PlannedTest(
        String fingerprint,
        boolean partial,
        boolean training,
        String occasion,
        Device device,
        Bench bench,
        Rules rules,
        House house,
        List<PlannedReading> readings,
        List<NotApplicable> notApplicable,
        List<Shortfall> shortfalls) {
    public PlannedTest {
        readings = List.copyOf(readings);
        notApplicable = List.copyOf(notApplicable);
        shortfalls = List.copyOf(shortfalls);
    }

    /** @param names of parts and places by id */
    public record Device(String name, Map<String, String> names) {
        public Device {
            names = java.util.Collections.unmodifiableMap(new TreeMap<>(names));
        }
    }

    /**
     * The bench.
     *
     * @param accuracy by function of the tester; a function that is not stated has none
     * @param fourWire whether its earth test measures with four wires, so that the leads do not count
     * @param nominal nominal voltages of the outlets that the device may be on
     * @param source the limited source that puts mains on a part; empty where there is none
     */
    public record Bench(
            String kit,
            String tester,
            Optional<LocalDate> calibratedUntil,
            Map<String, Accuracy> accuracy,
            boolean fourWire,
            Optional<Quantity> nullUpTo,
            List<Quantity> nominal,
            Optional<PartSource> source,
            Map<String, Resistor> checks) {
        public Bench {
            accuracy = java.util.Collections.unmodifiableMap(new TreeMap<>(accuracy));
            nominal = List.copyOf(nominal);
            checks = java.util.Collections.unmodifiableMap(new TreeMap<>(checks));
        }
    }

    /** A known resistor that the tester is checked with. */
    public record Resistor(Quantity value, Quantity tolerance) {}

    /** @param nominalMains clause by which leakage is corrected to the nominal mains voltage; empty where it is not */
    public record Rules(String id, String name, String edition, Optional<String> nominalMains) {}

    /** The house's choices for a record. */
    public record House(
            Optional<String> department, DecisionRule decision, Paper paper, EarthWord words, List<String> signs) {
        public House {
            signs = List.copyOf(signs);
        }
    }
}
