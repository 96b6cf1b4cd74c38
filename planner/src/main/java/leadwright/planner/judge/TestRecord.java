package leadwright.planner.judge;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import leadwright.catalog.house.DecisionRule;
import leadwright.catalog.readings.Readings;
import leadwright.catalog.rules.Limit;

/**
 * Readings of one device, judged.
 *
 * @param date the day of the readings
 * @param rule the decision rule that was used
 * @param because why the result is what it is, the weightiest first
 * @param notes what holds for the record as a whole
 * @param previous the day of the record that these readings were set beside, where there was one
 */
public record TestRecord(
        PlannedTest plan,
        Readings readings,
        LocalDate date,
        DecisionRule rule,
        Mains mains,
        List<Judged> judged,
        Result result,
        List<String> because,
        List<String> notes,
        Optional<LocalDate> previous) {
    public TestRecord {
        judged = List.copyOf(judged);
        because = List.copyOf(because);
        notes = List.copyOf(notes);
    }

    /** What the readings say of the device. */
    public enum Result {
        /** Every reading that is due was taken, and the decision rule accepts each that has a limit. */
        PASS,
        /** The decision rule rejects at least one reading. */
        FAIL,
        /** Some reading says nothing, and none is rejected. */
        VOID,
        /** Something due was not measured or could not be judged, and nothing is rejected. */
        NOT_COMPLETE;

        /** As written in a record. */
        public String word() {
            return leadwright.catalog.device.Words.of(this);
        }
    }

    /** Limits that readings were compared with and that the house has not confirmed, by id. */
    public Map<String, Limit> unconfirmed() {
        Map<String, Limit> limits = new TreeMap<>();
        judged.stream()
                .flatMap(each -> each.limit().stream())
                .filter(Limit::unconfirmed)
                .forEach(limit -> limits.putIfAbsent(limit.id(), limit));
        return limits;
    }

    /** Whether the result rests on a limit that is not confirmed. */
    public boolean provisional() {
        return !unconfirmed().isEmpty();
    }
}
